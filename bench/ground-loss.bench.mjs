// Row 6: the loss of each of 40 grounds in a vehicle of 500 nodes. One factorisation and an update a case, against one
// solution a case with nothing else, and against factoring again for every case.
import { groundFaults, groundFaultsEach, prepareGroundFaults, solveNetwork } from 'loomwright';
import { analyseSymmetric, factorSymmetric, solveSymmetric } from 'loomwright/number';

const GROUNDS = 40;
const WATCHED = 8;

/** A vehicle drawn by lot: a trunk of live nodes, a body of ground points tied by straps, loads between them. */
function vehicle(nodes) {
  let state = 11;
  const next = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const branches = [];
  const loads = [];
  const points = GROUNDS + 1;
  const branch = (name, from, to, ohm) => branches.push({ name, from, to, resistanceOhm: ohm });
  // The ground points: each strapped to one before it, and every strap with another way beside it.
  for (let i = 1; i < points; i++) {
    branch(`strap ${i}`, `ground ${i}`, `ground ${Math.floor(next() * i)}`, 0.0003 + 0.002 * next());
    branch(`body ${i}`, `ground ${i}`, `ground ${Math.floor(next() * i)}`, 0.002 + 0.03 * next());
  }
  // Live nodes hang on one another; each has a load whose own return runs over a node to a ground point.
  const rest = nodes - points - 1;
  const live = Math.floor(rest / 2);
  for (let i = 0; i < live; i++) {
    const from = i === 0 ? 'plus' : i < 20 ? 'plus' : `live ${Math.floor(next() * i)}`;
    branch(`feed ${i}`, from, `live ${i}`, 0.002 + 0.02 * next());
    branch(`return ${i}`, `back ${i}`, `ground ${Math.floor(next() * points)}`, 0.002 + 0.01 * next());
    loads.push({
      name: `load ${i}`,
      from: `live ${i}`,
      to: `back ${i}`,
      load: { kind: 'resistance', resistanceOhm: 3 + 60 * next() },
    });
  }
  const sources = [
    { name: 'battery', from: 'ground 0', to: 'plus', voltageV: 12.6, resistanceOhm: 0.006 },
    { name: 'alternator', from: 'ground 1', to: 'live 3', voltageV: 14.2, resistanceOhm: 0.02 },
  ];
  const network = { reference: 'ground 0', branches, sources, loads };
  const grounds = Array.from({ length: GROUNDS }, (_, i) => `strap ${i + 1}`);
  const watched = Array.from({ length: WATCHED }, (_, i) => ({
    name: `sensor ${i}`,
    node: `ground ${5 * i + 1}`,
    against: `back ${3 * i + 2}`,
    permittedMv: 20,
  }));
  return { network, grounds, watched };
}

/** The node equations once more, from nothing but the network: what a rival factors again without each ground. */
function equations({ reference, branches, sources, loads }) {
  const place = new Map();
  const at = (node) => {
    if (node === reference) return -1;
    if (!place.has(node)) place.set(node, place.size);
    return place.get(node);
  };
  const parts = [
    ...branches.map((each) => ({ ...each, ohm: each.resistanceOhm, emf: 0 })),
    ...sources.map((each) => ({ ...each, ohm: each.resistanceOhm, emf: each.voltageV })),
    ...loads.map((each) => ({ ...each, ohm: each.load.resistanceOhm, emf: 0 })),
  ].map(({ name, from, to, ohm, emf }) => ({ name, i: at(from), j: at(to), g: 1 / ohm, emf }));
  const count = place.size;
  const between = parts.filter(({ i, j }) => i >= 0 && j >= 0);
  const rows = Int32Array.from(between, ({ i }) => i);
  const columns = Int32Array.from(between, ({ j }) => j);
  const values = Float64Array.from(between, ({ g }) => -g);
  const rowSums = new Float64Array(count);
  const sides = new Float64Array(count);
  for (const { i, j, g, emf } of parts) {
    if (i < 0 || j < 0) rowSums[Math.max(i, j)] += g;
    if (i >= 0) sides[i] -= g * emf;
    if (j >= 0) sides[j] += g * emf;
  }
  return { place, count, between, values, rowSums, sides, parts, analysis: analyseSymmetric({ count, rows, columns }) };
}

export default {
  question: 'What does the loss of each of 40 grounds in 500 nodes cost?',
  ratios: [
    { name: 'all voltages, over one solution a case', of: 'all voltages', to: 'one solution a case', goal: 1.4 },
    {
      name: 'factoring again over 8 watched points',
      of: 'factored again',
      to: '8 watched points',
      goal: 9,
      atMost: false,
    },
    { name: 'factoring again over all voltages', of: 'factored again', to: 'all voltages', goal: 1, atMost: false },
  ],
  prepare(quick) {
    const { network, grounds, watched } = vehicle(quick ? 150 : 500);
    const prepared = prepareGroundFaults({ network, grounds, watched, by: solveNetwork });
    const own = equations(network);
    const { analysis, values, rowSums, sides, count, between, parts, place } = own;
    const whole = factorSymmetric({ analysis, values, rowSums });
    const intact = solveSymmetric({ factor: whole, sides });
    const straps = grounds.map((name) => ({
      entry: between.findIndex((part) => part.name === name),
      part: parts.find((part) => part.name === name),
    }));
    const x = new Float64Array(count);
    const scratch = new Float64Array(count);
    const without = values.slice();
    const sums = rowSums.slice();
    const again = { definite: true, analysis, lower: whole.lower.slice(), pivots: whole.pivots.slice() };
    /** Volts without one ground, by factoring again into arrays that are kept. */
    const refactored = ({ entry, part }) => {
      const held = Math.max(part.i, part.j);
      if (entry >= 0) without[entry] = 0;
      else sums[held] = rowSums[held] - part.g;
      const factor = factorSymmetric({ analysis, values: without, rowSums: sums, into: again });
      if (entry >= 0) without[entry] = values[entry];
      else sums[held] = rowSums[held];
      return solveSymmetric({ factor, sides, into: x, scratch });
    };
    const every = groundFaultsEach({ prepared, detail: 'every-node' });
    const few = groundFaultsEach({ prepared, detail: 'watched' });
    const at = (volts, node) => (place.has(node) ? volts[place.get(node)] : 0);
    let worst = 0;
    const islands = [];
    straps.forEach((strap, k) => {
      if (every.otherShare[k] < 1e-5) {
        islands.push(grounds[k]);
        return;
      }
      const after = refactored(strap);
      prepared.nodes.forEach((node, i) => {
        const wanted = at(after, node) - at(intact, node);
        worst = Math.max(worst, Math.abs(every.shiftV[k * prepared.nodes.length + i] - wanted));
      });
      watched.forEach(({ node, against }, r) => {
        const wanted = at(after, node) - at(intact, node) - at(after, against) + at(intact, against);
        worst = Math.max(worst, Math.abs(few.shiftV[k * WATCHED + r] - wanted));
      });
    });
    if (!(worst < 1e-10)) throw new Error(`shifts differ by ${worst} V`);
    if (islands.length > 0) throw new Error(`the bench's grounds should leave a way: ${islands.join(', ')}`);
    const unit = new Float64Array(count);
    return {
      count: GROUNDS,
      note: `${prepared.nodes.length} nodes, ${parts.length} parts, ${analysis.rowIndex.length} entries in the factor; shifts agree to ${worst.toExponential(1)} V; groundFaults counts names, limits and islands too`,
      ways: {
        'one solution a case': () => {
          let sum = 0;
          for (const { part } of straps) {
            if (part.i >= 0) unit[part.i] = 1;
            if (part.j >= 0) unit[part.j] = -1;
            sum += solveSymmetric({ factor: whole, sides: unit, into: x, scratch })[0];
            if (part.i >= 0) unit[part.i] = 0;
            if (part.j >= 0) unit[part.j] = 0;
          }
          return sum;
        },
        'all voltages': () => groundFaultsEach({ prepared, detail: 'every-node', into: every }).shiftV[7],
        '8 watched points': () => groundFaultsEach({ prepared, detail: 'watched', into: few }).shiftV[7],
        'factored again': () => straps.reduce((sum, strap) => sum + refactored(strap)[0], 0),
        'groundFaults, from the network': () =>
          groundFaults({
            network,
            grounds,
            pairs: false,
            watched,
            limited: [],
            detail: 'watched',
            exact: false,
            prepare: prepareGroundFaults,
            by: solveNetwork,
          }).cases.length,
      },
    };
  },
};
