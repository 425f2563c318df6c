// Sandpiper with what a tree has not: straps that close loops, body in two pieces behind one stud, a throttle cable
// beside the engine's strap, a second service battery in parallel. Invented, like the rest.
import { type Loom, parseLoom, problemLine } from '@loomwright/harness';
import { sandpiperText } from './small-plan.js';

const changes: readonly (readonly [from: string, to: string])[] = [
  [
    'engine block: { place: engine, joint: 0.2 mΩ, to: frame front, strap: 0.5 m }',
    'engine block: { place: engine, joint: 0.2 mΩ, to: frame front, strap: 0.5 m, bonds: [{ battery: starter, strap: 0.7 m }, { to: dash stud, stray: 25 mΩ, bears: 5 A, note: throttle cable }] }',
  ],
  [
    'dash stud: { place: dash, joint: 0.5 mΩ, to: frame front, body: 0.8 mΩ }',
    'dash stud: { place: dash, joint: 0.5 mΩ, to: frame front, body: 0.8 mΩ, bonds: [{ to: bulkhead stud, body: 0.3 mΩ }] }',
  ],
  [
    'tail stud: { place: rear, joint: 0.5 mΩ, to: frame rear, body: 0.5 mΩ }',
    'tail stud: { place: rear, joint: 0.5 mΩ, to: frame rear, body: 0.5 mΩ, bonds: [{ to: frame middle, strap: 1.6 m }] }',
  ],
  [
    '    service: { place: service bay, ground: frame rear, cable: 0.6 m, resistance: 5 mΩ, capacity: 100 Ah }\n',
    '    service: { place: service bay, ground: frame rear, cable: 0.6 m, resistance: 5 mΩ, capacity: 100 Ah }\n    house: { place: service bay, ground: frame rear, cable: 0.8 m, resistance: 7 mΩ, capacity: 80 Ah }\n',
  ],
  [
    '\n# x forward from',
    '\n  links:\n    bank: { between: [service, house], cable: 0.4 m, protection: { fuse: bolt-in-fuse-sf51, at: service bay, rerating: 95 %, resistance: 0.4 mΩ, clearWithin: 5 s } }\n\n# x forward from',
  ],
];

/** The text of the file. */
export const loopedText = changes
  .reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`not in the file: ${from}`);
    return text.replace(from, to);
  }, sandpiperText)
  .replace(/service: ([\d.]+) V \}/g, (_, volts: string) => {
    const house = (Number(volts) + 0.02).toFixed(2);
    return `}, atRest: { service: ${volts} V, house: ${house} V }`;
  })
  .replace(/, \}, atRest/g, ' }, atRest');

export const looped: Loom = ((): Loom => {
  const parsed = parseLoom(loopedText);
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => problemLine('file', one)).join('\n'));
  return parsed.loom;
})();
