import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { inchesToMm, L_PER_US_GALLON, tankVolume, type TankVolumeInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenly, swapsMatter } from '../support/law.js';
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
  crossTiltDeg: 0,
  measuredFromLowSideMm: 0,
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
  const arcSine = { source: 'horizontal-tank-problem', place: 'arc sine form', status: 'derived' } as const;
  // The source prints the form and no values. A = πa²/2 − a² arcsin(1 − h/a) − (a − h) √(h (2a − h)), the other of the two forms that are printed.
  for (const share of [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.75, 0.9]) {
    computed(`plain cylinder filled to ${share} of its diameter`, arcSine, () => {
      const [a, h] = [200, 400 * share];
      const area = (Math.PI * a * a) / 2 - a * a * Math.asin(1 - h / a) - (a - h) * Math.sqrt(h * (2 * a - h));
      expectWithin(tankVolume({ ...lying, levelMm: h }).volumeL, (area * 1000) / 1e6, 1e-12);
    });
  }
  computed(
    'a box of 231 cubic inches holds a US gallon',
    { source: 'nist-sp-811', place: 'B.8', status: 'memory' },
    () => {
      const [lengthMm, widthMm, heightMm] = [inchesToMm(11), inchesToMm(7), inchesToMm(3)];
      const gallon = tankVolume({ ...box, lengthMm, widthMm, heightMm, levelMm: heightMm });
      expectPrinted(gallon.volumeL, '3.785411784');
    },
  );
  const heads = { ...page('formula of the total of both heads: (4/3) π r² (D/4)'), status: 'derived' } as const;
  computed('both heads of that vessel', heads, () => {
    const r = inchesToMm(20);
    const shell = Math.PI * r * r * inchesToMm(100);
    expectWithin(totalL, (shell + (4 / 3) * Math.PI * r * r * inchesToMm(10)) / 1e6, 1e-12);
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

const { cases: tilted } = JSON.parse(readFileSync(new URL('tank.json', import.meta.url), 'utf8')) as {
  cases: readonly (Omit<TankVolumeInput, 'rowCount'> & { readonly volumeL: number })[];
};

/** Litres by thin columns square to the floor of the tank, each from where it begins to where the surface stands. */
function byColumns(input: TankVolumeInput, n = 700): number {
  const { shape, lengthMm: length, widthMm: width, headDepthMm: c, levelMm } = input;
  const r = width / 2;
  const slope = (deg: number): number => Math.tan((deg * Math.PI) / 180);
  const surface = (x: number, y: number): number =>
    levelMm +
    slope(input.tiltDeg) * (input.measuredFromLowMm - x) +
    slope(input.crossTiltDeg) * (input.measuredFromLowSideMm - y);
  const [from, to] = shape === 'lying' ? [-c, length + c] : [0, shape === 'standing' ? width : length];
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const x = from + ((to - from) * (i + 0.5)) / n;
    for (let k = 0; k < n; k++) {
      const y = (width * (k + 0.5)) / n;
      let [floor, roof] = [0, input.heightMm ?? 0];
      if (shape === 'lying') {
        const out = x < 0 ? -x / c : x > length ? (x - length) / c : 0;
        const half = Math.sqrt(Math.max(0, r * r * (1 - out * out) - (y - r) ** 2));
        [floor, roof] = [r - half, r + half];
      } else if (shape === 'standing') {
        const rho2 = ((x - r) ** 2 + (y - r) ** 2) / (r * r);
        if (rho2 > 1) continue;
        const bulge = c * Math.sqrt(1 - rho2);
        [floor, roof] = [c - bulge, c + length + bulge];
      }
      sum += Math.min(roof, Math.max(floor, surface(x, y))) - floor;
    }
  }
  return (sum * ((to - from) / n) * (width / n)) / 1e6;
}

describe('independent, tilted', () => {
  it.each(tilted.map((each) => [each.shape, each.headDepthMm, each.tiltDeg, each.crossTiltDeg, each] as const))(
    'adaptive quadrature gives the same: %s, ends of %f mm, %f° and %f°',
    (_shape, _ends, _tilt, _cross, { volumeL, ...input }) => {
      const found = tankVolume({ ...input, rowCount: 1 });
      expect(Math.abs(found.volumeL - volumeL) / found.totalL).toBeLessThan(1e-9);
    },
  );
  it.each(tilted.filter((_, i) => i % 3 === 0).map((each) => [each.shape, each] as const))(
    'thin columns give the same: %s',
    (_, { volumeL: __, ...input }) => {
      const found = tankVolume({ ...input, rowCount: 1 });
      expect(Math.abs(found.volumeL - byColumns({ ...input, rowCount: 1 })) / found.totalL).toBeLessThan(5e-4);
    },
  );
});

describe('laws', () => {
  it('what is below a level and what is above it make the whole tank', () => {
    fc.assert(
      fc.property(evenly(0, 1), fc.constantFrom(lying, dished, standing, box), (share, tank) => {
        const { highestLevelMm, totalL } = tankVolume(tank);
        const below = tankVolume({ ...tank, levelMm: highestLevelMm * share }).volumeL;
        const above = tankVolume({ ...tank, levelMm: highestLevelMm * (1 - share) }).volumeL;
        expectWithin(below + above, totalL, 1e-9);
      }),
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
  it('a standing tank with its float in the middle sees what a plumb one sees, until a part is dry', () => {
    const plumb = { ...standing, headDepthMm: 0 };
    const leaning = tankVolume({ ...plumb, tiltDeg: 15, measuredFromLowMm: 200 });
    expectWithin(leaning.volumeL, tankVolume(plumb).volumeL, 1e-12);
  });
  it('a tilt of next to nothing changes nothing, in whatever tank', () => {
    for (const tank of [standing, { ...standing, headDepthMm: 0 }, dished]) {
      const leaning = tankVolume({ ...tank, tiltDeg: 1e-5, measuredFromLowMm: tank.widthMm / 2 });
      expectWithin(leaning.volumeL, tankVolume(tank).volumeL, 1e-6);
    }
    const both = tankVolume({ ...box, tiltDeg: 1e-6, crossTiltDeg: 1e-6 });
    expectWithin(both.volumeL, tankVolume(box).volumeL, 1e-6);
  });
  it('a box does not care which of its tilts is called the first', () => {
    const tilts = { tiltDeg: 12, crossTiltDeg: 7, measuredFromLowMm: 300, measuredFromLowSideMm: 80, levelMm: 140 };
    const turned = {
      ...box,
      lengthMm: box.widthMm,
      widthMm: box.lengthMm,
      levelMm: 140,
      tiltDeg: 7,
      crossTiltDeg: 12,
      measuredFromLowMm: 80,
      measuredFromLowSideMm: 300,
    };
    expectWithin(tankVolume({ ...box, ...tilts }).volumeL, tankVolume(turned).volumeL, 1e-12);
  });
  it('tilted, what is wet from below and what is dry from above make the whole tank', () => {
    const tanks = [
      { ...standing, tiltDeg: 22, measuredFromLowMm: 90 },
      { ...dished, tiltDeg: 14, measuredFromLowMm: 500 },
      { ...box, tiltDeg: 9, crossTiltDeg: 16, measuredFromLowMm: 700, measuredFromLowSideMm: 40 },
    ];
    for (const tank of tanks) {
      for (const share of [0.1, 0.35, 0.6, 0.9]) {
        const { highestLevelMm, totalL } = tankVolume(tank);
        const upside = {
          ...tank,
          measuredFromLowMm: (tank.shape === 'standing' ? tank.widthMm : tank.lengthMm) - tank.measuredFromLowMm,
          measuredFromLowSideMm: tank.shape === 'box' ? tank.widthMm - tank.measuredFromLowSideMm : 0,
        };
        const below = tankVolume({ ...tank, levelMm: highestLevelMm * share }).volumeL;
        const above = tankVolume({ ...upside, levelMm: highestLevelMm * (1 - share) }).volumeL;
        expectWithin(below + above, totalL, 1e-8);
      }
    }
  });
  it('twice the size holds eight times as much', () => {
    const twice = { ...dished, lengthMm: 2 * dished.lengthMm, widthMm: 2 * dished.widthMm };
    const result = tankVolume({ ...twice, headDepthMm: 2 * dished.headDepthMm, levelMm: 2 * dished.levelMm });
    expectWithin(result.volumeL, 8 * tankVolume(dished).volumeL, 1e-12);
  });
  it('does not mistake one input for another', () => {
    swapsMatter(tankVolume, { ...box, tiltDeg: 20, measuredFromLowMm: 220, levelMm: 60 });
    swapsMatter(tankVolume, { ...standing, measuredFromLowMm: 0 });
    swapsMatter(tankVolume, {
      ...box,
      tiltDeg: 20,
      measuredFromLowMm: 220,
      levelMm: 60,
      crossTiltDeg: 10,
      measuredFromLowSideMm: 70,
    });
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
        'crossTiltDeg',
        'measuredFromLowSideMm',
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
    bad({ tiltDeg: 1e-7 }, 'tiltDeg');
    bad({ crossTiltDeg: 5 }, 'crossTiltDeg');
    bad({ crossTiltDeg: 5 }, 'crossTiltDeg', standing);
    bad({ crossTiltDeg: 46 }, 'crossTiltDeg', box);
    bad({ measuredFromLowMm: 1001 }, 'measuredFromLowMm');
    bad({ measuredFromLowMm: 401 }, 'measuredFromLowMm', standing);
    bad({ measuredFromLowSideMm: 351 }, 'measuredFromLowSideMm', box);
    bad({ rowCount: 0 }, 'rowCount');
    bad({ rowCount: 1.5 }, 'rowCount');
    bad({ rowCount: 201 }, 'rowCount');
  });
  it('tells metres, and a tank that nobody has, from millimetres', () => {
    expect(() => tankVolume({ ...box, lengthMm: 0.5 })).toThrow(
      'tankVolume: lengthMm must be at least 1, got 0.5: is this in m?',
    );
    for (const field of ['widthMm', 'heightMm'] as const) {
      expect(() => tankVolume({ ...box, [field]: 0.4 })).toThrow(`${field} must be at least 1, got 0.4: is this in m?`);
    }
    expect(() => tankVolume({ ...lying, headDepthMm: 0.05 })).toThrow('is this in m?');
    expect(() => tankVolume({ ...lying, headDepthMm: 1e6 })).toThrow('headDepthMm must be at most 100000');
    // 5 m by 2 m by 2 m, and 6 m each way: nobody carries either.
    const cube = { ...box, levelMm: 1, measuredFromLowMm: 0, measuredFromLowSideMm: 0 };
    expect(() => tankVolume({ ...cube, lengthMm: 5, widthMm: 2, heightMm: 2 })).toThrow(
      'tankVolume: lengthMm must make a tank of 0.001 to 200000 L with the other sizes, got 5: that makes 0.00002 L: are all sizes in mm?',
    );
    expect(() => tankVolume({ ...cube, lengthMm: 6000, widthMm: 6000, heightMm: 6000 })).toThrow('that makes 220000 L');
    // A sight tube of 6 mm and the tank of a lorry are real.
    expect(tankVolume({ ...lying, headDepthMm: 0, lengthMm: 300, widthMm: 6, levelMm: 3 }).totalL).toBeGreaterThan(0);
    expect(tankVolume({ ...lying, headDepthMm: 0, lengthMm: 12000, widthMm: 2200 }).totalL).toBeGreaterThan(40000);
  });
  it('never runs out of numbers', () => {
    const tanks = [
      lying,
      box,
      standing,
      { ...lying, tiltDeg: 8 },
      { ...standing, tiltDeg: 8 },
      { ...box, crossTiltDeg: 8 },
    ];
    for (const tank of tanks) neverRunsOut(tankVolume, tank, 60);
  });
});

describe('regression', () => {
  it('keeps its digits a hair below the top', () => {
    // What is missing has the area 4/3 √(2r) d^1.5, or 2.7e-8 mm², of a circle of 125 664 mm².
    const { volumeL, totalL } = tankVolume({ ...lying, levelMm: 400 - 1e-6 });
    expectWithin(volumeL, totalL, 1e-12);
  });
});
