import type { TableHeader } from './type.js';

/** Exponents of Peukert's law by the kind of battery: least and largest. */
export interface PeukertTable extends TableHeader {
  readonly rows: readonly (readonly [kind: string, low: number, high: number])[];
}

/** Typical exponents of lead-acid batteries: a first guess until two run times of the battery itself are known. */
export const peukertExponents: PeukertTable = {
  key: 'peukert-exponents',
  source: 'battery-guides',
  status: 'common-practice',
  place: 'typical exponents, as a knowledge base of the trade prints them; others narrow flooded to 1.2 to 1.25',
  rows: [
    ['flooded', 1.2, 1.6],
    ['AGM', 1.05, 1.15],
    ['gel', 1.1, 1.25],
  ],
};
