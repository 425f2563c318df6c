export { checkSwitchLadderCard, designSwitchLadderCard } from './buttons.js';
export { ledResistorCard } from './led.js';
export { branchList, nameList, ohmList } from './lists.js';
export { choosePullUpCard, switchInputCard } from './pull-up.js';
export { seriesChoices } from './series.js';
export { toleranceStackCard } from './tolerance-stack.js';
export {
  adcReadingCard,
  designDividerCard,
  dividerCard,
  loadedDividerCard,
  nearestPreferredCard,
  theveninCard,
} from './volts.js';
