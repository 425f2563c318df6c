import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needFlag, needInput, needList, needObject, needOwnName, needText } from '../error/guard.js';
import type { CanLevels, CanLoadWindow } from '../table/index.js';
import { leastShare, type LinePoint, readingOhm, readingsOhm } from './line.js';

/** A plug on the line. */
export interface CanPlug {
  readonly name: string;
  /** Where its tap stands along the trunk, in m from one end, at least 0. */
  readonly positionM: number;
  /** Terminator that goes away with the plug, in Ω above 0; null where there is none. A split one counts whole. */
  readonly terminatorOhm: number | null;
  /** Resistance of the unit's own input across the two wires in Ω, above 0; null where it is not known and large. */
  readonly inputOhm: number | null;
  /** Whether the line goes through the plug, so that pulling it parts the line there. */
  readonly carriesLine: boolean;
}

export interface CanResistanceInput {
  readonly plugs: readonly CanPlug[];
  /** Resistance of one of the two wires in Ω/m, at least 0. */
  readonly resistanceOhmPerM: number;
  /** Plug at which the meter stays. */
  readonly measureAt: string;
  /** What terminators and volts are judged by: `canLevels`. */
  readonly levels: CanLevels;
  /** Load that a driver bears: `canLoad50to65`. */
  readonly load: CanLoadWindow;
}

export interface CanReading {
  readonly name: string;
  /** Ω between the two wires, or null where the line is open there. */
  readonly readingOhm: number | null;
}

export interface CanResistanceResult {
  /** What the meter reads with all plugged in, in Ω, or null. */
  readonly readingOhm: number | null;
  /** What it would read at each plug. */
  readonly atPlugs: readonly CanReading[];
  /** What it reads where it stays, each plug pulled in turn. */
  readonly pulled: readonly CanReading[];
  readonly terminatorCount: number;
  /** Least share of a driver's volts that arrives anywhere, and those volts for the weakest driver. */
  readonly farFraction: number;
  readonly farV: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What an ohmmeter reads between the two wires of a CAN line, and with each plug pulled.
 *
 * Measure with everything switched off: a powered line reads nonsense. 60 Ω is two terminators; 120 one, 40 three. The
 * plug whose pulling changes nothing has no terminator, and one whose pulling opens the line has the only one.
 *
 * $$R = \Bigl(\sum_k \frac{1}{R_k}\Bigr)^{-1}$$
 *
 * at one place, and with the wire between places as a chain: each side seen from the meter is
 * $1 / (\sum G) + 2 r\,\Delta x$, from its far end on.
 *
 * @param input plugs with their terminators, wire, the meter's place, levels and load to judge by
 * @returns readings in Ω, volts at the far end, checks; a reading is null where nothing joins the two wires
 * @throws InputError when a field is missing or out of range, a name stands twice or no plug is called `measureAt`
 * @source circuit-theory; iso-11898-2 (terminators, levels)
 * @example canResistance({ plugs: [{ name: 'a', positionM: 0, terminatorOhm: 120, inputOhm: null, carriesLine: false }, { name: 'b', positionM: 4, terminatorOhm: 120, inputOhm: null, carriesLine: false }], resistanceOhmPerM: 0, measureAt: 'a', levels: canLevels, load: canLoad50to65 }).readingOhm //=> 60
 */
export function canResistance(input: CanResistanceInput): CanResistanceResult {
  guard(input);
  const { resistanceOhmPerM, measureAt, levels, load } = input;
  const plugs = [...input.plugs].sort((a, b) => a.positionM - b.positionM);
  const points = (pulled: string | null): readonly LinePoint[] =>
    plugs.map(({ name, positionM, terminatorOhm, inputOhm, carriesLine }) => ({
      positionM,
      acrossS: name === pulled ? 0 : inverse(terminatorOhm) + inverse(inputOhm),
      cut: name === pulled && carriesLine,
    }));
  const whole = points(null);
  const meter = plugs.findIndex(({ name }) => name === measureAt);
  const readings = readingsOhm(whole, resistanceOhmPerM);
  const farFraction = leastShare(whole, resistanceOhmPerM);
  const result = {
    readingOhm: readings[meter] as number | null,
    atPlugs: plugs.map(({ name }, i) => ({ name, readingOhm: readings[i] as number | null })),
    pulled: plugs.map(({ name }) => ({ name, readingOhm: readingOhm(points(name), meter, resistanceOhmPerM) })),
    terminatorCount: plugs.filter(({ terminatorOhm }) => terminatorOhm !== null).length,
    farFraction,
    farV: farFraction * levels.driveLeastV,
  };
  const checks = checksOf(plugs, result, levels, load);
  return { ...result, checks, decidedBy: tightestCheck(checks)?.name ?? '' };
}

/** Most plugs that a call takes: each is pulled in turn. */
const MOST_PLUGS = 1000;

const inverse = (ohm: number | null): number => (ohm === null ? 0 : 1 / ohm);

function checksOf(
  plugs: readonly CanPlug[],
  found: Pick<CanResistanceResult, 'readingOhm' | 'terminatorCount' | 'farV'>,
  levels: CanLevels,
  load: CanLoadWindow,
): readonly Check[] {
  const byLevels = { source: levels.source, sourceStatus: levels.status } as const;
  const byLoad = { source: load.source, sourceStatus: load.status } as const;
  const open = 'nothing joins the two wires';
  const reading = { value: found.readingOhm, unit: 'Ω', ...(found.readingOhm === null ? { because: open } : {}) };
  return [
    makeCheck({ name: 'load of a driver, least', ...reading, limit: load.loadLeastOhm, sense: 'atLeast', ...byLoad }),
    makeCheck({ name: 'load of a driver, most', ...reading, limit: load.loadMostOhm, sense: 'atMost', ...byLoad }),
    makeCheck({
      name: 'volts at the far end',
      value: found.farV,
      limit: levels.receiveV,
      unit: 'V',
      sense: 'atLeast',
      ...byLevels,
    }),
    ...plugs.flatMap(({ name, terminatorOhm }) =>
      terminatorOhm === null
        ? []
        : [
            makeCheck({
              name: `terminator of ${name}, least`,
              value: terminatorOhm,
              limit: levels.terminatorLeastOhm,
              unit: 'Ω',
              sense: 'atLeast',
              ...byLevels,
            }),
            makeCheck({
              name: `terminator of ${name}, most`,
              value: terminatorOhm,
              limit: levels.terminatorMostOhm,
              unit: 'Ω',
              sense: 'atMost',
              ...byLevels,
            }),
          ],
    ),
  ];
}

function guard(input: CanResistanceInput): void {
  const fn = 'canResistance';
  needInput(fn, input);
  needList(fn, 'plugs', input.plugs, 1);
  if (input.plugs.length > MOST_PLUGS) {
    throw new InputError(fn, 'plugs', 'range', input.plugs.length, `must have at most ${MOST_PLUGS} entries`);
  }
  const names = new Set<string>();
  input.plugs.forEach((plug, i) => {
    const at = `plugs[${i}]`;
    needObject(fn, at, plug);
    needOwnName(fn, `${at}.name`, plug.name, names);
    needNoLessThan(fn, `${at}.positionM`, plug.positionM);
    if (plug.terminatorOhm !== null) needMoreThan(fn, `${at}.terminatorOhm`, plug.terminatorOhm);
    if (plug.inputOhm !== null) needMoreThan(fn, `${at}.inputOhm`, plug.inputOhm);
    needFlag(fn, `${at}.carriesLine`, plug.carriesLine);
  });
  needNoLessThan(fn, 'resistanceOhmPerM', input.resistanceOhmPerM);
  needText(fn, 'measureAt', input.measureAt);
  if (!names.has(input.measureAt)) {
    throw new InputError(fn, 'measureAt', 'oneOf', input.measureAt, `must be one of ${[...names].join(', ')}`);
  }
  for (const field of ['levels', 'load'] as const) {
    if (typeof input[field] !== 'object' || input[field] === null) {
      throw new InputError(fn, field, 'missing', input[field], 'must be a table such as canLevels or canLoad50to65');
    }
  }
}
