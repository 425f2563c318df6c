import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { circuitJsonSchema, parseCircuit, problemLine, type Problem, sizeCircuit } from '@loomwright/harness';
import { feetToM, sizeFeed } from 'loomwright';

const EXAMPLE = readFileSync(new URL('../../packages/cli/examples/lift-pump.yaml', import.meta.url), 'utf8');

const problems = (text: string): readonly Problem[] => {
  const parsed = parseCircuit(text);
  return parsed.ok ? [] : parsed.problems;
};
const change = (from: string | RegExp, to: string): string => {
  const changed = EXAMPLE.replace(from, to);
  if (changed === EXAMPLE) throw new Error(`${String(from)} is not in the example`);
  return changed;
};

describe('a circuit file', () => {
  it('is read into numbers in the units of the core', () => {
    const parsed = parseCircuit(EXAMPLE);
    if (!parsed.ok) throw new Error(parsed.problems.map((p) => problemLine('x', p)).join('\n'));
    expect(parsed.circuit.supply).toBe(13.8);
    expect(parsed.circuit.out.find((part) => part.wire !== undefined)?.wire).toBe(feetToM(17));
    expect(parsed.circuit.rules.stock?.[0]).toEqual({ areaMm2: 0.5 });
    expect(parsed.circuit.out.some((part) => part.fuse === 'chosen')).toBe(true);
  });
  it('is read from JSON as well, to the same circuit', () => {
    const parsed = parseCircuit(EXAMPLE);
    const json = JSON.stringify({
      circuit: 'x',
      supply: '13.8 V',
      judgedAt: [],
      load: { kind: 'resistance', resistance: '2 Ω' },
      out: [{ wire: '3 m' }],
      return: [],
      rules: {
        wire: 'sae-j1128',
        insulation: '105 °C',
        ambient: '122 °F',
        heating: 'us-33-cfr-183-425',
        drop: '0.15 V',
        stock: ['SAE 12', 'SAE 14'],
        leastArea: '0.5 mm²',
      },
      protection: { none: 'a test' },
    });
    expect(parsed.ok).toBe(true);
    const other = parseCircuit(json);
    if (!other.ok) throw new Error(other.problems.map((p) => problemLine('x', p)).join('\n'));
    expect(other.circuit.rules.ambient).toBe(50);
    const { feed } = sizeCircuit(other.circuit);
    expect(feed.possible && feed.size).toBe('SAE 12');
  });
  it('gives what the core gives for the same figures, digit for digit', () => {
    const parsed = parseCircuit(EXAMPLE);
    if (!parsed.ok) throw new Error('not read');
    const sized = sizeCircuit(parsed.circuit);
    expect(JSON.stringify(sized.feed)).toBe(JSON.stringify(sizeFeed(sized.input)));
  });
  it('holds the wire against the times of its fuse where it says what the insulation bears', () => {
    const size = (text: string) => {
      const parsed = parseCircuit(text);
      if (!parsed.ok) throw new Error(parsed.problems.map((p) => problemLine('x', p)).join('\n'));
      const { feed, input } = sizeCircuit(parsed.circuit);
      if (!feed.possible || input.protection.kind !== 'fuse') throw new Error('not sized');
      return { feed, protection: input.protection };
    };
    const { feed, protection } = size(EXAMPLE);
    expect(protection.wireLimits).toEqual({ overloadTempC: 130, shortTempC: 160 });
    expect(feed.fuse?.notJudged).not.toContain('the wire against the longest opening');
    // A short path that may lose much: what the fuse may let through then decides.
    const short = EXAMPLE.replace('wire: 17 ft', 'wire: 1 ft').replace(/budget: .*/, 'drop: 5 V');
    const held = size(short.replace('minutes: 130 °C', 'minutes: 105 °C'));
    const open = size(short.replace(/^ {2}bears: .*\n/m, ''));
    expect(open.feed.fuse?.notJudged).toContain('the wire against the longest opening');
    expect(held.feed.areaMm2).toBeGreaterThan(open.feed.areaMm2);
    expect(held.feed.decidedBy).toMatch(/fuse/);
    // Every printed point of the fuse (ISO 8820-3, type C, from memory below 35 A) that falls within 5 s: I²t of it
    // against k²S², k from IEC 60949.
    const rating = held.feed.fuse?.ratingA ?? NaN;
    const bearsA2s = 226 ** 2 * held.feed.areaMm2 ** 2 * Math.log((234.5 + 160) / (234.5 + 105));
    for (const [ratio, timeS] of [
      [2, 5],
      [3.5, 0.5],
      [6, 0.1],
    ] as const) {
      expect((ratio * rating) ** 2 * timeS).toBeLessThanOrEqual(bearsA2s);
    }
  });
  it('has a JSON Schema that names every field', () => {
    const schema = circuitJsonSchema() as {
      properties: Record<string, unknown>;
      required: string[];
      additionalProperties: boolean;
    };
    expect(Object.keys(schema.properties)).toEqual(
      expect.arrayContaining(['circuit', 'supply', 'load', 'out', 'return', 'rules', 'protection', 'relay']),
    );
    expect(schema.additionalProperties).toBe(false);
    expect(schema.required).toContain('rules');
  });
});

describe('the load of a circuit', () => {
  const solved = (load: string) => {
    const parsed = parseCircuit(
      change(/^load:\n(?: {2}.*\n)+/m, `load: ${load}\n`).replace('stock: [', 'stock: [10 mm², '),
    );
    if (!parsed.ok) throw new Error(parsed.problems.map((p) => problemLine('x', p)).join('\n'));
    const { feed } = sizeCircuit(parsed.circuit);
    if (!feed.possible) throw new Error(feed.because);
    return feed.solved;
  };
  /** Current of each kind from the volts at it, by its law in plain arithmetic. */
  const kinds: [string, string, (loadV: number) => number][] = [
    ['a plain resistance', '{ kind: resistance, resistance: 3 Ω }', (v) => v / 3],
    // I ~ V^0.55, as rerating of lamps has it.
    ['a lamp', '{ kind: lamp, power: 55 W, ratedVoltage: 13.2 V }', (v) => (55 / 13.2) * (v / 13.2) ** 0.55],
    [
      'LEDs behind a driver',
      '{ kind: LED driver, power: 60 W, efficiency: 88 %, leastVolts: 8 V }',
      (v) => 60 / 0.88 / v,
    ],
    // Copper, straight through −234.5 °C.
    [
      'a cold coil',
      '{ kind: coil, resistance: 4 Ω, ratedAt: 20 °C, coilTemperature: -20 °C }',
      (v) => v / ((4 * 214.5) / 254.5),
    ],
    [
      'a starter solenoid that pulls in',
      '{ kind: starter solenoid, pullIn: 3 Ω, holdIn: 12 Ω, stage: pull in }',
      (v) => v / 3 + v / 12,
    ],
    ['one that holds', '{ kind: starter solenoid, pullIn: 3 Ω, holdIn: 12 Ω, stage: hold }', (v) => v / 12],
    [
      'a heater that is switched fast',
      '{ kind: switched fast, load: { kind: resistance, resistance: 2 Ω }, duty: 30 % }',
      (v) => v / 2,
    ],
  ];
  it.each(kinds)('%s draws what its law says at the volts that it gets', (_, load, currentA) => {
    const { loadV, currentA: ours } = solved(load);
    expect(Math.abs(ours / currentA(loadV) - 1)).toBeLessThan(1e-9);
  });
  it('the wire of one that is switched fast is judged by its r.m.s. current', () => {
    const { rmsA, currentA } = solved(
      '{ kind: switched fast, load: { kind: resistance, resistance: 2 Ω }, duty: 30 % }',
    );
    expect(Math.abs(rmsA / (currentA * Math.sqrt(0.3)) - 1)).toBeLessThan(1e-12);
  });
  it('a motor of constant torque on a bridge takes its rated current while it is on the supply', () => {
    const motor =
      'windingResistance: 0.3 Ω, speedConstant: 200, ratedCurrent: 5 A, ratedVoltage: 13 V, torque: constant';
    expect(solved(`{ kind: motor on a bridge, ${motor}, bridgeResistance: 20 mΩ, duty: 60 % }`).currentA).toBe(5);
  });
});

describe('a bad circuit file', () => {
  const cases: [string, string, Partial<Problem> & { message?: unknown }][] = [
    ['a missing field', change(/^supply: .*\n/m, ''), { field: 'supply', rule: 'missing' }],
    ['a wrong unit', change('current: 7.5 A', 'current: 7.5 V'), { field: 'load.current', rule: 'quantity', line: 11 }],
    [
      'a bare number',
      change('current: 7.5 A', 'current: 7.5'),
      {
        field: 'load.current',
        rule: 'quantity',
        line: 11,
        message: expect.stringContaining("write '7.5 A'") as string,
      },
    ],
    ['a negative length', change('wire: 17 ft', 'wire: -17 ft'), { field: 'out[5].wire', rule: 'range', line: 19 }],
    ['not a number', change('supply: 13.8 V', 'supply: .nan'), { field: 'supply', rule: 'type', line: 6 }],
    [
      'a mistyped key',
      change('  ambient:', '  ambiant:'),
      { field: 'rules.ambiant', rule: 'unknown-key', likely: 'ambient', line: 32 },
    ],
    [
      'a mistyped word',
      change('kind: constant current', 'kind: constant curent'),
      { field: 'load.kind', rule: 'choice', likely: 'constant current', line: 10 },
    ],
    [
      'a mistyped table',
      change('wire: iso-19642', 'wire: iso-19624'),
      { field: 'rules.wire', rule: 'choice', likely: 'iso-19642' },
    ],
    ['a size that is none', change('[0.5 mm², ', '[0.5 A, '), { field: 'rules.stock[0]', rule: 'quantity' }],
    ['two kinds in one part', change('{ relay: 5 mΩ', '{ relay: 5 mΩ, fuse: 2 mΩ'), { field: 'out[3]', rule: 'rule' }],
    ['two fuses to choose', change('{ relay: 5 mΩ', '{ fuse: chosen'), { field: 'out[3].fuse', rule: 'rule' }],
    ['nothing that may be lost', change(/^ {2}budget: .*\n/m, ''), { field: 'rules', rule: 'rule' }],
    [
      'a protection without its fuse',
      change(/^ {2}fuse: blade-fuse\n/m, ''),
      { rule: 'missing', field: 'protection.fuse' },
    ],
    [
      'an insulation that bears less for minutes than for good',
      change('minutes: 130 °C', 'minutes: 100 °C'),
      { field: 'rules.bears.minutes', rule: 'rule' },
    ],
    [
      'one that bears less for seconds than for minutes',
      change('seconds: 160 °C', 'seconds: 120 °C'),
      { field: 'rules.bears.seconds', rule: 'rule' },
    ],
    [
      'what it bears, and no fuse to hold that against',
      change(/^protection:\n(?: {2}.*\n)+/m, 'protection: { none: a test }\n\n').replace('fuse: chosen', 'fuse: 5 mΩ'),
      { field: 'rules.bears', rule: 'rule' },
    ],
    [
      'a relay that lets go above where it pulls in',
      change('dropOut: 1.6 V', 'dropOut: 8 V'),
      { field: 'relay.dropOut', rule: 'rule' },
    ],
    [
      'a driver that takes more volts than there are',
      change('driverDrop: 0.3 V', 'driverDrop: 30 V'),
      { field: 'relay.driverDrop', rule: 'rule' },
    ],
    [
      'a motor beyond its stall',
      change(
        /^load:\n(?: {2}.*\n)+/m,
        'load: { kind: motor, windingResistance: 1 Ω, speedConstant: 200, ratedCurrent: 20 A, ratedVoltage: 13 V, torque: constant }\n',
      ),
      { field: 'load.ratedCurrent', rule: 'rule' },
    ],
    [
      'a load within a load that is none',
      change(/^load:\n(?: {2}.*\n)+/m, 'load: { kind: switched fast, load: { kind: lmap }, duty: 20 % }\n'),
      { field: 'load.load.kind', rule: 'choice', likely: 'lamp' },
    ],
    ['text that is no YAML', 'a: [1, 2\nb: {', { rule: 'syntax' }],
    ['a key given twice', `${EXAMPLE}\nsupply: 12 V\n`, { rule: 'syntax' }],
    ['a list', '- 1\n- 2\n', { rule: 'syntax' }],
    ['nothing', '', { rule: 'syntax' }],
  ];
  it.each(cases)('%s is named with its line, field and rule', (_, text, wanted) => {
    const found = problems(text);
    expect(found).toEqual(expect.arrayContaining([expect.objectContaining(wanted)]));
    for (const problem of found) expect(problemLine('f.yaml', problem)).not.toMatch(/undefined|Invalid input|\[object/);
  });
  it('is answered with all its problems at once', () => {
    const found = problems(
      change('current: 7.5 A', 'current: 7.5 V').replace('wire: 17 ft', 'wire: 17').replace('  ambient:', '  ambiant:'),
    );
    expect(new Set(found.map(({ field }) => field))).toEqual(
      new Set(['load.current', 'out[5].wire', 'rules.ambient', 'rules.ambiant']),
    );
  });
  it('of ten million characters, of a hundred thousand brackets or of a billion aliases is refused at once', () => {
    const started = performance.now();
    expect(problems('x'.repeat(10_000_000))[0]).toMatchObject({ rule: 'size' });
    expect(problems('['.repeat(100_000))[0]).toMatchObject({ rule: 'size' });
    const bomb = [
      'a: &a [x,x,x,x,x,x,x,x,x]',
      ...'bcdefghij'.split('').map(
        (c, i) =>
          `${c}: &${c} [${Array(9)
            .fill(`*${'abcdefghi'[i] as string}`)
            .join(',')}]`,
      ),
    ].join('\n');
    expect(problems(bomb)[0]).toMatchObject({ rule: 'size', message: expect.stringContaining('aliases') as string });
    expect(performance.now() - started).toBeLessThan(5000);
  });
  it('never makes the reader throw', () => {
    const lines = EXAMPLE.split('\n');
    fc.assert(
      fc.property(fc.nat(lines.length - 1), fc.string({ maxLength: 30 }), fc.boolean(), (at, junk, replace) => {
        const changed = [...lines];
        changed[at] = replace ? junk : `${changed[at] ?? ''}${junk}`;
        const parsed = parseCircuit(changed.join('\n'));
        if (!parsed.ok) expect(parsed.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});
