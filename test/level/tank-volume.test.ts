import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { inchesToMm, L_PER_US_GALLON, tankVolume, type TankVolumeInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';

const lying: TankVolumeInput = {
  shape: 'lying',
  lengthMm: 1000,
  widthMm: 400,
  heightMm: null,
  headDepthMm: 0,
  levelMm: 120,
  tiltDeg: 0,
  measuredFromLowMm: 0,
  rowCount: 20,
};
const box: TankVolumeInput = { ...lying, shape: 'box', widthMm: 350, heightMm: 250 };
const standing: TankVolumeInput = { ...lying, shape: 'standing', headDepthMm: 80, levelMm: 500 };
const dished: TankVolumeInput = {
  ...lying,
  lengthMm: inchesToMm(100),
  widthMm: inchesToMm(40),
  headDepthMm: inchesToMm(10),
  levelMm: inchesToMm(16),
};

describe('published', () => {
  const page = (place: string) => ({ source: 'tank-fill-table', place, status: 'published' }) as const;
  const { volumeL, totalL, fillFraction, strapping } = tankVolume(dished);
  computed('whole tank, gallons', page('worked example'), () => {
    expectPrinted(totalL / L_PER_US_GALLON, '616.5');
  });
  computed('at 16 inches, gallons', page('worked example'), () => {
    expectPrinted(volumeL / L_PER_US_GALLON, '228.7');
  });
  computed('at 16 inches, per cent', page('worked example'), () => {
    expectPrinted(fillFraction * 100, '37.1');
  });
  const fill = '1.7 4.9 9 13.8 19.1 24.8 30.8 37.1 43.5 50 56.5 62.9 69.2 75.2 80.9 86.2 91 95.1 98.3'.split(' ');
  fill.forEach((print, i) => {
    computed(`depth of ${5 * (i + 1)} %: per cent full`, page('table of fill'), () => {
      expectPrinted((strapping[i + 1]!.volumeL / totalL) * 100, print.includes('.') ? print : `${print}.0`);
    });
  });
  const problem = {
    source: 'horizontal-tank-problem',
    place: 'surface 1 m wide, 0.2 m below the top, 10 m long',
    status: 'published',
  } as const;
  computed('litres in m³', problem, () => {
    const tank = tankVolume({ ...lying, lengthMm: 10_000, widthMm: 1450, levelMm: 1250 });
    expectPrinted(tank.volumeL / 1000, '15.138');
  });
});

/** Litres by slices along the length, each by thin layers: no closed form of any of it. */
function bySlices(input: TankVolumeInput, slices = 400, layers = 800): number {
  const { shape, lengthMm: length, widthMm: width, headDepthMm: c, levelMm, tiltDeg, measuredFromLowMm } = input;
  const r = width / 2;
  const slope = Math.tan((tiltDeg * Math.PI) / 180);
  let sum = 0;
  if (shape === 'standing') {
    for (let k = 0; k < layers * 10; k++) {
      const y = ((k + 0.5) / (layers * 10)) * levelMm;
      const off = y < c ? (c - y) / c : y > c + length ? (y - c - length) / c : 0;
      sum += Math.PI * r * r * (1 - off * off) * (levelMm / (layers * 10));
    }
    return sum / 1e6;
  }
  const height = input.heightMm ?? width;
  for (let i = 0; i < slices; i++) {
    const x = ((i + 0.5) / slices) * length;
    const depth = Math.min(height, Math.max(0, levelMm + slope * (measuredFromLowMm - x)));
    for (let k = 0; k < layers; k++) {
      const y = ((k + 0.5) / layers) * depth;
      const across = shape === 'box' ? width : 2 * Math.sqrt(Math.max(0, r * r - (y - r) ** 2));
      // Each dished end adds half of an ellipse to every layer, the same at both ends.
      const head = i === 0 && c > 0 ? (Math.PI / 4) * across * ((across / 2) * (c / r)) * 2 : 0;
      sum += (across * (length / slices) + head) * (depth / layers);
    }
  }
  return sum / 1e6;
}

describe('independent', () => {
  const cases: readonly (readonly [string, TankVolumeInput])[] = [
    ['lying', lying],
    ['lying, dished', { ...lying, headDepthMm: 70, levelMm: 310 }],
    ['standing in the bottom end', { ...standing, levelMm: 50 }],
    ['standing', standing],
    ['standing in the top end', { ...standing, levelMm: 1120 }],
    ['box', box],
    ['box, tilted, both ends wet', { ...box, tiltDeg: 4, measuredFromLowMm: 300 }],
    ['box, tilted, a dry end', { ...box, tiltDeg: 20, measuredFromLowMm: 100, levelMm: 60 }],
    ['box, tilted, to the top', { ...box, tiltDeg: 12, measuredFromLowMm: 700, levelMm: 200 }],
    ['lying, tilted', { ...lying, tiltDeg: 5, measuredFromLowMm: 400 }],
    ['lying, tilted hardly', { ...lying, tiltDeg: 0.005, measuredFromLowMm: 400 }],
    ['lying, tilted, dry and to the top', { ...lying, tiltDeg: 35, measuredFromLowMm: 500, levelMm: 230 }],
  ];
  it.each(cases)('thin slices give the same litres: %s', (_, input) => {
    expectWithin(tankVolume(input).volumeL, bySlices(input), 3e-4);
  });
});

describe('laws', () => {
  it('what is below a level and what is above it make the whole tank', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom(lying, dished, standing, box),
        (share, tank) => {
          const { highestLevelMm, totalL } = tankVolume(tank);
          const below = tankVolume({ ...tank, levelMm: highestLevelMm * share }).volumeL;
          const above = tankVolume({ ...tank, levelMm: highestLevelMm * (1 - share) }).volumeL;
          expectWithin(below + above, totalL, 1e-9);
        },
      ),
    );
  });
  it('more level is more litres, tilted or not, and a tilt of next to nothing changes nothing', () => {
    for (const tank of [lying, box, standing, { ...lying, tiltDeg: 8, measuredFromLowMm: 500 }]) {
      const { strapping, totalL } = tankVolume(tank);
      for (let i = 1; i < strapping.length; i++)
        expect(strapping[i]!.volumeL).toBeGreaterThan(strapping[i - 1]!.volumeL);
      expect(strapping.at(-1)!.volumeL).toBeLessThanOrEqual(totalL * (1 + 1e-12));
    }
    for (const tank of [lying, box]) {
      const tilted = tankVolume({ ...tank, tiltDeg: 1e-6, measuredFromLowMm: 500 });
      expectWithin(tilted.volumeL, tankVolume(tank).volumeL, 1e-6);
    }
  });
  it('a float in the middle of a tilted box sees what a level one sees, until an end is dry', () => {
    const tilted = tankVolume({ ...box, tiltDeg: 5, measuredFromLowMm: 500, levelMm: 100 });
    expectWithin(tilted.volumeL, tankVolume({ ...box, levelMm: 100 }).volumeL, 1e-9);
  });
  it('twice the size holds eight times as much', () => {
    const twice = { ...dished, lengthMm: 2 * dished.lengthMm, widthMm: 2 * dished.widthMm };
    const result = tankVolume({ ...twice, headDepthMm: 2 * dished.headDepthMm, levelMm: 2 * dished.levelMm });
    expectWithin(result.volumeL, 8 * tankVolume(dished).volumeL, 1e-12);
  });
  it('does not mistake one input for another', () => {
    swapsMatter(tankVolume, { ...box, tiltDeg: 20, measuredFromLowMm: 220, levelMm: 60 });
    swapsMatter(tankVolume, { ...standing, measuredFromLowMm: 0 });
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(tankVolume, box, {
      required: [
        'lengthMm',
        'widthMm',
        'heightMm',
        'headDepthMm',
        'levelMm',
        'tiltDeg',
        'measuredFromLowMm',
        'rowCount',
      ],
    });
    const bad = (over: Partial<TankVolumeInput>, field: string, tank = lying) => {
      expectInputError(() => tankVolume({ ...tank, ...over }), field);
    };
    bad({ shape: 'ball' as never }, 'shape');
    bad({ heightMm: 100 }, 'heightMm');
    bad({ heightMm: null }, 'heightMm', box);
    bad({ headDepthMm: 50 }, 'headDepthMm', box);
    bad({ levelMm: 401 }, 'levelMm');
    bad({ levelMm: 1161 }, 'levelMm', standing);
    bad({ tiltDeg: 46 }, 'tiltDeg');
    bad({ tiltDeg: 5 }, 'tiltDeg', standing);
    bad({ tiltDeg: 5, headDepthMm: 10 }, 'tiltDeg');
    bad({ measuredFromLowMm: 1001 }, 'measuredFromLowMm');
    bad({ rowCount: 0 }, 'rowCount');
    bad({ rowCount: 1.5 }, 'rowCount');
    bad({ rowCount: 201 }, 'rowCount');
  });
  it('never runs out of numbers', () => {
    for (const tank of [lying, box, standing, { ...lying, tiltDeg: 8 }]) neverRunsOut(tankVolume, tank, 60);
  });
});

describe('regression', () => {
  it('keeps its digits a hair below the top', () => {
    // What is missing has the area 4/3 √(2r) d^1.5, or 2.7e-8 mm², of a circle of 125 664 mm².
    const { volumeL, totalL } = tankVolume({ ...lying, levelMm: 400 - 1e-6 });
    expectWithin(volumeL, totalL, 1e-12);
  });
});
