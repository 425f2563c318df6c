import { formatQuantity } from '@loomwright/worked/quantity';
import { ink } from '@loomwright/worked/draw';
import type { LoomPlan, PlannedCircuit } from '../loom/plan-type.js';

/** One of the four classes of a trunk: colour, dash and mark say the same, so that any two may be lost. */
export interface Shade {
  readonly colour: string;
  /** Lengths of dash and gap in widths of the line; null for a whole line. */
  readonly dash: readonly [number, number] | null;
  readonly mark: '✓' | '!' | '✕';
  readonly words: string;
}

/** What a trunk is coloured by, and how a value is judged. */
export interface Scale {
  readonly title: string;
  readonly shades: readonly [Shade, Shade, Shade, Shade];
  /** The value of a circuit and its class, 0 to 3; null where the circuit has none. */
  readonly of: (circuit: PlannedCircuit) => Judged | null;
  readonly format: (value: number) => string;
  /** A second line for a place. */
  readonly placeText: (plan: LoomPlan, place: string) => string;
}

/** A circuit's value with its class. The higher `rank`, the worse: what is not met before all that is. */
export interface Judged {
  readonly circuit: PlannedCircuit;
  readonly value: number;
  readonly rank: number;
  readonly index: 0 | 1 | 2 | 3;
}

/** Three classes that are met and one that is not; the third may ask for a look. */
function shades(words: readonly [string, string, string, string], third: '✓' | '!'): Scale['shades'] {
  return [
    { colour: ink.verdigris, dash: null, mark: '✓', words: words[0] },
    { colour: ink.blue, dash: [2.6, 0.7], mark: '✓', words: words[1] },
    { colour: ink.amber, dash: [1.2, 0.6], mark: third, words: words[2] },
    { colour: ink.red, dash: [0.45, 0.45], mark: '✕', words: words[3] },
  ];
}

/** Volts lost from the battery to a load and back; what loses more than it may is a class of its own. */
export function voltScale(): Scale {
  const format = (value: number): string => formatQuantity(value, 'V', { decimals: 2, round: 'up' });
  const of = (circuit: PlannedCircuit): Judged | null => {
    if (circuit.dropLimitV === null || circuit.ownDropV === null) return null;
    const value = circuit.sharedDropV + circuit.ownDropV;
    const index = value > circuit.dropLimitV ? 3 : value > 0.5 ? 2 : value > 0.25 ? 1 : 0;
    return { circuit, value, rank: index === 3 ? 1e6 + value : value, index };
  };
  /** The most that a load of each place loses, worked out once for a plan. */
  const mostLost = (plan: LoomPlan): ReadonlyMap<string, number> => {
    const most = new Map<string, number>();
    for (const circuit of plan.circuits) {
      const place = plan.loom.items[circuit.serves]?.place;
      const judged = circuit.kind === 'load' ? of(circuit) : null;
      if (place === undefined || judged === null) continue;
      most.set(place, Math.max(judged.value, most.get(place) ?? -Infinity));
    }
    return most;
  };
  let known: { readonly plan: LoomPlan; readonly most: ReadonlyMap<string, number> } | null = null;
  return {
    title: 'Most volts lost by a load behind each trunk, from the battery and back',
    shades: shades(['up to 0.25 V', 'up to 0.5 V', 'over 0.5 V, met', 'not met'], '✓'),
    of,
    format,
    placeText: (plan, place) => {
      if (known?.plan !== plan) known = { plan, most: mostLost(plan) };
      const lost = known.most.get(place);
      return lost === undefined ? '' : `most lost ${format(lost)}`;
    },
  };
}

/** Temperature of the hottest copper, against what its insulation bears. */
export function heatScale(plan: LoomPlan): Scale {
  const limitC = plan.loom.rules.insulation;
  const format = (value: number): string => formatQuantity(value, '°C', { decimals: 0, round: 'up' });
  return {
    title: `Hottest copper in each trunk; its insulation bears ${formatQuantity(limitC, '°C', { trim: true, digits: 4 })}`,
    shades: shades(['40 K of room or more', '20 to 40 K of room', 'less than 20 K', 'hotter: not met'], '!'),
    of: (circuit) => {
      const value = circuit.conductorTempC;
      if (value === null) return null;
      const roomK = limitC - value;
      return { circuit, value, rank: -roomK, index: roomK >= 40 ? 0 : roomK >= 20 ? 1 : roomK >= 0 ? 2 : 3 };
    },
    format,
    placeText: ({ loom }, place) => {
      const ambientC = loom.places[place]?.ambient;
      return ambientC === undefined ? '' : `air ${format(ambientC)}`;
    },
  };
}
