import type { LampLaw, LampTable } from './load-type.js';

/** Filament lamps: current goes with V to the 0.55, light to 3.4 … 3.5, life to −12 … −16. */
export const filamentLamp: LampLaw = {
  key: 'filament-lamp',
  source: 'lamp-rerating',
  status: 'published',
  place: 'rerating of lamps; life exponent 12 also in a lamp maker’s glossary, 13 in common use',
  currentExponent: 0.55,
  lightExponents: [3.4, 3.5],
  lifeExponents: [12, 16],
  colourExponent: 0.42,
};

/** Halogen lamps: light to about 3 (short-life types) … 3.3 (long-life); their life follows no such law when under-run. */
export const halogenLamp: LampLaw = {
  key: 'halogen-lamp',
  source: 'lamp-rerating',
  status: 'published',
  place: 'specialist note on halogen lamps for the light; current as for other filaments',
  currentExponent: 0.55,
  lightExponents: [3, 3.3],
  lifeExponents: null,
  colourExponent: null,
};

/** 12 V lamps by category: nominal watts, and at the test voltage the most watts and the light. */
export const unR37Lamps: LampTable = {
  key: 'un-r37-lamps',
  source: 'un-r37',
  status: 'memory',
  place: 'category sheets, 12 V; nominal watts of H1, H3 and H4 read, the rest from memory',
  ratedV: 12,
  rows: [
    { category: 'H1', filament: 'single', nominalW: 55, testV: 13.2, mostW: 68, lightLumen: 1550, status: 'memory' },
    { category: 'H3', filament: 'single', nominalW: 55, testV: 13.2, mostW: 68, lightLumen: 1450, status: 'memory' },
    { category: 'H4', filament: 'main', nominalW: 60, testV: 13.2, mostW: 75, lightLumen: 1650, status: 'memory' },
    { category: 'H4', filament: 'dipped', nominalW: 55, testV: 13.2, mostW: 68, lightLumen: 1000, status: 'memory' },
    { category: 'H7', filament: 'single', nominalW: 55, testV: 13.2, mostW: 58, lightLumen: 1500, status: 'memory' },
    { category: 'H11', filament: 'single', nominalW: 55, testV: 13.2, mostW: 62, lightLumen: 1350, status: 'memory' },
    { category: 'P21W', filament: 'single', nominalW: 21, testV: 13.5, mostW: 26.5, lightLumen: 460, status: 'memory' },
    { category: 'P21/5W', filament: 'stop', nominalW: 21, testV: 13.5, mostW: 26.5, lightLumen: 440, status: 'memory' },
    { category: 'P21/5W', filament: 'tail', nominalW: 5, testV: 13.5, mostW: 6.6, lightLumen: 35, status: 'memory' },
    {
      category: 'PY21W',
      filament: 'single',
      nominalW: 21,
      testV: 13.5,
      mostW: 26.5,
      lightLumen: 280,
      status: 'memory',
    },
    { category: 'R5W', filament: 'single', nominalW: 5, testV: 13.5, mostW: 5.5, lightLumen: 50, status: 'memory' },
    { category: 'W5W', filament: 'single', nominalW: 5, testV: 13.5, mostW: 5.5, lightLumen: 50, status: 'memory' },
    { category: 'C5W', filament: 'single', nominalW: 5, testV: 13.5, mostW: 5.5, lightLumen: 45, status: 'memory' },
    { category: 'T4W', filament: 'single', nominalW: 4, testV: 13.5, mostW: 4.4, lightLumen: 35, status: 'memory' },
  ],
};
