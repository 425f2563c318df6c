// Row 4: a tree of wires with loads at its ends, from 100 to 100 000 nodes: two passes against a general sparse solver
// and against the circuit simulator, where this machine has them. Loads are given currents; with conductances the
// passes cost a division more a node. scipy has its default order of elimination, and the one that suits best. The same
// two passes without any check show what is possible: where scipy takes less than a hundred times as long as these, no
// checked sweep can be a hundred times as fast as scipy.
import { sweepTree } from 'loomwright/number';
import { measure } from './measure.mjs';
import { ngspice, scipy } from './peers.mjs';

/** A vehicle's feeds drawn by lot: each node hangs on one before it, and draws a resistance's current to 0 V. */
function tree(count) {
  let state = 17;
  const next = () => (state = (state * 48271) % 2147483647) / 2147483647;
  const parent = Int32Array.from({ length: count }, (_, i) => {
    if (i < 8) return -1;
    return next() < 0.7 ? i - 1 - Math.floor(next() * 6) : Math.floor(next() * i);
  });
  return {
    parent,
    resistanceOhm: Float64Array.from(parent, () => 1e-4 + 2e-3 * next()),
    drawnA: Float64Array.from(parent, () => (next() < 0.4 ? (20 / count) * next() : 0)),
    feedV: 12.6,
  };
}

/** The two passes and nothing else: what a sweep can cost at least. */
function rawPasses({ parent, resistanceOhm, drawnA, feedV, into: { nodeV, branchA } }) {
  branchA.set(drawnA);
  for (let k = parent.length - 1; k >= 0; k--) {
    const above = parent[k];
    if (above >= 0) branchA[above] += branchA[k];
  }
  for (let k = 0; k < parent.length; k++) {
    const above = parent[k];
    nodeV[k] = (above < 0 ? feedV : nodeV[above]) - resistanceOhm[k] * branchA[k];
  }
  return nodeV;
}

/** The same as node equations: branches to the parent, currents drawn, and what the feed drives. */
function system({ parent, resistanceOhm, drawnA, feedV }) {
  const g = resistanceOhm.map((ohm) => 1 / ohm);
  const b = drawnA.map((a, k) => (parent[k] < 0 ? feedV * g[k] : 0) - a);
  return { i: Int32Array.from(parent, (_, k) => k), j: parent, g, b };
}

const netlist = ({ parent, resistanceOhm, drawnA, feedV }) =>
  [
    `v0 feed 0 ${feedV}`,
    ...Array.from(parent, (p, k) => `r${k} n${k} ${p < 0 ? 'feed' : `n${p}`} ${resistanceOhm[k]}`),
    ...Array.from(drawnA, (a, k) => (a === 0 ? '' : `i${k} n${k} 0 ${a}`)),
  ].join('\n');

const SIZES = [100, 1000, 10_000, 100_000];
const named = (way, size) => `${way}, ${size} nodes`;

export default {
  question: 'What does a tree of wires cost, a node?',
  how: { rounds: 11, clock: 'cpu' },
  ratios: [
    {
      name: 'a node of 100 000 over one of 1000 (1.26 is a slope of 1.05)',
      of: named('sweep', 100_000),
      to: named('sweep', 1000),
      goal: 1.26,
    },
    {
      name: 'a node of 10 000 over one of 100 (1.26 is a slope of 1.05)',
      of: named('sweep', 10_000),
      to: named('sweep', 100),
      goal: 1.26,
    },
    ...SIZES.map((size) => ({
      name: `the sweep over the raw passes, ${size}`,
      of: named('sweep', size),
      to: named('raw passes, unchecked', size),
      goal: 2.5,
    })),
    ...[1000, 10_000, 100_000].flatMap((size) => [
      {
        name: `scipy in its default order over the sweep, ${size}`,
        of: named('scipy, default', size),
        to: named('sweep', size),
        goal: 100,
        atMost: false,
      },
      {
        name: `scipy in the best order over the sweep, ${size}`,
        of: named('scipy, best', size),
        to: named('sweep', size),
        goal: 100,
        atMost: false,
      },
      {
        name: `simulator over the sweep, ${size}`,
        of: named('simulator', size),
        to: named('sweep', size),
        goal: 100,
        atMost: false,
      },
    ]),
  ],
  prepare(quick) {
    const python = quick ? null : scipy();
    const spice = quick ? null : ngspice();
    const ways = {};
    const count = {};
    let worst = 0;
    const differ = (ours, theirs) => {
      const off = Math.abs(ours - theirs) / Math.abs(theirs);
      if (!(off < 1e-9)) throw new Error(`volts differ by ${off} of them`);
      worst = Math.max(worst, off);
    };
    for (const size of quick ? [100, 1000] : SIZES) {
      const input = tree(size);
      const { nodeV, branchA } = sweepTree(input);
      const into = { nodeV: new Float64Array(size), branchA: new Float64Array(size) };
      const whole = { ...input, into };
      rawPasses(whole).forEach((v, k) => {
        if (v !== nodeV[k]) throw new Error(`${nodeV[k]} V at ${k}, and ${v} by the raw passes`);
      });
      // Without a peer: what flows into each node flows out of it.
      const left = branchA.map((a, k) => a - input.drawnA[k]);
      input.parent.forEach((p, k) => {
        if (p >= 0) left[p] -= branchA[k];
      });
      left.forEach((a, k) => {
        if (Math.abs(a) > 1e-12 * (Math.abs(branchA[k]) + 1)) throw new Error(`${a} A are left over at ${k}`);
      });
      const add = (way, run) => {
        ways[named(way, size)] = run;
        count[named(way, size)] = size;
      };
      add('sweep', () => sweepTree(whole).nodeV[size - 1]);
      add('raw passes, unchecked', () => rawPasses(whole)[size - 1]);
      const shuntPerOhm = input.drawnA.map((a) => a / 12.6);
      const shunted = { ...whole, drawnA: new Float64Array(size), shuntPerOhm };
      add('with conductances', () => sweepTree(shunted).nodeV[size - 1]);
      if (python !== null && size > 100) {
        python.add(`tree${size}`, system(input));
        python.volts(`tree${size}`).forEach((v, k) => differ(nodeV[k], v));
        add('scipy, best', { timedNs: () => python.timedNs(`tree${size}`, 'MMD_AT_PLUS_A') });
        add('scipy, default', { timedNs: () => python.timedNs(`tree${size}`, 'COLAMD') });
      }
      if (spice !== null && size > 100) {
        const text = netlist(input);
        const volts = spice.volts(text);
        nodeV.forEach((v, k) => differ(v, volts.get(`n${k}`)));
        const runs = size <= 1000 ? 10 : 1;
        add('simulator', { timedNs: () => spice.timedNs(text, runs), mostRounds: size > 10_000 ? 2 : 5 });
      }
    }
    // Whether a hundred times is possible at all, in figures of this run.
    const possible = (size) => {
      const [raw, theirs] = ['raw passes, unchecked', 'scipy, default'].map((way) => named(way, size));
      const times = measure({ raw: ways[raw], theirs: ways[theirs] }, size, { rounds: 7, targetMs: 20, clock: 'cpu' });
      const [floor, hundredth] = [times.raw.medianNs, times.theirs.medianNs / 100].map((ns) => ns.toFixed(1));
      return `at ${size} nodes a hundredth of scipy in its default order is ${hundredth} ns, and the raw passes alone take ${floor} ns`;
    };
    const floors = python === null ? [] : [10_000, 100_000].map(possible);
    const peers = [python && `scipy ${python.version}`, spice && `ngspice ${spice.version}`].filter(Boolean);
    const agree =
      peers.length === 0 ? 'no peer is installed' : `${peers.join(' and ')} agree to ${worst.toExponential(1)}`;
    return { ways, count, note: ['times are a node', agree, ...floors].join('; ') };
  },
};
