import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { type NetworkFault, type NetworkPart, senderNetwork, type SenderNetworkInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { swapsMatter } from '../support/law.js';
import { computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const part = (
  name: string,
  from: string,
  to: string,
  emptyOhm: number,
  fullOhm = emptyOhm,
  inTank = true,
): NetworkPart => ({
  name,
  from,
  to,
  emptyOhm,
  fullOhm,
  inTank,
});
const one: SenderNetworkInput = {
  parts: [part('sender', 'pin', 'ground', 350, 10)],
  biasV: 5,
  biasOhm: 270,
  inputOhm: null,
  faultV: 14.4,
  guardV: 0.1,
  tankMostA: 0.02,
  tankFaultMostW: null,
};
const two: SenderNetworkInput = {
  ...one,
  inputOhm: 47000,
  parts: [
    part('left', 'pin', 'between', 180, 10),
    part('right', 'between', 'foot', 120, 5),
    part('across', 'pin', 'foot', 560, 560, false),
    part('foot', 'foot', 'ground', 22, 22, false),
  ],
};
const fault = (input: SenderNetworkInput, kind: NetworkFault['kind'], at: string): NetworkFault =>
  senderNetwork(input).faults.find((each) => each.kind === kind && each.at === at)!;

describe('published', () => {
  const w5 = {
    source: 'circuit-theory',
    place: 'worked case: pull-up for a sender of 350 to 10 Ω',
    status: 'derived',
  } as const;
  const result = senderNetwork(one);
  ['2.823', '2.696', '2.554', '2.394', '2.211', '2.000', '1.755', '1.466', '1.121', '0.701', '0.179'].forEach(
    (print, i) => {
      computed(`volts at level ${10 * i} %`, w5, () => {
        expectPrinted(result.readings[i]!.pinV!, print);
      });
    },
  );
  const ten = senderNetwork({ ...one, biasOhm: 10000 });
  const chafed = fault(one, 'lead-to-battery', 'pin');
  const list: readonly (readonly [string, number, string])[] = [
    ['10 kΩ: empty, V', ten.highestPinV, '0.1691'],
    ['10 kΩ: full, V', ten.lowestPinV, '0.0050'],
    ['10 kΩ: counts', ((ten.highestPinV - ten.lowestPinV) / 5) * 1023, '33.6'],
    ['current at full, mA', result.mostTankA * 1000, '17.86'],
    ['heat of the sender at most, mW', result.mostTankW * 1000, '23.1'],
    ['heat of the pull-up in use, mW', result.biasMostW * 1000, '86.1'],
    ['heat of the pull-up, wire shorted to ground, mW', fault(one, 'lead-to-ground', 'pin').biasW! * 1000, '92.6'],
    ['wire shorted to 14.4 V, A', chafed.tankA!, '1.44'],
    ['wire shorted to 14.4 V, W', chafed.tankW!, '20.7'],
  ];
  for (const [name, value, print] of list) {
    computed(name, w5, () => {
      expectPrinted(value, print);
    });
  }
  const hand = { source: 'circuit-theory', place: 'by hand', status: 'derived' } as const;
  computed('a sender of 0 Ω counts for 0.1 mΩ: 5 · 0.0001/270.0001 V', hand, () => {
    expectPrinted(senderNetwork({ ...one, parts: [part('sender', 'pin', 'ground', 350, 0)] }).lowestPinV, '1.8519e-6');
  });
  // 1 kΩ to ground in the input: 350 Ω read 5 · 259.26/529.26 = 2.4493 V, a broken sender 5 · 1000/1270 = 3.9370 V.
  for (const [guardV, seen] of [
    [1.487, 'always'],
    [1.488, 'never'],
  ] as const) {
    computed(`1.4877 V above the empty tank, a break is told ${seen} at ${guardV} V`, hand, () => {
      const loaded = { ...one, inputOhm: 1000, guardV };
      expectPrinted(senderNetwork(loaded).highestPinV, '2.4493');
      expectPrinted(fault(loaded, 'part-open', 'sender').readings[0]!.pinV!, '3.9370');
      expect(fault(loaded, 'part-open', 'sender').seen).toBe(seen);
    });
  }
  computed('the worst of it is at full', w5, () => {
    expect(chafed.tankWorstFraction).toBe(1);
    expect(result.worstFault).toBe('lead-to-battery at pin');
  });
});

/** The network of `two` at a level as a netlist, each node with a letter of its own. */
function netlist(n: string, level: number, change: (lines: string[]) => string[]): string[] {
  const r = (empty: number, full: number): number => empty + (full - empty) * level;
  return change([
    `vb${n} b${n} 0 5`,
    `rb${n} b${n} u${n} 270`,
    `ri${n} u${n} 0 47000`,
    `vp${n} u${n} p${n} 0`,
    `rl${n} p${n} m${n} ${r(180, 10)}`,
    `rr${n} m${n} f${n} ${r(120, 5)}`,
    `ra${n} p${n} f${n} 560`,
    `rf${n} f${n} g${n} 22`,
    `vg${n} g${n} 0 0`,
    `rz${n} g${n} p${n} 1e12`,
    `ry${n} m${n} 0 1e12`,
  ]).filter((line) => line !== '');
}

describe('independent', () => {
  it('a circuit simulator gives the same volts and heat, whole and with every kind of fault', async () => {
    const without = (name: string) => (lines: string[]) => lines.filter((line) => !line.startsWith(name));
    const nets: readonly (readonly [
      NetworkFault['kind'] | 'none',
      string,
      (n: string) => (lines: string[]) => string[],
    ])[] = [
      ['none', '', () => (lines) => lines],
      ['pin-wire-open', 'pin', (n) => without(`vp${n}`)],
      ['ground-open', 'ground', (n) => without(`vg${n}`)],
      ['part-open', 'left', (n) => without(`rl${n}`)],
      ['part-open', 'foot', (n) => without(`rf${n}`)],
      ['part-shorted', 'across', (n) => (lines) => [...lines, `vx${n} p${n} f${n} 0`]],
      ['lead-to-ground', 'between', (n) => (lines) => [...lines, `vx${n} m${n} 0 0`]],
      ['lead-to-battery', 'between', (n) => (lines) => [...lines, `vx${n} m${n} 0 14.4`]],
      ['lead-to-battery', 'foot', (n) => (lines) => [...lines, `vx${n} f${n} 0 14.4`]],
      ['lead-to-battery', 'pin', (n) => (lines) => [...lines, `vx${n} p${n} 0 14.4`]],
    ];
    const result = senderNetwork(two);
    for (const [step, level] of [
      [0, 0],
      [7, 0.7],
      [10, 1],
    ] as const) {
      const v = await simulate(
        [...nets.flatMap(([, , change], k) => netlist(`x${k}`, level, change(`x${k}`))), '.op'].join('\n'),
      );
      nets.forEach(([kind, at], k) => {
        const readings =
          kind === 'none'
            ? result.readings
            : result.faults.find((each) => each.kind === kind && each.at === at)!.readings;
        const ours = readings[step]!;
        expectWithin(ours.pinV!, v[`v(ux${k})`]![0]!, 1e-8);
        const across = (a: string, b: string): number => (v[`v(${a}x${k})`]?.[0] ?? 0) - (v[`v(${b}x${k})`]?.[0] ?? 0);
        const left = kind === 'part-open' && at === 'left' ? 0 : across('p', 'm') ** 2 / (180 - 170 * level);
        const watts = left + across('m', 'f') ** 2 / (120 - 115 * level);
        expect(Math.abs(ours.tankW! - watts), `${kind} ${at}`).toBeLessThan(1e-7 * watts + 1e-12);
      });
    }
  });
});

describe('laws', () => {
  it('the order of parts and their direction do not matter', () => {
    const turned = senderNetwork({
      ...two,
      parts: [...two.parts].reverse().map((each) => ({ ...each, from: each.to, to: each.from })),
    });
    const plain = senderNetwork(two);
    plain.readings.forEach((reading, i) => {
      expectWithin(turned.readings[i]!.pinV!, reading.pinV!, 1e-12);
      expectWithin(turned.readings[i]!.tankW!, reading.tankW!, 1e-9);
    });
  });
  it('series adds ohms, parallel adds what conducts', () => {
    const ohm = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(ohm, ohm, (a, b) => {
        const series = senderNetwork({ ...one, parts: [part('a', 'pin', 'x', a), part('b', 'x', 'ground', b)] });
        const parallel = senderNetwork({
          ...one,
          parts: [part('a', 'pin', 'ground', a), part('b', 'pin', 'ground', b)],
        });
        expectWithin(series.highestPinV, (5 * (a + b)) / (a + b + 270), 1e-11);
        const both = (a * b) / (a + b);
        expectWithin(parallel.highestPinV, (5 * both) / (both + 270), 1e-11);
      }),
      { numRuns: 30 },
    );
  });
  it('volts and bias scale together; heat goes with the square', () => {
    const double = senderNetwork({ ...two, biasV: 10, faultV: 28.8, guardV: 0.2 });
    const single = senderNetwork(two);
    expectWithin(double.highestPinV, 2 * single.highestPinV, 1e-12);
    expectWithin(double.mostTankW, 4 * single.mostTankW, 1e-9);
    expectWithin(double.worstFaultW!, 4 * single.worstFaultW!, 1e-9);
    expect(double.faults.map((each) => each.seen)).toEqual(single.faults.map((each) => each.seen));
  });
  it('two senders that move against one another turn', () => {
    const parts = [part('a', 'pin', 'ground', 240, 33), part('b', 'pin', 'ground', 33, 240)];
    expect(senderNetwork({ ...one, parts }).direction).toBe('turns');
    expect(senderNetwork(one).direction).toBe('falls');
    expect(senderNetwork({ ...one, parts: [part('a', 'pin', 'ground', 0, 90)] }).direction).toBe('rises');
  });
  it('does not mistake one input for another', () => {
    swapsMatter(senderNetwork, { ...two, faultV: 15, tankFaultMostW: 2 });
  });
});

describe('faults', () => {
  it('an open wire and a grounded one are told; one of two senders in series that is shorted is not', () => {
    expect(fault(one, 'pin-wire-open', 'pin').seen).toBe('always');
    expect(fault(one, 'lead-to-ground', 'pin').seen).toBe('always');
    expect(fault({ ...one, guardV: 0.2 }, 'lead-to-ground', 'pin').seen).toBe('never');
    const parts = [part('left', 'pin', 'x', 110, 3), part('right', 'x', 'ground', 110, 3)];
    expect(fault({ ...one, parts }, 'part-shorted', 'left').seen).toBe('never');
    expect(fault({ ...one, parts }, 'part-open', 'right').seen).toBe('always');
  });
  it('the ground lead on the battery is a dead short that no reading surely tells', () => {
    const short = fault(one, 'lead-to-battery', 'ground');
    expect(short.seen).toBe('never');
    expect(short.readings.every(({ pinV, code }) => pinV === null && code === 'dead-short')).toBe(true);
    // A bias of 5 V, healthy at full, sends 5/280 A; with the lead at 14.4 V it takes 9.4/280 A the other way.
    expectWithin(short.tankA!, 9.4 / 280, 1e-12);
    expectWithin(short.readings.at(-1)!.tankW!, (9.4 / 280) ** 2 * 10, 1e-12);
    expectWithin(short.readings[0]!.tankW!, (9.4 / 620) ** 2 * 350, 1e-12);
    expectWithin(short.biasW!, (9.4 / 280) ** 2 * 270, 1e-12);
    // With the battery behind the bias, both ends of the network are the battery: the healthy figures are the most.
    const battery = senderNetwork({ ...one, biasV: 14.4 });
    const same = fault({ ...one, biasV: 14.4 }, 'lead-to-battery', 'ground');
    expect(same.tankA).toBe(battery.mostTankA);
    expect(same.tankW).toBe(battery.mostTankW);
    expect(senderNetwork(one).worstFault).toBe('lead-to-battery at pin');
  });
  it('no volts of a shorted ground lead heat the tank more than is told', async () => {
    const told = fault(two, 'lead-to-battery', 'ground');
    for (const volts of [0, 2, 5, 9, 14.4]) {
      const lines = [0, 0.5, 1].flatMap((level, i) =>
        netlist(`${i}`, level, (net) => net.map((line) => (line.startsWith('vg') ? `vg${i} g${i} 0 ${volts}` : line))),
      );
      const v = await simulate([...lines, '.op'].join('\n'));
      [0, 0.5, 1].forEach((level, i) => {
        const w = (from: string, to: string, ohm: number): number =>
          (v[`v(${from}${i})`]![0]! - v[`v(${to}${i})`]![0]!) ** 2 / ohm;
        const heat = w('p', 'm', 180 - 170 * level) + w('m', 'f', 120 - 115 * level);
        const most = told.readings.find(({ levelFraction }) => levelFraction === level)!.tankW!;
        expect(heat).toBeLessThanOrEqual(most * (1 + 1e-6));
        if (volts === 14.4) expectWithin(Math.max(heat, 0), most, 1e-6);
      });
    }
  });
  it('has no number where the battery meets ground through nothing', () => {
    const result = senderNetwork({ ...one, parts: [part('sender', 'pin', 'ground', 180, 0)], tankFaultMostW: 1 });
    const chafed = result.faults.find((each) => each.kind === 'lead-to-battery')!;
    expect(chafed.readings.at(-1)).toMatchObject({ pinV: null, tankA: null, tankW: null, code: 'unlimited' });
    expect(chafed).toMatchObject({ tankA: null, tankW: null, tankWorstFraction: 1, seen: 'always' });
    expect(result).toMatchObject({ worstFaultW: null, decidedBy: 'heat in the tank, worst fault' });
    expect(result.checks.at(-1)).toMatchObject({ ok: false, because: 'lead-to-battery at pin' });
  });
  it('a bias from the battery is hotter in the tank', () => {
    const battery = senderNetwork({ ...one, biasV: 14.4 });
    expect(battery.mostTankA).toBeGreaterThan(0.02);
    expect(battery.checks[0]!.ok).toBe(false);
  });
});

describe('edges', () => {
  it('refuses nonsense', () => {
    refusesNonsense(
      senderNetwork,
      { ...one, inputOhm: 1000, tankFaultMostW: 1 },
      {
        required: ['biasV', 'biasOhm', 'faultV', 'guardV'],
        optional: ['inputOhm', 'tankMostA', 'tankFaultMostW'],
      },
    );
    const bad = (parts: readonly NetworkPart[], field: string) => {
      expectInputError(() => senderNetwork({ ...one, parts }), field);
    };
    bad([], 'parts');
    bad([part('a', 'pin', 'x', 10)], 'parts');
    bad(
      Array.from({ length: 41 }, (_, i) => part(`${i}`, 'pin', 'ground', 10)),
      'parts.length',
    );
    bad([part('a', 'pin', 'pin', 10)], 'parts[0].to');
    bad([part('a', 'pin', 'ground', -1)], 'parts[0].emptyOhm');
    bad([part('a', 'pin', 'ground', 1, 2e8)], 'parts[0].fullOhm');
    bad([part('a', 'pin', 'x', 1), part('a', 'x', 'ground', 1)], 'parts[1].name');
    bad([part('', 'pin', 'ground', 1)], 'parts[0].name');
    bad([{ ...part('a', 'pin', 'ground', 1), inTank: undefined as never }], 'parts[0].inTank');
    bad([null as never], 'parts[0]');
  });
  it('never runs out of numbers', () => {
    neverRunsOut(
      ({ emptyOhm, fullOhm, ...rest }: SenderNetworkInput & { emptyOhm: number; fullOhm: number }) =>
        senderNetwork({ ...rest, parts: [part('a', 'pin', 'x', emptyOhm, fullOhm), part('b', 'x', 'ground', 5)] }),
      { ...one, emptyOhm: 240, fullOhm: 33, inputOhm: 1000, tankFaultMostW: 1 },
      80,
    );
  });
});

describe('regression', () => {
  it('nothing flows in the tank with the ground lead broken, not even a rounding', () => {
    expect(fault(one, 'ground-open', 'ground')).toMatchObject({ tankA: 0, tankW: 0 });
    expect(fault(two, 'pin-wire-open', 'pin')).toMatchObject({ tankA: 0, tankW: 0 });
  });
  it('a node may have any name', () => {
    const named = (node: string) =>
      senderNetwork({ ...one, parts: [part('a', 'pin', node, 90), part('b', node, 'ground', 5)] }).readings;
    for (const node of ['pin of the unit', 'bias of the unit', 'battery of the fault', 'ground of the unit']) {
      expect(named(node)).toEqual(named('x'));
    }
  });
});
