export { canFrameBitsCard, canLoadCard, canResponseTimesCard } from './frames.js';
export { canResistanceCard, canTopologyCard } from './line.js';
