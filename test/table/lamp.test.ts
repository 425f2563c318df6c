import { describe, expect, it } from 'vitest';
import { filamentLamp, halogenLamp, unR37Lamps } from 'loomwright';
import { transcribed } from '../support/published.js';

describe('published', () => {
  const memory = { source: 'un-r37', place: 'category sheets, 12 V', status: 'memory' } as const;
  const rows = [
    ['H1', 'single', 55, 13.2, 68, 1550],
    ['H3', 'single', 55, 13.2, 68, 1450],
    ['H4', 'main', 60, 13.2, 75, 1650],
    ['H4', 'dipped', 55, 13.2, 68, 1000],
    ['H7', 'single', 55, 13.2, 58, 1500],
    ['H11', 'single', 55, 13.2, 62, 1350],
    ['P21W', 'single', 21, 13.5, 26.5, 460],
    ['P21/5W', 'stop', 21, 13.5, 26.5, 440],
    ['P21/5W', 'tail', 5, 13.5, 6.6, 35],
    ['PY21W', 'single', 21, 13.5, 26.5, 280],
    ['R5W', 'single', 5, 13.5, 5.5, 50],
    ['W5W', 'single', 5, 13.5, 5.5, 50],
    ['C5W', 'single', 5, 13.5, 5.5, 45],
    ['T4W', 'single', 4, 13.5, 4.4, 35],
  ] as const;
  for (const row of rows) {
    transcribed(`${row[0]} ${row[1]}`, memory, () => {
      const found = unR37Lamps.rows.find(({ category, filament }) => category === row[0] && filament === row[1]);
      expect(found).toMatchObject({ nominalW: row[2], testV: row[3], mostW: row[4], lightLumen: row[5] });
    });
  }
  it('has no other rows', () => expect(unR37Lamps.rows.length).toBe(rows.length));

  const law = { source: 'lamp-rerating', place: 'powers of the voltage ratio', status: 'published' } as const;
  transcribed('filament lamps: 0.55, 3.4 to 3.5, 12 to 16, 0.42', law, () =>
    expect(filamentLamp).toMatchObject({
      currentExponent: 0.55,
      lightExponents: [3.4, 3.5],
      lifeExponents: [12, 16],
      colourExponent: 0.42,
    }),
  );
  transcribed('halogen lamps: light 3 to 3.3, no law of life', law, () =>
    expect(halogenLamp).toMatchObject({ lightExponents: [3, 3.3], lifeExponents: null }),
  );
});

describe('laws', () => {
  it('no lamp takes less than its nominal watts at the test voltage, nor a quarter more than the square of the volts', () => {
    for (const { nominalW, mostW, testV, category } of unR37Lamps.rows) {
      expect(mostW, category).toBeGreaterThan(nominalW);
      expect(mostW / nominalW, category).toBeLessThan(1.25 * (testV / unR37Lamps.ratedV) ** 2);
    }
  });
});
