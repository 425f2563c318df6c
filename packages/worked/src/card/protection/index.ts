export { checkChannelCard } from './channel.js';
export { protectionCurvesCard } from './curves.js';
export { checkFuseCard, chooseFuseCard, fuseOpeningTimeCard, pulseI2tCard, shortCircuitCurrentCard } from './fuse.js';
export { fusesInRowCard } from './in-row.js';
export { mainFuseCard } from './main.js';
