export { currentLoop, type CurrentLoopInput, type CurrentLoopResult } from './current-loop.js';
export { openCollectorEdge, type OpenCollectorEdgeInput, type OpenCollectorEdgeResult } from './open-collector-edge.js';
export { pulsesPerDistance, type PulsesPerDistanceInput, type PulsesPerDistanceResult } from './pulses-per-distance.js';
export { rcFilter, type RcFilterInput, type RcFilterResult } from './rc-filter.js';
export { rcStep, type RcStepInput, type RcStepResult } from './rc-step.js';
export { reluctorAmplitude, type ReluctorAmplitudeInput, type ReluctorAmplitudeResult } from './reluctor-amplitude.js';
export { toothFrequency, type ToothFrequencyInput, type ToothFrequencyResult } from './tooth-frequency.js';
export { twoWireSensor, type TwoWireSensorInput, type TwoWireSensorResult } from './two-wire-sensor.js';
