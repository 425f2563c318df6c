import { describe, expect, expectTypeOf, it } from 'vitest';
import fc from 'fast-check';
import {
  awgToAreaMm2,
  bladeFuse,
  chargingBudget,
  geometric,
  iso19642,
  type ResistanceBasis,
  saeJ1128,
  sizeFeed,
  us33Cfr183Ampacity,
  voltageDrop,
  wireResistance,
  heatingByTable,
} from 'loomwright';
import * as room from 'loomwright/table';
import { inputs, type QuantityError, tables } from '@loomwright/worked/quantity';

function fault(run: () => unknown): QuantityError {
  try {
    run();
  } catch (error) {
    expect(error).toMatchObject({ code: 'LOOMWRIGHT_QUANTITY' });
    return error as QuantityError;
  }
  throw new Error('expected a QuantityError');
}

describe('independent', () => {
  it('makes of quantities the numbers that the converters of the core make', () => {
    expect(
      inputs({ outLengthM: '14 ft', currentA: '12 A', areaMm2: '14 AWG', ambientTempC: '150 °F', tempRiseK: '10 °F' }),
    ).toEqual({
      outLengthM: 4.2672,
      currentA: 12,
      areaMm2: awgToAreaMm2('14'),
      ambientTempC: (118 * 5) / 9,
      tempRiseK: 50 / 9,
    });
  });

  it('sizes a feed to the same digits from texts as from numbers', () => {
    const fromTexts = sizeFeed(
      inputs({
        supplyV: '13.8 V',
        outParts: [
          { name: 'fuse', kind: 'fuse', resistanceOhm: '3.4 mΩ' },
          { name: 'wire out', lengthM: '5.5 m' },
          { name: 'relay', kind: 'relay', resistanceOhm: '5 mΩ' },
        ],
        returnParts: [{ name: 'wire back', lengthM: '1000 mm' }],
        load: { kind: 'constant-current', currentA: '15 A' },
        resistanceBasis: 'iso-19642',
        limits: { dropV: '500 mV' },
        judgedAtV: ['9 V', 14.4],
        stock: ['2.5 mm²', '4 mm²', 6, '10 mm2'],
        heating: { by: heatingByTable, table: 'us-33-cfr-183-425', insulationTempC: '221 °F', ambientTempC: '104 °F' },
        leastAreaMm2: '0.5 mm²',
        protection: { kind: 'none', because: 'example' },
      }),
    );
    const fromNumbers = sizeFeed({
      supplyV: 13.8,
      outParts: [
        { name: 'fuse', kind: 'fuse', resistanceOhm: 0.0034 },
        { name: 'wire out', lengthM: 5.5 },
        { name: 'relay', kind: 'relay', resistanceOhm: 0.005 },
      ],
      returnParts: [{ name: 'wire back', lengthM: 1 }],
      load: { kind: 'constant-current', currentA: 15 },
      resistanceBasis: iso19642,
      limits: { dropV: 0.5 },
      judgedAtV: [9, 14.4],
      stock: [2.5, 4, 6, 10],
      heating: { by: heatingByTable, table: us33Cfr183Ampacity, insulationTempC: 105, ambientTempC: 40 },
      leastAreaMm2: 0.5,
      protection: { kind: 'none', because: 'example' },
    });
    expect(fromTexts).toEqual(fromNumbers);
    expect(fromNumbers.possible).toBe(true);
  });
});

describe('laws', () => {
  it('leaves an input of the core as it is, and the same object', () => {
    const input = {
      supplyV: 13.8,
      resistanceBasis: iso19642,
      outParts: [{ name: '14 ft', lengthM: 5.5, kind: 'wire' }],
      flag: true,
      nothing: null,
      heating: { table: us33Cfr183Ampacity },
      note: '12 A',
    };
    expect(inputs(input)).toBe(input);
    expect(inputs(input)).toEqual(structuredClone(input));
  });

  it('changes nothing in what it was given', () => {
    const given = { outLengthM: '14 ft', size: '14 AWG', parts: [{ lengthM: '3 ft' }], stock: ['4 mm²'] };
    const before = structuredClone(given);
    inputs(given);
    expect(given).toEqual(before);
  });

  it('gives numbers or throws a QuantityError, whatever stands in the fields', () => {
    const fields = fc.dictionary(
      fc.constantFrom(
        'key',
        'outLengthM',
        'areaMm2',
        'size',
        'awg',
        'stock',
        'resistanceBasis',
        'name',
        'parts',
        '__proto__',
        'tapsOhm',
      ),
      fc.anything({ maxDepth: 3, withNullPrototype: true }),
    );
    fc.assert(
      fc.property(fields, (input) => {
        try {
          const made = inputs(input) as Record<string, unknown>;
          if (Object.hasOwn(made, 'outLengthM')) expect(typeof made.outLengthM).not.toBe('string');
        } catch (error) {
          expect(error).toMatchObject({ code: 'LOOMWRIGHT_QUANTITY' });
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('edges', () => {
  it('reads lists, lists of parts and nested objects', () => {
    expect(inputs({ tapsOhm: ['240 Ω', 200, '0.165 kΩ'], limits: { dropV: '500 mV' } })).toEqual({
      tapsOhm: [240, 200, 165],
      limits: { dropV: 0.5 },
    });
    expect(inputs([{ lengthM: '3 ft' }, { lengthM: 2 }])).toEqual([{ lengthM: 0.9144 }, { lengthM: 2 }]);
  });

  it('spreads a size into the field that the core takes', () => {
    expect(inputs({ size: '14 AWG', lengthM: '1 m' })).toEqual({ awg: '14', lengthM: 1 });
    expect(inputs({ size: 'SAE 14' })).toEqual({ saeGauge: '14' });
    expect(inputs({ size: '2.5 mm²' })).toEqual({ areaMm2: 2.5 });
    expect(inputs({ wires: [{ size: '4/0 AWG' }] })).toEqual({ wires: [{ awg: '4/0' }] });
    expect(inputs({ size: 3 })).toEqual({ size: 3 });
    expect(fault(() => inputs({ size: '14 AWG', areaMm2: 2.5 }))).toMatchObject({ rule: 'twice', field: 'size' });
    expect(fault(() => inputs({ wire: { size: '14' } }))).toMatchObject({ rule: 'size', field: 'wire.size' });
  });

  it('takes a gauge where an area is wanted, AWG alone', () => {
    expect(inputs({ areaMm2: 'AWG 4/0' }).areaMm2).toBe(awgToAreaMm2('4/0'));
    expect(inputs({ leastAreaMm2: '20 AWG' }).leastAreaMm2).toBe(awgToAreaMm2('20'));
    const sae = fault(() => inputs({ areaMm2: 'SAE 14' }));
    expect(sae).toMatchObject({ rule: 'size', field: 'areaMm2' });
    expect(sae.message).toContain("give it as the field size, with resistanceBasis 'sae-j1128'");
    expect(fault(() => inputs({ areaMm2: '41 AWG' })).rule).toBe('size');
    expect(fault(() => inputs({ outLengthM: '14 AWG' })).rule).toBe('size');
  });

  it('takes gauges and stock as the core names them', () => {
    expect(inputs({ awg: '14 AWG' }).awg).toBe('14');
    expect(inputs({ awg: '0000' }).awg).toBe('4/0');
    expect(inputs({ awg: 14 }).awg).toBe('14');
    expect(inputs({ saeGauge: 'SAE 14' }).saeGauge).toBe('14');
    expect(fault(() => inputs({ awg: 'SAE 14' }))).toMatchObject({ rule: 'size', hint: 'AWG and SAE sizes differ' });
    expect(fault(() => inputs({ awg: '99' })).rule).toBe('size');
    expect(inputs({ stock: ['2.5 mm²', '14 AWG', 'SAE 12', '14', 6] }).stock).toEqual([2.5, '14', '12', '14', 6]);
    expect(fault(() => inputs({ stock: ['4 mm²', 'wide'] }))).toMatchObject({ field: 'stock[1]' });
    const made = wireResistance(
      inputs({ size: 'SAE 12', resistanceBasis: 'sae-j1128', lengthM: '6 m', conductorTempC: '20 °C' }),
    );
    expect(made).toEqual(wireResistance({ saeGauge: '12', resistanceBasis: saeJ1128, lengthM: 6, conductorTempC: 20 }));
  });

  it('finds every table of the core by its key', () => {
    const keyed = Object.values(room).filter((t): t is typeof iso19642 => typeof t === 'object' && 'key' in t);
    expect(keyed.length).toBeGreaterThan(10);
    for (const table of keyed) expect(tables[table.key], table.key).toBe(table);
    expect(Object.keys(tables)).toHaveLength(keyed.length);
    expect(inputs({ resistanceBasis: 'geometric' }).resistanceBasis).toBe(geometric);
    expect(inputs({ protection: { family: 'blade-fuse' } }).protection.family).toBe(bladeFuse);
    expect(inputs({ limits: { budget: chargingBudget.key } }).limits.budget).toBe(chargingBudget);
    for (const field of ['table', 'curve', 'wireTable', 'thermocouple']) {
      expect(inputs({ [field]: 'geometric' })).toEqual({ [field]: geometric });
    }
    expect(inputs({ source: 'iso-19642', name: 'geometric' })).toEqual({ source: 'iso-19642', name: 'geometric' });
  });

  it('names near keys, and only those of tables that fit', () => {
    expect(fault(() => inputs({ resistanceBasis: 'iso-19624' })).message).toBe(
      "resistanceBasis must be the key of a table, got 'iso-19624': did you mean iso-19642?",
    );
    expect(fault(() => inputs({ resistanceBasis: 'blade-fuse' })).rule).toBe('table');
    expect(fault(() => inputs({ resistanceBasis: 'us-33-cfr-183-425' })).rule).toBe('table');
    expect(fault(() => inputs({ heating: { table: 'zzz' } })).field).toBe('heating.table');
    expect(fault(() => inputs({ resistanceBasis: '' })).hint).toContain('geometric');
  });

  it('names the field of a mistake down to its place', () => {
    const at = (input: object): string => fault(() => inputs(input)).field;
    expect(at({ outLengthM: '14' })).toBe('outLengthM');
    expect(at({ outParts: [{ lengthM: '3 m' }, { lengthM: '3 V' }] })).toBe('outParts[1].lengthM');
    expect(at({ tapsOhm: ['240 Ω', '2,5 Ω'] })).toBe('tapsOhm[1]');
    expect(at([{ a: { lengthM: '' } }])).toBe('[0].a.lengthM');
    expect(fault(() => inputs({ outLengthM: '14 A' })).message).toBe(
      "outLengthM must be a length with its unit (m, ft, in, mm), got '14 A': 'A' is a current",
    );
  });

  it('lets pass what is no plain object, and keeps keys harmless', () => {
    const odd = {
      at: new Date(0),
      list: new Float64Array([1]),
      run: () => '3 m',
      map: new Map([['lengthM', '3 m']]),
      big: 3n,
    };
    expect(inputs(odd)).toBe(odd);
    const hostile = JSON.parse('{"__proto__": {"lengthM": "3 m"}, "lengthM": "2 m"}') as object;
    const made = inputs(hostile) as Record<string, unknown>;
    expect(Object.getPrototypeOf(made)).toBe(Object.prototype);
    expect(made.lengthM).toBe(2);
    expect(({} as Record<string, unknown>).lengthM).toBeUndefined();
  });

  it('ends at a circle and at great depth', () => {
    const circle: Record<string, unknown> = { lengthM: 1 };
    circle.again = circle;
    expect(fault(() => inputs(circle)).rule).toBe('depth');
    let deep: object = { lengthM: '3 m' };
    for (let i = 0; i < 10_000; i++) deep = { deep };
    expect(fault(() => inputs(deep)).rule).toBe('depth');
  });

  it('has the types that the core takes', () => {
    const made = inputs({
      outLengthM: '14 ft',
      currentA: 12,
      dropV: null,
      rule: 'faa-ac-43-13',
      resistanceBasis: 'geometric',
      tapsOhm: ['3 Ω', 4],
      ready: true,
      parts: [{ name: 'x', lengthM: '3 m' }],
    });
    expectTypeOf(made.outLengthM).toEqualTypeOf<number>();
    expectTypeOf(made.currentA).toEqualTypeOf<12>();
    expectTypeOf(made.dropV).toEqualTypeOf<null>();
    expectTypeOf(made.rule).toEqualTypeOf<'faa-ac-43-13'>();
    expectTypeOf(made.resistanceBasis).toEqualTypeOf<ResistanceBasis>();
    expectTypeOf(made.tapsOhm).toEqualTypeOf<readonly [number, 4]>();
    expectTypeOf(made.parts[0].lengthM).toEqualTypeOf<number>();
    expectTypeOf(inputs({ size: '14 AWG' }).awg).toEqualTypeOf<string | undefined>();
    const wide: { lengthM: string | number; loadTempC?: string } = { lengthM: '3 m' };
    expectTypeOf(inputs(wide).lengthM).toEqualTypeOf<number>();
    expect(inputs(wide)).toEqual({ lengthM: 3 });
    const drop = voltageDrop(
      inputs({
        supplyV: '13.8 V',
        currentA: '15 A',
        outLengthM: '5.5 m',
        returnLengthM: '1 m',
        resistanceOhmPerM: '6.9 mΩ/m',
        ratedTempC: '68 °F',
        conductorTempC: '60 °C',
      }),
    );
    expect(drop.dropV).toBeGreaterThan(0);
  });
});
