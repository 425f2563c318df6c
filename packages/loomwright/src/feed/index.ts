export { voltageDrop, type VoltageDropInput, type VoltageDropResult } from './voltage-drop.js';
