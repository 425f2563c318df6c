import { bundleTerms } from './bundle.js';
import { busTerms } from './bus.js';
import { calibrationTerms } from './calibration.js';
import { conductorTerms } from './conductor.js';
import { dividerTerms } from './divider.js';
import { feedTerms } from './feed.js';
import { heatTerms } from './heat.js';
import { jointTerms } from './joint.js';
import { levelTerms } from './level.js';
import { loadTerms } from './load.js';
import { networkTerms } from './network.js';
import { protectionTerms } from './protection.js';
import { relayTerms } from './relay.js';
import { signalTerms } from './signal.js';
import { supplyTerms } from './supply.js';
import { temperatureTerms } from './temperature.js';
import type { Term, Terms } from './type.js';

export type { Term, Terms } from './type.js';

/** Every name of fields and results: label and symbol. The unit follows from the end of the name. */
export const nomenclature: Terms = /* @__PURE__ */ (() => ({
  ...conductorTerms,
  ...dividerTerms,
  ...levelTerms,
  ...signalTerms,
  ...networkTerms,
  ...supplyTerms,
  ...busTerms,
  ...temperatureTerms,
  ...calibrationTerms,
  ...bundleTerms,
  ...jointTerms,
  ...loadTerms,
  ...relayTerms,
  ...protectionTerms,
  ...feedTerms,
  ...heatTerms,
}))();

/** A name's term; the name itself where it has none. */
export function termOf(name: string): Term {
  return nomenclature[name] ?? { label: name, symbol: `\\mathrm{${name}}` };
}
