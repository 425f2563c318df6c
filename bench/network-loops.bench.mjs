// Row 5: a network with loops, from 1000 to 100 000 nodes, solved from nothing: assembled, ordered, factored, solved.
// Against a general sparse solver and the circuit simulator, where this machine has them, and against the sparse matrices
// of a general mathematics library at the smallest size.
import * as math from 'mathjs';
import { analyseNodes, solveNodes } from 'loomwright/number';
import { ngspice, scipy } from './peers.mjs';

/**
 * A vehicle drawn by lot: one node in ten is a ground point of a body that is a sheet of straps, the others are feeds
 * that branch from one another and from six busbars, each third with a load to a ground point near by. The body is as
 * many points wide as `side` says and as long as need be: eight for a vehicle that grows longer, their square root for a
 * square sheet of metal, which no order of elimination keeps sparse.
 */
function vehicle(count, side) {
  let state = 29;
  const next = () => (state = (state * 48271) % 2147483647) / 2147483647;
  const points = Math.ceil(count / 10);
  const from = [];
  const to = [];
  const perOhm = [];
  const drivenA = [];
  const add = (a, b, ohm, emfV = 0) => {
    from.push(a);
    to.push(b);
    perOhm.push(1 / ohm);
    drivenA.push(emfV / ohm);
  };
  for (let p = 1; p < points; p++) {
    if (p % side > 0) add(p, p - 1, 2e-4 + 2e-3 * next());
    if (p >= side) add(p, p - side, 2e-4 + 2e-3 * next());
  }
  const near = (k) => Math.min(points - 1, Math.floor(((k - points) / (count - points)) * points + 3 * next()));
  for (let k = points; k < count; k++) {
    if (k < points + 6) add(0, k, 5e-3, 12.6);
    else
      add(k, next() < 0.8 ? Math.max(points, k - 1 - Math.floor(next() * 5)) : points + (k % 6), 1e-3 + 0.02 * next());
    if (next() < 0.33) add(k, near(k), 2 + 100 * next());
    // Some return over a wire of their own, and share it: loops beyond the sheet.
    if (next() < 0.05) add(k, Math.max(points, k - 7), 1e-3 + 0.02 * next());
  }
  return {
    nodeCount: count,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    held: Int32Array.of(0),
    perOhm: Float64Array.from(perOhm),
    drivenA: Float64Array.from(drivenA),
  };
}

const ours = (net) => {
  const { perOhm, drivenA } = net;
  const solved = solveNodes({ analysis: analyseNodes(net), perOhm, drivenA, correctionCount: 0 });
  if (!solved.definite) throw new Error(`not definite at ${solved.nodeIndex}`);
  return solved;
};

/** The same as branches between unknowns, −1 for the node held, and right sides. */
function system({ nodeCount, from, to, perOhm, drivenA }) {
  const b = new Float64Array(nodeCount - 1);
  from.forEach((a, k) => {
    if (a > 0) b[a - 1] -= drivenA[k];
    if (to[k] > 0) b[to[k] - 1] += drivenA[k];
  });
  return { i: from.map((a) => a - 1), j: to.map((a) => a - 1), g: perOhm, b };
}

/** Largest |G v − i| over the size of what is added there. */
function residual({ i, j, g, b }, v) {
  const sum = b.map((a) => -a);
  const size = b.map((a) => Math.abs(a));
  const at = (u) => (u < 0 ? 0 : v[u]);
  g.forEach((perOhm, k) => {
    const a = perOhm * (at(i[k]) - at(j[k]));
    const most = perOhm * (Math.abs(at(i[k])) + Math.abs(at(j[k])));
    for (const [u, sign] of [
      [i[k], 1],
      [j[k], -1],
    ]) {
      if (u < 0) continue;
      sum[u] += sign * a;
      size[u] += most;
    }
  });
  return sum.reduce((most, a, u) => Math.max(most, Math.abs(a) / size[u]), 0);
}

const netlist = ({ from, to, perOhm, drivenA }) =>
  Array.from(from, (a, k) => {
    const ohm = 1 / perOhm[k];
    if (drivenA[k] === 0) return `r${k} ${a === 0 ? 0 : `n${a}`} ${to[k] === 0 ? 0 : `n${to[k]}`} ${ohm}`;
    return `v${k} q${k} ${a === 0 ? 0 : `n${a}`} ${drivenA[k] * ohm}\nr${k} q${k} n${to[k]} ${ohm}`;
  }).join('\n');

function mathjsVolts({ i, j, g, b }) {
  const entries = new Map();
  const add = (r, c, value) => entries.set(r * b.length + c, (entries.get(r * b.length + c) ?? 0) + value);
  g.forEach((perOhm, k) => {
    if (i[k] >= 0) add(i[k], i[k], perOhm);
    if (j[k] >= 0) add(j[k], j[k], perOhm);
    if (i[k] >= 0 && j[k] >= 0) {
      add(i[k], j[k], -perOhm);
      add(j[k], i[k], -perOhm);
    }
  });
  const columns = Array.from(b, () => []);
  for (const [at, value] of entries) columns[at % b.length].push([Math.floor(at / b.length), value]);
  const index = [];
  const values = [];
  const ptr = [0];
  for (const column of columns) {
    for (const [row, value] of column.sort((p, q) => p[0] - q[0])) {
      index.push(row);
      values.push(value);
    }
    ptr.push(index.length);
  }
  const matrix = new math.SparseMatrix({ values, index, ptr, size: [b.length, b.length], datatype: 'number' });
  // Ordering 1: minimum degree of AᵀA; threshold 0.1 for partial pivots.
  const x = math.lusolve(math.slu(matrix, 1, 0.1), Array.from(b));
  return x.toArray === undefined ? x.flat() : x.toArray().flat();
}

const SIZES = [1000, 10_000, 100_000];
const SQUARE = '10000 in a square sheet';
const named = (way, size) => `${way}, ${size} nodes`;

export default {
  question: 'What does a network with loops cost from nothing, a node?',
  how: { rounds: 7, clock: 'cpu' },
  ratios: [
    {
      name: 'a node of 100 000 over one of 1000 (2.00 is a slope of 1.15)',
      of: named('ours', 100_000),
      to: named('ours', 1000),
      goal: 2,
    },
    ...[...SIZES, SQUARE].flatMap((size) => [
      { name: `scipy over ours, ${size}`, of: named('scipy', size), to: named('ours', size), goal: 2, atMost: false },
      {
        name: `scipy in its default order over ours, ${size}`,
        of: named('scipy, default', size),
        to: named('ours', size),
        goal: 2,
        atMost: false,
      },
      {
        name: `simulator over ours, ${size}`,
        of: named('simulator', size),
        to: named('ours', size),
        goal: 15,
        atMost: false,
      },
    ]),
    { name: 'mathjs over ours, 1000', of: named('mathjs', 1000), to: named('ours', 1000), goal: 15, atMost: false },
  ],
  prepare(quick) {
    const python = quick ? null : scipy();
    const spice = quick ? null : ngspice();
    const ways = {};
    const count = {};
    let worst = 0;
    let left = 0;
    const differ = (v, theirs) => {
      const off = Math.abs(v - theirs) / Math.max(Math.abs(theirs), 1e-3);
      if (!(off < 1e-9)) throw new Error(`volts differ by ${off} of them`);
      worst = Math.max(worst, off);
    };
    for (const size of quick ? [300] : [...SIZES, SQUARE]) {
      const net = size === SQUARE ? vehicle(10_000, 32) : vehicle(size, 8);
      const own = system(net);
      const { nodeV } = ours(net);
      const volts = nodeV.subarray(1);
      left = Math.max(left, residual(own, volts));
      if (!(left < 1e-14)) throw new Error(`a residual of ${left}`);
      const add = (way, run) => {
        ways[named(way, size)] = run;
        count[named(way, size)] = net.nodeCount;
      };
      add('ours', () => ours(net).nodeV[net.nodeCount - 1]);
      if (python !== null) {
        const key = `net${String(size).replaceAll(' ', '-')}`;
        python.add(key, own);
        python.volts(key).forEach((v, u) => differ(volts[u], v));
        add('scipy', { timedNs: () => python.timedNs(key, 'MMD_AT_PLUS_A') });
        if (net.nodeCount <= 10_000) add('scipy, default', { timedNs: () => python.timedNs(key, 'COLAMD') });
      }
      // At 100 000 nodes the simulator, and scipy in its default order, take minutes for one solution: left out there.
      if (spice !== null && net.nodeCount <= 10_000) {
        const text = netlist(net);
        const theirs = spice.volts(text);
        for (let v = 1; v < net.nodeCount; v++) differ(nodeV[v], theirs.get(`n${v}`));
        const runs = net.nodeCount <= 1000 ? 10 : 1;
        add('simulator', { timedNs: () => spice.timedNs(text, runs), mostRounds: 3 });
      }
      if (net.nodeCount <= 1000) {
        mathjsVolts(own).forEach((v, u) => differ(volts[u], v));
        add('mathjs', () => mathjsVolts(own)[0]);
      }
    }
    const peers = ['mathjs', python && `scipy ${python.version}`, spice && `ngspice ${spice.version}`].filter(Boolean);
    return {
      ways,
      count,
      note: `times are a node; residual ${left.toExponential(1)}; ${peers.join(', ')} agree to ${worst.toExponential(1)}`,
    };
  },
};
