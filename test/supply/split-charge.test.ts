import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  geometric,
  iec60228Class5,
  iso19642,
  type SplitBattery,
  type SplitCharge,
  splitCharge,
  type SplitChargeInput,
  type SplitLink,
} from 'loomwright';
import { expectInputError, refusesNonsense } from '../support/edge.js';
import { neverRunsOut } from '../support/extremes.js';
import { evenlyWithEnds, swapsMatter } from '../support/law.js';
import { type Citation, computed, expectPrinted, expectWithin } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const battery: SplitBattery = {
  chargeAh: 100,
  chargeFraction: 0.5,
  resistanceOhm: 0.01,
  emptyV: 11.8,
  restFullV: 12.7,
  chargeFullV: 14.4,
  mostV: 14.8,
  chargeEfficiency: 0.85,
  acceptanceA: null,
};
const relay: SplitLink = { kind: 'relay', contactOhm: 0.001, ratedA: 100, opensBelowV: null };
const diode: SplitLink = { kind: 'diode', thresholdV: 0.65, diodeOhm: 0.002, ratedA: 100 };
const isolator: SplitLink = { ...diode, kind: 'isolator-diodes' };
const converter: SplitLink = {
  kind: 'converter',
  outV: 14.4,
  mostOutA: 30,
  conversionEfficiency: 0.9,
  leastInV: 12,
  mostInV: 16,
};
const cable = { areaMm2: 16, outLengthM: 4, returnLengthM: 4, jointOhm: 0.002 };
const base: SplitChargeInput = {
  alternator: { heldV: 14.5, mostA: 70, senseAt: 'starter-battery' },
  starter: { ...battery, chargeAh: 60, chargeFraction: 0.9, resistanceOhm: 0.008 },
  service: battery,
  starterLoadA: 15,
  serviceLoadA: 3,
  mainCable: { areaMm2: 25, outLengthM: 1.2, returnLengthM: 0.8, jointOhm: 0.001 },
  serviceCable: cable,
  resistanceBasis: geometric,
  conductorTempC: 20,
  link: relay,
  wantedChargeFraction: 0.8,
  driveTimeH: 2,
  crankingA: 180,
  fuseRatingA: 100,
};
type Change = Partial<SplitChargeInput>;
const of = (change: Change): SplitCharge => {
  const found = splitCharge({ ...base, ...change });
  if (!found.possible) throw new Error(found.because);
  return found;
};
/** A battery that takes whatever it is given, at volts that do not change. */
const sink: SplitBattery = {
  ...battery,
  chargeAh: 1e9,
  resistanceOhm: 1e-9,
  restFullV: 11.8 + 1e-9,
  chargeFullV: 11.8 + 1e-9,
};
/** So many amperes through the service cable, and nothing else. */
const through = (currentA: number, change: Change): SplitCharge =>
  of({
    alternator: { heldV: 14.4, mostA: currentA, senseAt: 'alternator' },
    starter: { ...battery, chargeFraction: 1, emptyV: 1, restFullV: 2 },
    service: { ...sink, chargeFraction: 0 },
    starterLoadA: 0,
    serviceLoadA: 0,
    mainCable: { ...cable, jointOhm: 0 },
    link: { kind: 'relay', contactOhm: 0, ratedA: 1000, opensBelowV: null },
    wantedChargeFraction: 1e-9,
    ...change,
  });

describe('published', () => {
  const iec: Citation = { source: 'iec-60228', place: 'class 5 plain, table of maximum resistance', status: 'derived' };
  const class5 = { resistanceBasis: iec60228Class5 };
  const run = (areaMm2: number, outLengthM: number, returnLengthM = 0, jointOhm = 0): Change => {
    return { serviceCable: { areaMm2, outLengthM, returnLengthM, jointOhm } };
  };
  computed('25 mm², 2 m, 200 A: 0.312 V', iec, () =>
    expectPrinted(through(200, { ...class5, ...run(25, 2) }).now.cableDropV, '0.312'),
  );
  computed('and 62.4 W', iec, () => expectPrinted(through(200, { ...class5, ...run(25, 2) }).now.cableW, '62.4'));
  computed('2.5 mm², 4 m, 15 A, 20 °C: 0.4788 V', iec, () =>
    expectPrinted(through(15, { ...class5, ...run(2.5, 4) }).now.cableDropV, '0.4788'),
  );
  computed('the same at 70 °C: 0.5729 V', iec, () =>
    expectPrinted(through(15, { ...class5, ...run(2.5, 4), conductorTempC: 70 }).now.cableDropV, '0.5729'),
  );
  computed('0.5 mm², 5 m out and 5 m back, 5 A: 1.950 V', iec, () =>
    expectPrinted(through(5, { ...class5, ...run(0.5, 5, 5) }).now.cableDropV, '1.950'),
  );
  computed('the same at 85 °C: 2.448 V', iec, () =>
    expectPrinted(through(5, { ...class5, ...run(0.5, 5, 5), conductorTempC: 85 }).now.cableDropV, '2.448'),
  );
  const copper: Citation = {
    source: 'nbs-hb-100',
    place: '5.5 m out, 1.0 m back of 2.5 mm² and 18.4 mΩ, 15 A',
    status: 'derived',
  };
  computed('44.83 mΩ of cable and 18.4 mΩ of joints: 63.23 mΩ', copper, () =>
    expectPrinted(1000 * through(15, run(2.5, 5.5, 1, 0.0184)).serviceOhm, '63.23'),
  );
  computed('0.948 V', copper, () => expectPrinted(through(15, run(2.5, 5.5, 1, 0.0184)).now.cableDropV, '0.948'));
  computed('with 4 mm²: 0.696 V', copper, () =>
    expectPrinted(through(15, run(4, 5.5, 1, 0.0184)).now.cableDropV, '0.696'),
  );
  computed('with 6 mm²: 0.556 V', copper, () =>
    expectPrinted(through(15, run(6, 5.5, 1, 0.0184)).now.cableDropV, '0.556'),
  );
  computed('2.5 mm² at 60 °C: 1.054 V', copper, () =>
    expectPrinted(through(15, { ...run(2.5, 5.5, 1, 0.0184), conductorTempC: 60 }).now.cableDropV, '1.054'),
  );
  const vehicle: Citation = { source: 'iso-19642', place: '3.0 m at 60 °C, 80 A', status: 'memory' };
  computed('16 mm² of vehicle cable: 0.3222 V', vehicle, () =>
    expectPrinted(
      through(80, { ...run(16, 3), resistanceBasis: iso19642, conductorTempC: 60 }).now.cableDropV,
      '0.3222',
    ),
  );
  const short: Citation = {
    source: 'circuit-theory',
    place: '12.6 V, 8 mΩ and 12 mΩ, 6 m of 0.5 mm²',
    status: 'derived',
  };
  const atTwelve = { ...battery, resistanceOhm: 0.008, restFullV: 12.6 };
  computed('a short at the far end: 55.5 A', short, () =>
    expectPrinted(of({ ...run(0.5, 6, 0, 0.012), starter: atTwelve }).fuses[0].farShortA, '55.5'),
  );
  computed(
    'hot, at the most that the standard allows: 42.1 A',
    { ...short, source: 'iso-19642', status: 'memory' },
    () => {
      const hot = { ...run(0.5, 6, 0, 0.012), starter: atTwelve, resistanceBasis: iso19642, conductorTempC: 85 };
      expectPrinted(of(hot).fuses[0].farShortA, '42.1');
    },
  );
  const behind: Citation = { source: 'circuit-theory', place: '12.6 V, 9.0 + 1.56 + 1.4 mΩ', status: 'derived' };
  computed('behind 2 m of 25 mm² and a 40 A blade, from the service battery: 1053.5 A', behind, () => {
    const service = { ...battery, resistanceOhm: 0.009, restFullV: 12.6 };
    expectPrinted(of({ ...class5, ...run(25, 2, 0, 0.0014), service }).fuses[1].farShortA, '1053.5');
  });
  const practice: Citation = {
    source: 'common-practice',
    place: 'three quarters of the rating',
    status: 'common-practice',
  };
  computed('9 A want 12 A', practice, () => expectPrinted(through(9, {}).fuses[0].leastRatingA, '12'));
  computed('18.59 A want 24.8 A', practice, () => expectPrinted(through(18.59, {}).fuses[1].leastRatingA, '24.8'));
  const cell: Citation = {
    source: 'lessons-electric-circuits',
    place: 'volume I, batteries: 70 Ah',
    status: 'published',
  };
  computed('70 Ah charged at 7 A, ideally: 10 h', cell, () => {
    const found = through(7, {
      service: { ...sink, chargeAh: 70, chargeFraction: 0, chargeEfficiency: 1 },
      wantedChargeFraction: 1,
    });
    expectPrinted(found.chargeTimeH!, '10');
  });
  // Branch-current method: 28 V behind 4 Ω, 7 V behind 1 Ω, and a load that takes 4 A between them.
  const branch: Citation = {
    source: 'lessons-electric-circuits',
    place: 'volume I, branch current method',
    status: 'published',
  };
  const two = of({
    starter: { ...battery, chargeFraction: 1, resistanceOhm: 4, restFullV: 28, chargeFullV: 28, mostV: 30 },
    service: { ...battery, chargeFraction: 0, resistanceOhm: 0.5, emptyV: 7, restFullV: 8, chargeFullV: 9 },
    serviceCable: { ...cable, outLengthM: 0, returnLengthM: 0, jointOhm: 0.5 },
    link: { ...relay, contactOhm: 0 },
    alternator: { heldV: 30, mostA: 1, senseAt: 'alternator' },
    starterLoadA: 0,
    serviceLoadA: 0,
    crankingA: 4,
  }).cranking!;
  computed('8 V across the load', branch, () => expectPrinted(two.starterV, '8'));
  computed('1 A into the weaker battery', branch, () => expectPrinted(two.reverseA, '-1'));
  computed('so 5 A out of the stronger', branch, () => expectPrinted((28 - two.starterV) / 4, '5'));
});

describe('independent', () => {
  /** A battery between a node and ground: takes above its line of charging, gives below that at rest. */
  const cell = (
    name: string,
    node: string,
    { emptyV, restFullV, chargeFullV, resistanceOhm: r }: SplitBattery,
    share: string,
  ): string => {
    const line = (full: number): string => `(${emptyV}+${full - emptyV}*${share})`;
    return [
      `b${name} ${node} ${name}x i=(max(v(${node})-${line(chargeFullV)},0)+min(v(${node})-${line(restFullV)},0))/${r}`,
      `v${name} ${name}x 0 0`,
    ].join('\n');
  };
  // A regulator that adds up what is amiss, so that nothing is amiss in the end; between nought and the most.
  const adds = (node: string, heldV: number, at: string, mostA: number): string =>
    `b${node}0 0 ${node} i=1e3*(${heldV}-v(${at}))-1e4*(max(v(${node})-${mostA},0)+min(v(${node}),0))\nc${node}0 ${node} 0 1 ic=10`;
  const seen = { alternator: 'a', 'starter-battery': 's', 'service-battery': 'v' } as const;
  const ohmOf = ({ areaMm2, outLengthM, returnLengthM, jointOhm }: typeof cable): number =>
    (0.017241 * (outLengthM + returnLengthM)) / areaMm2 + jointOhm;
  /** The whole circuit of an input as a netlist: nodes a, s, v; the shares as numbers or as nodes. */
  const netlist = (input: SplitChargeInput, shares: readonly [string, string]): string => {
    const { alternator, link, starter, service } = input;
    const r1 = ohmOf(input.mainCable as typeof cable);
    const r2 = ohmOf(input.serviceCable as typeof cable);
    const oneWay = (name: string, from: string, to: string, ohm: number, dropV: number): string =>
      `b${name} ${from} ${name}x i=max(v(${from})-v(${to})-${dropV},0)/${ohm}\nv${name} ${name}x ${to} 0`;
    const ways =
      link.kind === 'relay'
        ? `rl s lx ${r2 + link.contactOhm}\nvl lx v 0`
        : link.kind !== 'converter'
          ? oneWay('l', link.kind === 'diode' ? 's' : 'a', 'v', r2 + link.diodeOhm, link.thresholdV)
          : [
              // Its output adds up as the regulator does; its input is of the same power.
              adds('h', link.outV, 'v', link.mostOutA),
              `bo 0 ox i=max(0,min(${link.mostOutA},v(h)))\nvo ox v 0`,
              `rl s k ${r2}`,
              `bk k lx i=v(v)*i(vo)/(${link.conversionEfficiency}*max(v(k),1))`,
              'vl lx 0 0',
            ].join('\n');
    const main =
      link.kind === 'isolator-diodes' ? oneWay('m', 'a', 's', r1 + link.diodeOhm, link.thresholdV) : `rm a s ${r1}`;
    return [
      adds('g', alternator.heldV, seen[alternator.senseAt], alternator.mostA),
      `ba 0 ax i=max(0,min(${alternator.mostA},v(g)))`,
      'va ax a 0',
      'ca a 0 0.1 ic=14',
      'cs s 0 0.1 ic=14',
      'cv v 0 0.1 ic=13.5',
      main,
      ways,
      `is s 0 ${input.starterLoadA}`,
      `iv v 0 ${input.serviceLoadA}`,
      cell('s', 's', starter, shares[0]),
      cell('w', 'v', service, shares[1]),
    ].join('\n');
  };
  const sense = ['alternator', 'starter-battery', 'service-battery'] as const;
  const cases = [relay, diode, isolator, converter].flatMap((link) =>
    sense.flatMap((senseAt) =>
      [40, 70, 200].flatMap((mostA) =>
        link.kind === 'converter' && senseAt === 'service-battery' ? [] : [{ link, senseAt, mostA }],
      ),
    ),
  );
  it.each(cases)(
    '$link.kind, regulator looks at $senseAt, $mostA A: node by node in a circuit simulator',
    async (each) => {
      const { link, senseAt, mostA } = each;
      const input = { ...base, link, alternator: { heldV: 14.5, mostA, senseAt } };
      const v = await simulate(`${netlist(input, ['0.9', '0.5'])}\n.tran 0.01 8 uic`);
      const { now } = of(input);
      for (const [ours, name] of [
        [now.alternatorV, 'v(a)'],
        [now.starterV, 'v(s)'],
        [now.serviceV, 'v(v)'],
        [now.alternatorA, 'i(va)'],
        [now.starterA, 'i(vs)'],
        [now.serviceA, 'i(vw)'],
        [now.linkA, 'i(vl)'],
      ] as const) {
        expect(Math.abs(ours - v[name]!.at(-1)!), name).toBeLessThan(1e-5);
      }
    },
  );
  it.each([relay, diode, isolator, converter])('$kind: charge over two hours, in a circuit simulator', async (link) => {
    // Volts at which neither is overfilled: a line that goes on above full is not ours.
    const input: SplitChargeInput = { ...base, link, alternator: { ...base.alternator, heldV: 14.3 } };
    // An hour is 1000 s there; a capacitor of 1000 F holds the share of the charge.
    const rate = (probe: string, { chargeAh, chargeEfficiency }: SplitBattery): string =>
      `(max(i(${probe}),0)*${chargeEfficiency}+min(i(${probe}),0))/${chargeAh}`;
    const v = await simulate(
      [
        netlist(input, ['v(p)', 'v(q)']),
        `cp p 0 1000 ic=0.9\nbp 0 p i=${rate('vs', base.starter)}`,
        `cq q 0 1000 ic=0.5\nbq 0 q i=${rate('vw', base.service)}`,
        '.tran 2 2000 0 2 uic',
      ].join('\n'),
    );
    const found = of(input);
    const last = found.fill.at(-1)!;
    expect(Math.abs(last.serviceChargeFraction - v['v(q)']!.at(-1)!)).toBeLessThan(3e-4);
    expect(Math.abs(last.starterChargeFraction - v['v(p)']!.at(-1)!)).toBeLessThan(3e-4);
    const k = v['v(q)']!.findIndex((share) => share >= 0.7);
    const wanted = of({ ...input, wantedChargeFraction: 0.7 });
    if (k < 0) expect(wanted.drivenChargeFraction).toBeLessThan(0.7);
    else expect(Math.abs(wanted.chargeTimeH! - v['time']![k]! / 1000)).toBeLessThan(4e-3);
  });
  it('a stiff alternator and a full starter battery: the charge is an exponential', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.6, noNaN: true }),
        fc.double({ min: 20, max: 300, noNaN: true }),
        evenlyWithEnds(0, 1.2),
        (chargeFraction, chargeAh, thresholdV) => {
          const service = { ...battery, chargeAh, chargeFraction };
          const found = of({
            alternator: { heldV: 14.5, mostA: 1e4, senseAt: 'starter-battery' },
            starter: { ...battery, chargeFraction: 1 },
            service,
            starterLoadA: 0,
            serviceLoadA: 0,
            link: { ...diode, thresholdV, diodeOhm: 0.002 },
            wantedChargeFraction: 0.65,
          });
          const ohm = (0.017241 * 8) / 16 + 0.002 + 0.002 + 0.01;
          const end = (14.5 - thresholdV - 11.8) / 2.6;
          const tau = (chargeAh * ohm) / (0.85 * 2.6);
          if (end < 0.65) {
            expect(found.chargeTimeH).toBeNull();
            return;
          }
          const exact = tau * Math.log((end - chargeFraction) / (end - 0.65));
          expectWithin(found.chargeTimeH!, exact, 1e-5);
          const driven = Math.min(end - (end - chargeFraction) * Math.exp(-2 / tau), 1);
          expectWithin(found.drivenChargeFraction, driven, 1e-5);
        },
      ),
      { numRuns: 25 },
    );
  });
  it('a battery that takes so much at most is charged in a straight line first', () => {
    const found = of({ service: { ...battery, acceptanceA: 20 }, wantedChargeFraction: 0.6, serviceLoadA: 0 });
    expectWithin(found.chargeTimeH!, (0.1 * 100) / (0.85 * 20), 1e-6);
  });
  it('both batteries on the starter: a circuit simulator', async () => {
    const r2 = ohmOf(cable) + 0.001;
    const v = await simulate(
      `v1 a 0 12.61\nr1 a s 0.008\nv2 b 0 12.25\nr3 b v 0.01\nr2 v s ${r2}\niv v 0 3\nis s 0 180\n.op`,
    );
    const { starterV, serviceV, reverseA } = of({}).cranking!;
    expectWithin(starterV, v['v(s)']![0]!, 1e-9);
    expectWithin(serviceV, v['v(v)']![0]!, 1e-9);
    expectWithin(reverseA, (v['v(v)']![0]! - v['v(s)']![0]!) / r2, 1e-9);
  });
  it('the rush of a closing relay: a circuit simulator', async () => {
    const mainOhm = ohmOf(base.mainCable as typeof cable);
    const feed = [
      `${adds('g', 14.5, 's', 70)}\nba 0 a i=max(0,min(70,v(g)))`,
      `ca a 0 0.1 ic=14\ncs s 0 0.1 ic=14\nrm a s ${mainOhm}\nis s 0 15`,
    ].join('\n');
    const before = await simulate(`${feed}\n${cell('s', 's', base.starter, '0.9')}\n.tran 0.01 8 uic`);
    const surface = before['v(s)']!.at(-1)! - 0.008 * before['i(vs)']!.at(-1)!;
    const v = await simulate(
      `${feed}\nvs e 0 ${surface}\nrs e s 0.008\nrl s v ${ohmOf(cable) + 0.001}\nrv v f 0.01\nvf f 0 12.25\niv v 0 3\n.tran 0.01 8 uic`,
    );
    const rush = of({}).rush!;
    expectWithin(rush.starterV, v['v(s)']!.at(-1)!, 1e-7);
    expectWithin(rush.serviceA, v['i(vf)']!.at(-1)!, 1e-6);
  });
});

describe('laws', () => {
  const links = fc.constantFrom(relay, diode, isolator, converter);
  const sense = fc.constantFrom('alternator' as const, 'starter-battery' as const);
  it('currents add up, and what is lost is what goes in less what comes out', () => {
    fc.assert(
      fc.property(
        links,
        sense,
        fc.double({ min: 10, max: 300, noNaN: true }),
        evenlyWithEnds(0, 1),
        (link, senseAt, mostA, chargeFraction) => {
          const { now } = of({
            link,
            alternator: { heldV: 14.4, mostA, senseAt },
            service: { ...battery, chargeFraction },
            driveTimeH: 0.01,
            wantedChargeFraction: 1e-9,
          });
          expect(now.alternatorA).toBeLessThanOrEqual(mostA * (1 + 1e-9));
          expect(now.alternatorA).toBeCloseTo(now.starterA + 15 + now.linkA, 6);
          if (link.kind !== 'converter') {
            expect(now.linkA).toBeCloseTo(now.serviceA + 3, 6);
            expect(now.linkW).toBeCloseTo(now.linkDropV! * now.linkA, 6);
          } else if (now.converterMode !== 'off') {
            expect(now.serviceV * (now.serviceA + 3)).toBeCloseTo(0.9 * now.converterInV! * now.linkA, 5);
            expect(now.converterInV).toBeGreaterThanOrEqual(12 - 1e-9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  it('a thicker service cable never charges more slowly', () => {
    const times = [4, 10, 25, 70].map((areaMm2) => of({ serviceCable: { ...cable, areaMm2 } }).chargeTimeH!);
    expect([...times].sort((a, b) => b - a)).toEqual(times);
    expect(times[0]! / times[3]!).toBeGreaterThan(1.2);
  });
  it('a diode is made up for where the regulator looks behind it, and then the starter battery gets too much', () => {
    const at = (senseAt: SplitChargeInput['alternator']['senseAt']): SplitCharge =>
      of({ link: diode, alternator: { heldV: 14.5, mostA: 200, senseAt }, serviceLoadA: 0 });
    expect(at('starter-battery').canBeFull).toBe(false);
    expect(at('service-battery').canBeFull).toBe(true);
    expect(at('service-battery').end!.starterV).toBeCloseTo(14.5 + 0.65, 9);
    expect(at('service-battery').checks.find(({ name }) => name === 'starter battery is not overcharged')?.ok).toBe(
      false,
    );
  });
  it('an isolator of two diodes starves both, unless the regulator looks behind it', () => {
    const at = (senseAt: SplitChargeInput['alternator']['senseAt']): SplitCharge =>
      of({ link: isolator, alternator: { heldV: 14.4, mostA: 200, senseAt }, starterLoadA: 0, serviceLoadA: 0 });
    expect(at('alternator').end!.starterV).toBeCloseTo(14.4 - 0.65, 9);
    expect(at('alternator').endChargeFraction).toBeCloseTo((14.4 - 0.65 - 11.8) / 2.6, 9);
    expect(at('starter-battery').canBeFull).toBe(true);
  });
  it('swapping two inputs of a kind is seen', () => {
    swapsMatter(splitCharge, base);
    const { mainCable, serviceCable, starter, service, starterLoadA, serviceLoadA } = base;
    for (const swapped of [
      { mainCable: serviceCable, serviceCable: mainCable },
      { starter: service, service: starter },
      { starterLoadA: serviceLoadA, serviceLoadA: starterLoadA },
    ]) {
      expect(JSON.stringify(of(swapped))).not.toBe(JSON.stringify(of({})));
    }
  });
});

describe('edges', () => {
  it('a battery that is full takes nothing, and one that has the charge is there at once', () => {
    expect(of({ service: { ...battery, chargeFraction: 1 } })).toMatchObject({ chargeTimeH: 0, now: { serviceA: 0 } });
    expect(of({ wantedChargeFraction: 0.5 }).chargeTimeH).toBe(0);
  });
  it('an alternator that gives less than the loads take charges nothing', () => {
    const found = of({ alternator: { heldV: 14.5, mostA: 10, senseAt: 'alternator' } });
    expect(found).toMatchObject({ end: null, endChargeFraction: null, chargeTimeH: null, chargeTimeReason: 'never' });
    expect(found.now).toMatchObject({ heldBy: 'alternator' });
    expect(found.now.starterA).toBeLessThan(0);
    expect(found.checks.find(({ name }) => name === 'starter battery is not drained')?.ok).toBe(false);
    expect(found.checks.find(({ name }) => name === 'loads in the end')).toMatchObject({ ok: false, value: null });
    expect(of({}).checks.some(({ name }) => name === 'starter battery is not drained')).toBe(false);
    expect(found.checks.find(({ name }) => name === 'charge of the service battery')).toMatchObject({
      ok: false,
      value: null,
    });
  });
  it('a regulator set below a battery at rest gives nothing', () => {
    const found = of({ alternator: { heldV: 12, mostA: 70, senseAt: 'alternator' }, starterLoadA: 0, serviceLoadA: 0 });
    expect(found.now).toMatchObject({ heldBy: 'none', alternatorA: 0 });
  });
  it('loads beyond everything are an answer', () => {
    expect(splitCharge({ ...base, starterLoadA: 1e5 })).toMatchObject({ possible: false, code: 'collapses' });
  });
  it('a converter folds back at the least of its input, and is off without it', () => {
    const thin = { areaMm2: 2.5, outLengthM: 6, returnLengthM: 6, jointOhm: 0 };
    const folded = of({ link: { ...converter, leastInV: 13 }, serviceCable: thin }).now;
    expect(folded).toMatchObject({ converterMode: 'folds-back', converterInV: 13 });
    expect(folded.linkA).toBeCloseTo((folded.starterV - 13) / ((0.017241 * 12) / 2.5), 9);
    const off = of({ link: { ...converter, leastInV: 14.6 } });
    expect(off.now).toMatchObject({ converterMode: 'off', linkA: 0, serviceA: -3 });
    expect(off.rush).toBeNull();
    expect(off.continuousA).toBeCloseTo((14.4 * 30) / (0.9 * 14.6), 9);
  });
  it('a relay that lets go on closing is found', () => {
    const empty = { ...battery, chargeFraction: 0 };
    const link = { ...relay, opensBelowV: 13.2 };
    const weak = { heldV: 14.5, mostA: 20, senseAt: 'alternator' } as const;
    const check = (change: Change): boolean | undefined =>
      of({ link, service: empty, ...change }).checks.find(({ name }) => name === 'relay stays in')?.ok;
    expect(check({ alternator: weak })).toBe(false);
    expect(check({ alternator: { ...weak, mostA: 200 }, link: { ...link, opensBelowV: 12.8 } })).toBe(true);
    expect(of({}).checks.some(({ name }) => name === 'relay stays in')).toBe(false);
  });
  it('nothing comes back through a diode or a converter', () => {
    for (const link of [diode, isolator, converter]) expect(of({ link }).cranking!.reverseA).toBe(0);
    expect(of({}).cranking!.reverseA).toBeGreaterThan(20);
    expect(of({ crankingA: null }).cranking).toBeNull();
  });
  it('refuses nonsense', () => {
    refusesNonsense(splitCharge, base, {
      required: [
        'starterLoadA',
        'serviceLoadA',
        'conductorTempC',
        'wantedChargeFraction',
        'driveTimeH',
        'crankingA',
        'fuseRatingA',
      ],
    });
    const bad =
      (change: object): (() => unknown) =>
      () =>
        splitCharge({ ...base, ...change });
    expectInputError(bad({ wantedChargeFraction: 1.01 }), 'wantedChargeFraction', 'atMost');
    expectInputError(bad({ driveTimeH: 1001 }), 'driveTimeH', 'atMost');
    expectInputError(bad({ alternator: undefined }), 'alternator', 'missing');
    expectInputError(bad({ alternator: { ...base.alternator, heldV: 0 } }), 'alternator.heldV', 'above');
    expectInputError(bad({ alternator: { ...base.alternator, mostA: 0 } }), 'alternator.mostA', 'above');
    expectInputError(bad({ alternator: { ...base.alternator, senseAt: 'moon' } }), 'alternator.senseAt', 'oneOf');
    expectInputError(
      bad({ link: converter, alternator: { ...base.alternator, senseAt: 'service-battery' } }),
      'alternator.senseAt',
    );
    expectInputError(bad({ service: { ...battery, chargeFraction: 1.1 } }), 'service.chargeFraction', 'atMost');
    expectInputError(bad({ service: { ...battery, restFullV: 11.8 } }), 'service.restFullV', 'above');
    expectInputError(bad({ service: { ...battery, chargeFullV: 12.6 } }), 'service.chargeFullV', 'atLeast');
    expectInputError(bad({ starter: { ...battery, mostV: 14.3 } }), 'starter.mostV', 'atLeast');
    expectInputError(bad({ starter: { ...battery, chargeEfficiency: 1.2 } }), 'starter.chargeEfficiency', 'atMost');
    expectInputError(bad({ starter: { ...battery, acceptanceA: 0 } }), 'starter.acceptanceA', 'above');
    expectInputError(bad({ starter: { ...battery, resistanceOhm: 0 } }), 'starter.resistanceOhm', 'above');
    expectInputError(bad({ link: { ...relay, kind: 'rope' } }), 'link.kind', 'oneOf');
    expectInputError(bad({ link: { ...relay, contactOhm: -1 } }), 'link.contactOhm', 'atLeast');
    expectInputError(bad({ link: { ...diode, thresholdV: NaN } }), 'link.thresholdV', 'finite');
    expectInputError(bad({ link: { ...converter, conversionEfficiency: 1.1 } }), 'link.conversionEfficiency', 'atMost');
    expectInputError(bad({ link: { ...converter, mostInV: 12 } }), 'link.mostInV', 'above');
    expectInputError(bad({ serviceCable: { ...cable, outLengthM: -1 } }), 'serviceCable.outLengthM', 'atLeast');
    expectInputError(bad({ serviceCable: { ...cable, areaMm2: 0 } }), 'serviceCable.areaMm2', 'above');
    expectInputError(
      bad({ serviceCable: { areaMm2: 16, outLengthM: 0, returnLengthM: 0, jointOhm: 0 } }),
      'serviceCable.outLengthM',
    );
    expect(bad({ service: { ...battery, chargeFullV: 12.6 } })).toThrow(
      'splitCharge: service.chargeFullV must be at least 12.7, got 12.6',
    );
  });
  it('never runs out of numbers', () => {
    for (const link of [relay, isolator, converter]) neverRunsOut(splitCharge, { ...base, link }, 40);
  });
});
