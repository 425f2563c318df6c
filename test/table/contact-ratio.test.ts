import { describe, expect } from 'vitest';
import {
  ac4313Switch12V,
  ac4313Switch28V,
  type ContactRatioTable,
  milPrf22885Rating,
  milR5757Lamp,
  relayMakerInrush,
  relayMakerRating,
  relayModuleInrush,
  switchMakerRating,
} from 'loomwright';
import { transcribed } from '../support/published.js';

describe('published', () => {
  const tables: readonly (readonly [
    ContactRatioTable,
    ContactRatioTable['use'],
    readonly (readonly [string, number, number])[],
  ])[] = [
    [
      ac4313Switch12V,
      'rating',
      [
        ['lamp', 5, 5],
        ['inductive', 2, 2],
        ['resistive', 1, 1],
        ['motor', 2, 2],
      ],
    ],
    [
      ac4313Switch28V,
      'rating',
      [
        ['lamp', 8, 8],
        ['inductive', 4, 4],
        ['resistive', 2, 2],
        ['motor', 3, 3],
      ],
    ],
    [
      switchMakerRating,
      'rating',
      [
        ['resistive', 1, 1],
        ['lamp', 10, 10],
        ['motor', 6, 6],
      ],
    ],
    [
      relayMakerRating,
      'rating',
      [
        ['resistive', 1, 1],
        ['lamp', 5, 5],
      ],
    ],
    [
      milPrf22885Rating,
      'rating',
      [
        ['resistive', 1, 1],
        ['inductive', 7 / 4, 7 / 4],
      ],
    ],
    [
      relayModuleInrush,
      'inrush',
      [
        ['resistive', 1, 1],
        ['solenoid', 10, 20],
        ['motor', 5, 10],
        ['lamp', 10, 15],
        ['mercury-lamp', 3, 3],
        ['sodium-lamp', 1, 3],
        ['capacitor', 20, 40],
        ['transformer', 5, 15],
      ],
    ],
    [
      relayMakerInrush,
      'inrush',
      [
        ['resistive', 1, 1],
        ['motor', 6, 6],
        ['lamp', 10, 15],
      ],
    ],
    [
      milR5757Lamp,
      'inrush',
      [
        ['resistive', 1, 1],
        ['lamp', 12, 12],
      ],
    ],
  ];
  for (const [table, use, rows] of tables) {
    transcribed(
      `${table.key}: ${rows.length} rows`,
      { source: table.source, place: table.place, status: table.status },
      () => {
        expect(table.rows).toEqual(rows);
        expect(table.use).toBe(use);
      },
    );
  }
});
