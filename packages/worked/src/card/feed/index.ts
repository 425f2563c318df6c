export { voltageDropCard } from './voltage-drop.js';
