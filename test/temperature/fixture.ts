import { readFileSync } from 'node:fs';

/** A fit by mpmath (normal equations with 40 digits) and by scipy (nonlinear, in kelvins). */
export interface FixtureFit {
  readonly points: readonly (readonly [tempC: number, resistanceOhm: number])[];
  readonly letters: readonly [number, number, number];
  readonly inverseNormal: readonly (readonly number[])[];
  readonly sumOfSquares: number;
  readonly residualsK: readonly number[];
  readonly scipyLetters: readonly [number, number, number];
  readonly uncertaintiesK?: readonly number[];
}

/** What fixture.py wrote: answers by other means. */
export const fixture = JSON.parse(readFileSync(new URL('fixture.json', import.meta.url), 'utf8')) as {
  readonly fits: Readonly<Record<string, FixtureFit>>;
  readonly threes: readonly Pick<FixtureFit, 'points' | 'letters'>[];
  readonly inverses: readonly (readonly [curve: string, tempC: number, resistanceOhm: number])[];
  readonly thermocouples: readonly (readonly [letter: string, mv: number, tempC: number])[];
  readonly platinum: readonly (readonly [resistanceOhm: number, tempC: number])[];
};
