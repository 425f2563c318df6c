import { type Check, checkRelay, checkTerminal, makeCheck } from 'loomwright';
import { groundFindings } from './ground-findings.js';
import { ratioOf } from '../schema/tables.js';
import type { Settled } from './settled.js';
import type { Draft } from './draft.js';
import type { Finding, LoomPlan, PlannedCircuit, PlannedState, Severity, Subject } from './plan-type.js';
import { type Pair, pairFindings } from './selectivity.js';
import { contactLoad, LOST } from './planned.js';
import type { Loom } from './schema.js';
import type { Sized } from './size-draft.js';

const ORDER: Readonly<Record<Severity, number>> = { fail: 0, warn: 1, note: 2 };
const CURES: Readonly<Record<string, string>> = {
  'voltage-drop':
    'Shorten the way, feed it from a nearer box, mend the joints that take most, or allow it a larger budget on purpose.',
  'volts-at-load': 'Shorten the way, mend the joints that take most, or feed it from the other battery.',
  'conductor-temperature': 'Lead it through a cooler place or out of the bundle, or take a higher class of insulation.',
  'mechanical-minimum': 'Take a thicker wire, or hold it better and lower the least area for this kind.',
  protection: 'Take another family of fuse, put the fuse nearer to the source, or split the load.',
  'fuse-time':
    'Take a thicker wire, a smaller rating, or wire whose insulation bears more: as it is, the fuse opens after the wire is harmed.',
  terminal: 'Take a terminal that fits this wire, current and heat, or change the wire at a splice before it.',
  channel: 'Take an output with a higher rating, or a relay and a fuse.',
  peak: 'Take a family with a larger rating and a wire that it protects, or feed it by itself.',
  contact: 'Take a contact with a higher rating, or let a relay carry the load.',
  'relay-pick-up': 'Take a relay that pulls in at fewer volts, a thicker coil wire, or a cooler place.',
};

/** Every finding of a plan, the worst first. */
export function findingsOf(settled: Settled, plan: LoomPlan, pairs: readonly Pair[]): readonly Finding[] {
  const list: Finding[] = [...pairFindings(pairs)];
  circuits(settled, plan, list);
  channelsAndRelays(plan, list);
  switches(settled, plan, list);
  supply(settled, plan, list);
  bundles(settled, plan, list);
  buses(settled.loom, list);
  list.push(...groundFindings(plan));
  leftOut(plan, list);
  memory(plan, list);
  if (!plan.settled.agreed) {
    list.push({
      severity: 'warn',
      rule: 'not-settled',
      about: { kind: 'vehicle', name: plan.vehicle.name },
      message: `Sizes, bundles and currents still changed after ${plan.settled.rounds} rounds; the last round stands.`,
      marginFraction: null,
      check: null,
      cure: 'Look at the circuits with the least margin; a thicker size in stock usually ends it.',
    });
  }
  return list.sort(
    (a, b) =>
      ORDER[a.severity] - ORDER[b.severity] ||
      compare(a.about.kind, b.about.kind) ||
      compare(a.about.name, b.about.name) ||
      compare(a.rule, b.rule) ||
      compare(a.message, b.message),
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function fromCheck(list: Finding[], severity: Severity, about: Subject, check: Check, rule: string): void {
  list.push({
    severity,
    rule,
    about,
    message: sentence(about.name, check),
    marginFraction: check.marginFraction,
    check,
    cure: CURES[rule] ?? CURES['protection'] ?? null,
  });
}

function sentence(name: string, { name: what, value, limit, unit, sense, because }: Check): string {
  if (value === null || limit === null) return `${name}: ${what}: ${because ?? 'no number'}.`;
  const must = sense === 'atMost' ? 'at most' : 'at least';
  return `${name}: ${what} is ${figure(value)} ${unit}, and must be ${must} ${figure(limit)} ${unit}.`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function ruleOf(check: Check): string {
  if (/^voltage lost/.test(check.name)) return 'voltage-drop';
  if (check.name === 'volts at the load') return 'volts-at-load';
  if (check.name === 'conductor temperature') return 'conductor-temperature';
  if (check.name === 'mechanical minimum') return 'mechanical-minimum';
  if (/^(temperature where|overload until|let-through until) /.test(check.name)) return 'fuse-time';
  return 'protection';
}

function circuits(settled: Settled, plan: LoomPlan, list: Finding[]): void {
  const { loom, drafts, sized } = settled;
  const wires = new Map(plan.wires.map((wire) => [wire.name, wire]));
  plan.circuits.forEach((circuit, i) => {
    const draft = drafts[i];
    const one = sized[i];
    if (draft === undefined || one === undefined) return;
    const about: Subject = { kind: 'circuit', name: circuit.name };
    for (const check of circuit.checks) {
      // Of a load that is left out of a state `leftOut` names all those states.
      if (!check.ok && !(check.name === LOST && check.value === null))
        fromCheck(list, 'fail', about, check, ruleOf(check));
    }
    if (circuit.wires.length > 0 && circuit.size === null) {
      list.push({
        severity: 'fail',
        rule: 'no-size',
        about,
        message: `${circuit.name}: no size in stock is possible: ${circuit.because}.`,
        marginFraction: null,
        check: null,
        cure: 'Add thicker sizes to the stock, or shorten the way.',
      });
    }
    terminals(settled, circuit, draft, one, list);
    const bare = draft.protection.kind === 'none' && draft.protection.dangerous;
    for (const name of circuit.wires) {
      const wire = wires.get(name);
      if (wire === undefined || wire.unfusedM === 0) continue;
      const check = makeCheck({
        name: 'wire before its first fuse',
        value: wire.unfusedM,
        limit: loom.rules.unfused,
        unit: 'm',
        sense: 'atMost',
        source: 'given-by-caller',
        sourceStatus: 'derived',
        ...(draft.protection.kind === 'none' ? { because: draft.protection.because } : {}),
      });
      const severity = check.ok ? 'note' : 'warn';
      if (check.ok && !bare) continue;
      list.push({
        severity,
        rule: 'unfused-length',
        about: { kind: 'wire', name },
        message: `${name}: ${figure(wire.unfusedM)} m of wire without a fuse before it${bare ? `, because: ${draft.protection.kind === 'none' ? draft.protection.because : ''}` : ''}.`,
        marginFraction: check.marginFraction,
        check,
        cure: 'Put a fuse at the source; where none is allowed, keep it short, sleeved, clamped and behind an isolator.',
      });
    }
    if (draft.kind === 'load' && draft.on.length === 0) {
      list.push({
        severity: 'note',
        rule: 'never-on',
        about,
        message: `${circuit.name} is on in no state: its volts are judged nowhere.`,
        marginFraction: null,
        check: null,
        cure: 'Name the states in which it runs.',
      });
    }
  });
}

/** Whether the terminals at the ends of a circuit's wires suit wire, current and heat. */
function terminals({ sizer }: Settled, circuit: PlannedCircuit, draft: Draft, sized: Sized, list: Finding[]): void {
  const { areaMm2, currentA } = circuit;
  if (areaMm2 === null) return;
  const outerDiameterMm = sizer.stock[sized.size]?.outerDiameterMm ?? null;
  const said = new Set<string>();
  for (const { at, terminal, currentKnown, ambientTempC } of draft.terminals) {
    const { checks } = checkTerminal({
      terminal,
      areaMm2,
      outerDiameterMm: outerDiameterMm ?? 1,
      currentA,
      ambientTempC,
      contactCount: 1,
      loadedCount: 1,
    });
    for (const check of checks) {
      const unknown = check.unit === 'A' ? !currentKnown : check.unit === 'mm' && outerDiameterMm === null;
      if (check.ok || unknown || said.has(`${at} ${check.name}`)) continue;
      said.add(`${at} ${check.name}`);
      const named = { ...check, name: `terminal at ${at}: ${check.name}` };
      // Of a contact that no figure tells of nothing is proved: that is to be looked at.
      const severity = check.limit === null ? 'warn' : 'fail';
      fromCheck(list, severity, { kind: 'circuit', name: circuit.name }, named, 'terminal');
    }
  }
}

function channelsAndRelays(plan: LoomPlan, list: Finding[]): void {
  for (const fuse of plan.fuses) {
    for (const check of fuse.checks) {
      if (!check.ok && /^peak/.test(check.name))
        fromCheck(list, 'fail', { kind: 'fuse', name: fuse.name }, check, 'peak');
    }
  }
  for (const channel of plan.channels) {
    const about: Subject = { kind: 'channel', name: channel.name };
    for (const check of channel.checks) if (!check.ok) fromCheck(list, 'fail', about, check, 'channel');
    if (channel.circuit !== null && channel.settingA === null) {
      list.push({
        severity: 'fail',
        rule: 'channel',
        about,
        message: `${channel.name}: no setting carries the ${figure(channel.currentA)} A of ${channel.circuit}.`,
        marginFraction: null,
        check: null,
        cure: CURES['channel'] ?? null,
      });
    }
  }
  for (const relay of plan.relays) {
    const about: Subject = { kind: 'relay', name: relay.name };
    for (const check of relay.checks) {
      if (!check.ok) fromCheck(list, 'fail', about, check, /^pull-in/.test(check.name) ? 'relay-pick-up' : 'contact');
    }
    if (relay.coilV === null) {
      list.push({
        severity: 'warn',
        rule: 'relay-pick-up',
        about,
        message: `${relay.name}: whether it pulls in is not judged: it is on in no state, or no volts reach its coil.`,
        marginFraction: null,
        check: null,
        cure: 'Name the states in which it must pull in.',
      });
    }
  }
}

/** Contacts of switches that carry a load themselves. */
function switches({ loom, drafts, around }: Settled, plan: LoomPlan, list: Finding[]): void {
  const rule = ratioOf(loom.rules.ratio);
  drafts.forEach(({ item, name }, i) => {
    if (item?.switch === undefined) return;
    const by = loom.items[item.switch];
    if (by?.kind !== 'switch') return;
    const result = checkRelay({
      load: contactLoad(item, rule),
      currentA: Math.max(1e-6, plan.circuits[i]?.currentA ?? 0),
      supplyV: Math.max(...(around[i]?.sourcesV ?? [1]), 1),
      ratingRule: rule,
      ratedA: by.current,
      ratedV: by.ratedVoltage,
      ambientTempC: 20,
      fullToTempC: 85,
      noneAtTempC: 125,
    });
    for (const check of result.checks) {
      if (check.ok) continue;
      const about: Subject = { kind: 'circuit', name };
      const named = { ...check, name: `contact of ${item.switch ?? ''}: ${check.name}` };
      fromCheck(list, 'fail', about, named, 'contact');
    }
  });
}

/** What controllers and the alternator are asked for in all. */
function supply({ loom, states, drafts }: Settled, plan: LoomPlan, list: Finding[]): void {
  for (const name of Object.keys(loom.controllers).sort()) {
    const { total } = loom.controllers[name] as Loom['controllers'][string];
    if (total === undefined) continue;
    let most = 0;
    let at = '';
    for (const state of states) {
      let sumA = 0;
      drafts.forEach(({ protection }, i) => {
        if (protection.kind === 'channel' && protection.controller === name) sumA += state.currents[i] ?? 0;
      });
      if (sumA > most) {
        most = sumA;
        at = state.name;
      }
    }
    const check = makeCheck({
      name: `all channels together${at === '' ? '' : ` (${at})`}`,
      value: most,
      limit: total,
      unit: 'A',
      sense: 'atMost',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    });
    if (!check.ok) fromCheck(list, 'fail', { kind: 'channel', name }, check, 'channel');
  }
  const { alternator } = loom.supply;
  if (alternator === undefined) return;
  for (const state of plan.states) {
    const given = loom.states[state.name] as Loom['states'][string];
    if (given.alternator === 'off') continue;
    const outputA = given.alternator === 'idle' ? alternator.idleCurrent : alternator.current;
    let sumA = 0;
    for (const { name, currentA } of state.batteries) {
      if (name === alternator.battery || given.isolator === 'closed') sumA += currentA;
    }
    const check = makeCheck({
      name: `loads against the alternator (${state.name})`,
      value: sumA,
      limit: outputA,
      unit: 'A',
      sense: 'atMost',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    });
    list.push({
      severity: check.ok ? 'note' : 'warn',
      rule: 'alternator',
      about: { kind: 'vehicle', name: plan.vehicle.name },
      message: `In state ${state.name} the loads draw ${figure(sumA)} A with all of them on at once; the alternator gives ${figure(outputA)} A.`,
      marginFraction: check.marginFraction,
      check,
      cure: check.ok ? null : 'The batteries give the rest: see how long, or switch something off in this state.',
    });
  }
}

function bundles({ loom }: Settled, plan: LoomPlan, list: Finding[]): void {
  for (const bundle of plan.bundles) {
    if (bundle.factorRule === loom.rules.bundle) continue;
    list.push({
      severity: 'warn',
      rule: 'bundle-beyond-table',
      about: { kind: 'bundle', name: bundle.route },
      message: `${bundle.route}: ${bundle.wireCount} wires with ${figure(100 * bundle.loadedFraction)} % of their capacity in use are beyond the table of ${loom.rules.bundle}; the most careful other rule stands: ${bundle.factorRule}.`,
      marginFraction: null,
      check: null,
      cure: 'Lay thick cables apart, or split the trunk.',
    });
  }
}

function buses(loom: Loom, list: Finding[]): void {
  for (const name of Object.keys(loom.buses).sort()) {
    const bus = loom.buses[name] as Loom['buses'][string];
    list.push({
      severity: 'note',
      rule: 'bus-ends',
      about: { kind: 'bus', name },
      message: `${name}: a terminator of 120 Ω each at ${bus.members[0] ?? ''} and at ${bus.members.at(-1) ?? ''}, none between: 60 Ω across the pair with all off.`,
      marginFraction: null,
      check: null,
      cure: null,
    });
  }
}

/** Loads that a state is solved without: those that their path cannot feed, and those that nothing holds at any volts. */
function leftOut({ states }: LoomPlan, list: Finding[]): void {
  const find = (of: (state: PlannedState) => readonly string[], rule: string, why: string, cure: string): void => {
    const statesOf = new Map<string, string[]>();
    for (const state of states) {
      for (const circuit of of(state)) statesOf.set(circuit, [...(statesOf.get(circuit) ?? []), state.name]);
    }
    for (const [circuit, names] of statesOf) {
      const where = `state${names.length === 1 ? '' : 's'} ${names.join(', ')}`;
      list.push({
        severity: 'fail',
        rule,
        about: { kind: 'circuit', name: circuit },
        message: `${circuit}: ${why} in ${where}. The figures of ${names.length === 1 ? 'that state' : 'those states'} are without it: what shares its way would be worse off.`,
        marginFraction: null,
        check: null,
        cure,
      });
    }
  };
  find(
    ({ starved }) => starved,
    'not-fed',
    'its path cannot feed it, even with all else off,',
    'Shorten the way, take thicker wire, or mend the joints that take most.',
  );
  find(
    ({ unsettled }) => unsettled,
    'no-operating-point',
    'it has no stable operating point with what else is on: the lower its volts, the more is asked of the way that is shared, until they fall away',
    'Make what it shares thicker or shorter (feeders, straps, the cables of the battery), or feed it by itself; or switch something off in this state.',
  );
}

function memory(plan: LoomPlan, list: Finding[]): void {
  const rests = plan.circuits.filter(({ checks }) =>
    checks.some(({ sourceStatus }) => sourceStatus === 'memory'),
  ).length;
  if (rests === 0) return;
  list.push({
    severity: 'note',
    rule: 'rests-on-memory',
    about: { kind: 'vehicle', name: plan.vehicle.name },
    message: `${rests} circuits rest in part on tables remembered from a standard, not read: check them against the data of the wire and the fuse in your hand.`,
    marginFraction: null,
    check: null,
    cure: null,
  });
}
