export { ladderSenderCard } from './ladder.js';
export { evenStrapping, litreList } from './lists.js';
