export { checkChannelCard } from './channel.js';
export { protectionCurvesCard } from './curves.js';
export { checkFuseCard, chooseFuseCard, fuseOpeningTimeCard, pulseI2tCard, shortCircuitCurrentCard } from './fuse.js';
export { mainFuseCard } from './main.js';
