import { expect } from 'vitest';
import { loadDump12V, loadDump24V } from 'loomwright';
import { transcribed } from '../support/published.js';

const cite = { source: 'iso-16750-2', place: 'load dump, tests A and B', status: 'published' } as const;

transcribed('12 V, test A: 79–101 V, 0.5–4 Ω, 40–400 ms, ten pulses', cite, () => {
  expect(loadDump12V).toMatchObject({
    openPeaksV: [79, 101],
    sourcesOhm: [0.5, 4],
    durationsMs: [40, 400],
    pulseCount: 10,
    supplyV: 14,
  });
});
transcribed('12 V, test B: 35 V, five pulses', cite, () => {
  expect(loadDump12V).toMatchObject({ suppressedV: 35, suppressedPulseCount: 5 });
});
transcribed('24 V, test A: 151–202 V, 1–8 Ω, 100–350 ms', cite, () => {
  expect(loadDump24V).toMatchObject({
    openPeaksV: [151, 202],
    sourcesOhm: [1, 8],
    durationsMs: [100, 350],
    supplyV: 28,
  });
});
transcribed('24 V, test B: typically 58 V, five pulses', cite, () => {
  expect(loadDump24V).toMatchObject({ suppressedV: 58, suppressedPulseCount: 5 });
});
