import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  awgToAreaMm2,
  bladeTerminals,
  checkTerminal,
  connectorLoading,
  pinCurrent,
  roundContacts,
  type CheckTerminalInput,
  type Terminal,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { evenly } from '../support/law.js';
import { computed, expectPrinted, expectWithin, transcribed } from '../support/published.js';

const blade = (name: string): Terminal => bladeTerminals.rows.find((row) => row.name === name)!;
const round = (name: string): Terminal => roundContacts.rows.find((row) => row.name === name)!;
const wire: CheckTerminalInput = {
  terminal: blade('2.8 mm'),
  areaMm2: 2.5,
  outerDiameterMm: 3,
  currentA: 12,
  ambientTempC: 60,
  contactCount: 2,
  loadedCount: 1,
};
const check = (input: CheckTerminalInput, name: string) => checkTerminal(input).checks.find((c) => c.name === name);

describe('published', () => {
  // Ranges of the common families, from memory; the low end of each range is what the table holds.
  const family = { source: 'blade-terminal-practice', place: 'families by width', status: 'memory' } as const;
  for (const [name, least, most, cold, hot, mohm] of [
    ['0.5 mm', 0.13, 0.35, 3, 2, 20],
    ['0.64 mm', 0.22, 0.75, 6, 4, 20],
    ['1.2 mm', 0.35, 1, 12, 8, 10],
    ['1.5 mm', 0.5, 1.5, 14, 10, 10],
    ['2.8 mm', 0.5, 2.5, 25, 18, 5],
    ['4.8 mm', 1, 4, 35, 24, 3],
    ['6.3 mm', 1, 6, 45, 30, 1.5],
    ['9.5 mm', 4, 10, 70, 50, 1],
  ] as const) {
    transcribed(`${name}: ${least} to ${most} mm², ${cold} and ${hot} A, ${mohm} mΩ aged`, family, () => {
      const terminal = blade(name);
      expect(terminal).toMatchObject({ areaLeastMm2: least, areaMostMm2: most, ratedCurrentA: cold, status: 'memory' });
      const at = (ambientTempC: number) =>
        checkTerminal({ ...wire, terminal, areaMm2: least, ambientTempC, currentA: 1 });
      expect(at(25).allowedCurrentA).toBe(cold);
      expect(at(85).allowedCurrentA).toBe(hot);
      expectWithin(at(25).contactDropV!, mohm / 1000, 1e-12);
    });
  }
  // The resistance that the 60 mV limit implies, from the rated current.
  const contacts = {
    source: 'round-contact-data',
    place: 'sealed contacts, 60 mV at rated current',
    status: 'memory',
  } as const;
  for (const [name, amps, mohm] of [
    ['size 20', 7.5, '8.0'],
    ['size 16', 13, '4.6'],
    ['size 12', 25, '2.4'],
    ['size 8', 60, '1.0'],
    ['size 4', 100, '0.6'],
  ] as const) {
    computed(`${name}: ${mohm} mΩ lose 60 mV at ${amps} A`, contacts, () => {
      const terminal = round(name);
      expect(terminal.ratedCurrentA).toBe(amps);
      const { contactDropV } = checkTerminal({
        ...wire,
        terminal,
        areaMm2: terminal.areaMostMm2,
        ambientTempC: 20,
        currentA: amps,
      });
      // Ohms are rounded to two digits: 60 mV to 1 %.
      expectWithin(contactDropV!, 0.06, 0.011);
      expectPrinted((0.06 / amps) * 1000, mohm);
    });
  }
  const seal = {
    source: 'round-contact-data',
    place: 'size 16, standard seal 2.18 to 3.67 mm',
    status: 'published',
  } as const;
  transcribed('size 16 seals on 2.18 to 3.67 mm', seal, () => {
    const on = (outerDiameterMm: number) =>
      checkTerminal({ ...wire, terminal: round('size 16'), areaMm2: 1, outerDiameterMm, ambientTempC: 20 }).ok;
    expect([2.17, 2.18, 3.67, 3.68].map(on)).toEqual([false, true, true, false]);
  });
});

describe('independent', () => {
  it('wire ranges in AWG are those areas, rounded inwards', () => {
    for (const [name, thin, thick] of [
      ['size 20', '22', '16'],
      ['size 16', '20', '14'],
      ['size 12', '14', '10'],
      ['size 8', '10', '8'],
      ['size 4', '6', '4'],
    ] as const) {
      const { areaLeastMm2, areaMostMm2 } = round(name);
      expect(areaLeastMm2 - awgToAreaMm2(thin), name).toBeGreaterThanOrEqual(0);
      expect(areaLeastMm2 - awgToAreaMm2(thin), name).toBeLessThan(0.01);
      expect(awgToAreaMm2(thick) - areaMostMm2, name).toBeGreaterThanOrEqual(0);
      expect(awgToAreaMm2(thick) - areaMostMm2, name).toBeLessThan(0.01);
    }
  });
  it('between two printed points the heat of the contact is a straight line', () => {
    // 25 A at 25 °C, 18 A at 85 °C: half-way in heat at 55 °C.
    const { allowedCurrentA } = checkTerminal({ ...wire, ambientTempC: 55 });
    expectWithin(allowedCurrentA! ** 2, (25 ** 2 + 18 ** 2) / 2, 1e-12);
  });
  it('a derating by rise is that of pinCurrent', () => {
    const derating = { kind: 'rise', ratedRiseK: 30, maxTempC: 125, reductionFraction: 0.8 } as const;
    const terminal: Terminal = { ...round('size 16'), derating };
    const { allowedCurrentA } = checkTerminal({ ...wire, terminal, areaMm2: 1, ambientTempC: 100 });
    const { currentA } = pinCurrent({
      ratedCurrentA: 13,
      ratedRiseK: 30,
      maxTempC: 125,
      ambientTempC: 100,
      reductionFraction: 0.8,
      loadingFactor: 1,
    });
    expect(allowedCurrentA).toBe(currentA);
  });
  it('the heat of a contact is current squared times its resistance', () => {
    const { contactDropV, contactLossW } = checkTerminal(wire);
    expectWithin(contactDropV!, 12 * 0.005, 1e-12);
    expectWithin(contactLossW!, 12 * 12 * 0.005, 1e-12);
  });
});

describe('laws', () => {
  it('hotter surroundings, more loaded neighbours or a thinner wire never allow more', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...bladeTerminals.rows),
        evenly(-20, 84),
        fc.integer({ min: 1, max: 23 }),
        (terminal, ambientTempC, loadedCount) => {
          const of = (change: Partial<CheckTerminalInput>) =>
            checkTerminal({
              ...wire,
              terminal,
              areaMm2: terminal.areaMostMm2,
              contactCount: 24,
              loadingTable: connectorLoading,
              ambientTempC,
              loadedCount,
              ...change,
            }).allowedCurrentA!;
          const here = of({});
          expect(here).toBeLessThanOrEqual(terminal.ratedCurrentA);
          expect(of({ ambientTempC: ambientTempC + 1 })).toBeLessThanOrEqual(here);
          expect(of({ loadedCount: loadedCount + 1 })).toBeLessThanOrEqual(here);
          expect(of({ areaMm2: terminal.areaLeastMm2 })).toBeLessThanOrEqual(here);
        },
      ),
    );
  });
  it('walks every family and area: a wire outside the crimp never passes, one inside does', () => {
    for (const terminal of [...bladeTerminals.rows, ...roundContacts.rows]) {
      const { areaLeastMm2, areaMostMm2, insulationMostMm = 3 } = terminal;
      const ok = (areaMm2: number) =>
        checkTerminal({ ...wire, terminal, areaMm2, outerDiameterMm: insulationMostMm, currentA: 0, ambientTempC: 20 })
          .ok;
      expect([0.999 * areaLeastMm2, areaLeastMm2, areaMostMm2, 1.001 * areaMostMm2].map(ok), terminal.name).toEqual([
        false,
        true,
        true,
        false,
      ]);
    }
  });
  it('the current allowed is exactly enough', () => {
    const { allowedCurrentA } = checkTerminal(wire);
    expect(checkTerminal({ ...wire, currentA: allowedCurrentA! }).ok).toBe(true);
    expect(checkTerminal({ ...wire, currentA: allowedCurrentA! * (1 + 1e-12) + 1e-12 }).ok).toBe(false);
  });
});

describe('edges', () => {
  it('a thin wire in a full connector: the loading table is read by the area', () => {
    const of = (areaMm2: number) =>
      checkTerminal({ ...wire, areaMm2, contactCount: 12, loadedCount: 12, loadingTable: connectorLoading })
        .loadingFactor;
    expect(of(2.5)).toBe(0.297);
    expect(of(0.8231)).toBe(0.297);
    expect(of(0.823)).toBe(0.236); // 18 AWG is 0.82305 mm²
    expect(of(0.75)).toBe(0.236); // thinner than 18 AWG: column of 20
    expect(of(0.5)).toBe(0.192); // thinner than 20 AWG: column of 22
  });
  it('promises nothing where no figure reaches', () => {
    expect(checkTerminal({ ...wire, ambientTempC: 86 })).toMatchObject({ ok: false, allowedCurrentA: null });
    const bare = checkTerminal({ ...wire, terminal: round('size 12'), ambientTempC: 26, currentA: 0.1 });
    expect(bare).toMatchObject({ ok: false, allowedCurrentA: null, decidedBy: 'current of the contact' });
    expect(bare.checks.find((c) => c.name === 'current of the contact')!.because).toBe(
      'no figure tells what this contact may carry at 26 °C',
    );
    expect(checkTerminal({ ...wire, terminal: round('size 12'), ambientTempC: 25 }).allowedCurrentA).toBe(25);
  });
  it('like platings pass, unlike and unknown ones do not', () => {
    const tin: Terminal = { ...wire.terminal, plating: 'tin' };
    expect(checkTerminal({ ...wire, terminal: tin, matingPlating: 'tin' }).ok).toBe(true);
    expect(check({ ...wire, terminal: tin, matingPlating: 'gold' }, 'platings of the pair')).toMatchObject({
      ok: false,
      because: 'tin on gold: unlike platings fret and corrode where they touch',
    });
    expect(checkTerminal({ ...wire, matingPlating: 'tin' }).ok).toBe(false);
  });
  it('judges the drop where a limit is given', () => {
    expect(check({ ...wire, dropLimitV: 0.06 }, 'drop over the contact')!.ok).toBe(true);
    expect(check({ ...wire, dropLimitV: 0.0599 }, 'drop over the contact')!.ok).toBe(false);
    const { contactOhm: _, ...unknown } = wire.terminal;
    expect(check({ ...wire, terminal: unknown, dropLimitV: 0.06 }, 'drop over the contact')).toMatchObject({
      ok: false,
      value: null,
    });
    expect(checkTerminal({ ...wire, terminal: unknown })).toMatchObject({ contactDropV: null, contactLossW: null });
  });
  it('a seal is judged by the least and the largest diameter', () => {
    const terminal: Terminal = { ...wire.terminal, insulationLeastMm: 2.6, insulationMostMm: 3.1 };
    expect(checkTerminal({ ...wire, terminal, leastOuterMm: 2.7 }).ok).toBe(true);
    expect(check({ ...wire, terminal, leastOuterMm: 2.5 }, 'seal closes on the insulation')!.ok).toBe(false);
    expect(check({ ...wire, terminal, outerDiameterMm: 3.2 }, 'insulation goes into the seal')!.ok).toBe(false);
  });
  it('refuses nonsense with the field that is at fault', () => {
    refusesNonsense(checkTerminal, wire, {
      required: ['areaMm2', 'outerDiameterMm', 'currentA', 'ambientTempC', 'contactCount', 'loadedCount'],
      optional: ['leastOuterMm', 'dropLimitV'],
    });
    const of = (terminal: unknown) => () => checkTerminal({ ...wire, terminal: terminal as Terminal });
    expectInputError(of(undefined), 'terminal', 'missing');
    expectInputError(of('2.8'), 'terminal', 'object');
    expectInputError(of({ ...wire.terminal, areaLeastMm2: 0 }), 'terminal.areaLeastMm2', 'above');
    expectInputError(of({ ...wire.terminal, areaMostMm2: 0.4 }), 'terminal.areaMostMm2', 'atLeast');
    expectInputError(of({ ...wire.terminal, ratedCurrentA: NaN }), 'terminal.ratedCurrentA', 'finite');
    expectInputError(of({ ...wire.terminal, contactOhm: -1 }), 'terminal.contactOhm', 'atLeast');
    expectInputError(of({ ...wire.terminal, plating: 'mud' }), 'terminal.plating', 'oneOf');
    expectInputError(
      of({ ...wire.terminal, insulationLeastMm: 3, insulationMostMm: 2 }),
      'terminal.insulationMostMm',
      'atLeast',
    );
    expectInputError(of({ ...wire.terminal, derating: { kind: 'x' } }), 'terminal.derating.kind', 'oneOf');
    expectInputError(
      of({ ...wire.terminal, derating: { kind: 'points', points: [] } }),
      'terminal.derating.points',
      'list',
    );
    for (const points of [
      [
        [25, 5],
        [25, 4],
      ],
      [
        [25, 5],
        [85, 6],
      ],
    ]) {
      expectInputError(
        of({ ...wire.terminal, derating: { kind: 'points', points } }),
        'terminal.derating.points[1]',
        'order',
      );
    }
    const rise = { kind: 'rise', ratedRiseK: 30, maxTempC: 125, reductionFraction: 0.8 };
    expectInputError(
      of({ ...wire.terminal, derating: { ...rise, ratedRiseK: 0 } }),
      'terminal.derating.ratedRiseK',
      'above',
    );
    expectInputError(
      of({ ...wire.terminal, derating: { ...rise, reductionFraction: 2 } }),
      'terminal.derating.reductionFraction',
      'atMost',
    );
    expectInputError(() => checkTerminal({ ...wire, loadedCount: 3 }), 'loadedCount', 'atMost');
    expectInputError(() => checkTerminal({ ...wire, loadedCount: 2 }), 'loadingTable', 'missing');
    expectInputError(() => checkTerminal({ ...wire, leastOuterMm: 3.1 }), 'leastOuterMm', 'atMost');
    expectInputError(() => checkTerminal({ ...wire, matingPlating: 'mud' as never }), 'matingPlating', 'oneOf');
    expectInputError(
      () => checkTerminal({ ...wire, areaMm2: 0.05, loadingTable: connectorLoading }),
      'areaMm2',
      'inTable',
    );
    expect(() => checkTerminal({ ...wire, loadedCount: 2 })).toThrow(
      'checkTerminal: loadingTable must be a table of loading factors, got nothing',
    );
  });
});
