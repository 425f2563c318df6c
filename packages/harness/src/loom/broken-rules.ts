import { InputError, wireResistance } from 'loomwright';
import { basisOf, coverOf, familyOf } from '../schema/tables.js';
import { bearsProblems } from '../schema/trade.js';
import { loadOf } from '../schema/load-of.js';
import { areaOf } from './draft.js';
import type { Broken } from './references.js';
import type { Loom, LoomInLine, LoomTakes } from './schema.js';

/** What the values of a whole file say against each other: each is sound alone, but not with the rest. */
export function brokenRules(loom: Loom): readonly Broken[] {
  const found: Broken[] = [];
  const add = (path: readonly PropertyKey[], message: string, rule: Broken['rule'] = 'rule'): void => {
    found.push({ path, rule, message, likely: null });
  };
  const { rules } = loom;
  const basis = basisOf(rules.wire);
  const cover = coverOf(rules.cover);
  if (rules.stock === undefined && basis.kind === 'geometric') {
    add(['rules'], 'needs stock with the geometric wire, which has no sizes of its own.', 'missing');
  }
  rules.stock?.forEach((size, i) => {
    try {
      wireResistance({ ...size, resistanceBasis: basis, lengthM: 1, conductorTempC: 20 });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      add(['rules', 'stock', i], `is no size of ${rules.wire}.`);
    }
  });
  for (const [key, message] of bearsProblems(rules.insulation, rules.bears)) add(['rules', 'bears', key], message);
  const named = basis.kind === 'geometric' ? 'mm2' : basis.sizes;
  if (named !== cover.sizes) {
    add(['rules', 'cover'], `names its sizes as ${cover.sizes}, and ${rules.wire} as ${named}: take a pair.`);
  }
  for (const [name, takes] of takesOf(loom)) {
    if ('blade' in takes) continue;
    const { least, most, insulation, current, hot } = takes;
    if (areaOf(least) > areaOf(most)) add([...name, 'most'], 'must be at least as thick as least.');
    if (insulation !== undefined && insulation.least > insulation.most) {
      add([...name, 'insulation', 'most'], 'must be at least as thick as least.');
    }
    if (hot !== undefined && current === undefined) add([...name, 'current'], 'is required beside hot.', 'missing');
    if (hot !== undefined && current !== undefined && hot.current > current) {
      add([...name, 'hot', 'current'], 'must be at most current: heat leaves a contact less.');
    }
  }
  const inLine = (fuse: LoomInLine | undefined, path: readonly PropertyKey[]): void => {
    if (fuse === undefined || 'none' in fuse) return;
    const family = familyOf(fuse.fuse);
    if (family.ambientFactor.length === 0 && fuse.rerating === undefined) {
      add([...path, 'rerating'], `is required: ${fuse.fuse} has no curve of its own.`, 'missing');
    }
    if (family.dropMillivolt.length === 0 && fuse.resistance === undefined) {
      add([...path, 'resistance'], `is required: no figure is known for ${fuse.fuse}.`, 'missing');
    }
    const tempC = loom.places[fuse.at]?.ambient ?? 20;
    if (tempC > 125 || tempC < -40) add([...path, 'at'], `is at ${tempC} °C: fuses are judged from -40 to 125 °C.`);
  };
  const { alternator, isolator } = loom.supply;
  inLine(alternator?.protection, ['supply', 'alternator', 'protection']);
  isolator?.protection.forEach((one, i) => {
    inLine(one, ['supply', 'isolator', 'protection', i]);
  });
  for (const [name, link] of Object.entries(loom.supply.links ?? {})) {
    inLine(link.protection, ['supply', 'links', name, 'protection']);
  }
  for (const [name, state] of Object.entries(loom.states)) {
    for (const battery of Object.keys(state.atRest ?? {})) {
      if (loom.supply.batteries[battery]?.resistance !== 0) continue;
      const path = ['states', name, 'atRest', battery];
      add(path, 'needs a battery with a resistance above 0: volts at rest and at the posts are one without.');
    }
  }
  for (const [name, box] of Object.entries(loom.fuseBoxes)) inLine(box.protection, ['fuseBoxes', name, 'protection']);
  for (const [name, one] of Object.entries(loom.controllers))
    inLine(one.protection, ['controllers', name, 'protection']);
  for (const [name, { fullTo, noneAt, pickUp, dropOut }] of Object.entries(loom.relayTypes)) {
    if (dropOut > pickUp)
      add(['relayTypes', name, 'dropOut'], 'must be at most pickUp: it lets go below where it pulls in.');
    if (noneAt <= fullTo) add(['relayTypes', name, 'noneAt'], 'must be above fullTo.');
  }
  for (const [name, item] of Object.entries(loom.items)) {
    if (item.kind !== 'load') continue;
    inLine(item.protection, ['items', name, 'protection']);
    const load = loadOf(item.load);
    const path = ['items', name, 'load'];
    for (const [key, value] of Object.entries(item.load)) {
      if (typeof value === 'number' && !(value >= 1e-6 && value <= 1e5)) {
        add([...path, key], `is beyond any vehicle: from 0.000001 to 100000, got ${value}.`, 'range');
      }
    }
    if (load.kind === 'motor' && load.ratedCurrentA >= load.ratedV / load.windingResistanceOhm) {
      add(
        [...path, 'ratedCurrent'],
        'must be below ratedVoltage over windingResistance, its current when it is stalled.',
      );
    }
    if (item.inrush !== undefined && item.inrushTime === undefined) {
      add(['items', name, 'inrushTime'], 'is required beside inrush: how long it lasts.', 'missing');
    }
  }
  for (const [name, { size }] of Object.entries(loom.buses)) {
    const areaMm2 = areaOf(size);
    const held = rules.stock?.some((one) => Math.abs(areaOf(one) - areaMm2) < 1e-6) ?? true;
    if (!held) add(['buses', name, 'size'], 'is no size in stock.');
  }
  return found;
}

function takesOf(loom: Loom): readonly (readonly [path: readonly string[], takes: LoomTakes])[] {
  return (['fuseBoxes', 'controllers', 'items'] as const).flatMap((kind) =>
    Object.entries(loom[kind]).flatMap(([name, { takes }]) =>
      takes === undefined ? [] : [[[kind, name, 'takes'], takes] as const],
    ),
  );
}
