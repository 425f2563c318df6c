import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fieldUnit, fieldUnits, parseQuantity } from '@loomwright/worked/quantity';

describe('independent', () => {
  // Every name of the house's list of names, with the unit that its end says to a reader.
  const names: readonly (readonly [name: string, unit: string | null])[] = [
    ['currentA', 'A'],
    ['supplyV', 'V'],
    ['dropV', 'V'],
    ['resistanceOhm', 'Ω'],
    ['outLengthM', 'm'],
    ['returnLengthM', 'm'],
    ['areaMm2', 'mm²'],
    ['diameterMm', 'mm'],
    ['powerW', 'W'],
    ['lossWPerM', 'W/m'],
    ['massKg', 'kg'],
    ['timeS', 's'],
    ['frequencyHz', 'Hz'],
    ['i2tA2s', 'A²s'],
    ['ambientTempC', '°C'],
    ['conductorTempC', '°C'],
    ['tempRiseK', 'K'],
    ['chargeAh', 'Ah'],
    ['volumeL', 'L'],
    ['pressureKpa', 'kPa'],
    ['dropFraction', 'fraction'],
    ['inductanceH', 'H'],
    ['capacitanceF', 'F'],
    ['torqueNm', 'N·m'],
    ['accelerationG', 'gₙ'],
    ['angleDeg', '°'],
    ['speedKmh', 'km/h'],
    ['speedRpm', 'rpm'],
    ['lightLumen', 'lm'],
    ['resistanceOhmPerM', 'Ω/m'],
    ['densityGPerCm3', 'g/cm³'],
    ['massKgPerM', 'kg/m'],
    ['massGPerM', 'g/m'],
    ['resistivityOhmMm2PerM', 'Ω·mm²/m'],
    ['resistivity20OhmMm2PerM', 'Ω·mm²/m'],
    ['specificHeatJPerKgK', 'J/(kg·K)'],
    ['conductivityWPerMK', 'W/(m·K)'],
    ['heatTransferWPerM2K', 'W/(m²·K)'],
    ['expansionPerK', '1/K'],
    ['viscosityPaS', 'Pa·s'],
    ['kinematicViscosityM2PerS', 'm²/s'],
    ['densityKgPerM3', 'kg/m³'],
    ['speedConstantRpmPerV', 'rpm/V'],
    ['slopeMvPerK', 'mV/K'],
    ['slopeMvPerC', 'mV/K'],
    ['flowLPerH', 'L/h'],
    ['flowLPerMin', 'L/min'],
    ['drainAhPerDay', 'Ah/d'],
    ['pulsesPerKm', '1/km'],
    ['countsPerV', '1/V'],
    ['rateFractionPerK', '1/K'],
    ['runTimeH', 'h'],
    ['runHours', 'h'],
    ['storageDays', 'd'],
    ['clearWithinS', 's'],
    ['toMv', 'mV'],
    ['classesC', '°C'],
    ['tapsOhm', 'Ω'],
    ['resolutionBits', 'bit'],
    ['bitRateBitPerS', 'bit/s'],
    ['gainDb', 'dB'],
    ['outputMw', 'mW'],
    ['tolerancePercent', '%'],
    ['betaK', 'K'],
    // no unit at the end
    ['rule', null],
    ['awg', null],
    ['saeGauge', null],
    ['name', null],
    ['teeth', null],
    ['a', null],
    ['b', null],
    ['c', null],
    ['A', null],
    ['V', null],
    ['M', null],
    ['', null],
    ['Per', null],
    ['xPer', null],
    ['isCAN', null],
    ['viaLAN', null],
    ['usesESD', null],
    ['conductorTempK', null],
    ['superPerson', null],
    ['__proto__', null],
    ['constructor', null],
  ];
  for (const [name, unit] of names) {
    it(`${name || '(nothing)'} is in ${unit ?? 'no unit'}`, () => expect(fieldUnit(name)).toBe(unit));
  }
});

describe('laws', () => {
  it('gives units that parseQuantity reads, alone and in quotients', () => {
    for (const { suffix, unit } of fieldUnits) {
      const written = unit === 'fraction' || unit === '1' ? '' : unit === 'gₙ' ? 'g' : unit;
      expect(parseQuantity(`3 ${written}`, unit, suffix), suffix).toBe(3);
      const quotient = fieldUnit(`some${suffix.replace(/Per.*/, '')}PerM`);
      expect(quotient, suffix).not.toBeNull();
      expect(parseQuantity(`3 ${(quotient as string).replace('gₙ', 'g')}`, quotient as string, suffix), suffix).toBe(3);
    }
  });

  it('takes the longest end', () => {
    for (const a of fieldUnits) {
      for (const b of fieldUnits) {
        if (a !== b && a.suffix.endsWith(b.suffix)) expect(fieldUnit(`some${a.suffix}`)).toBe(a.unit);
      }
    }
  });

  it('has one unit an end', () => {
    expect(new Set(fieldUnits.map(({ suffix }) => suffix)).size).toBe(fieldUnits.length);
  });
});

describe('edges', () => {
  // A word in a field whose name ends in a unit would be read as a quantity.
  it('finds no unit in a name under which the core takes a word', () => {
    const root = fileURLToPath(new URL('../../../packages/loomwright/src/', import.meta.url));
    const files = (folder: string): string[] =>
      readdirSync(folder).flatMap((name) => {
        const path = join(folder, name);
        return statSync(path).isDirectory() ? files(path) : path.endsWith('.ts') ? [path] : [];
      });
    const words = files(root).flatMap((file) =>
      [...readFileSync(file, 'utf8').matchAll(/readonly ([a-z]\w*)\??: (?:string\b|')/g)].map((m) => m[1] as string),
    );
    expect(words.length).toBeGreaterThan(20);
    expect([...new Set(words)].filter((name) => fieldUnit(name) !== null)).toEqual([]);
  });
});
