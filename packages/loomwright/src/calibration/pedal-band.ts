import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needList, needObject, needOneOf } from '../error/guard.js';
import { type CalibrationCell, clamped, needCells } from '../number/cells.js';

/** Where the second input must lie while the first is at these volts. */
export interface AgreementRow {
  readonly firstV: number;
  readonly lowestSecondV: number;
  readonly highestSecondV: number;
}

/** How far the two tracks may disagree. */
export type AgreementBand =
  /** The second may be off what the first makes expected by so many volts, above 0. */
  | { readonly by: 'volts'; readonly bandV: number }
  /** The travels that both show may differ by so much, above 0 to 1. */
  | { readonly by: 'travel'; readonly bandFraction: number }
  /** The same as an angle, and the whole travel as one, above 0. */
  | { readonly by: 'angle'; readonly bandDeg: number; readonly travelDeg: number }
  /** Rows that rise in `firstV`, at least two: straight between them, held outside. */
  | { readonly by: 'rows'; readonly rows: readonly AgreementRow[] };

/** Checks a band. */
export function needBand(fn: string, band: AgreementBand): void {
  needObject(fn, 'band', band);
  needOneOf(fn, 'band.by', band.by, ['volts', 'travel', 'angle', 'rows']);
  if (band.by === 'volts') needMoreThan(fn, 'band.bandV', band.bandV);
  else if (band.by === 'travel') {
    needMoreThan(fn, 'band.bandFraction', band.bandFraction);
    needBetween(fn, 'band.bandFraction', band.bandFraction, 0, 1, '2 % is 0.02');
  } else if (band.by === 'angle') {
    needMoreThan(fn, 'band.travelDeg', band.travelDeg);
    needMoreThan(fn, 'band.bandDeg', band.bandDeg);
    needBetween(fn, 'band.bandDeg', band.bandDeg, 0, band.travelDeg);
  } else {
    needList(fn, 'band.rows', band.rows, 2);
    band.rows.forEach((row, i) => {
      needObject(fn, `band.rows[${i}]`, row);
      needNoLessThan(fn, `band.rows[${i}].firstV`, row.firstV);
      needNoLessThan(fn, `band.rows[${i}].lowestSecondV`, row.lowestSecondV);
      needNoLessThan(fn, `band.rows[${i}].highestSecondV`, row.highestSecondV);
      if (row.highestSecondV <= row.lowestSecondV) {
        const must = `must be above lowestSecondV, ${row.lowestSecondV}`;
        throw new InputError(fn, `band.rows[${i}].highestSecondV`, 'above', row.highestSecondV, must);
      }
    });
    needCells(fn, 'band.rows', lowestOf(band.rows));
  }
}

const lowestOf = (rows: readonly AgreementRow[]): readonly CalibrationCell[] =>
  rows.map(({ firstV, lowestSecondV }) => ({ inValue: firstV, outValue: lowestSecondV }));
const highestOf = (rows: readonly AgreementRow[]): readonly CalibrationCell[] =>
  rows.map(({ firstV, highestSecondV }) => ({ inValue: firstV, outValue: highestSecondV }));

/** A straight line: what the second input is expected at. */
export interface ExpectedLine {
  readonly ratio: number;
  readonly offsetV: number;
}

/** Lowest and highest second volts over the first, both as pieces of straight lines. */
export interface BandEdges {
  readonly lowest: readonly CalibrationCell[];
  readonly highest: readonly CalibrationCell[];
}

/** Beyond these volts no input of a vehicle reads: a straight band is told by two cells there. */
const FAR_V = 1000;

/** A band of one height around a line. */
export function edgesAround({ ratio, offsetV }: ExpectedLine, halfV: number): BandEdges {
  const cell = (inValue: number, by: number): CalibrationCell => ({
    inValue,
    outValue: ratio * inValue + offsetV + by,
  });
  return {
    lowest: [cell(-FAR_V, -halfV), cell(FAR_V, -halfV)],
    highest: [cell(-FAR_V, halfV), cell(FAR_V, halfV)],
  };
}

/** A band given by rows. */
export function edgesOfRows(rows: readonly AgreementRow[]): BandEdges {
  return { lowest: lowestOf(rows), highest: highestOf(rows) };
}

/** The second input's limits while the first is at `firstV`. */
export function secondLimits({ lowest, highest }: BandEdges, firstV: number): readonly [number, number] {
  return [clamped(lowest, firstV), clamped(highest, firstV)];
}

/**
 * Between which volts the first input could lie, within its range, and agree with a second that lies somewhere between
 * two volts; null for nowhere. Where several stretches agree their ends are given.
 */
export function firstThatAgrees(
  edges: BandEdges,
  fromV: number,
  toV: number,
  secondLowV: number,
  secondHighV: number,
): readonly [number, number] | null {
  const inside = edges.lowest.map(({ inValue }) => inValue).filter((v) => v > fromV && v < toV);
  const places = [fromV, ...inside, toV];
  let least = Infinity;
  let most = -Infinity;
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [places[i - 1] as number, places[i] as number];
    const [lowA, highA] = secondLimits(edges, a);
    const [lowB, highB] = secondLimits(edges, b);
    // Both asks are straight lines here: the second's highest above the band's lowest, and its lowest below the highest.
    let from = 0;
    let to = 1;
    for (const [atA, atB] of [
      [secondHighV - lowA, secondHighV - lowB],
      [highA - secondLowV, highB - secondLowV],
    ] as const) {
      if (atA < 0 && atB < 0) to = -1;
      else if (atA < 0) from = Math.max(from, atA / (atA - atB));
      else if (atB < 0) to = Math.min(to, atA / (atA - atB));
    }
    if (from > to) continue;
    least = Math.min(least, a + (b - a) * from);
    most = Math.max(most, a + (b - a) * to);
  }
  return least > most ? null : [least, most];
}
