import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { switchInput, type SwitchInputInput } from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { swapsMatter } from '../support/law.js';
import { expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const toGround: SwitchInputInput = {
  pullOhm: 1000,
  pullToleranceFraction: 0.05,
  pullV: 12,
  switchedV: 0,
  inputOhm: null,
  wireOhm: 0.2,
  contactMostOhm: 50,
  leakOhm: 20000,
  lowV: 1.5,
  highV: 3.5,
  leastWettingA: 0.01,
};
const toBattery: SwitchInputInput = {
  ...toGround,
  pullV: 0,
  switchedV: 12,
  pullOhm: 2200,
  inputOhm: 47000,
  leastWettingA: 0.005,
};

describe('independent', () => {
  it('agrees with a circuit simulator in both directions', async () => {
    const result = switchInput({ ...toGround, pullToleranceFraction: 0, inputOhm: 33000 });
    const other = switchInput({ ...toBattery, pullToleranceFraction: 0 });
    const net = (n: string, pullV: number, pull: number, sw: number, contact: number, input: number): string[] => [
      `vp${n} q${n} 0 ${pullV}`,
      `rp${n} q${n} p${n} ${pull}`,
      `vs${n} s${n} 0 ${sw}`,
      `rs${n} s${n} p${n} ${contact}`,
      `ri${n} p${n} 0 ${input}`,
    ];
    const v = await simulate(
      [
        ...net('a', 12, 1000, 0, 50.2, 33000),
        ...net('b', 12, 1000, 0, 20000.2, 33000),
        ...net('c', 0, 2200, 12, 50.2, 47000),
        ...net('d', 0, 2200, 12, 20000.2, 47000),
        '.op',
      ].join('\n'),
    );
    expectWithin(result.closedV, v['v(pa)']![0]!, 1e-9);
    expectWithin(result.openV, v['v(pb)']![0]!, 1e-9);
    expectWithin(other.closedV, v['v(pc)']![0]!, 1e-9);
    expectWithin(other.openV, v['v(pd)']![0]!, 1e-9);
  });
  it('the limits of contact and leak are where the thresholds are met', () => {
    for (const input of [toGround, toBattery]) {
      const { contactLimitOhm, leakLimitOhm } = switchInput(input);
      const at = (over: Partial<SwitchInputInput>) => switchInput({ ...input, ...over });
      for (const [share, ok] of [
        [0.999, true],
        [1.001, false],
      ] as const) {
        expect(at({ contactMostOhm: contactLimitOhm! * share }).checks[0]!.ok).toBe(ok);
        expect(at({ leakOhm: leakLimitOhm! / share }).checks[1]!.ok).toBe(ok);
      }
    }
  });
});

const ohm = fc.double({ min: 1, max: 1e6, noNaN: true });

describe('laws', () => {
  it('dirt and damp only bring the two states together', () => {
    fc.assert(
      fc.property(ohm, ohm, ohm, ohm, fc.boolean(), (pullOhm, contact, leakOhm, inputOhm, up) => {
        const base = { ...(up ? toGround : toBattery), pullOhm, inputOhm };
        const worse = switchInput({ ...base, contactMostOhm: contact, leakOhm });
        const better = switchInput({ ...base, contactMostOhm: 0, leakOhm: null });
        const sign = up ? 1 : -1;
        expect(sign * worse.closedV).toBeGreaterThanOrEqual(sign * better.closedV - 1e-9);
        expect(sign * worse.openV).toBeLessThanOrEqual(sign * better.openV + 1e-9);
        expect(worse.pull).toBe(up ? 'up' : 'down');
      }),
    );
  });
  it('does not mistake one input for another', () => {
    swapsMatter(switchInput, toGround);
    swapsMatter(switchInput, toBattery);
  });
});

describe('edges', () => {
  it('reads a clean switch to ground and to the battery', () => {
    expect(switchInput(toGround)).toMatchObject({ pull: 'up', closedReads: 'low', openReads: 'high', brokenWireV: 12 });
    expect(switchInput(toBattery)).toMatchObject({
      pull: 'down',
      closedReads: 'high',
      openReads: 'low',
      brokenWireV: 0,
    });
  });
  it('finds a contact that is too dirty, damp that is too wet, and too little current', () => {
    const dirty = switchInput({ ...toGround, contactMostOhm: 300 });
    expect(dirty).toMatchObject({ closedReads: 'unsure', decidedBy: 'closed contact, dirty' });
    const damp = switchInput({ ...toGround, leakOhm: 300 });
    expect(damp).toMatchObject({ openReads: 'unsure', decidedBy: 'open contact, damp' });
    expect(switchInput({ ...toGround, leakOhm: 100 }).openReads).toBe('low');
    const weak = switchInput({ ...toGround, pullOhm: 10000 });
    expect(weak.checks[2]).toMatchObject({ name: 'wetting current', ok: false });
    expectWithin(weak.wettingA, 12 / (10500 + 0.2), 1e-12);
  });
  it('has no limit to name where anything reads, or nothing does', () => {
    // A pull-up to 3 V never reaches a threshold of 3.5 V: open never reads high, however dry.
    const low = switchInput({ ...toGround, pullV: 3 });
    expect(low).toMatchObject({ leakLimitOhm: null, leakLimitCode: 'none-reads', openReads: 'unsure' });
    // And one to 1 V reads low whatever the contact does.
    expect(switchInput({ ...toGround, pullV: 1 })).toMatchObject({
      contactLimitOhm: null,
      contactLimitCode: 'any-reads',
    });
    // A switch to 2 V can never be told as low.
    expect(switchInput({ ...toGround, switchedV: 2 })).toMatchObject({
      contactLimitOhm: null,
      contactLimitCode: 'none-reads',
    });
    // And one to 4 V reads high even closed: no leak can disturb the open one.
    expect(switchInput({ ...toGround, switchedV: 4 })).toMatchObject({
      leakLimitOhm: null,
      leakLimitCode: 'any-reads',
    });
  });
  it('refuses nonsense', () => {
    refusesNonsense(switchInput, toGround, {
      required: [
        'pullOhm',
        'pullToleranceFraction',
        'pullV',
        'switchedV',
        'wireOhm',
        'contactMostOhm',
        'lowV',
        'highV',
        'leastWettingA',
      ],
      optional: ['inputOhm', 'leakOhm'],
    });
    expectInputError(() => switchInput({ ...toGround, switchedV: 12 }), 'switchedV', 'order');
    expectInputError(() => switchInput({ ...toGround, highV: 1.5 }), 'highV', 'above');
  });
});

describe('regression', () => {
  it('takes a wire of next to no resistance', () => {
    const { closedV, pullW } = switchInput({ ...toGround, switchedV: 1e12, wireOhm: 1e-300, contactMostOhm: 0 });
    expect(closedV).toBe(1e12);
    expect(Number.isFinite(pullW)).toBe(true);
  });
  it('a leak that would have to pass all bounds is no limit', () => {
    const limits = switchInput({ ...toGround, pullV: 0, switchedV: 1e6, lowV: 1e-300 });
    expect(limits).toMatchObject({ leakLimitOhm: null, leakLimitCode: 'none-reads' });
  });
});
