import { busSources } from './bus.js';
import { calibrationSources } from './calibration.js';
import { conductorSources } from './conductor.js';
import { heatSources } from './heat.js';
import { jointSources } from './joint.js';
import { levelSources } from './level.js';
import { loadSources } from './load.js';
import { methodSources } from './method.js';
import { networkSources } from './network.js';
import { practiceSources } from './practice.js';
import { protectionSources } from './protection.js';
import { sensorSources } from './sensor.js';
import { supplySources } from './supply.js';
import { temperatureSources } from './temperature.js';

export type { Source, SourceStatus } from './type.js';

/** Every source that the library cites, by its stable key. */
export const sources = /* @__PURE__ */ (() => ({
  ...busSources,
  ...calibrationSources,
  ...conductorSources,
  ...protectionSources,
  ...heatSources,
  ...jointSources,
  ...levelSources,
  ...loadSources,
  ...methodSources,
  ...networkSources,
  ...practiceSources,
  ...sensorSources,
  ...supplySources,
  ...temperatureSources,
}))();

/** The stable key of a source. */
export type SourceKey = keyof typeof sources;
