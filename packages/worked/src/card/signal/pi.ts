import type { Constant } from '../type.js';

/** The number, as formulas of this room show it. */
export const pi: Constant = { name: 'pi', symbol: '\\pi', value: 3.14159265359, unit: '', source: 'circuit-theory' };
