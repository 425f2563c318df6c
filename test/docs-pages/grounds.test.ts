// The map of grounds answers whatever is taken off and switched on.
import { describe, expect, it } from 'vitest';
import {
  groundFaults,
  type LimitedBranch,
  type Network,
  type NetworkBranch,
  type NetworkLoad,
  prepareGroundFaults,
  solveNetwork,
  type WatchedGround,
} from 'loomwright';

/** What the page's drawing is made from. */
interface Grounds {
  readonly limits: readonly LimitedBranch[];
  readonly loads: readonly NetworkLoad[];
  readonly sandpiper: (on: readonly string[], lost: readonly string[]) => Network;
  readonly sensors: readonly WatchedGround[];
  readonly straps: readonly NetworkBranch[];
}
const page = new URL('../../docs/examples/sandpiper-grounds.ts', import.meta.url).href;
const { limits, loads, sandpiper, sensors, straps } = (await import(page)) as Grounds;

describe('the map of grounds', () => {
  const names = straps.map(({ name }) => name);
  const pairs = names.flatMap((a, i) => [[a], ...names.slice(i + 1).map((b) => [a, b])]);

  it.each([[], ['starter'], loads.map(({ name }) => name)])('with %s on and any two straps off', (...on) => {
    for (const lost of [[], names, ...pairs]) {
      const { intact, looseNodes, nodes } = groundFaults({
        network: sandpiper(on, lost),
        grounds: [],
        pairs: false,
        watched: sensors,
        limited: limits,
        detail: 'watched',
        exact: false,
        prepare: prepareGroundFaults,
        by: solveNetwork,
      });
      expect(intact.watched).toHaveLength(sensors.length);
      expect(intact.limited).toHaveLength(limits.length);
      for (const each of straps) expect(nodes).toContain(each.from);
      if (lost.includes('tail stud')) expect(looseNodes).toContain('tail');
    }
  });
});
