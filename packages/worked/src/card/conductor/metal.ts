import type { ChoiceField, Values } from '../type.js';

/** The metals that the core knows. */
export const metalField: ChoiceField = {
  kind: 'choice',
  name: 'metal',
  choices: [
    { value: 'copper', label: 'Copper, annealed' },
    { value: 'tinned-copper', label: 'Copper, tinned' },
    { value: 'aluminium', label: 'Aluminium' },
  ],
  example: 'copper',
};

/** Degrees below zero at which a metal's straight line meets no resistance. */
export function zeroTempC(aluminium: boolean): number {
  return aluminium ? 228 : 234.5;
}

export function isAluminium(values: Values): boolean {
  return values['metal'] === 'aluminium';
}
