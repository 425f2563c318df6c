import { InputError } from '../error/index.js';
import { needAbove, needBetween, needInput, needOneOf } from '../error/guard.js';

/** A metal with constants of short-time heating. */
export type ShortCircuitMetal = 'copper' | 'aluminium' | 'lead' | 'steel';

/** K in A·√s/mm² and β in °C (IEC 60949 table I), and the melting temperature in °C, to which the form may be used. */
const CONSTANTS: Readonly<Record<ShortCircuitMetal, { K: number; beta: number; meltTempC: number }>> = {
  copper: { K: 226, beta: 234.5, meltTempC: 1083 },
  aluminium: { K: 148, beta: 228, meltTempC: 658 },
  lead: { K: 41, beta: 230, meltTempC: 327 },
  steel: { K: 78, beta: 202, meltTempC: 1450 },
};

export interface ShortCircuitWithstandInput {
  /** Temperature of the conductor before the fault, in °C: as hot as it may run in use. */
  readonly startTempC: number;
  /** Highest temperature that its insulation bears for seconds, in °C; for PVC 160, for cross-linked 250. */
  readonly limitTempC: number;
  /** Metal; copper unless given. */
  readonly metal?: ShortCircuitMetal;
  /** Area of the conductor in mm², above 0: gives what it bears. */
  readonly areaMm2?: number;
  /** Fault current in A (r.m.s.), above 0. */
  readonly currentA?: number;
  /** Time until the fault is cleared, in s, above 0. */
  readonly durationS?: number;
  /** Let-through of the protection in A²s, above 0: instead of current and time. */
  readonly i2tA2s?: number;
}

export interface ShortCircuitWithstandResult {
  /** The k of the standards: the current that 1 mm² bears for one second, in A/mm² (A·√s/mm² for any time). */
  readonly oneSecondAPerMm2: number;
  /** What the area bears, in A²s; null without area. */
  readonly withstandI2tA2s: number | null;
  /** Least area for the current and time, or for the let-through, in mm²; null without them. */
  readonly leastAreaMm2: number | null;
  /** Longest time in s that the area bears the current; null without both. */
  readonly longestTimeS: number | null;
  /** Most current in A that the area bears for the time; null without both. */
  readonly mostCurrentA: number | null;
  /** Temperature that the area reaches, in °C; null without area and let-through, or where it would melt. */
  readonly endTempC: number | null;
  /** Whether the area bears the let-through; null without both. */
  readonly withstands: boolean | null;
}

/**
 * What a wire bears in a short circuit: all heat stays in the metal.
 *
 * Use it for faults that are cleared within 5 s. For longer ones it stays on the safe side, since a wire then gives
 * heat away. Judge protection by the longest let-through of the fuse, never by its typical melting I²t. A cable that
 * was shorted is hot and its insulation may be harmed though it looks whole.
 *
 * $$k = K\sqrt{\ln\frac{\beta + T_\mathrm{limit}}{\beta + T_\mathrm{start}}},\qquad I^2 t = k^2 S^2$$
 *
 * @param input temperatures, and any of area, current, time, let-through
 * @returns k and what follows from what was given; null for the rest
 * @throws InputError when a field is missing or out of range, the limit is not above the start or beyond melting, or a
 * let-through is given beside current and time
 * @source iec-60949, clause 3 and table I (226 and 234.5 °C for copper, 148 and 228 for aluminium; lead and steel from
 * memory)
 * @example shortCircuitWithstand({ startTempC: 70, limitTempC: 160, currentA: 3000, durationS: 0.4 }).leastAreaMm2 //=> 16.4982
 */
export function shortCircuitWithstand(input: ShortCircuitWithstandInput): ShortCircuitWithstandResult {
  const fn = 'shortCircuitWithstand';
  needInput(fn, input);
  const { startTempC, limitTempC, metal = 'copper', areaMm2, currentA, durationS } = input;
  needOneOf(fn, 'metal', metal, Object.keys(CONSTANTS));
  const { K, beta, meltTempC } = CONSTANTS[metal];
  needBetween(fn, 'startTempC', startTempC, -100, meltTempC);
  needBetween(fn, 'limitTempC', limitTempC, -100, meltTempC, limitTempC > meltTempC ? `${metal} melts there` : '');
  if (!(limitTempC > startTempC)) {
    throw new InputError(fn, 'limitTempC', 'order', limitTempC, `must be above the start of ${startTempC}`);
  }
  if (areaMm2 !== undefined) needAbove(fn, 'areaMm2', areaMm2);
  if (currentA !== undefined) needAbove(fn, 'currentA', currentA);
  if (durationS !== undefined) needAbove(fn, 'durationS', durationS);
  if (input.i2tA2s !== undefined) {
    needAbove(fn, 'i2tA2s', input.i2tA2s);
    if (currentA !== undefined && durationS !== undefined) {
      throw new InputError(
        fn,
        'i2tA2s',
        'oneOfFields',
        input.i2tA2s,
        'or currentA and durationS must be given, not all',
      );
    }
  }
  const k = K * Math.sqrt(Math.log((beta + limitTempC) / (beta + startTempC)));
  const withstand = areaMm2 === undefined ? null : (k * areaMm2) ** 2;
  const i2t =
    input.i2tA2s ?? (currentA === undefined || durationS === undefined ? null : currentA * currentA * durationS);
  let endTempC: number | null = null;
  if (areaMm2 !== undefined && i2t !== null) {
    endTempC = (beta + startTempC) * Math.exp(i2t / (K * areaMm2) ** 2) - beta;
    if (!(endTempC < meltTempC)) endTempC = null;
  }
  return {
    oneSecondAPerMm2: k,
    withstandI2tA2s: withstand,
    leastAreaMm2: i2t === null ? null : Math.sqrt(i2t) / k,
    longestTimeS: withstand === null || currentA === undefined ? null : withstand / (currentA * currentA),
    mostCurrentA: withstand === null || durationS === undefined ? null : Math.sqrt(withstand / durationS),
    endTempC,
    withstands: withstand === null || i2t === null ? null : i2t <= withstand,
  };
}
