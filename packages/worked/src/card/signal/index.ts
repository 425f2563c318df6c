export { currentLoopCard, openCollectorEdgeCard, rcFilterCard, rcStepCard, twoWireSensorCard } from './edges.js';
export { pulsesPerDistanceCard, reluctorAmplitudeCard, toothFrequencyCard } from './wheels.js';
