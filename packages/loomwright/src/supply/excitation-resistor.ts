import { type Check, makeCheck, type NotPossible, tightestCheck } from '../check/index.js';
import { preferredBelow } from '../table/preferred-value.js';
import { type ExcitationResistorInput, type ExcitedAlternator, needExcitation } from './excitation-input.js';
import { branchAt, type BranchState, sideBySideA, type WarningBranch } from './warning-branch.js';

export type { ExcitationResistorInput, ExcitedAlternator } from './excitation-input.js';
export type { Brightness, BranchState, WarningLamp, WarningLed } from './warning-branch.js';

/** One state of the vehicle with what the warning shows. */
export interface WarningState extends BranchState {
  readonly state: 'key-on' | 'charging' | 'belt-off' | 'wire-open' | 'wire-grounded' | 'rotor-open';
  /** Current into the alternator's terminal in A, below 0 where it comes back. */
  readonly intoA: number;
}

/** What the alternator feeds back with the key off and the engine still turning. */
export interface BackFeed {
  /** Volts of the ignition, and current through the warning branch. */
  readonly nodeV: number;
  readonly currentA: number;
  /** Whether the engine may stay on. */
  readonly keepsOn: boolean;
  /** Least resistance in Ω of the branch that lets it stop, were it a resistor alone; 0 where any does. */
  readonly leastOhm: number;
}

export interface ExcitationDesign {
  readonly possible: true;
  /** Resistor beside the lamp in Ω; null where none is fitted. */
  readonly resistorOhm: number | null;
  /** Largest resistance that just gives the current; null where lamp and LED do by themselves. */
  readonly exactOhm: number | null;
  /** Excitation in A with the key on at the lowest volts: with everything, and with lamp and LED dead. */
  readonly excitationA: number;
  readonly lampDeadA: number;
  /** Heat of the resistor in W with the key on at the highest volts, twice that as its rating, and with its wire grounded. */
  readonly resistorW: number;
  readonly leastRatingW: number;
  readonly groundedW: number;
  /** Every state, the resistor as marked. */
  readonly states: readonly WarningState[];
  /** With the key off; null where nothing else hangs on the ignition, or the terminal has no volts of its own. */
  readonly backFeed: BackFeed | null;
  /** Engine speed in rpm from which it charges without its wire; null where it is not known. */
  readonly selfExcitationRpm: number | null;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

export type ExcitationResistorResult = ExcitationDesign | NotPossible<ExcitationDesign>;

type Wired = Exclude<ExcitedAlternator, { readonly kind: 'no-wire' }>;

/** A resistor that carries less than a hundredth of the excitation is not chosen. */
const HUNDREDTH = 100;
const EXCITED = 'excitation with the key on';
const LAMP_DEAD = 'excitation with lamp and LED dead';
const DRIVER = 'current into the driver';
const BACK = 'volts of the ignition with the key off';
// Literal keys: a computed one would stay in every bundle.
const CODES: Readonly<Record<string, string>> = {
  'excitation with the key on': 'too-little-excitation',
  'excitation with lamp and LED dead': 'too-little-excitation',
  'current into the driver': 'driver-overloaded',
  'volts of the ignition with the key off': 'engine-stays-on',
};

/**
 * The resistor beside an alternator's charge lamp, or in its place; what lamp and LED show in every state; and whether
 * the wire keeps the engine alive with the key off.
 *
 * An alternator with a D+ terminal starts on the current of its lamp. An LED alone lets too little through, a burnt
 * lamp none. The resistor is the largest of its series that gives the current at the lowest volts, the high end of its
 * tolerance included, and that carries at least a hundredth of it.
 *
 * $$R \le \frac{V - V_r - V_d - I R_f}{I - I_\mathrm{lamp}} \qquad V_n = V_{D+} \frac{R_n}{R_n + R}$$
 *
 * $R_f$ is the rotor, $V_r$ the regulator's drop, $V_d$ that of a diode; $R_n$ all that hangs on the ignition. The
 * lamp is a filament, so its states are found where both sides agree.
 *
 * @param input alternator at its terminal, ignition, lamp, LED, resistor, diode, what else hangs on the ignition
 * @returns resistor with its heat, currents and brightness in six states, back-feed, checks; or not possible, because:
 * no exciter wire, no volts left, too little current, a driver overloaded, an engine that stays on
 * @throws InputError when a field is missing or out of range
 * Valid at rest; as the rotor speeds up, its own magnetism helps.
 * @source circuit-theory; lamp-rerating (filament); common-practice (rating twice the heat; words of brightness)
 * @example excitationResistor({ alternator: { kind: 'field', rotorOhm: 4, regulatorDropV: 1, neededA: 0.2, chargingV: 14.2 }, ignitionV: 11.8, runningV: 14.2, lamp: null, led: null, resistor: 'choose', series: e12, toleranceFraction: 0.05, countLamp: false, diodeDropV: null, ignitionLoadOhm: null, ignitionHoldV: 4 }).resistorOhm //=> 47
 */
export function excitationResistor(input: ExcitationResistorInput): ExcitationResistorResult {
  needExcitation('excitationResistor', input);
  const { alternator } = input;
  if (alternator.kind === 'no-wire') {
    const because =
      alternator.control === 'self-exciting'
        ? 'it has no exciter wire: it starts on its own magnetism once it turns fast enough, and a lamp has nowhere to go; a voltmeter shows whether it charges'
        : 'its regulator is told over a bus or a control line what to do: a lamp or resistor on that line does nothing or harm; it needs its controller, or a regulator of another kind';
    return { possible: false, code: 'no-exciter-wire', because, nearest: null };
  }
  const way = wayOf(alternator);
  const openV = input.ignitionV - way.dropV - (input.diodeDropV ?? 0);
  const leftV = openV - alternator.neededA * way.seriesOhm;
  if (leftV <= 0) {
    const mostA = openV / (way.seriesOhm || 1);
    const because = `at ${alternator.neededA} A nothing of the ${input.ignitionV} V is left for the warning${way.seriesOhm > 0 && mostA > 0 ? `: the rotor takes at most ${Number(mostA.toPrecision(3))} A` : ''}`;
    return { possible: false, code: 'no-volts-left', because, nearest: null };
  }
  const exactOhm = exactFor(input, alternator.neededA, leftV);
  // The choice aims at a hair more, so that it does not miss its limit by the last digit of a root.
  const aimA = alternator.neededA * (1 + 1e-9);
  const resistorOhm = chooseResistor(
    input,
    exactFor(input, aimA, openV - aimA * way.seriesOhm),
    leftV / alternator.neededA,
  );
  const design = judge(input, alternator, resistorOhm, exactOhm);
  const failed = design.checks.filter((check) => !check.ok);
  const [worst] = failed;
  if (worst === undefined) return design;
  const because = failed
    .map(({ name, value, limit, unit }) => {
      const figures = [value, limit].map((x) => Number((x as number).toPrecision(3)));
      return `${name}: ${figures[0] as number} ${unit}, limit ${figures[1] as number}`;
    })
    .join('; ');
  return { possible: false, code: CODES[worst.name] as string, because, nearest: design };
}

/** What the current meets behind the branch, with the engine at rest. */
function wayOf(alternator: Wired): { readonly dropV: number; readonly seriesOhm: number } {
  return alternator.kind === 'field'
    ? { dropV: alternator.regulatorDropV, seriesOhm: alternator.rotorOhm }
    : { dropV: alternator.driverDropV, seriesOhm: 0 };
}

/** Resistance that just gives a current, with these volts across it; null where lamp and LED do by themselves. */
function exactFor({ lamp, led, countLamp }: ExcitationResistorInput, aimA: number, leftV: number): number | null {
  const lampsA = countLamp ? sideBySideA({ lamp, led, resistorOhm: null, diodeDropV: null }, leftV) : 0;
  return lampsA >= aimA ? null : leftV / (aimA - lampsA);
}

function chooseResistor(input: ExcitationResistorInput, exactOhm: number | null, onlyOhm: number): number | null {
  const { resistor, series, toleranceFraction } = input;
  if (typeof resistor === 'number') return resistor;
  if (resistor === 'none' || exactOhm === null || exactOhm <= 0) return null;
  // Beside a lamp that all but does by itself any resistance would do; one that carries nothing is none.
  const most = Math.min(exactOhm / (1 + toleranceFraction), HUNDREDTH * onlyOhm);
  const listed = preferredBelow(series, most);
  // A value that equals the limit to the last bits must not pass it: take the next below then.
  return listed <= most ? listed : preferredBelow(series, most * (1 - 1e-8));
}

function judge(
  input: ExcitationResistorInput,
  alternator: Wired,
  resistorOhm: number | null,
  exactOhm: number | null,
): ExcitationDesign {
  const { lamp, led, diodeDropV, ignitionV, runningV, toleranceFraction: t } = input;
  const { dropV, seriesOhm } = wayOf(alternator);
  const branch = (share: number): WarningBranch => {
    return { lamp, led, diodeDropV, resistorOhm: resistorOhm === null ? null : resistorOhm * share };
  };
  const weak = branchAt(branch(1 + t), ignitionV - dropV, seriesOhm);
  const dead = branchAt({ ...branch(1 + t), lamp: null, led: null }, ignitionV - dropV, seriesOhm);
  const strong = branchAt(branch(1 - t), runningV - dropV, seriesOhm);
  const backFeed = backFeedOf(input, alternator, branch(1 - t));
  const given = { source: 'given-by-caller', sourceStatus: 'derived', limit: alternator.neededA } as const;
  const checks: Check[] = [makeCheck({ ...given, name: EXCITED, value: weak.currentA, unit: 'A', sense: 'atLeast' })];
  if (!input.countLamp) {
    checks.push(makeCheck({ ...given, name: LAMP_DEAD, value: dead.currentA, unit: 'A', sense: 'atLeast' }));
  }
  if (alternator.kind === 'driver') {
    const limit = alternator.driverMostA;
    checks.push(makeCheck({ ...given, name: DRIVER, value: strong.currentA, limit, unit: 'A', sense: 'atMost' }));
  }
  if (backFeed !== null) {
    const limit = input.ignitionHoldV;
    checks.push(makeCheck({ ...given, name: BACK, value: backFeed.nodeV, limit, unit: 'V', sense: 'atMost' }));
  }
  const groundedW = branchAt(branch(1 - t), runningV, 0).resistorW;
  return {
    possible: true,
    resistorOhm,
    exactOhm,
    excitationA: weak.currentA,
    lampDeadA: dead.currentA,
    resistorW: strong.resistorW,
    leastRatingW: 2 * strong.resistorW,
    groundedW,
    states: statesOf(input, alternator, branch(1)),
    backFeed,
    selfExcitationRpm: alternator.selfExcitationRpm ?? null,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

function statesOf(input: ExcitationResistorInput, alternator: Wired, branch: WarningBranch): readonly WarningState[] {
  const { ignitionV, runningV } = input;
  const { dropV, seriesOhm } = wayOf(alternator);
  const still = branchAt(branch, ignitionV - dropV, seriesOhm);
  const none = branchAt(branch, 0, 0);
  const charging = alternator.chargingV === null ? none : branchAt(branch, runningV - alternator.chargingV, 0);
  const into = (state: WarningState['state'], found: BranchState): WarningState => {
    return { state, ...found, intoA: found.currentA };
  };
  return [
    into('key-on', still),
    into('charging', charging),
    into('belt-off', still),
    into('wire-open', none),
    { ...into('wire-grounded', branchAt(branch, runningV, 0)), intoA: 0 },
    // A driver in the regulator still pulls down where the rotor is broken; a D+ terminal has nowhere to go.
    into('rotor-open', alternator.kind === 'driver' ? still : none),
  ];
}

function backFeedOf(
  { ignitionLoadOhm, ignitionHoldV }: ExcitationResistorInput,
  { chargingV }: Wired,
  branch: WarningBranch,
): BackFeed | null {
  if (ignitionLoadOhm === null || chargingV === null) return null;
  // Seen from the alternator the branch is turned round: a diode blocks, and an LED lets nothing through.
  const currentA =
    branch.diodeDropV === null ? branchAt({ ...branch, led: null }, chargingV, ignitionLoadOhm).currentA : 0;
  const nodeV = currentA * ignitionLoadOhm;
  return {
    nodeV,
    currentA,
    keepsOn: nodeV > ignitionHoldV,
    leastOhm: Math.max(ignitionLoadOhm * (chargingV / ignitionHoldV - 1), 0),
  };
}
