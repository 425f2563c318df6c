// What the network of a plan takes for no resistance, and when it takes a load for settled: an ordinary file hardly
// feels either. Here both decide.
import { describe, expect, it } from 'vitest';
import { type Loom, parseLoom, planLoom } from '@loomwright/harness';
import { draftsOf } from '../../packages/harness/src/loom/draft.js';
import { Network } from '../../packages/harness/src/loom/network.js';
import { looped, loopedText } from '../support/looped-loom.js';
import { netlist } from '../support/plan-netlist.js';
import { simulate } from '../support/simulator.js';

describe('joints and pieces of body of 0 mΩ in a loop', () => {
  // The starter's current comes back through the joint of the engine block and two pieces of body, all of 0 mΩ, and by
  // a strap beside them.
  const text = loopedText.replace(
    'engine block: { place: engine, joint: 0.2 mΩ, to: frame front, strap: 0.5 m, bonds: [',
    'engine block: { place: engine, joint: 0 mΩ, to: frame front, body: 0 mΩ, bonds: [{ to: frame front, body: 0 mΩ }, ',
  );
  const parsed = parseLoom(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const plan = planLoom(parsed.loom);
  const { nodes, currents } = plan.states.find(({ name }) => name === 'cranking')!;

  it('lose next to nothing: every node against the simulator, in which they have a thousandth of it', async () => {
    const { text: lines, names } = netlist(plan, 'cranking');
    const theirs = await simulate(lines);
    for (const [name, label] of names)
      expect(Math.abs(nodes[name]! - theirs[`v(${label})`]![0]!), name).toBeLessThan(3e-7);
    expect(Math.abs(nodes['ground engine block']! - nodes['ground frame front']!)).toBeLessThan(3e-7);
  });
  it('share what flows into them, half and half', () => {
    const joint = currents['ground engine block']!;
    expect(joint).toBeGreaterThan(50);
    for (const name of ['body engine block', 'body engine block to frame front'])
      expect(Math.abs(currents[name]! - joint / 2), name).toBeLessThan(1e-6);
  });
});

describe('a load a hair below the most that its source gives', () => {
  const bare = structuredClone(looped) as { items: Loom['items']; controllers: object; buses: object };
  const { fridge } = bare.items;
  if (fridge?.kind !== 'load') throw new Error('there is no fridge');
  /** The fridge alone, behind 0.5 Ω of wire; with null it is off. */
  const solve = (powerW: number | null) => {
    const on = powerW === null ? [] : ['key off'];
    const load = { kind: 'constant power' as const, power: powerW ?? 60 };
    const loom = { ...bare, items: { fridge: { ...fridge, load, on } }, controllers: {}, buses: {} } as unknown as Loom;
    const drafts = draftsOf(loom);
    const network = new Network(loom, drafts);
    const metal = network.metal(drafts.map(() => ({ outOhm: 0.4, backOhm: 0.1 })));
    const at = drafts.findIndex(({ name }) => name === 'fridge');
    const { nodes } = drafts[at]!;
    const state = network.solve('key off', drafts, metal);
    return {
      sourceOhm: network.ohmBetween(nodes!.from, nodes!.to!, metal) + 0.5,
      loadV: network.sourceV(drafts[at]!, state) - 0.5 * state.currents[at]!,
      leftOut: state.leftOut.size,
    };
  };
  const { sourceOhm, loadV: openV } = solve(null);
  const mostW = openV ** 2 / (4 * sourceOhm);

  // V = E/2 (1 + √(1 − P/P_most)): so near to the end each step only halves what is left, and the last one counts.
  it('has the volts of the quadratic equation', () => {
    for (let decades = 6; decades <= 11.5; decades += 0.25) {
      const share = 10 ** -decades;
      const { loadV, leftOut } = solve(mostW * (1 - share));
      expect(leftOut).toBe(0);
      expect(Math.abs(loadV - (openV / 2) * (1 + Math.sqrt(share))), `${share}`).toBeLessThan(1e-9);
    }
  });
  it('is left out a hair above', () => {
    expect(solve(mostW * (1 + 1e-9)).leftOut).toBe(1);
  });
});
