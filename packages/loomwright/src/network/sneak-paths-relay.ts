import type { Network } from './element.js';
import { afterChanges, type SneakChange } from './sneak-paths-change.js';

/** A relay: its coil is one of the loads, its contacts are switches. */
export interface SneakRelay {
  /** Name of the coil among the loads. */
  readonly coil: string;
  /** Volts at the coil from which it pulls in, in V, above 0: at the coil's temperature. */
  readonly pickUpV: number;
  /** Volts down to which it holds once it is in, in V, above 0 and at most `pickUpV`. */
  readonly holdV: number;
  /** The switches that it moves; left out where nothing of the network hangs on it. */
  readonly contacts?: readonly SneakContact[];
}

/** One contact of a relay. */
export interface SneakContact {
  /** Name among the switches. */
  readonly switch: string;
  /** Closed while the coil is energised (a make contact) or while it is released (a break contact). */
  readonly closedWhile: 'energised' | 'released';
}

/** Where the relays come to rest. */
export interface RelaysAtRest<S> {
  readonly network: Network;
  readonly solved: S;
  readonly energised: readonly boolean[];
  /** Relays that would move again from where they were found: they buzz. */
  readonly buzzes: readonly boolean[];
}

/** Positions of the contacts. */
function contactsOf(relays: readonly SneakRelay[], energised: readonly boolean[]): ReadonlyMap<string, boolean> {
  return new Map(
    relays.flatMap(({ contacts = [] }, i) =>
      contacts.map((each) => [each.switch, energised[i] === (each.closedWhile === 'energised')] as const),
    ),
  );
}

/**
 * Lets the relays move from where they were until none can: from energised they only let go, from released they only
 * pull in, so that it ends after as many steps as there are relays. Those that a step finds able to move do so together.
 */
export function settleRelays<S>(
  network: Network,
  relays: readonly SneakRelay[],
  changes: readonly SneakChange[],
  before: 'energised' | 'released',
  solve: (network: Network) => { readonly solved: S; readonly voltsAt: (load: string) => number },
): RelaysAtRest<S> {
  const falling = before === 'energised';
  let energised = relays.map(() => falling);
  for (;;) {
    const after = afterChanges(network, contactsOf(relays, energised), changes);
    const { solved, voltsAt } = solve(after);
    const wanted = relays.map(
      ({ coil, pickUpV, holdV }, i) => voltsAt(coil) >= (energised[i] === true ? holdV : pickUpV),
    );
    const next = energised.map((is, i) => (falling ? is && wanted[i] === true : is || wanted[i] === true));
    if (next.every((is, i) => is === energised[i])) {
      return { network: after, solved, energised, buzzes: wanted.map((want, i) => want !== energised[i]) };
    }
    energised = next;
  }
}
