export {
  chooseFuse,
  type ChooseFuseInput,
  type ChosenFuse,
  type NearestFuse,
  type OverloadRule,
} from './choose-fuse.js';
