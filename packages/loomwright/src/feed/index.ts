export type { FeedPart, FeedPath, FuseToChoose, WirePart } from './path.js';
export type { FuseProtection, NoProtection, Protection, UpstreamProtection } from './protect.js';
export {
  type FeedAt,
  type FeedLimits,
  type JudgedSize,
  type Remark,
  sizeFeed,
  type SizeFeedInput,
  type SizeFeedResult,
} from './size-feed.js';
export { solveFeed, type SolveFeedInput, type SolveFeedResult } from './solve-feed.js';
export { voltageDrop, type VoltageDropInput, type VoltageDropResult } from './voltage-drop.js';
export { voltageDropEach, type VoltageDropEachInput, type VoltageDropEachResult } from './voltage-drop-each.js';
