import type { TextField } from '../type.js';

/** A network as one text; `has` says what else its parts may read like. */
export const networkField = (example: string, has = 'volts and ohms'): TextField => ({
  kind: 'text',
  name: 'network',
  example,
  help: `Name: wire, source, load, diode or switch, from > to, then ${has}. Parted by semicolons. A source runs from its negative end.`,
});

/** The node that counts as 0 V. */
export const referenceField: TextField = { kind: 'text', name: 'reference', example: 'post' };
