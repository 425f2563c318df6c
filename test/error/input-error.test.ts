import { describe, expect, it } from 'vitest';
import {
  InputError,
  areaMm2ToAwg,
  awgToAreaMm2,
  betaFromPoints,
  geometric,
  iec60228Class5,
  monotoneValue,
  resistivity,
  solvePath,
  voltageDrop,
  wireResistance,
  type InputRule,
  type WireResistanceInput,
} from 'loomwright';
import {
  needAbove,
  needAtLeast,
  needBetween,
  needConductorTempC,
  needFinite,
  needInput,
  needInteger,
  needFlag,
  needList,
  needObject,
  needOneOf,
  needOwnName,
  needTempC,
  needText,
} from '../../packages/loomwright/src/error/guard.js';

const good: WireResistanceInput = { areaMm2: 2.5, resistanceBasis: iec60228Class5, lengthM: 8, conductorTempC: 70 };
const bad = (change: Record<string, unknown>) => (): unknown => wireResistance({ ...good, ...change });
const message = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    return (error as Error).message;
  }
  return 'nothing thrown';
};

// The whole message, once for each kind of rule that a caller can break.
describe('the message of each kind of rule', () => {
  const messages: readonly (readonly [rule: InputRule, run: () => unknown, message: string])[] = [
    ['object', () => wireResistance(3 as never), 'wireResistance: input must be an object with named fields, got 3'],
    ['missing', bad({ lengthM: undefined }), 'wireResistance: lengthM is required, got nothing'],
    ['number', bad({ lengthM: '3 m' }), "wireResistance: lengthM must be a number, without its unit, got '3 m'"],
    ['finite', bad({ lengthM: NaN }), 'wireResistance: lengthM must be a finite number, got NaN'],
    ['above', bad({ areaMm2: 0 }), 'wireResistance: areaMm2 must be above 0, got 0'],
    ['atLeast', bad({ lengthM: -3 }), 'wireResistance: lengthM must be at least 0, got -3'],
    ['atMost', bad({ conductorTempC: 401 }), 'wireResistance: conductorTempC must be at most 400, got 401'],
    ['text', () => awgToAreaMm2(12 as never), "awgToAreaMm2: awg must be a text such as '18' or '4/0', got 12"],
    [
      'list',
      () =>
        solvePath({
          supplyV: 12,
          outParts: 3 as never,
          returnParts: [],
          load: { kind: 'resistance', resistanceOhm: 1 },
        }),
      'solvePath: outParts must be a list, got 3',
    ],
    [
      'oneOf',
      () => resistivity({ conductorTempC: 20, metal: 'gold' as never }),
      "resistivity: metal must be one of copper, tinned-copper, aluminium, got 'gold'",
    ],
    ['oneOfFields', bad({ awg: '14' }), 'wireResistance: areaMm2 or awg or saeGauge must be given, one only, got 2'],
    [
      'inTable',
      bad({ areaMm2: 2.4 }),
      'wireResistance: areaMm2 must be a size of iec-60228-class-5 (0.14 0.22 0.25 0.34 0.5 0.75 1 1.5 2.5 4 6 10 16 25 35 50 70 95 120 150), got 2.4',
    ],
    [
      'below',
      () =>
        solvePath({
          supplyV: 12,
          outParts: [],
          returnParts: [],
          load: {
            kind: 'motor',
            windingResistanceOhm: 2,
            speedConstantRpmPerV: 300,
            ratedCurrentA: 6,
            ratedV: 12,
            torque: 'constant',
          },
        }),
      'solvePath: load.ratedCurrentA must be below ratedV / windingResistanceOhm (6 A), got 6',
    ],
    [
      'order',
      () => betaFromPoints({ coldTempC: 100, coldOhm: 5900, hotTempC: 0, hotOhm: 186 }),
      'betaFromPoints: hotTempC must be at least 0.001 above coldTempC, 100, got 0',
    ],
    [
      'range',
      () => monotoneValue({ fn: 'lookUp', curve: { x: [0, 1], y: [0, 1], slope: [1, 1] }, x: 1.5 }),
      'lookUp: x must lie from 0 to 1, got 1.5',
    ],
    ['integer', () => needInteger('f', 'teethCount', 2.5), 'f: teethCount must be a whole number, got 2.5'],
  ];
  it.each(messages)('%s', (rule, run, text) => {
    expect(message(run)).toBe(text);
    expect(run).toThrow(expect.objectContaining({ code: 'LOOMWRIGHT_INPUT', rule, name: 'InputError' }) as never);
  });

  it('covers every kind', () => {
    const kinds: Record<InputRule, true> = {
      object: true,
      missing: true,
      number: true,
      finite: true,
      above: true,
      atLeast: true,
      below: true,
      atMost: true,
      integer: true,
      text: true,
      list: true,
      oneOf: true,
      oneOfFields: true,
      inTable: true,
      order: true,
      range: true,
    };
    expect(messages.map(([rule]) => rule).sort()).toEqual(Object.keys(kinds).sort());
  });

  it('says by one wording that a part is no object, a name stands twice, a flag is none', () => {
    const parts: readonly unknown[] = [null, 3];
    for (const part of parts) {
      const path = { supplyV: 12, outParts: [part as never], returnParts: [] };
      expect(message(() => solvePath({ ...path, load: { kind: 'resistance', resistanceOhm: 1 } }))).toBe(
        `solvePath: outParts[0] must be an object with named fields, got ${String(part)}`,
      );
    }
    expect(message(() => needObject('f', 'part', undefined, 'must be a part', 'hand in one'))).toBe(
      'f: part must be a part, got nothing: hand in one',
    );
    const names = new Set<string>();
    needOwnName('f', 'loads[0].name', 'fan', names);
    needOwnName('f', 'loads[1].name', 'pump', names);
    expect(message(() => needOwnName('f', 'loads[2].name', 'fan', names))).toBe(
      "f: loads[2].name must be a name of its own, got 'fan': it stands twice",
    );
    expect(message(() => needOwnName('f', 'loads[2].name', '', names))).toBe("f: loads[2].name must be a text, got ''");
    needFlag('f', 'pairs', false);
    expect(message(() => needFlag('f', 'pairs', 0 as never))).toBe('f: pairs must be true or false, got 0');
    expect(message(() => needFlag('f', 'pairs', undefined as never))).toBe(
      'f: pairs must be true or false, got nothing',
    );
  });

  it('names the likely slip', () => {
    expect(message(() => areaMm2ToAwg(0.0000025))).toBe(
      'areaMm2ToAwg: areaMm2 must be at least 0.001, got 0.0000025: is this in m²?',
    );
    expect(message(bad({ resistanceBasis: 'iso19642' }))).toBe(
      "wireResistance: resistanceBasis must be one of the resistance bases, got 'iso19642': import one, such as iso19642, iec60228Class5 or geometric",
    );
    expect(
      message(() => wireResistance({ saeGauge: '12', resistanceBasis: geometric, lengthM: 1, conductorTempC: 20 })),
    ).toBe("wireResistance: saeGauge needs resistanceBasis saeJ1128, got '12': an SAE size has no geometry of its own");
  });
});

describe('the error', () => {
  it('carries function, field, rule and value, and is an Error', () => {
    const value = { odd: true };
    const error = new InputError('sizeFeed', 'outPath[2].lengthM', 'above', value, 'must be above 0', 'a slip');
    expect(error).toBeInstanceOf(Error);
    expect({ ...error }).toEqual({
      code: 'LOOMWRIGHT_INPUT',
      name: 'InputError',
      fn: 'sizeFeed',
      field: 'outPath[2].lengthM',
      rule: 'above',
      value,
    });
    expect(error.message).toBe('sizeFeed: outPath[2].lengthM must be above 0, got an object: a slip');
  });
  it('shows any value shortly and never throws on one', () => {
    const shown = (value: unknown): string =>
      new InputError('f', 'x', 'number', value, 'must').message.slice('f: x must, got '.length);
    expect(shown(undefined)).toBe('nothing');
    expect(shown(null)).toBe('null');
    expect(shown('')).toBe("''");
    expect(shown('x'.repeat(40))).toBe(`'${'x'.repeat(40)}'`);
    expect(shown('x'.repeat(41))).toBe(`'${'x'.repeat(37)}…'`);
    expect(shown([1, 2])).toBe('a list');
    expect(shown({})).toBe('an object');
    expect(shown(Object.create(null))).toBe('an object');
    expect(shown(() => 1)).toBe('a function');
    expect(shown(-0)).toBe('0');
    expect(shown(12n)).toBe('12');
    expect(shown(Symbol('s'))).toBe('Symbol(s)');
  });
  it('is what the first bad field says, whatever else is wrong', () => {
    expect(message(() => voltageDrop({} as never))).toBe('voltageDrop: supplyV is required, got nothing');
  });
});

describe('guards', () => {
  const rules = (guard: (value: never) => void, values: readonly unknown[]): (string | null)[] =>
    values.map((value) => {
      try {
        guard(value as never);
        return null;
      } catch (error) {
        return (error as InputError).rule;
      }
    });
  const nonsense = [undefined, null, NaN, Infinity, -Infinity, '3', '', {}, [], true];
  const refused = [
    'missing',
    'missing',
    'finite',
    'finite',
    'finite',
    'number',
    'number',
    'number',
    'number',
    'number',
  ];
  it('take numbers up to their limit and nothing else', () => {
    for (const guard of [
      (value: number): void => needFinite('f', 'x', value),
      (value: number): void => needAbove('f', 'x', value),
      (value: number): void => needAtLeast('f', 'x', value),
      (value: number): void => needBetween('f', 'x', value, 0, 1),
      (value: number): void => needInteger('f', 'x', value),
      (value: number): void => needTempC('f', 'x', value),
      (value: number): void => needConductorTempC('f', 'x', value),
    ]) {
      expect(rules(guard, nonsense)).toEqual(refused);
    }
    expect(rules((value: number) => needFinite('f', 'x', value), [-1e300, 0, 5e-324])).toEqual([null, null, null]);
    expect(rules((value: number) => needAbove('f', 'x', value, 2), [2, 2.0000001])).toEqual(['above', null]);
    expect(rules((value: number) => needAtLeast('f', 'x', value, 2), [1.9999999, 2])).toEqual(['atLeast', null]);
    expect(rules((value: number) => needBetween('f', 'x', value, 1, 2), [0.99, 1, 2, 2.01])).toEqual([
      'atLeast',
      null,
      null,
      'atMost',
    ]);
    expect(rules((value: number) => needInteger('f', 'x', value, 1), [0, 1, 1.5, 2 ** 53])).toEqual([
      'atLeast',
      null,
      'integer',
      'integer',
    ]);
    expect(rules((value: number) => needTempC('f', 'x', value), [-273.16, -273.15, 2000, 2001])).toEqual([
      'atLeast',
      null,
      null,
      'atMost',
    ]);
    expect(message(() => needTempC('f', 'x', -300))).toMatch(/below absolute zero$/);
    expect(message(() => needTempC('f', 'x', 3000))).toMatch(/is this in another unit\?$/);
  });
  it('take objects, words, lists and texts, and nothing else', () => {
    expect(rules((value: object) => needInput('f', value), [{}, [], null, 3, undefined, 'a'])).toEqual([
      null,
      ...Array<string>(5).fill('object'),
    ]);
    expect(rules((value: string) => needOneOf('f', 'x', value, ['a', 'b']), ['a', 'c', undefined, null, 1])).toEqual([
      null,
      'oneOf',
      'missing',
      'missing',
      'oneOf',
    ]);
    expect(rules((value: unknown[]) => needList('f', 'x', value, 1), [[1], [], undefined, 'a', {}])).toEqual([
      null,
      'list',
      'missing',
      'list',
      'list',
    ]);
    // eslint-disable-next-line no-sparse-arrays -- a hole is what is tested
    for (const holed of [[1, , 3], [1, undefined, 3], Object.assign(new Array<number>(3), { 0: 1, 2: 3 })])
      expect(message(() => needList('f', 'x', holed, 1))).toBe('f: x[1] is required, got nothing');
    expect(message(() => needList('f', 'x', [null, 0, '']))).toBe('nothing thrown');
    expect(message(() => needList('f', 'x', [1], 2))).toBe('f: x must have at least 2 entries, got a list');
    expect(rules((value: string) => needText('f', 'x', value), ['a', '', undefined, 3])).toEqual([
      null,
      'text',
      'missing',
      'text',
    ]);
    expect(message(() => needOneOf('f', 'x', undefined as never, ['a', 'b']))).toBe(
      'f: x is required: one of a, b, got nothing',
    );
  });
});
