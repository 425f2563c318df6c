export { adaptSenderCard } from './adapt.js';
export { calibrateLevelCard, canList } from './calibrate.js';
export { ladderSenderCard } from './ladder.js';
export { evenStrapping, litreList } from './lists.js';
export { matchSenderRangeCard } from './range.js';
export { senderNetworkCard } from './network.js';
export { saddleTankCard } from './saddle.js';
export { sloshFilterCard } from './slosh.js';
export { tankVolumeCard } from './tank.js';
