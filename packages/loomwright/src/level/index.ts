export { ladderSender, type LadderSenderInput, type LadderSenderResult, type LadderStep } from './ladder-sender.js';
export type { LadderFault, LadderReading } from './ladder-faults.js';
export type { LevelPoint } from './strapping.js';
