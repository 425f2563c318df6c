export { bendRadius, type BendRadiusInput, type BendRadiusResult } from './bend-radius.js';
export { checkTerminal, type CheckTerminalInput, type CheckTerminalResult } from './check-terminal.js';
export { crimpPullOut, type CrimpPullOutInput, type CrimpPullOutResult } from './crimp-pull-out.js';
export { loadingFactor, type LoadingFactorInput, type LoadingFactorResult } from './loading-factor.js';
export { pinCurrent, type PinCurrentInput, type PinCurrentResult } from './pin-current.js';
export {
  type LargestSplice,
  spliceArea,
  type SpliceArea,
  type SpliceAreaInput,
  type SpliceWire,
} from './splice-area.js';
export { tensilePullOut, type TensilePullOutInput, type TensilePullOutResult } from './tensile-pull-out.js';
