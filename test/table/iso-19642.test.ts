import { describe, expect, it } from 'vitest';
import { iec60228Class5, iso19642 } from 'loomwright';
import type { Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, withinBand } from '../support/table-law.js';

const cite: Citation = {
  source: 'iso-19642',
  place: 'ISO 6722-1:2011, bare copper, mΩ/m at 20 °C, from memory',
  status: 'memory',
};

describe('published', () => {
  conductorRows(iso19642, cite, [
    ['0.13', '136'],
    ['0.22', '84.4'],
    ['0.35', '54.4'],
    ['0.5', '37.1'],
    ['0.75', '24.7'],
    ['1', '18.5'],
    ['1.25', '14.9'],
    ['1.5', '12.7'],
    ['2', '9.42'],
    ['2.5', '7.60'],
    ['3', '6.15'],
    ['4', '4.71'],
    ['5', '3.94'],
    ['6', '3.14'],
    ['8', '2.38'],
    ['10', '1.82'],
    ['12', '1.52'],
    ['16', '1.16'],
    ['20', '0.955'],
    ['25', '0.743'],
    ['30', '0.647'],
    ['35', '0.527'],
    ['40', '0.473'],
    ['50', '0.368'],
    ['60', '0.315'],
    ['70', '0.259'],
    ['95', '0.196'],
    ['120', '0.153'],
  ]);
});

describe('laws', () => {
  fallsRowByRow(iso19642);
  withinBand(iso19642, 1.02, 1.15);

  it('is 3 to 6 % below class 5 of IEC 60228 up to 10 mm² and within 8 % of it everywhere, on the low side', () => {
    for (const [size, value] of iso19642.rows) {
      const flexible = iec60228Class5.rows.find(([name]) => name === size)?.[1];
      if (flexible === undefined || size === '0.22') continue;
      expect(value / flexible, size).toBeLessThan(0.98);
      expect(value / flexible, size).toBeGreaterThan(0.92);
    }
  });
  it('says that it is from memory', () => expect(iso19642.status).toBe('memory'));
});
