import {
  type Check,
  checkChannel,
  type CheckChannelResult,
  chooseFuse,
  type ChosenFuse,
  type FeedPart,
  type FuseToChoose,
  type FuseFamily,
  type Heating,
  type InsulatedWireTable,
  insulatedWire,
  type Protection,
  type ResistanceBasis,
  sizeFeed,
  type SizeFeedInput,
  wireResistance,
} from 'loomwright';
import { basisOf, coverOf, familyOf, wireLimitsOf } from '../schema/tables.js';
import { areaOf, type Draft } from './draft.js';
import { heatingsOf } from './heat-cache.js';
import type { DecidedBy } from './plan-type.js';
import type { Loom } from './schema.js';

/** A size that may be chosen. */
export interface StockSize {
  readonly given: number | string;
  readonly label: string;
  readonly areaMm2: number;
  /** Ω/m at 20 °C. */
  readonly ohmPerM: number;
  readonly outerDiameterMm: number | null;
}

/** What a circuit meets where it lies, in all states: what its size depends on beside the draft itself. */
export interface Surroundings {
  /** Largest current in A; of loads whose current depends on their volts the plan's own solution. */
  readonly currentA: number;
  /** Volts at which its path begins in the states in which it is on, lowest first. */
  readonly sourcesV: readonly number[];
  /** Volts lost before and behind its path, in the worst state. */
  readonly sharedDropV: number;
  readonly ambientTempC: number;
  readonly bundleFactor: number;
  /** Ω before its path, for a short at its far end. */
  readonly sourceOhm: number;
  /** Number of the thinnest size that may be taken. */
  readonly floor: number;
}

/** A draft with its size. */
export interface Sized {
  /** Number in the stock; −1 where there is no wire. */
  readonly size: number;
  /** Whether all limits but those that fail in `checks` are met by it at all. */
  readonly possible: boolean;
  readonly decidedBy: DecidedBy;
  readonly because: string;
  readonly checks: readonly Check[];
  readonly ampacityA: number | null;
  readonly conductorTempC: number;
  readonly fuse: ChosenFuse | null;
  readonly farShortA: number | null;
  /** Resistance of the fuse as it counts in the path. */
  readonly fuseOhm: number;
  readonly settingA: number | null;
  readonly channel: CheckChannelResult | null;
}

/** Starts in the life of a fuse, and the rest between them, for its inrush: a rule of ours, said in the plan. */
export const STARTS = { count: 10_000, restS: 10 } as const;

/** Sizes one draft after another by the rules of one loom. */
export class Sizer {
  readonly stock: readonly StockSize[];
  readonly basis: ResistanceBasis;
  readonly cover: InsulatedWireTable;
  readonly #loom: Loom;
  readonly #heating: (ambientTempC: number, factor: number) => Heating;

  constructor(loom: Loom) {
    const { rules } = loom;
    this.#loom = loom;
    this.basis = basisOf(rules.wire);
    this.cover = coverOf(rules.cover);
    this.#heating = heatingsOf(rules, this.cover);
    this.stock = stockOf(loom, this.basis, this.cover);
  }

  /** What a size bears alone in an air temperature. */
  aloneA(size: number, ambientTempC: number): number {
    const one = this.stock[size];
    if (one === undefined) return 0;
    const heating = this.#heating(ambientTempC, 1);
    const resolved = {
      label: one.label,
      areaMm2: one.areaMm2,
      resistanceOhmPerM: one.ohmPerM,
      ratedTempC: 20,
      metal: 'copper' as const,
    };
    return (heating.by as (input: object) => { ampacityA: number })({ ...heating, size: resolved }).ampacityA;
  }

  /** Diameter of the bare conductor of a size in mm, or null where it is not known. */
  conductorMm(size: number): number | null {
    const one = this.stock[size];
    if (one === undefined || one.outerDiameterMm === null) return null;
    const name = typeof one.given === 'number' ? String(one.given) : one.given;
    return insulatedWire({ wireTable: this.cover, size: name }).conductorDiameterMm;
  }

  /** The number of the stock size nearest to an area, or of the next larger one. */
  numberOf(areaMm2: number): number {
    const found = this.stock.findIndex((one) => one.areaMm2 >= areaMm2 * (1 - 1e-9));
    return found < 0 ? this.stock.length - 1 : found;
  }

  size(draft: Draft, around: Surroundings, before: Sized | null): Sized {
    if (draft.wires.length === 0) return none(draft);
    if (draft.givenAreaMm2 !== null) return this.#given(draft);
    if (draft.protection.kind === 'channel') return this.#behindChannel(draft, around, before);
    return this.#feed(draft, around, this.#protection(draft, around), before);
  }

  #given(draft: Draft): Sized {
    return {
      ...none(draft),
      size: this.numberOf(draft.givenAreaMm2 ?? 0),
      because: 'the file gives its size',
      decidedBy: 'given',
    };
  }

  /** The least setting that carries the load and its start, with a wire that bears it. */
  #behindChannel(draft: Draft, around: Surroundings, before: Sized | null): Sized {
    const { protection } = draft;
    if (protection.kind !== 'channel') throw new Error(draft.name);
    const controller = this.#loom.controllers[protection.controller] as Loom['controllers'][string];
    const channel = controller.channels[protection.channel] as Loom['controllers'][string]['channels'][string];
    let nearest: Sized | null = null;
    for (const settingA of [...channel.settings].sort((a, b) => a - b)) {
      if (settingA < Math.max(around.currentA, Math.min(draft.peakA ?? 0, Math.max(...channel.settings)))) continue;
      const name = `channel ${protection.controller} ${protection.channel}`;
      const sized = this.#feed(draft, around, { kind: 'upstream', name, mayCarryA: settingA }, before);
      const one = this.stock[sized.size];
      const result = checkChannel({
        channel: {
          ratedByTempC: [[controller.temperature, channel.current]],
          onResistanceOhm: Math.max(1e-6, channel.resistance),
          currentLimitA: null,
          trip: { kind: 'threshold', tripA: settingA, delayS: channel.tripDelay },
          retry: null,
          leakageA: 0,
          clampV: null,
          clampEnergyJ: null,
          pwm: null,
        },
        load: {
          runA: Math.max(1e-6, around.currentA),
          startSteps: startOf(draft, around.currentA),
          stallA: null,
          inductanceH: 0,
          freewheel: false,
          glow: null,
        },
        supplyV: Math.max(...around.sourcesV, 1),
        moduleTempC: controller.temperature,
        ampacityA: Math.max(1e-6, sized.ampacityA ?? 0),
        wire: {
          areaMm2: one?.areaMm2 ?? 1,
          ambientTempC: Math.min(around.ambientTempC, this.#loom.rules.insulation - 1),
          maxConductorTempC: this.#loom.rules.insulation,
          ...(this.#loom.rules.bears === undefined
            ? { overloadTempC: this.#loom.rules.insulation, shortTempC: this.#loom.rules.insulation + 1 }
            : wireLimitsOf(this.#loom.rules.bears)),
        },
        bank: null,
        module: null,
        drive: null,
        parallel: null,
      });
      const whole = { ...sized, settingA, channel: result };
      if (result.ok && sized.possible) return whole;
      nearest ??= whole;
      if (result.ok && !(nearest.channel?.ok ?? false)) nearest = whole;
    }
    if (nearest !== null) return nearest;
    const most = Math.max(...channel.settings);
    const name = `channel ${protection.controller} ${protection.channel}`;
    return this.#feed(draft, around, { kind: 'upstream', name, mayCarryA: most }, before);
  }

  #protection(draft: Draft, around: Surroundings): Protection {
    const { rules, fuseBoxes, places } = this.#loom;
    const { protection } = draft;
    if (protection.kind === 'none') return { kind: 'none', because: protection.because };
    if (protection.kind === 'channel') throw new Error(draft.name);
    let family: FuseFamily;
    let fuseTempC: number;
    let ambientFactor: number | undefined;
    if (protection.kind === 'position') {
      const box = fuseBoxes[protection.box] as Loom['fuseBoxes'][string];
      family = familyOf(box.family);
      fuseTempC = box.temperature;
    } else {
      family = familyOf(protection.fuse.fuse);
      fuseTempC = Math.min(125, Math.max(-40, places[protection.fuse.at]?.ambient ?? 20));
      ambientFactor = protection.fuse.rerating;
    }
    const start = startOf(draft, around.currentA)[0];
    const more = {
      ...(ambientFactor === undefined ? {} : { ambientFactor }),
      ...(start === undefined
        ? {}
        : {
            pulses: [
              {
                name: 'start',
                shape: 'exponential' as const,
                peakA: start.currentA,
                durationS: start.durationS,
                ...STARTS,
              },
            ],
          }),
    };
    return {
      kind: 'fuse',
      by: (input) => chooseFuse({ ...input, ...more }),
      family: bearing(family, draft.peakA),
      continuousFraction: rules.continuousShare,
      overloadRule: rules.overload,
      fuseTempC,
      shortSupplyV: rules.shortVoltage,
      sourceResistanceOhm: around.sourceOhm,
      clearWithinS: (protection.kind === 'in-line' ? protection.fuse.clearWithin : undefined) ?? rules.clearWithin,
      ...(rules.bears === undefined ? {} : { wireLimits: wireLimitsOf(rules.bears) }),
    };
  }

  #feed(draft: Draft, around: Surroundings, protection: Protection, before: Sized | null): Sized {
    const { rules } = this.#loom;
    const { stock } = this;
    const least = stock.findIndex((one) => one.areaMm2 >= draft.takesLeastMm2 * (1 - 1e-9));
    const wanted = least < 0 ? stock.length - 1 : least;
    const fits = stock.flatMap((one, i) => (one.areaMm2 <= draft.takesMostMm2 * (1 + 1e-9) ? [i] : []));
    const last = Math.max(wanted, around.floor, fits.at(-1) ?? 0);
    const input = this.#input(draft, around, protection);
    const range = (first: number): (number | string)[] => stock.slice(first, last + 1).map((one) => one.given);
    // What was chosen before is most likely chosen again: begin one size below it.
    let first = before === null || before.size < 0 ? wanted : Math.max(wanted, Math.min(before.size, last) - 1);
    let sized = sizeFeed({ ...input, stock: range(first) });
    if (sized.possible && first > wanted && sized.size === stock[first]?.label) {
      first = wanted;
      sized = sizeFeed({ ...input, stock: range(first) });
    }
    let kept = false;
    if (sized.possible && around.floor > 0 && this.#indexOf(sized.size) < around.floor) {
      kept = true;
      sized = sizeFeed({ ...input, stock: range(around.floor) });
    }
    if (sized.possible) {
      const size = this.#indexOf(sized.size);
      const thinnest = sized.decidedBy === 'smallest size in stock';
      const raised = thinnest && size === wanted && wanted > 0;
      return {
        size,
        possible: true,
        decidedBy: kept
          ? (before?.decidedBy ?? 'stock')
          : raised
            ? 'terminal'
            : thinnest
              ? 'stock'
              : decision(sized.decidedBy),
        because: kept
          ? 'kept from an earlier round, so that sizes and bundles settle'
          : raised
            ? 'the thinnest that its terminals take'
            : thinnest
              ? 'the thinnest in stock meets every limit'
              : `${sized.decidedBy}: the next thinner fails it`,
        checks: sized.checks,
        ampacityA: sized.ampacityA,
        conductorTempC: sized.reachedTempC,
        fuse: sized.fuse,
        farShortA: sized.farShortA,
        fuseOhm: fuseOhm(sized.fuse, protection),
        settingA: null,
        channel: null,
      };
    }
    return this.#nearest(draft, around, input, range(wanted), sized.because, protection, rules.insulation);
  }

  /** No size meets all: the thinnest that meets all but the limit that no wire can help. */
  #nearest(
    draft: Draft,
    around: Surroundings,
    input: SizeFeedInput,
    stock: readonly (number | string)[],
    why: string,
    protection: Protection,
    insulationTempC: number,
  ): Sized {
    // First with the protection that was asked for, then without; each time the least wire that loses no more than
    // the fixed parts do, or twice as much, or four times.
    const fixed = Math.max(0.05, around.currentA * draft.elements.reduce((sum, one) => sum + one.ohm, 0));
    const none: Protection = { kind: 'none', because: why };
    const tries = [protection, none].flatMap((by) => [
      ...(by === none ? [{ limits: input.limits, protection: by }] : []),
      ...[1, 2, 4, 8, 16, 64].map((times) => ({ limits: { wireDropV: times * fixed }, protection: by })),
    ]);
    for (const attempt of tries) {
      const sized = sizeFeed({ ...this.#input(draft, around, attempt.protection), limits: attempt.limits, stock });
      if (!sized.possible) continue;
      const size = this.#indexOf(sized.size);
      const real = sizeFeed({ ...input, stock: [this.stock[size]?.given ?? 0] });
      const checks = real.possible ? real.checks : (real.nearest?.checks ?? []);
      return {
        size,
        possible: false,
        decidedBy: sized.decidedBy === 'smallest size in stock' ? 'stock' : decision(sized.decidedBy),
        because: `${why}; this is the thinnest that meets all else`,
        checks,
        ampacityA: sized.ampacityA,
        conductorTempC: sized.reachedTempC,
        fuse: sized.fuse,
        farShortA: sized.farShortA,
        fuseOhm: fuseOhm(sized.fuse, protection),
        settingA: null,
        channel: null,
      };
    }
    const size = this.stock.findIndex((one) => one.given === stock.at(-1));
    const real = sizeFeed({ ...input, stock: [stock.at(-1) ?? 0] });
    return {
      size,
      possible: false,
      decidedBy: 'stock',
      because: `${why}; no size in stock is enough`,
      checks: real.possible ? real.checks : (real.nearest?.checks ?? []),
      ampacityA: null,
      conductorTempC: insulationTempC,
      fuse: null,
      farShortA: null,
      fuseOhm: 0,
      settingA: null,
      channel: null,
    };
  }

  #indexOf(label: string): number {
    return this.stock.findIndex((one) => one.label === label);
  }

  #input(draft: Draft, around: Surroundings, protection: Protection): SizeFeedInput {
    const parts = (side: 'out' | 'back') =>
      draft.elements.flatMap((one): (FeedPart | FuseToChoose)[] => {
        if (one.side !== side) return [];
        if (one.wire !== null) return [{ name: one.name, lengthM: draft.wires[one.wire]?.lengthM ?? 0 }];
        if (one.chosen) return protection.kind === 'fuse' ? [{ name: one.name, fuse: 'chosen' as const }] : [];
        const kind = one.kind === 'fuse' || one.kind === 'relay' || one.kind === 'switch' ? one.kind : 'other';
        return [{ name: one.name, kind, resistanceOhm: one.ohm }];
      });
    const load = draft.load !== null && draft.load.kind !== 'constant-current' ? draft.load : null;
    const [supplyV = 1, ...judgedAtV] = load === null ? around.sourcesV.slice(0, 1) : around.sourcesV;
    const dropV = Math.max(1e-6, draft.dropLimitV - around.sharedDropV);
    return {
      supplyV,
      judgedAtV,
      outParts: parts('out'),
      returnParts: parts('back') as SizeFeedInput['returnParts'],
      load: load ?? { kind: 'constant-current', currentA: Math.max(1e-6, around.currentA) },
      resistanceBasis: this.basis,
      limits: { dropV, ...(draft.leastLoadV === null ? {} : { loadV: draft.leastLoadV }) },
      heating: this.#heating(around.ambientTempC, around.bundleFactor),
      leastAreaMm2: draft.leastAreaMm2,
      protection,
    };
  }
}

function none(draft: Draft): Sized {
  return {
    size: -1,
    possible: true,
    decidedBy: 'given',
    because: draft.wires.length === 0 ? 'has no wire of its own' : '',
    checks: [],
    ampacityA: null,
    conductorTempC: 20,
    fuse: null,
    farShortA: null,
    fuseOhm: 0,
    settingA: null,
    channel: null,
  };
}

/** The start of a load, where the file gives one above its running current. */
function startOf(draft: Draft, runA: number): { currentA: number; durationS: number }[] {
  const { inrushA, inrushS } = draft;
  return inrushA === null || inrushS === null || inrushA <= runA ? [] : [{ currentA: inrushA, durationS: inrushS }];
}

/** The family with the ratings alone that carry a peak of seconds; the whole of it where it has none. */
function bearing(family: FuseFamily, peakA: number | null): FuseFamily {
  const ratingsA = family.ratingsA.filter((ratingA) => ratingA >= (peakA ?? 0));
  return peakA === null || ratingsA.length === 0 ? family : { ...family, ratingsA };
}

/** The chosen fuse's resistance; of a rating without a figure that of the next smaller one, which is larger. */
function fuseOhm(fuse: ChosenFuse | null, protection: Protection): number {
  if (fuse === null || protection.kind !== 'fuse') return 0;
  if (fuse.hotOhm !== null) return fuse.hotOhm;
  const row = protection.family.dropMillivolt.filter(([ratingA]) => ratingA <= fuse.ratingA).at(-1);
  return row === undefined ? 0 : row[1] / 1000 / row[0];
}

function decision(check: string): DecidedBy {
  if (/^volt/.test(check)) return 'drop';
  if (check === 'conductor temperature') return 'heat';
  if (check === 'mechanical minimum') return 'mechanical';
  return 'protection';
}

function stockOf(loom: Loom, basis: ResistanceBasis, cover: InsulatedWireTable): readonly StockSize[] {
  const { stock } = loom.rules;
  const all: readonly (number | string)[] =
    stock?.map((one) => one.areaMm2 ?? one.awg ?? one.saeGauge ?? 0) ??
    (basis.kind === 'table' ? basis.rows.map(([name]) => (basis.sizes === 'mm2' ? Number(name) : name)) : []);
  const sae = basis.kind === 'table' && basis.sizes === 'sae';
  return all
    .map((given) => {
      const size = typeof given === 'number' ? { areaMm2: given } : sae ? { saeGauge: given } : { awg: given };
      const one = wireResistance({ ...size, resistanceBasis: basis, lengthM: 1, conductorTempC: 20 });
      const name = typeof given === 'number' ? String(given) : given;
      const row = cover.rows.some(([printed]) => printed === name);
      const outerDiameterMm = row ? insulatedWire({ wireTable: cover, size: name }).outerDiameterMm : null;
      const areaMm2 = typeof given === 'number' ? given : areaOf(size);
      return {
        given,
        label: one.size,
        areaMm2: one.areaMm2 || areaMm2,
        ohmPerM: one.resistanceOhmPerM,
        outerDiameterMm,
      };
    })
    .sort((a, b) => b.ohmPerM - a.ohmPerM);
}
