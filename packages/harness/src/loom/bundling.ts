import { bundleDiameter, bundleFactor, type BundleRule } from 'loomwright';
import type { Draft } from './draft.js';
import type { SolvedState } from './network.js';
import type { PlannedBundle } from './plan-type.js';
import type { Loom } from './schema.js';
import type { Sized, Sizer, Surroundings } from './size-draft.js';

interface Member {
  readonly draft: number;
  readonly wire: number;
}

interface Judged {
  readonly currentCarryingCount: number;
  readonly loadedFraction: number;
  readonly loadedState: string | null;
  readonly factor: number;
  /** Why the factor is not the named rule's, or null. */
  readonly instead: string | null;
}

/** What lies together in each route, and what that leaves of a wire's current. */
export class Bundling {
  readonly #loom: Loom;
  readonly #drafts: readonly Draft[];
  readonly #sizer: Sizer;
  readonly #members = new Map<string, Member[]>();
  readonly #places: readonly { readonly ambientTempC: number; readonly hottest: string }[];
  #judged = new Map<string, Judged>();
  #factors: { readonly factor: number; readonly route: string | null }[];

  constructor(loom: Loom, drafts: readonly Draft[], sizer: Sizer) {
    this.#loom = loom;
    this.#drafts = drafts;
    this.#sizer = sizer;
    for (const route of Object.keys(loom.routes).sort()) this.#members.set(route, []);
    drafts.forEach((draft, i) => {
      draft.wires.forEach(({ way }, wire) => {
        for (const route of way.routes) this.#members.get(route)?.push({ draft: i, wire });
      });
    });
    this.#places = drafts.map((draft) => {
      let hottest = '';
      let ambientTempC = -Infinity;
      for (const { way } of draft.wires) {
        if (way.ambientTempC < ambientTempC || (way.ambientTempC === ambientTempC && hottest <= way.hottest)) continue;
        ({ ambientTempC, hottest } = way);
      }
      return ambientTempC === -Infinity ? { ambientTempC: 20, hottest: '' } : { ambientTempC, hottest };
    });
    this.#factors = drafts.map(() => ({ factor: 1, route: null }));
  }

  /** Hottest air that a circuit passes. */
  placeOf(draft: number): { readonly ambientTempC: number; readonly hottest: string } {
    return this.#places[draft] ?? { ambientTempC: 20, hottest: '' };
  }

  /** The least factor of the bundles that a circuit passes. */
  factorOf(draft: number): { readonly factor: number; readonly route: string | null } {
    return this.#factors[draft] ?? { factor: 1, route: null };
  }

  /** Judges every bundle by the present sizes and currents. Before there are sizes every wire counts as alone. */
  judge(sized: readonly (Sized | null)[], around: readonly Surroundings[], states: readonly SolvedState[]): void {
    if (sized.some((one) => one === null)) return;
    const factors = this.#drafts.map(() => ({ factor: 1, route: null as string | null }));
    const judged = new Map<string, Judged>();
    const capacity = this.#drafts.map((_, i) => {
      const one = sized[i];
      return one === null || one === undefined || one.size < 0 || !this.#carries(i)
        ? 0
        : this.#sizer.aloneA(one.size, around[i]?.ambientTempC ?? 20);
    });
    for (const [route, members] of this.#members) {
      const one = this.#bundle(members, capacity, states, sized, this.#judged.get(route));
      judged.set(route, one);
      for (const { draft } of members) {
        const before = factors[draft];
        if (before === undefined || before.factor < one.factor) continue;
        if (before.factor > one.factor || before.route === null) factors[draft] = { factor: one.factor, route };
      }
    }
    this.#judged = judged;
    this.#factors = factors;
  }

  /** The bundles as the plan gives them. */
  planned(sized: readonly Sized[], names: readonly (readonly string[])[]): readonly PlannedBundle[] {
    const { rules, routes, places } = this.#loom;
    return [...this.#members].map(([route, members]) => {
      const { from, to, length, ambient } = routes[route] as Loom['routes'][string];
      const one = this.#judged.get(route);
      const air = [places[from]?.ambient, places[to]?.ambient, ambient].filter((tempC) => tempC !== undefined);
      const byDiameter = new Map<number, number>();
      let known = members.length > 0;
      for (const { draft } of members) {
        const outer = this.#sizer.stock[sized[draft]?.size ?? -1]?.outerDiameterMm ?? null;
        if (outer === null) known = false;
        else byDiameter.set(outer, (byDiameter.get(outer) ?? 0) + 1);
      }
      const wires = [...byDiameter]
        .sort(([a], [b]) => a - b)
        .map(([outerDiameterMm, count]) => ({ outerDiameterMm, count }));
      const rule = members.length > 300 ? 'multiplication-factor' : rules.bundleDiameter;
      return {
        route,
        from,
        to,
        lengthM: length,
        ambientTempC: Math.max(...air),
        wires: members.map(({ draft, wire }) => names[draft]?.[wire] ?? '').sort(),
        wireCount: members.length,
        currentCarryingCount: one?.currentCarryingCount ?? 0,
        loadedFraction: one?.loadedFraction ?? 0,
        loadedState: one?.loadedState ?? null,
        diameterMm: known ? bundleDiameter({ wires, rule }).diameterMm : null,
        factor: one?.factor ?? 1,
        factorRule: one?.instead ?? rules.bundle,
      };
    });
  }

  /** Whether a circuit's wires warm a bundle: those of sensors and buses do not. */
  #carries(draft: number): boolean {
    const kind = this.#drafts[draft]?.kind;
    return kind !== 'sensor' && kind !== 'bus';
  }

  #bundle(
    members: readonly Member[],
    capacity: readonly number[],
    states: readonly SolvedState[],
    sized: readonly (Sized | null)[],
    before: Judged | undefined,
  ): Judged {
    if (members.length === 0) {
      return { currentCarryingCount: 0, loadedFraction: 0, loadedState: null, factor: 1, instead: null };
    }
    let wholeA = 0;
    for (const { draft } of members) wholeA += capacity[draft] ?? 0;
    let loadedFraction = 0;
    let loadedState: string | null = null;
    let currentCarryingCount = 0;
    for (const state of states) {
      let sumA = 0;
      let count = 0;
      for (const { draft } of members) {
        const currentA = this.currentIn(draft, state);
        sumA += currentA;
        if (currentA > 0) count++;
      }
      currentCarryingCount = Math.max(currentCarryingCount, count);
      // Rounded up to a thousandth, so that rounds settle.
      const share = wholeA > 0 ? Math.min(1, Math.ceil((sumA / wholeA) * 1000 - 1e-6) / 1000) : 0;
      if (share > loadedFraction) {
        loadedFraction = share;
        loadedState = state.name;
      }
    }
    // A share of the round before that is no smaller and near stands: nothing creeps.
    const past = before?.loadedFraction ?? -1;
    if (past > loadedFraction && past - loadedFraction <= 0.003) loadedFraction = past;
    const found = this.#factor(members, Math.max(0.001, loadedFraction), currentCarryingCount, sized);
    return { currentCarryingCount, loadedFraction, loadedState, ...found };
  }

  /** Current of a circuit's wires in a state, in A: that of the solution, or the whole of one that is not solved. */
  currentIn(draft: number, state: SolvedState): number {
    const one = this.#drafts[draft];
    if (one === undefined || !this.#carries(draft)) return 0;
    if (one.kind === 'charge') {
      return one.on.includes(state.name) && one.load?.kind === 'constant-current' ? one.load.currentA : 0;
    }
    return Math.abs(state.currents[draft] ?? 0) + (state.extraA[draft] ?? 0);
  }

  #factor(
    members: readonly Member[],
    loadedFraction: number,
    currentCarryingCount: number,
    sized: readonly (Sized | null)[],
  ): { factor: number; instead: string | null } {
    const { rules } = this.#loom;
    const wireCount = Math.min(1000, members.length);
    const counts = { wireCount, loadedFraction, currentCarryingCount: Math.min(wireCount, currentCarryingCount) };
    if (rules.bundle === 'heat') return { factor: this.#byHeat(members, counts, sized), instead: null };
    const rule: BundleRule = rules.bundle;
    const found = bundleFactor({ ...counts, rule });
    if (found.factor !== null) return { factor: found.factor, instead: null };
    // Beyond the rule's table: the most careful of the rules that have a figure.
    const [least] = [...found.rules]
      .filter((one) => one.factor !== null)
      .sort((a, b) => (a.factor as number) - (b.factor as number));
    return { factor: least?.factor ?? 1, instead: `${least?.rule ?? ''} (${rule} ends before)` };
  }

  /** The least factor by the balance of heat over the sizes in the bundle, the hottest air of its circuits taken. */
  #byHeat(
    members: readonly Member[],
    counts: { wireCount: number; loadedFraction: number; currentCarryingCount: number },
    sized: readonly (Sized | null)[],
  ): number {
    const { rules } = this.#loom;
    let least = 1;
    const done = new Set<number>();
    const ambientTempC = Math.max(...members.map(({ draft }) => this.placeOf(draft).ambientTempC));
    for (const { draft } of members) {
      const number = sized[draft]?.size ?? -1;
      const size = this.#sizer.stock[number];
      if (size === undefined || done.has(number) || !this.#carries(draft)) continue;
      done.add(number);
      const conductorDiameterMm = this.#sizer.conductorMm(number);
      if (conductorDiameterMm === null || size.outerDiameterMm === null || ambientTempC >= rules.insulation) continue;
      const { factor } = bundleFactor({
        ...counts,
        rule: 'heat',
        wire: {
          maxConductorTempC: rules.insulation,
          resistanceOhmPerM: size.ohmPerM,
          ratedTempC: 20,
          conductorDiameterMm,
          outerDiameterMm: size.outerDiameterMm,
          insulationConductivityWPerMK: rules.coverConductivity,
          ambientTempC,
          altitudeM: rules.altitude,
        },
      });
      least = Math.min(least, factor ?? least);
    }
    return least;
  }
}
