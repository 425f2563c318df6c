export { canFrameBitsCard, canLoadCard, canResponseTimesCard } from './frames.js';
