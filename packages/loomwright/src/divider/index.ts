export { adcReading, type AdcReadingInput, type AdcReadingResult, type AdcScale } from './adc-reading.js';
export {
  checkSwitchLadder,
  type CheckSwitchLadderInput,
  type CheckSwitchLadderResult,
  type LadderGap,
  type LadderPair,
  type LadderState,
} from './check-switch-ladder.js';
export {
  choosePullUp,
  type ChoosePullUpInput,
  type ChoosePullUpResult,
  type PullUpChoice,
  type PullUpPoint,
} from './choose-pull-up.js';
export type { ToleranceCorners } from './corners.js';
export {
  designDivider,
  type DesignDividerInput,
  type DesignDividerResult,
  type DividerDesign,
} from './design-divider.js';
export {
  designSwitchLadder,
  type DesignSwitchLadderInput,
  type DesignSwitchLadderResult,
  type SwitchLadderDesign,
} from './design-switch-ladder.js';
export { divider, type DividerInput, type DividerResult } from './divider.js';
export type { SwitchLadderBase } from './ladder.js';
export {
  ledResistor,
  type LedBleeder,
  type LedDesign,
  type LedResistorInput,
  type LedResistorResult,
} from './led-resistor.js';
export { loadedDivider, type LoadedDividerInput, type LoadedDividerResult } from './loaded-divider.js';
export { nearestPreferred, type NearestPreferredInput, type NearestPreferredResult } from './nearest-preferred.js';
export { switchInput, type SwitchInputInput, type SwitchInputResult } from './switch-input.js';
export { thevenin, type TheveninBranch, type TheveninInput, type TheveninResult } from './thevenin.js';
export {
  type ToleranceCorrelation,
  type TolerancePart,
  type ToleranceShare,
  toleranceStack,
  type ToleranceStackInput,
  type ToleranceStackResult,
} from './tolerance-stack.js';
