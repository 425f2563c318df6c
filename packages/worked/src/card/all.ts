import * as bundle from './bundle/index.js';
import * as bus from './bus/index.js';
import * as calibration from './calibration/index.js';
import * as conductor from './conductor/index.js';
import * as divider from './divider/index.js';
import * as feed from './feed/index.js';
import * as heat from './heat/index.js';
import * as joint from './joint/index.js';
import * as level from './level/index.js';
import * as load from './load/index.js';
import * as network from './network/index.js';
import * as protection from './protection/index.js';
import * as relay from './relay/index.js';
import * as signal from './signal/index.js';
import * as supply from './supply/index.js';
import * as temperature from './temperature/index.js';
import type { Card } from './type.js';

// One line an area: the room's cards are gathered by their names' end, so that none is listed twice.
const AREAS: readonly Readonly<Record<string, unknown>>[] = [
  conductor,
  feed,
  load,
  protection,
  relay,
  heat,
  bundle,
  joint,
  temperature,
  calibration,
  divider,
  level,
  signal,
  network,
  supply,
  bus,
];

/** Every card, by the name of its function. */
export const cards: Readonly<Record<string, Card>> = /* @__PURE__ */ (() => {
  const all = AREAS.flatMap((area) => Object.entries(area)).filter(([name]) => name.endsWith('Card'));
  return Object.fromEntries(all.map(([, card]) => [(card as Card).name, card as Card]));
})();
