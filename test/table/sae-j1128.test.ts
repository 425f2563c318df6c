import { describe, expect, it } from 'vitest';
import { awgToAreaMm2, mm2ToCircularMils, saeJ1128 } from 'loomwright';
import type { Citation } from '../support/published.js';
import { conductorRows, fallsRowByRow, withinBand } from '../support/table-law.js';

const cite: Citation = { source: 'sae-j1128', place: 'minimum circular mils, from memory', status: 'memory' };
const battery: Citation = { source: 'sae-j1127', place: 'minimum circular mils, from memory', status: 'memory' };

describe('published', () => {
  conductorRows(saeJ1128, cite, [
    ['18', '1537'],
    ['16', '2336'],
    ['14', '3702'],
    ['12', '5833'],
    ['10', '9343'],
    ['8', '14810'],
    ['6', '25910', battery],
    ['4', '37360', battery],
    ['2', '62450', battery],
    ['1', '77790', battery],
    ['1/0', '98980', battery],
    ['2/0', '125100', battery],
    ['3/0', '158600', battery],
    ['4/0', '205500', battery],
  ]);
});

describe('laws', () => {
  fallsRowByRow(saeJ1128);
  // The table prints an area: its resistance is that of ideal copper of the area, which no stranded wire reaches.
  withinBand(saeJ1128, 1 - 1e-9, 1 + 1e-9);

  it('every SAE size has less copper than the AWG size of its number: by 2.9 to 11 %, the doubtful No. 6 by 1.3 %', () => {
    for (const [size, circularMils] of saeJ1128.rows) {
      const share = circularMils / mm2ToCircularMils(awgToAreaMm2(size));
      expect(share, size).toBeLessThan(size === '6' ? 0.99 : 0.9715);
      expect(share, size).toBeGreaterThan(0.89);
    }
  });
  it('says that it is from memory, and which figure is in doubt', () => {
    expect(saeJ1128.status).toBe('memory');
    expect(saeJ1128.place).toContain('No. 6 figure is doubtful');
  });
});
