import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { loomJsonSchema, parseLoom, planLoom, type Problem, problemLine } from '@loomwright/harness';
import { feetToM } from 'loomwright';
import { audit } from './loom-audit.js';

const TEXT = readFileSync(new URL('../../packages/cli/examples/sandpiper.yaml', import.meta.url), 'utf8');

const problems = (text: string): readonly Problem[] => {
  const parsed = parseLoom(text);
  return parsed.ok ? [] : parsed.problems;
};
const change = (...pairs: [from: string | RegExp, to: string][]): string =>
  pairs.reduce((text, [from, to]) => {
    const changed = text.replace(from, to);
    if (changed === text) throw new Error(`${String(from)} is not in the file`);
    return changed;
  }, TEXT);
/** The line, from 1, on which a text stands in a file. */
const lineOf = (text: string, of: string): number => text.slice(0, text.indexOf(of)).split('\n').length;

describe('a loom file', () => {
  it('is read into numbers in the units of the core', () => {
    const parsed = parseLoom(
      change([
        '  nose: { from: bumper, to: front, length: 0.5 m }',
        '  nose: { from: bumper, to: front, length: 2 ft }',
      ]),
    );
    if (!parsed.ok) throw new Error(parsed.problems.map((one) => problemLine('x', one)).join('\n'));
    expect(parsed.loom.routes['nose']?.length).toBe(feetToM(2));
    expect(parsed.loom.states['cranking']?.volts['starter']).toBe(10);
    expect(parsed.loom.rules.slack).toBe(0.05);
  });
  it('says that its figures are invented', () => {
    expect(TEXT).toMatch(/EVERY FIGURE HERE IS INVENTED/);
  });
  it('has a JSON Schema that names every part', () => {
    const schema = loomJsonSchema() as {
      properties: Record<string, unknown>;
      required: string[];
      additionalProperties: boolean;
    };
    const parts = [
      'vehicle',
      'supply',
      'places',
      'routes',
      'grounds',
      'fuseBoxes',
      'controllers',
      'buses',
      'items',
      'states',
      'rules',
    ];
    expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(parts));
    expect(schema.required).toEqual(expect.arrayContaining(parts));
    expect(schema.additionalProperties).toBe(false);
  });
});

describe('a bad loom file', () => {
  const cases: [name: string, text: string, at: string, want: Partial<Problem>][] = [
    [
      'an unknown place',
      change(['horn:\n    { kind: load, place: front,', 'horn:\n    { kind: load, place: frnt,']),
      '{ kind: load, place: frnt',
      { field: 'items.horn.place', rule: 'choice', likely: 'front' },
    ],
    [
      'an unknown state',
      change(['on: [winching] }\n\n  # Lights', 'on: [winchng] }\n\n  # Lights']),
      'on: [winchng]',
      { field: 'items.winch.on[0]', rule: 'choice', likely: 'winching' },
    ],
    [
      'an unknown ground',
      change([
        'return: { ground: tail stud }, on: [key off, rescue]',
        'return: { ground: tail stub }, on: [key off, rescue]',
      ]),
      'tail stub',
      { field: 'items.bilge pump.return.ground', likely: 'tail stud' },
    ],
    [
      'an unknown channel',
      change(['channel: B4 }', 'channel: B9 }']),
      'channel: B9',
      { field: 'items.amber beacons.from.channel', rule: 'choice' },
    ],
    [
      'a mistyped field',
      change(['    positions: 24', '    positons: 24']),
      'positons',
      { field: 'fuseBoxes.front box.positons', rule: 'unknown-key', likely: 'positions' },
    ],
    [
      'a bare number',
      change([
        '  rear trunk: { from: service bay, to: rear, length: 1.7 m }',
        '  rear trunk: { from: service bay, to: rear, length: 1.7 }',
      ]),
      'rear trunk: {',
      { field: 'routes.rear trunk.length', rule: 'quantity' },
    ],
    [
      'a wrong unit',
      change(['    ownCurrent: 0.8 A', '    ownCurrent: 0.8 V']),
      'ownCurrent: 0.8 V',
      { field: 'controllers.engine controller.ownCurrent', rule: 'quantity' },
    ],
    [
      'two items on one fuse position',
      change(['from: { box: rear box, position: 5 }', 'from: { box: rear box, position: 4 }']),
      'sea rescue radio:',
      { field: 'items.sea rescue radio.from.position', rule: 'rule' },
    ],
    [
      'a position that the box has not',
      change(['from: { box: rear box, position: 5 }', 'from: { box: rear box, position: 45 }']),
      'position: 45',
      { field: 'items.sea rescue radio.from.position', rule: 'range' },
    ],
    [
      'two items on one channel',
      change(['channel: A2 }', 'channel: A1 }']),
      'search light right:',
      { field: 'items.search light right.from.channel', rule: 'rule' },
    ],
    [
      'a relay on a channel that feeds',
      change(['channel: L1 }', 'channel: A1 }']),
      'channel: A1 } }',
      { field: 'items.lift pump.relay.control.channel', rule: 'rule' },
    ],
    [
      'a gap in the routes',
      change([/ {2}rear trunk: .*\n/, '']),
      'tail stud: {',
      { field: 'grounds.tail stud.place', rule: 'rule' },
    ],
    [
      'a ground that leads back to itself',
      change([
        'frame front: { place: engine bay, joint: 0.2 mΩ, to: frame middle',
        'frame front: { place: engine bay, joint: 0.2 mΩ, to: dash stud',
      ]),
      'frame front: { place',
      { rule: 'rule' },
    ],
    [
      'two last grounds',
      change([
        'cab stud: { place: cab, joint: 0.5 mΩ, to: frame middle, body: 0.5 mΩ }',
        'cab stud: { place: cab, joint: 0.5 mΩ }',
      ]),
      'cab stud: {',
      { rule: 'missing' },
    ],
    [
      'no fuse and no reason',
      change([
        '    protection: { fuse: bolt-in-fuse-sf51, at: service bay, rerating: 95 %, resistance: 0.4 mΩ, melting: 9000 A²s, clearWithin: 5 s }\n    family',
        '    family',
      ]),
      'rear box:',
      { field: 'fuseBoxes.rear box.protection', rule: 'missing' },
    ],
    [
      'a fuse where the box has one',
      change([
        'from: { box: rear box, position: 4 },',
        'from: { box: rear box, position: 4 }, protection: { none: x },',
      ]),
      'protection: { none: x }',
      { field: 'items.radio.protection', rule: 'rule' },
    ],
    [
      'a load on a signal ground',
      change(['return: { battery: service }', 'return: { controller: power module }']),
      'sea rescue radio:',
      { field: 'items.sea rescue radio.return', rule: 'rule' },
    ],
    [
      'a state without volts',
      change(['key off: { volts: { starter: 12.6 V, service: 12.5 V }', 'key off: { volts: { starter: 12.6 V }']),
      'key off: { volts',
      { rule: 'missing' },
    ],
    ['one name for two things', change(['\n  horn:\n', '\n  front box:\n']), 'front box:\n    place', { rule: 'rule' }],
    [
      'a name given twice',
      change(['\n  horn:\n', '\n  radio:\n']),
      'radio:\n    { kind: load, place: cab',
      { rule: 'syntax' },
    ],
    [
      'a size that the table has not',
      change(['stock: [0.5 mm²,', 'stock: [0.55 mm²,']),
      'stock: [',
      { field: 'rules.stock[0]', rule: 'rule' },
    ],
    [
      'wire and cover of two trades',
      change(['cover: iso-19642-thin-wall', 'cover: sae-txl']),
      'cover: sae',
      { field: 'rules.cover', rule: 'rule' },
    ],
    [
      'a fuse without its own data',
      change([
        'rerating: 95 %, resistance: 0.4 mΩ, melting: 9000 A²s, clearWithin: 5 s }\n    family',
        'resistance: 0.4 mΩ, clearWithin: 5 s }\n    family',
      ]),
      'rear box:',
      { rule: 'missing' },
    ],
    [
      'a motor beyond its stall',
      change(['windingResistance: 0.35 Ω', 'windingResistance: 3.5 Ω']),
      'wipers:',
      { field: 'items.wipers.load.ratedCurrent', rule: 'rule' },
    ],
    [
      'no battery',
      change(['    starter: { place: engine bay', '    stater: { place: engine bay']),
      'stater',
      { likely: 'stater' },
    ],
    [
      'a list where a map is due',
      change([/routes:\n( {2}.*\n)+/, 'routes: [a, b]\n']),
      'routes: [',
      { field: 'routes' },
    ],
    [
      'a relay that lets go above where it pulls in',
      change(['    dropOut: 1.6 V', '    dropOut: 9 V']),
      'dropOut: 9 V',
      { field: 'relayTypes.changeover relay.dropOut', rule: 'rule' },
    ],
    [
      'an insulation that bears less for minutes than for good',
      change(['bears: { minutes: 150 °C', 'bears: { minutes: 110 °C']),
      'bears: {',
      { field: 'rules.bears.minutes', rule: 'rule' },
    ],
    [
      'a terminal that carries more hot than cold',
      change(['current: 30 A, hot: { at: 85 °C, current: 24 A }', 'current: 20 A, hot: { at: 85 °C, current: 24 A }']),
      'front box:\n',
      { field: 'fuseBoxes.front box.takes.hot.current', rule: 'rule' },
    ],
    [
      'a blade that is not made',
      change(['takes: { blade: 1.5 mm }', 'takes: { blade: 1.6 mm }']),
      'indicators front:',
      { field: 'items.indicators front.takes.blade', rule: 'choice' },
    ],
    [
      'a kind that does not exist',
      change(['horn button: { kind: switch', 'horn button: { kind: swich']),
      'horn button: {',
      { field: 'items.horn button.kind', rule: 'choice', likely: 'switch' },
    ],
  ];
  it.each(cases)('%s is named with its line, field and rule', (_, text, at, want) => {
    const found = problems(text);
    expect(found.length).toBeGreaterThan(0);
    const fits = found.filter((one) =>
      Object.entries(want).every(([key, value]) => one[key as keyof Problem] === value),
    );
    expect(fits.length, found.map((one) => problemLine('file', one)).join('\n')).toBeGreaterThan(0);
    const from = lineOf(text, at);
    const near = found.some(({ line }) => line !== null && line >= from && line <= from + 12);
    expect(near, `${from}: ${found.map(({ line }) => line).join()}`).toBe(true);
  });
  it('gives all its errors at once, in the order of the file', () => {
    const text = change(
      ['    positions: 24', '    positions: 24.5'],
      ['channel: B4 }', 'channel: B9 }'],
      ['    ownCurrent: 0.8 A', '    ownCurrent: 0.8'],
      ['overload: iec-60364-4-43', 'overload: iec'],
    );
    const found = problems(text);
    const fields = found.map(({ field }) => field);
    expect(fields).toEqual(
      expect.arrayContaining([
        'fuseBoxes.front box.positions',
        'controllers.engine controller.ownCurrent',
        'items.amber beacons.from.channel',
        'rules.overload',
      ]),
    );
    const lines = found.map(({ line }) => line ?? 0);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });
  it('is refused in bounded time, however large, deep or repetitive', () => {
    const bombs: [string, Problem['rule']][] = [
      [`items:\n${Array.from({ length: 50_000 }, (_, i) => `  t${i}: {}\n`).join('')}`, 'size'],
      [`a: ${'['.repeat(100_000)}`, 'size'],
      [Array.from({ length: 2000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), 'size'],
      ['\n'.repeat(1_000_000), 'size'],
      ['x'.repeat(5_000_000), 'size'],
      [
        `a: &a [x,x,x,x,x,x,x,x]\n${'bcdefgh'
          .split('')
          .map((key, i) => `${key}: &${key} [${Array(8).fill(`*${'abcdefg'[i]}`).join(',')}]`)
          .join('\n')}\n`,
        'size',
      ],
    ];
    for (const [text, rule] of bombs) {
      const started = performance.now();
      const found = problems(text);
      expect(found[0]?.rule).toBe(rule);
      expect(found[0]?.message.length).toBeLessThan(200);
      // Wide: machines differ. Before the bounds the first of these took minutes.
      expect(performance.now() - started).toBeLessThan(20_000);
    }
  }, 60_000);
  it('with thousands of errors lists the first and counts the rest', () => {
    const many = Array.from({ length: 3000 }, (_, i) => `  t${i}: { kind: swich }\n`).join('');
    const found = problems(`items:\n${many}`);
    expect(found.length).toBe(201);
    expect(found.at(-1)?.message).toMatch(/more problems/);
  });
  it('never makes the reader throw', () => {
    const parts = TEXT.split('\n');
    fc.assert(
      fc.property(fc.nat(parts.length - 1), fc.nat(parts.length - 1), fc.string({ maxLength: 12 }), (a, b, text) => {
        const cut = [...parts.slice(0, Math.min(a, b)), text, ...parts.slice(Math.max(a, b))].join('\n');
        expect(typeof parseLoom(cut).ok).toBe('boolean');
      }),
      { numRuns: 25 },
    );
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(parseLoom(JSON.stringify(value)).ok).toBe(false);
      }),
      { numRuns: 60 },
    );
    for (const text of [
      '',
      '__proto__: { x: 1 }',
      'items: { __proto__: { kind: load }, constructor: { kind: switch } }',
      'items: null',
      'rules: 3',
      '{',
    ]) {
      expect(parseLoom(text).ok).toBe(false);
    }
  });
  it('that is read is always planned', () => {
    // Figures of the example changed at random, wherever they stand: what parses must plan, and add up.
    const places = [...TEXT.matchAll(/(\d+(?:\.\d+)?) (mΩ|Ω|A|V|m|s|mm²)(?=[ ,}\n])/g)].map((match) => match.index);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(places.length - 1), fc.constantFrom(0.1, 0.5, 2, 10)), { maxLength: 6 }),
        (bends) => {
          let text = TEXT;
          for (const [i, times] of [...bends].sort(([a], [b]) => b - a)) {
            const at = places[i]!;
            text = text.slice(0, at) + text.slice(at).replace(/^[\d.]+/, (given) => String(Number(given) * times));
          }
          const parsed = parseLoom(text);
          if (!parsed.ok) return;
          const plan = planLoom(parsed.loom);
          expect(plan.settled.rounds).toBeLessThanOrEqual(plan.settled.mostRounds);
          expect(plan.wires.length).toBeGreaterThan(100);
        },
      ),
      { numRuns: 15 },
    );
  }, 60_000);
});

describe('from an empty template to a plan of ten items', () => {
  const TEMPLATE = readFileSync(new URL('../../packages/cli/examples/empty.yaml', import.meta.url), 'utf8');
  it('plans the empty template', () => {
    const parsed = parseLoom(TEMPLATE);
    if (!parsed.ok) throw new Error(parsed.problems.map((one) => problemLine('empty.yaml', one)).join('\n'));
    expect(planLoom(parsed.loom).circuits.filter(({ kind }) => kind === 'load')).toEqual([]);
  });
  it('one item after another, each plan one circuit longer and without a complaint', () => {
    let text = TEMPLATE.replace('items: {}', 'items:');
    for (let i = 1; i <= 10; i++) {
      text = text.replace(
        /\nstates:/,
        `\n  lamp ${i}:\n    kind: load\n    place: cab\n    connector: 3 mΩ\n    load: { kind: constant current, current: ${i / 2} A }\n    nature: lamp\n    duty: 50 %\n    budget: general-feed-10-percent\n    from: { box: fuse box, position: ${i} }\n    return: { ground: frame }\n    on: [engine running]\nstates:`,
      );
      const parsed = parseLoom(text);
      if (!parsed.ok) throw new Error(parsed.problems.map((one) => problemLine('mine.yaml', one)).join('\n'));
      const plan = planLoom(parsed.loom);
      expect(plan.circuits.filter(({ kind }) => kind === 'load').length).toBe(i);
      expect(plan.fuses.filter(({ ratingA }) => ratingA !== null).length).toBe(i + 1);
      expect(plan.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
      expect(audit(plan)).toEqual([]);
    }
  });
});
