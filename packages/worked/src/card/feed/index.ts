export { feedScope } from './feed-scope.js';
export { sizeFeedCard, sizeFeedSteps, wireChoices } from './size-feed.js';
export { solveFeedCard } from './solve-feed.js';
export { voltageDropCard } from './voltage-drop.js';
