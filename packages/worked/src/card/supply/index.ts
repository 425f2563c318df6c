export { peukertExponentCard, runTimeCard } from './run-time.js';
