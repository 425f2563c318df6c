import { describe, expect, it } from 'vitest';
import { solveNetwork, type Network } from 'loomwright';
import { denseVolts, nodesOf, randomNetwork } from './random-network.js';
import { computed, expectPrinted } from '../support/published.js';
import { simulate } from '../support/simulator.js';

const r = (name: string, from: string, to: string, resistanceOhm: number) => ({ name, from, to, resistanceOhm });
const v = (net: Network, node: string) => solveNetwork(net).nodes.find((n) => n.name === node)!.voltageV!;

describe('published', () => {
  const dcnet = {
    source: 'lessons-electric-circuits',
    place: 'volume I, network analysis',
    status: 'published',
  } as const;
  const bridge = (E: number, o: number[]): Network => ({
    reference: '0',
    sources: [{ name: 'V', from: '0', to: '1', voltageV: E, resistanceOhm: 0 }],
    branches: [
      r('R1', '1', '2', o[0]!),
      r('R2', '1', '3', o[1]!),
      r('R3', '2', '3', o[2]!),
      r('R4', '2', '0', o[3]!),
      r('R5', '3', '0', o[4]!),
    ],
  });
  const a = bridge(24, [150, 50, 100, 300, 250]);
  computed('bridge 24 V, node 2', dcnet, () => expectPrinted(v(a, '2'), '17.66'));
  computed('bridge 24 V, node 3', dcnet, () => expectPrinted(v(a, '3'), '19.31'));
  computed('bridge 24 V, 1 to 2', dcnet, () => expectPrinted(24 - v(a, '2'), '6.345'));
  computed('bridge 24 V, 1 to 3', dcnet, () => expectPrinted(24 - v(a, '3'), '4.690'));
  computed('bridge 24 V, 3 to 2', dcnet, () => expectPrinted(v(a, '3') - v(a, '2'), '1.655'));
  const b = bridge(10, [12, 18, 6, 18, 12]);
  computed('bridge 10 V, node 2', dcnet, () => expectPrinted(v(b, '2'), '5.294'));
  computed('bridge 10 V, node 3', dcnet, () => expectPrinted(v(b, '3'), '4.706'));
  computed('bridge 10 V, 2 to 3', dcnet, () => expectPrinted(v(b, '2') - v(b, '3'), '0.5882'));
  const two: Network = {
    reference: '0',
    branches: [r('load', 'n', '0', 2)],
    sources: [
      { name: 'a', from: '0', to: 'n', voltageV: 28, resistanceOhm: 4 },
      { name: 'b', from: '0', to: 'n', voltageV: 7, resistanceOhm: 1 },
    ],
  };
  computed('two batteries, V', dcnet, () => expectPrinted(v(two, 'n'), '8'));
  computed('two batteries, A of the load', dcnet, () => expectPrinted(solveNetwork(two).branches[0]!.currentA!, '4'));
});

describe('independent', () => {
  it('300 linear networks against a full matrix; islands against a walk; balance', () => {
    let cut = 0;
    for (let s = 1; s <= 300; s++) {
      const net = randomNetwork(s, {
        nodes: 4 + (s % 30),
        loops: s % 6,
        loads: 1 + (s % 7),
        diodes: 0,
        switches: s % 4,
        sources: 1 + (s % 3),
      });
      const got = solveNetwork(net);
      const want = denseVolts(net);
      for (const n of got.nodes) {
        if (!want.has(n.name)) {
          expect(n.voltageV).toBeNull();
          cut++;
          continue;
        }
        expect(Math.abs(n.voltageV! - want.get(n.name)!)).toBeLessThan(1e-9 * 14);
      }
      expect(Math.abs(got.balance.differenceW)).toBeLessThan(1e-9 * Math.max(1, got.balance.givenW));
    }
    console.log('nodes without volts', cut);
  });
  it('300 linear networks against the circuit simulator', async () => {
    const lines: string[] = ['.options reltol=1e-12 abstol=1e-15 vntol=1e-12 gmin=1e-20'];
    const nets = Array.from({ length: 300 }, (_, s) =>
      randomNetwork(s + 500, {
        nodes: 4 + (s % 20),
        loops: s % 6,
        loads: 1 + (s % 6),
        diodes: 0,
        switches: 0,
        sources: 1 + (s % 3),
      }),
    );
    const vec = (s: number, n: string) => `x${s}_${n}`;
    nets.forEach((net, s) => {
      const at = (n: string) => (n === net.reference ? '0' : vec(s, n));
      let k = 0;
      for (const { from, to, resistanceOhm } of net.branches)
        lines.push(`r${s}_${k++} ${at(from)} ${at(to)} ${resistanceOhm}`);
      for (const l of net.loads!)
        if (l.load.kind === 'resistance') lines.push(`r${s}_${k++} ${at(l.from)} ${at(l.to)} ${l.load.resistanceOhm}`);
      for (const q of net.sources) {
        lines.push(
          `v${s}_${k} q${s}_${k} ${at(q.from)} ${q.voltageV}`,
          `r${s}_${k} q${s}_${k} ${at(q.to)} ${q.resistanceOhm}`,
        );
        k++;
      }
    });
    const out = await simulate([...lines, '.op'].join('\n'));
    let worst = 0,
      seen = 0;
    nets.forEach((net, s) => {
      for (const n of solveNetwork(net).nodes) {
        const w = out[`v(${vec(s, n.name)})`]?.[0];
        if (w === undefined || n.voltageV === null) continue;
        seen++;
        worst = Math.max(worst, Math.abs(n.voltageV - w) / Math.max(Math.abs(w), 1e-3));
      }
    });
    console.log('simulator', seen, worst);
    expect(seen).toBeGreaterThan(2000);
    expect(worst).toBeLessThan(1e-9);
  }, 120000);
  it('300 networks with diodes against every state tried', () => {
    let solved = 0,
      conducting = 0;
    for (let s = 1; s <= 300; s++) {
      const net = randomNetwork(s + 900, {
        nodes: 4 + (s % 10),
        loops: s % 4,
        loads: 1 + (s % 4),
        diodes: 1 + (s % 6),
        switches: 0,
        sources: 1 + (s % 3),
      });
      const d = net.diodes!;
      const got = solveNetwork(net);
      const found: Map<string, number>[] = [];
      for (let m = 0; m < 1 << d.length; m++) {
        const on = d.filter((_, i) => (m >> i) & 1);
        const rest = {
          ...net,
          diodes: [],
          sources: [
            ...net.sources,
            ...on.map((x) => ({
              name: `on ${x.name}`,
              from: x.to,
              to: x.from,
              voltageV: x.forwardV,
              resistanceOhm: x.resistanceOhm,
            })),
          ],
        };
        const want = denseVolts(rest);
        if (
          d.every(({ from, to, forwardV }, i) => {
            const over = want.get(from)! - want.get(to)! - forwardV;
            return (m >> i) & 1 ? over >= -1e-9 : over <= 1e-9;
          })
        )
          found.push(new Map(want));
      }
      expect(found.length).toBeGreaterThan(0);
      for (const n of nodesOf(net))
        expect(Math.abs(got.nodes.find((x) => x.name === n)!.voltageV! - found[0]!.get(n)!)).toBeLessThan(1e-7);
      solved++;
      conducting += got.diodes.filter((x) => x.conducts).length;
    }
    console.log('diodes', solved, conducting);
    expect(conducting).toBeGreaterThan(100);
  });
});

describe('edges', () => {
  const loop = (V2: number): Network => ({
    reference: 'n',
    branches: [],
    sources: [
      { name: 'a', from: 'n', to: 'p', voltageV: 12, resistanceOhm: 0 },
      { name: 'b', from: 'n', to: 'p', voltageV: V2, resistanceOhm: 0 },
    ],
  });
  it('ideal loops, shorts, one node, floating', () => {
    expect(() => solveNetwork(loop(13))).toThrow(/closes a loop of 0 Ω/);
    expect(solveNetwork(loop(12)).sources.map((x) => x.currentA)).toEqual([null, null]);
    const short: Network = {
      reference: 'n',
      branches: [r('s', 'p', 'n', 0), r('one', 'p', 'p', 1)],
      sources: [{ name: 'a', from: 'n', to: 'p', voltageV: 12, resistanceOhm: 0.01 }],
    };
    expect(solveNetwork(short).branches.map((x) => x.currentA)).toEqual([1200, 0]);
    expect(() => solveNetwork({ ...short, sources: [{ ...short.sources[0]!, resistanceOhm: 0 }] })).toThrow(
      /nothing limits its current/,
    );
  });
  it('100 000 nodes', () => {
    const t = performance.now();
    const n = 100000;
    const got = solveNetwork({
      reference: '0',
      branches: Array.from({ length: n }, (_, i) => r(`b${i}`, `${i}`, `${i + 1}`, 0.001)),
      sources: [{ name: 'v', from: '0', to: `${n}`, voltageV: 12, resistanceOhm: 20 }],
    });
    console.log('100k ms', performance.now() - t);
    expect(Math.abs(got.sources[0]!.currentA! - 0.1)).toBeLessThan(1e-9);
  });
});
