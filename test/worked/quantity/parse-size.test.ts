import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { AWG_SIZES, awgToAreaMm2, iso19642, saeJ1128, wireResistance } from 'loomwright';
import { parseSize, type QuantityError, type QuantityRule, type Size } from '@loomwright/worked/quantity';

function fault(text: unknown): QuantityError {
  try {
    parseSize(text as string);
  } catch (error) {
    expect(error).toMatchObject({ code: 'LOOMWRIGHT_QUANTITY', field: 'size' });
    return error as QuantityError;
  }
  throw new Error(`${String(text)} was read`);
}

describe('laws', () => {
  it('reads every AWG size in every order, and the core knows it', () => {
    for (const awg of AWG_SIZES) {
      for (const text of [`${awg} AWG`, `AWG ${awg}`, `${awg}AWG`, `awg${awg}`, `#${awg} AWG`, `AWG No. ${awg}`]) {
        expect(parseSize(text), text).toEqual({ awg });
      }
      expect(awgToAreaMm2((parseSize(`${awg} AWG`) as { awg: string }).awg)).toBeGreaterThan(0);
    }
  });

  it('gives sizes that the core takes as they are', () => {
    const at = { lengthM: 1, conductorTempC: 20 };
    for (const [size] of iso19642.rows) {
      expect(wireResistance({ ...parseSize(`${size} mm²`), ...at, resistanceBasis: iso19642 }).size).toBe(
        `${size} mm²`,
      );
    }
    for (const [gauge] of saeJ1128.rows) {
      expect(wireResistance({ ...parseSize(`SAE ${gauge}`), ...at, resistanceBasis: saeJ1128 }).size).toBe(
        `SAE ${gauge}`,
      );
    }
  });

  it('gives exactly one of the three, whatever is typed, or a QuantityError', () => {
    const parts = fc.constantFrom(
      'AWG',
      'SAE',
      ' ',
      '-',
      '#',
      '4',
      '0',
      '/',
      '18',
      'mm²',
      'mm2',
      'kcmil',
      '.',
      'ga',
      '2,5',
      '°',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.array(parts, { maxLength: 6 }).map((p) => p.join('')),
          fc.string(),
        ),
        (text) => {
          let size: Size;
          try {
            size = parseSize(text);
          } catch (error) {
            expect(error, text).toMatchObject({ code: 'LOOMWRIGHT_QUANTITY' });
            return;
          }
          expect(Object.keys(size), text).toHaveLength(1);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('edges', () => {
  const read: readonly (readonly [text: string, size: Size])[] = [
    ['18 AWG', { awg: '18' }],
    ['AWG 18', { awg: '18' }],
    ['AWG-18', { awg: '18' }],
    ['18-AWG', { awg: '18' }],
    [' awg  18 ', { awg: '18' }],
    ['08 AWG', { awg: '8' }],
    ['4/0 AWG', { awg: '4/0' }],
    ['AWG 4/0', { awg: '4/0' }],
    ['4 / 0 AWG', { awg: '4/0' }],
    ['0000 AWG', { awg: '4/0' }],
    ['00 AWG', { awg: '2/0' }],
    ['0 AWG', { awg: '1/0' }],
    ['1/0AWG', { awg: '1/0' }],
    ['SAE 18', { saeGauge: '18' }],
    ['18 SAE', { saeGauge: '18' }],
    ['sae 2/0', { saeGauge: '2/0' }],
    ['2.5 mm²', { areaMm2: 2.5 }],
    ['2.5 mm2', { areaMm2: 2.5 }],
    ['2.5mm²', { areaMm2: 2.5 }],
    ['2.5 sq mm', { areaMm2: 2.5 }],
    ['0.35 mm²', { areaMm2: 0.35 }],
    ['250 kcmil', { areaMm2: 126.67686977437442 }],
  ];
  for (const [text, size] of read) it(`reads ${text}`, () => expect(parseSize(text)).toEqual(size));

  const refused: readonly (readonly [text: unknown, rule: QuantityRule])[] = [
    ['', 'empty'],
    ['  ', 'empty'],
    ['18', 'size'],
    ['4/0', 'size'],
    ['18 ga', 'size'],
    ['18 gauge', 'size'],
    ['#18', 'size'],
    ['18 SWG', 'size'],
    ['2.5', 'unit'],
    ['41 AWG', 'size'],
    ['5/0 AWG', 'size'],
    ['00000 AWG', 'size'],
    ['0/0 AWG', 'size'],
    ['-18 AWG', 'size'],
    ['1.5 AWG', 'size'],
    ['AWG', 'number'],
    ['abc', 'number'],
    ['-', 'number'],
    ['2,5 mm²', 'comma'],
    ['2.5 mm', 'dimension'],
    ['14 ft', 'dimension'],
    ['2.5 qmm', 'unknownUnit'],
    ['1e999 mm²', 'magnitude'],
    ['9'.repeat(200), 'long'],
    [18, 'text'],
    [undefined, 'text'],
    [null, 'text'],
    [{}, 'text'],
  ];
  for (const [text, rule] of refused) {
    it(`refuses ${String(text).slice(0, 20) || 'nothing'}: ${rule}`, () => expect(fault(text)).toMatchObject({ rule }));
  }

  it('says what to write', () => {
    expect(fault('18').message).toBe(
      "size must be a size such as '2.5 mm²', '14 AWG' or 'SAE 14', got '18': say which gauge it is, AWG or SAE, or write mm²",
    );
    expect(fault('41 AWG').message).toContain('gauges go from 4/0 to 40');
  });
});
