import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { e12, type SaddleFault, type SaddleLobe, saddleTank, type SaddleTankInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const rows = (...list: readonly (readonly [number, number])[]): SaddleLobe['strapping'] =>
  list.map(([levelFraction, volumeL]) => ({ levelFraction, volumeL }));
const lobe: SaddleLobe = { strapping: rows([0, 0], [1, 30]), emptyOhm: 90, fullOhm: 10, saddleFraction: 0.5 };
const series: SaddleTankInput = {
  left: lobe,
  right: lobe,
  pumpSide: 'left',
  wiring: 'series',
  fixedOhm: 0,
  biasV: 5,
  biasOhm: 180,
  inputOhm: null,
  faultV: 14.4,
  guardV: 0.1,
  series: e12,
};
const parallel: SaddleTankInput = { ...series, wiring: 'parallel' };
const apart: SaddleTankInput = {
  ...series,
  wiring: 'two-inputs',
  pumpSide: 'right',
  left: { strapping: rows([0, 0], [0.5, 25], [1, 40]), emptyOhm: 10, fullOhm: 180, saddleFraction: 0.5 },
  right: { strapping: rows([0, 0], [1, 20]), emptyOhm: 180, fullOhm: 10, saddleFraction: 0.6 },
};
const uneven: SaddleTankInput = {
  ...parallel,
  left: { strapping: rows([0, 0], [0.3, 12], [1, 26]), emptyOhm: 110, fullOhm: 4, saddleFraction: 0.4 },
  right: { strapping: rows([0, 0], [0.6, 9], [1, 22]), emptyOhm: 80, fullOhm: 7, saddleFraction: 0.55 },
  fixedOhm: 12,
};
const fault = (input: SaddleTankInput, kind: SaddleFault['kind'], side: SaddleFault['side']): SaddleFault =>
  saddleTank(input).faults.find((each) => each.kind === kind && each.side === side)!;

describe('published', () => {
  const worked = (place: string) =>
    ({ source: 'circuit-theory', place: `worked by hand: ${place}`, status: 'derived' }) as const;
  const check = (
    cite: ReturnType<typeof worked>,
    input: SaddleTankInput,
    points: readonly (readonly [number, string, readonly string[]])[],
  ) => {
    const { path } = saddleTank(input);
    points.forEach(([stretch, litres, volts]) => {
      computed(`after stretch ${stretch}: ${litres} L at ${volts.join(' and ')} V`, cite, () => {
        const at = path[12 * stretch]!;
        expectPrinted(at.volumeL, litres);
        volts.forEach((print, i) => {
          expectPrinted(at.pinV[i]!, print);
        });
      });
    });
  };
  const faults = (
    cite: ReturnType<typeof worked>,
    input: SaddleTankInput,
    list: readonly (readonly [SaddleFault['kind'], SaddleFault['side'], SaddleFault['seen'], string, string, string])[],
  ) => {
    list.forEach(([kind, side, seen, over, under, watts]) => {
      computed(`${kind} ${side}: ${seen}, ${over} L over, ${under} L under, ${watts} W`, cite, () => {
        const found = fault(input, kind, side);
        expect(found.seen).toBe(seen);
        expectPrinted(found.mostOverL, over);
        expectPrinted(found.mostUnderL, under);
        expectPrinted(found.tankW!, watts);
      });
    });
    computed('no fault is left out', cite, () => {
      expect(saddleTank(input).faults.length).toBe(list.length);
    });
  };

  // Two times 90 to 10 Ω and 30 L, saddle at half, on 180 Ω to 5 V. Shown: L = 60 − 60 (R − 20)/160.
  const a = worked('two floats in series');
  check(a, series, [
    [0, '60.00', ['0.5000']],
    [1, '30.00', ['1.7857']],
    [2, '15.00', ['2.1875']],
    [3, '0.00', ['2.5000']],
  ]);
  // A shorted sender: with the other at 30 Ω or less told (30 Ω: 0.714 V; below 15.65 Ω: under 0.4 V). Empty: 90 Ω, 33.75 L.
  faults(a, series, [
    ['sender-open', 'left', 'always', '0.00', '0.00', '0'],
    ['sender-open', 'right', 'always', '0.00', '0.00', '0'],
    ['sender-shorted', 'left', 'sometimes', '33.75', '0.00', '0'],
    ['sender-shorted', 'right', 'sometimes', '33.75', '0.00', '0'],
    ['wire-open', 'both', 'always', '0.00', '0.00', '0'],
    ['wire-to-ground', 'both', 'always', '0.00', '0.00', '0'],
    ['wire-to-battery', 'both', 'always', '0.00', '0.00', '10.368'],
    ['between-to-ground', 'both', 'sometimes', '33.75', '0.00', '0'],
    ['between-to-battery', 'both', 'always', '0.00', '0.00', '20.760'],
  ]);
  computed('a dead transfer leaves 15 L, which are shown as there', a, () => {
    expectPrinted(saddleTank(series).trappedL, '15.00');
    expectPrinted(saddleTank(series).lostOverL, '15.00');
    expectPrinted(saddleTank(series).mostAmbiguityL, '0.000000');
  });
  computed('a guard of 0.6 V wants 4.55 Ω more: 4.7 Ω', a, () => {
    expect(saddleTank({ ...series, guardV: 0.6 }).leastFixedOhm).toBe(4.7);
    expect(saddleTank(series).leastFixedOhm).toBe(0);
  });

  // The same in parallel: 5, 25, 32.143 and 45 Ω.
  const b = worked('two floats in parallel');
  check(b, parallel, [
    [0, '60.00', ['0.1351']],
    [1, '30.00', ['0.6098']],
    [2, '15.00', ['0.7576']],
    [3, '0.00', ['1.0000']],
  ]);
  computed('25 Ω may be 30 L or 20.77', b, () => {
    const at = saddleTank(parallel).path[12]!;
    expectPrinted(at.leastL, '20.77');
    expectPrinted(at.mostL, '30.00');
  });
  // Left open, the input sees the right one alone. At 45 Ω, the reading of the empty tank, the right one stands at
  // 0.5625: 33.75 L are there and none is shown. Told above 1.1 V or 50.8 Ω, which is below the saddle's 50 Ω.
  faults(b, parallel, [
    ['sender-open', 'left', 'sometimes', '0.00', '33.75', '0'],
    ['sender-open', 'right', 'sometimes', '0.00', '33.75', '0'],
    ['sender-shorted', 'left', 'always', '0.00', '0.00', '0'],
    ['sender-shorted', 'right', 'always', '0.00', '0.00', '0'],
    ['wire-open', 'both', 'always', '0.00', '0.00', '0'],
    ['wire-to-ground', 'both', 'always', '0.00', '0.00', '0'],
    ['wire-to-battery', 'both', 'always', '0.00', '0.00', '41.472'],
  ]);

  // Two inputs: 10 to 180 Ω with 0, 25 and 40 L, 180 to 10 Ω with 20 L, saddle at 0.5 and 0.6, the pump on the right.
  const c = worked('two floats on two inputs');
  check(c, apart, [
    [0, '60.00', ['2.5000', '0.2632']],
    [1, '37.00', ['1.7273', '1.5116']],
    [2, '12.00', ['0.2632', '1.5116']],
    [3, '0.00', ['0.2632', '2.5000']],
  ]);
  faults(c, apart, [
    ['sender-open', 'left', 'always', '0.00', '0.00', '0'],
    ['sender-open', 'right', 'always', '0.00', '0.00', '0'],
    ['sender-shorted', 'left', 'always', '0.00', '0.00', '0'],
    ['sender-shorted', 'right', 'always', '0.00', '0.00', '0'],
    ['wire-open', 'left', 'always', '0.00', '0.00', '0'],
    ['wire-open', 'right', 'always', '0.00', '0.00', '0'],
    ['wire-to-ground', 'left', 'always', '0.00', '0.00', '0'],
    ['wire-to-ground', 'right', 'always', '0.00', '0.00', '0'],
    ['wire-to-battery', 'left', 'always', '0.00', '0.00', '20.736'],
    ['wire-to-battery', 'right', 'always', '0.00', '0.00', '20.736'],
  ]);
  // The same senders in series on an input of 180 Ω to ground: half the volts behind half the ohms, 2.5 V and 90 Ω.
  const d = worked('two floats in series, the input loads');
  const loaded: SaddleTankInput = { ...series, inputOhm: 180 };
  check(d, loaded, [
    [0, '60.00', ['0.4545']],
    [1, '30.00', ['1.3158']],
    [2, '15.00', ['1.5217']],
    [3, '0.00', ['1.6667']],
  ]);
  computed('a broken wire reads 2.5 V, 0.8333 V above the empty tank', d, () => {
    expectPrinted(saddleTank(loaded).openGapV, '0.8333');
    expectPrinted(saddleTank(loaded).highestPinV, '1.6667');
  });
  // 2.5 x/(x + 90) = 0.6: 28.42 Ω in all, of which full gives 20.
  computed('a guard of 0.6 V wants 8.42 Ω more: 10 Ω', d, () => {
    expect(saddleTank({ ...loaded, guardV: 0.6 }).leastFixedOhm).toBe(10);
  });
  // A shorted sender, the other empty: 90 Ω reads 1.25 V. Shown 60 − 60 · 70/160 = 33.75 L, and none is there.
  faults(d, loaded, [
    ['sender-open', 'left', 'always', '0.00', '0.00', '0'],
    ['sender-open', 'right', 'always', '0.00', '0.00', '0'],
    ['sender-shorted', 'left', 'sometimes', '33.75', '0.00', '0'],
    ['sender-shorted', 'right', 'sometimes', '33.75', '0.00', '0'],
    ['wire-open', 'both', 'always', '0.00', '0.00', '0'],
    ['wire-to-ground', 'both', 'always', '0.00', '0.00', '0'],
    ['wire-to-battery', 'both', 'always', '0.00', '0.00', '10.368'],
    ['between-to-ground', 'both', 'sometimes', '33.75', '0.00', '0'],
    // 14.4²/10 W in the right one, and ((14.4 − 2.5)/100)² · 10 W in the left.
    ['between-to-battery', 'both', 'always', '0.00', '0.00', '20.878'],
  ]);
  // 200 Ω at the tank's end, the battery between the senders: 5 + 9.4 · 180/(R + 380) V, 9.338 V at 10 Ω and 8.600 V at
  // 90 Ω. Healthy at most 5 · 380/560 = 3.393 V, so a guard of 5.5 V has its border at 8.893 V: R = 54.6 Ω.
  computed('with a fixed resistor the battery between both is told at some levels', a, () => {
    const fixed = { ...series, fixedOhm: 200, guardV: 5.5 };
    expectPrinted(saddleTank(fixed).highestPinV, '3.393');
    expect(fault(fixed, 'between-to-battery', 'both').seen).toBe('sometimes');
    expect(fault({ ...fixed, guardV: 5.2 }, 'between-to-battery', 'both').seen).toBe('always');
    expect(fault({ ...fixed, guardV: 5.95 }, 'between-to-battery', 'both').seen).toBe('never');
  });
  computed('a dead transfer leaves 25 L, told side by side', c, () => {
    expectPrinted(saddleTank(apart).trappedL, '25.00');
    expectPrinted(saddleTank(apart).mostAmbiguityL, '0.00');
  });
});

describe('independent', () => {
  const along = (table: SaddleLobe['strapping'], x: number): number => {
    const k = Math.max(
      1,
      table.findIndex((row) => row.levelFraction >= x),
    );
    const [p, q] = [table[k - 1]!, table[k]!];
    return p.volumeL + ((q.volumeL - p.volumeL) * (x - p.levelFraction)) / (q.levelFraction - p.levelFraction);
  };
  it.each(['series', 'parallel'] as const)('every split of a fine grid lies within the litres given: %s', (wiring) => {
    const input = { ...uneven, wiring };
    const { path } = saddleTank(input);
    for (const i of [3, 10, 16, 22, 30]) {
      const { leftFraction: l0, rightFraction: r0, leastL, mostL } = path[i]!;
      const ohm = (side: SaddleLobe, x: number): number => side.emptyOhm + (side.fullOhm - side.emptyOhm) * x;
      const pair = (l: number, r: number): number => {
        const [p, q] = [ohm(input.left, l), ohm(input.right, r)];
        return wiring === 'series' ? p + q : 1 / (1 / p + 1 / q);
      };
      const wanted = pair(l0, r0);
      let [least, most] = [Infinity, -Infinity];
      for (let k = 0; k <= 2000; k++) {
        const l = k / 2000;
        if ((pair(l, 0) - wanted) * (pair(l, 1) - wanted) > 0) continue;
        let [low, high] = [0, 1];
        for (let n = 0; n < 50; n++) {
          const r = (low + high) / 2;
          if (pair(l, r) > wanted) low = r;
          else high = r;
        }
        const litres = along(input.left.strapping, l) + along(input.right.strapping, (low + high) / 2);
        least = Math.min(least, litres);
        most = Math.max(most, litres);
      }
      expect(leastL).toBeLessThanOrEqual(least + 1e-6);
      expect(mostL).toBeGreaterThanOrEqual(most - 1e-6);
      expect(least - leastL).toBeLessThan(0.05);
      expect(mostL - most).toBeLessThan(0.05);
    }
  });
  it('a circuit simulator gives the same volts and heat', async () => {
    const input = { ...uneven, wiring: 'series' } as const;
    const at = saddleTank(input).path[0]!;
    const v = await simulate(
      ['a', 'b', 'c']
        .flatMap((n) => [
          `v${n} s${n} 0 5`,
          `rb${n} s${n} p${n} 180`,
          `rf${n} p${n} t${n} 12`,
          `rl${n} t${n} m${n} 4`,
          `rr${n} m${n} 0 7`,
          ...(n === 'b' ? [`vx${n} p${n} 0 14.4`] : []),
          ...(n === 'c' ? [`vx${n} m${n} 0 14.4`] : []),
        ])
        .concat('.op')
        .join('\n'),
    );
    const get = (name: string): number => v[`v(${name})`]![0]!;
    expectWithin(at.pinV[0]!, get('pa'), 1e-9);
    const watts = (n: string): number => (get(`t${n}`) - get(`m${n}`)) ** 2 / 4 + get(`m${n}`) ** 2 / 7;
    // Both are hottest at full, where the ohms are fewest: for the second 4 Ω and 7 Ω come together there alone.
    expectWithin(fault(input, 'between-to-battery', 'both').tankW!, watts('c'), 1e-6);
    expect(fault(input, 'wire-to-battery', 'both').tankW!).toBeGreaterThanOrEqual(watts('b') * (1 - 1e-9));
  });
});

describe('independent, faults', () => {
  const along = (table: SaddleLobe['strapping'], x: number): number => {
    const k = Math.max(
      1,
      table.findIndex((row) => row.levelFraction >= x),
    );
    const [p, q] = [table[k - 1]!, table[k]!];
    return p.volumeL + ((q.volumeL - p.volumeL) * (x - p.levelFraction)) / (q.levelFraction - p.levelFraction);
  };
  // Wide shelves that a coarse walk steps over.
  const high: SaddleTankInput = {
    ...series,
    left: { strapping: rows([0, 0], [0.94, 11], [0.99, 13], [1, 24]), emptyOhm: 77, fullOhm: 12, saddleFraction: 0.1 },
    right: { strapping: rows([0, 0], [0.49, 0.2], [0.56, 6], [1, 8]), emptyOhm: 94, fullOhm: 9, saddleFraction: 0.94 },
    biasOhm: 139,
  };
  const wide: SaddleTankInput = {
    ...parallel,
    left: {
      strapping: rows([0, 0], [0.82, 0.1], [0.92, 16], [1, 16.2]),
      emptyOhm: 84,
      fullOhm: 17,
      saddleFraction: 0.94,
    },
    right: { strapping: rows([0, 0], [0.77, 2.5], [1, 2.7]), emptyOhm: 88, fullOhm: 7, saddleFraction: 0.1 },
    biasOhm: 125,
  };
  it.each([
    ['series', 'sender-shorted', 0.1],
    ['series', 'sender-shorted', 0.02],
    ['parallel', 'sender-open', 0.09],
    ['parallel', 'sender-open', 0.25],
  ] as const)('a walk of 30 000 places finds the same: %s, %s, guard %d V', (wiring, kind, guardV) => {
    for (const base of [uneven, high, wide]) {
      const input = { ...base, wiring, guardV };
      const { biasV, biasOhm, fixedOhm, left, right } = input;
      const N = 30000;
      // Down to the saddle both; then the right side, which has no pump; then the left one.
      const places = Array.from({ length: N + 1 }, (_, i) => {
        const u = (3 * i) / N;
        const [a, b] = [left.saddleFraction, right.saddleFraction];
        const l = u <= 1 ? 1 - u * (1 - a) : a * Math.min(1, 3 - u);
        const r = u <= 1 ? 1 - u * (1 - b) : b * Math.max(0, 2 - u);
        const p = left.emptyOhm + (left.fullOhm - left.emptyOhm) * l;
        const q = right.emptyOhm + (right.fullOhm - right.emptyOhm) * r;
        return {
          p,
          q,
          ohm: wiring === 'series' ? p + q : 1 / (1 / p + 1 / q),
          litres: along(left.strapping, l) + along(right.strapping, r),
        };
      });
      const volts = (ohm: number): number => (biasV * (ohm + fixedOhm)) / (ohm + fixedOhm + biasOhm);
      const [full, empty] = [places[0]!, places[N]!];
      const shown = (ohm: number): number => {
        let [low, high] = [0, N];
        while (high - low > 1) {
          const middle = Math.floor((low + high) / 2);
          if (places[middle]!.ohm < ohm) low = middle;
          else high = middle;
        }
        const [a, b] = [places[low]!, places[high]!];
        const share = b.ohm === a.ohm ? 0 : Math.min(1, Math.max(0, (ohm - a.ohm) / (b.ohm - a.ohm)));
        return a.litres + (b.litres - a.litres) * share;
      };
      for (const side of ['left', 'right'] as const) {
        const found = fault(input, kind, side);
        let [told, over, under] = [0, 0, 0];
        for (const { p, q, litres } of places) {
          const ohm = side === 'left' ? q : p;
          const v = volts(ohm);
          if (v < volts(full.ohm) - guardV || v > volts(empty.ohm) + guardV) told++;
          else {
            const off = shown(ohm) - litres;
            over = Math.max(over, off);
            under = Math.max(under, -off);
          }
        }
        expect(found.seen).toBe(told === 0 ? 'never' : told > N ? 'always' : 'sometimes');
        expect(found.mostOverL).toBeGreaterThanOrEqual(over - 1e-3);
        expect(found.mostUnderL).toBeGreaterThanOrEqual(under - 1e-3);
        // A step of the walk is worth at most 0.11 L, on the steepest shelf.
        expect(found.mostOverL - over).toBeLessThan(0.15);
        expect(found.mostUnderL - under).toBeLessThan(0.15);
      }
    }
  });
});

describe('independent, loaded', () => {
  it('a circuit simulator gives the same volts of two inputs that load', async () => {
    const input = { ...apart, inputOhm: 4700, fixedOhm: 12 } as const;
    const { path } = saddleTank(input);
    const places = [0, 7, 19, 30];
    const v = await simulate(
      places
        .flatMap((place) => {
          const { leftFraction, rightFraction } = path[place]!;
          return (['left', 'right'] as const).flatMap((side) => {
            const share = side === 'left' ? leftFraction : rightFraction;
            const n = `${side}${place}`;
            const ohm = input[side].emptyOhm + (input[side].fullOhm - input[side].emptyOhm) * share;
            return [`v${n} s${n} 0 5`, `rb${n} s${n} p${n} 180`, `ri${n} p${n} 0 4700`, `rs${n} p${n} 0 ${ohm + 12}`];
          });
        })
        .concat('.op')
        .join('\n'),
    );
    for (const place of places) {
      expectWithin(path[place]!.pinV[0]!, v[`v(pleft${place})`]![0]!, 1e-9);
      expectWithin(path[place]!.pinV[1]!, v[`v(pright${place})`]![0]!, 1e-9);
    }
  });
  it('an input that hardly loads is one that does not', () => {
    const a = saddleTank(uneven);
    const b = saddleTank({ ...uneven, inputOhm: 1e8 });
    a.path.forEach((point, i) => expectWithin(b.path[i]!.pinV[0]!, point.pinV[0]!, 1e-5));
  });
});

describe('laws', () => {
  it('litres only fall along both ways, and end at nothing and at what is trapped', () => {
    for (const input of [series, parallel, apart, uneven]) {
      const { path, lostPath, trappedL } = saddleTank(input);
      for (const way of [path, lostPath]) {
        for (let i = 1; i < way.length; i++) expect(way[i]!.volumeL).toBeLessThan(way[i - 1]!.volumeL);
      }
      expect(path.at(-1)!.volumeL).toBe(0);
      expectWithin(lostPath.at(-1)!.volumeL, trappedL, 1e-12);
    }
  });
  it('left and right may be exchanged on one wire', () => {
    const turned = saddleTank({ ...uneven, left: uneven.right, right: uneven.left, pumpSide: 'right' });
    const plain = saddleTank(uneven);
    expectWithin(turned.mostAmbiguityL, plain.mostAmbiguityL, 1e-9);
    plain.path.forEach((point, i) => {
      expectWithin(turned.path[i]!.pinV[0]!, point.pinV[0]!, 1e-12);
      expectWithin(turned.path[i]!.volumeL + 1, point.volumeL + 1, 1e-12);
    });
    expect(saddleTank({ ...uneven, pumpSide: 'right' }).trappedL).not.toBe(plain.trappedL);
  });
  it('the true litres lie within the ambiguity at every place of the map', () => {
    for (const point of saddleTank(uneven).map) {
      expect(point.leastL).toBeLessThanOrEqual(point.volumeL);
      expect(point.mostL).toBeGreaterThanOrEqual(point.volumeL);
    }
  });
  it('the fixed resistor that it names keeps the guard, and the next smaller one does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 2, noNaN: true }), (guardV) => {
        const { leastFixedOhm } = saddleTank({ ...parallel, guardV });
        const gap = (fixedOhm: number): number => saddleTank({ ...parallel, guardV, fixedOhm }).shortGapV;
        expect(gap(leastFixedOhm!)).toBeGreaterThanOrEqual(guardV * (1 - 1e-8));
        expect(gap(leastFixedOhm! / 1.3)).toBeLessThan(guardV);
      }),
      { numRuns: 10 },
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(saddleTank, { ...uneven, inputOhm: 900, guardV: 0.7 });
  });
});

describe('edges', () => {
  it('has no fixed resistor where the guard is the whole bias', () => {
    expect(saddleTank({ ...series, guardV: 5 }).leastFixedOhm).toBeNull();
  });
  it('has no number for the battery on a sender of 0 Ω', () => {
    const bare = { ...series, right: { ...lobe, fullOhm: 0 } };
    expect(fault(bare, 'between-to-battery', 'both').tankW).toBeNull();
  });
  it('refuses nonsense', () => {
    refusesNonsense(saddleTank, series, {
      required: ['fixedOhm', 'biasV', 'biasOhm', 'faultV', 'guardV'],
      optional: ['inputOhm'],
    });
    expectInputError(() => saddleTank({ ...series, inputOhm: 0 }), 'inputOhm');
    const bad = (over: Partial<SaddleLobe>, field: string, input = series) => {
      expectInputError(() => saddleTank({ ...input, right: { ...lobe, ...over } }), field);
    };
    bad({ emptyOhm: -1 }, 'right.emptyOhm');
    bad({ emptyOhm: 10 }, 'right.fullOhm');
    bad({ fullOhm: 180 }, 'right.fullOhm');
    bad({ fullOhm: 0 }, 'right.fullOhm', parallel);
    bad({ saddleFraction: 0 }, 'right.saddleFraction');
    bad({ saddleFraction: 1.1 }, 'right.saddleFraction');
    bad({ strapping: rows([0, 0]) }, 'right.strapping');
    expectInputError(() => saddleTank({ ...series, wiring: 'star' as never }), 'wiring', 'oneOf');
    expectInputError(() => saddleTank({ ...series, pumpSide: undefined as never }), 'pumpSide', 'missing');
    expectInputError(() => saddleTank({ ...series, left: null as never }), 'left', 'object');
    expectInputError(() => saddleTank({ ...series, series: null as never }), 'series');
  });
  it('never runs out of numbers', () => {
    for (const wiring of ['series', 'parallel', 'two-inputs'] as const) {
      neverRunsOut(
        ({ emptyOhm, fullOhm, saddleFraction, ...rest }: SaddleTankInput & Omit<SaddleLobe, 'strapping'>) =>
          saddleTank({ ...rest, wiring, left: { ...lobe, emptyOhm, fullOhm, saddleFraction } }),
        { ...uneven, inputOhm: 1000, emptyOhm: 90, fullOhm: 10, saddleFraction: 0.5 },
        30,
      );
    }
  });
});
