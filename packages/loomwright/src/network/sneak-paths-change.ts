import { InputError } from '../error/index.js';
import { needList, needObject, needOneOf, needText } from '../error/guard.js';
import type { Network } from './element.js';

/** What differs from the network as it is given. */
export interface SneakChange {
  readonly name: string;
  /** Switches, contacts, fuses and isolators that are open. */
  readonly open?: readonly string[];
  /** Switches and contacts that are closed. */
  readonly closed?: readonly string[];
  /** Sources that are taken out: a battery removed, an alternator that stands still. */
  readonly away?: readonly string[];
  /** Branches that are lost: a ground off, a wire broken. */
  readonly lost?: readonly string[];
}

/** Names of the elements of each kind that a change may touch. */
export interface SneakNames {
  readonly switches: ReadonlySet<string>;
  readonly sources: ReadonlySet<string>;
  readonly branches: ReadonlySet<string>;
}

/** The names of a network. */
export function namesOf(network: Network): SneakNames {
  const names = (list: readonly { readonly name: string }[] = []): ReadonlySet<string> =>
    new Set(list.map(({ name }) => name));
  return { switches: names(network.switches), sources: names(network.sources), branches: names(network.branches) };
}

/** The network after changes, the later ones over the earlier; `contacts` are switches that relays move. */
export function afterChanges(
  network: Network,
  contacts: ReadonlyMap<string, boolean>,
  changes: readonly SneakChange[],
): Network {
  const closed = new Map(contacts);
  const away = new Set<string>();
  const lost = new Set<string>();
  for (const change of changes) {
    change.open?.forEach((name) => closed.set(name, false));
    change.closed?.forEach((name) => closed.set(name, true));
    change.away?.forEach((name) => away.add(name));
    change.lost?.forEach((name) => lost.add(name));
  }
  return {
    ...network,
    branches: network.branches.filter(({ name }) => !lost.has(name)),
    sources: network.sources.filter(({ name }) => !away.has(name)),
    switches: (network.switches ?? []).map((each) => ({ ...each, closed: closed.get(each.name) ?? each.closed })),
  };
}

/** Throws unless a change is whole and names what exists. */
export function needChange(fn: string, at: string, change: SneakChange, names: SneakNames): void {
  needObject(fn, at, change);
  needText(fn, `${at}.name`, change.name);
  const lists = [
    ['open', names.switches],
    ['closed', names.switches],
    ['away', names.sources],
    ['lost', names.branches],
  ] as const;
  for (const [field, known] of lists) {
    if (change[field] !== undefined) needKnown(fn, `${at}.${field}`, change[field], known);
  }
  const both = change.open?.find((name) => change.closed?.includes(name));
  if (both !== undefined) throw new InputError(fn, `${at}.closed`, 'oneOf', both, 'must not name what is open too');
}

/** Throws unless it is a list of names that exist. */
export function needKnown(fn: string, at: string, list: readonly string[], known: ReadonlySet<string>): void {
  needList(fn, at, list);
  list.forEach((name, i) => {
    needOneOf(fn, `${at}[${i}]`, name, [...known]);
  });
}
