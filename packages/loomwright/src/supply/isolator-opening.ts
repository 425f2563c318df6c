import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needFlag, needInput, needOneOf } from '../error/guard.js';

/** What an isolator needs, and why. */
export interface IsolatorContact {
  /**
   * `main` parts the battery. `ignition` opens the feed of what keeps the engine alive. `resistor` closes as the main
   * pole opens. `exciter-diode` is no contact, but a diode in the charge lamp's wire.
   */
  readonly contact: 'main' | 'ignition' | 'resistor' | 'exciter-diode';
  readonly because: string;
  readonly fitted: boolean;
}

export interface IsolatorOpeningInput {
  /** Where the alternator's heavy wire ends: on the vehicle's side of the main pole, or straight at the battery. */
  readonly alternatorAt: 'vehicle' | 'battery';
  /** Volts that it holds, and the most that it gives in A at the engine's speed; above 0. */
  readonly heldV: number;
  readonly alternatorMostA: number;
  /** Current in A into the battery before the isolator opens, at least 0. */
  readonly chargingA: number;
  /** All that is left on but the ignition, side by side in Ω, above 0. */
  readonly loadsOhm: number;
  /** What keeps the engine alive, in Ω, and the volts below which it is sure to stop; above 0. */
  readonly ignitionOhm: number;
  readonly ignitionHoldV: number;
  /** Charge lamp and what is beside it in Ω, above 0; null with a diode in its wire, or without one. */
  readonly exciterOhm: number | null;
  /** Whether a second pole opens the feed of the ignition. */
  readonly ignitionPole: boolean;
  /** Resistor that the isolator puts from the vehicle's side to ground, in Ω, above 0; null without. */
  readonly resistorOhm: number | null;
  /** Time in s until the alternator has run down, above 0. */
  readonly runDownS: number;
}

export interface IsolatorOpeningResult {
  /** Volts with the isolator open and the engine still turning: on the vehicle's side, and at the ignition. */
  readonly vehicleV: number;
  readonly ignitionV: number;
  /** Whether the engine runs on; then that is what stays. If not, all is dead once it has run down. */
  readonly runsOn: boolean;
  /** What the alternator gives to the vehicle's side then, in A. */
  readonly alternatorA: number;
  /** Current in A that has nowhere to go at that moment, above 0 for a load dump. */
  readonly dumpedA: number;
  /** Current and heat of the resistor at first, in A and W, and at most the energy of a run-down in J. */
  readonly resistorA: number;
  readonly resistorW: number;
  readonly resistorJ: number;
  /** Resistor in Ω that would stop the engine by itself, and its heat in W; null where none is needed. */
  readonly aloneOhm: number | null;
  readonly aloneW: number | null;
  readonly contacts: readonly IsolatorContact[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What an isolator does when it is opened with the engine running: whether the engine runs on, what stays alive, how
 * much current is thrown off, and which contacts it needs.
 *
 * An alternator whose wire ends on the vehicle's side feeds it without the battery: it holds its volts, or gives its
 * most current. What hangs on the charge lamp's wire is fed through that.
 *
 * $$V = \min(V_\mathrm{held},\ I_\mathrm{most} R) \qquad
 * V_\mathrm{ign} = V_{D+}\,\frac{R_\mathrm{ign}}{R_\mathrm{ign} + R_\mathrm{lamp}} \qquad
 * R_\mathrm{alone} = \frac{V_\mathrm{hold}}{I_\mathrm{most} - V_\mathrm{hold} / R_\mathrm{rest}}$$
 *
 * A resistor by itself would have to take all that the alternator gives; behind an opened ignition it only empties what
 * runs down.
 *
 * @param input alternator and where it is tied, currents, loads, ignition, lamp's wire, contacts fitted
 * @returns volts, whether the engine runs on, current thrown off, resistor, contacts needed and fitted, checks
 * @throws InputError when a field is missing or out of range
 * Valid while the engine keeps its speed: the worst case. An alternator without a battery holds its volts badly.
 * @source circuit-theory; isolator-practice (which contacts)
 * @example isolatorOpening({ alternatorAt: 'vehicle', heldV: 14.2, alternatorMostA: 60, chargingA: 20, loadsOhm: 1, ignitionOhm: 4, ignitionHoldV: 6, exciterOhm: null, ignitionPole: false, resistorOhm: 3, runDownS: 2 }).aloneOhm //=> 0.114286
 */
export function isolatorOpening(input: IsolatorOpeningInput): IsolatorOpeningResult {
  guard(input);
  const { alternatorAt, heldV, alternatorMostA, chargingA, loadsOhm, ignitionOhm, ignitionHoldV, resistorOhm } = input;
  const atVehicle = alternatorAt === 'vehicle';
  const { vehicleV, ignitionV, alternatorA } = opened(input);
  const resistorA = resistorOhm === null ? 0 : vehicleV / resistorOhm;
  const resistorW = resistorA * vehicleV;
  const spareA = alternatorMostA - ignitionHoldV * (1 / loadsOhm + 1 / ignitionOhm);
  const aloneOhm = atVehicle && spareA > 0 && heldV > ignitionHoldV ? ignitionHoldV / spareA : null;
  const check = makeCheck({
    name: 'volts of the ignition with the isolator open',
    value: ignitionV,
    limit: ignitionHoldV,
    unit: 'V',
    sense: 'atMost',
    source: 'given-by-caller',
    sourceStatus: 'derived',
  });
  return {
    vehicleV,
    ignitionV,
    runsOn: !check.ok,
    alternatorA,
    dumpedA: atVehicle ? chargingA : 0,
    resistorA,
    resistorW,
    resistorJ: resistorW * input.runDownS,
    aloneOhm,
    aloneW: aloneOhm === null ? null : ignitionHoldV ** 2 / aloneOhm,
    contacts: contactsOf(input, atVehicle),
    checks: [check],
    decidedBy: tightestCheck([check])?.name ?? '',
  };
}

/** The vehicle with its isolator open and its engine turning. */
function opened(input: IsolatorOpeningInput): Pick<IsolatorOpeningResult, 'vehicleV' | 'ignitionV' | 'alternatorA'> {
  const { alternatorAt, heldV, alternatorMostA, ignitionOhm, exciterOhm, ignitionPole, resistorOhm } = input;
  const bus = 1 / input.loadsOhm + (resistorOhm === null ? 0 : 1 / resistorOhm);
  const lamp = exciterOhm === null ? 0 : 1 / (exciterOhm + ignitionOhm);
  if (alternatorAt === 'vehicle') {
    // The ignition hangs on the bus, or on the lamp's wire alone.
    const all = bus + (ignitionPole ? lamp : 1 / ignitionOhm);
    const vehicleV = Math.min(heldV, alternatorMostA / all);
    return {
      vehicleV,
      ignitionV: ignitionPole ? vehicleV * lamp * ignitionOhm : vehicleV,
      alternatorA: vehicleV * all,
    };
  }
  if (exciterOhm === null) return { vehicleV: 0, ignitionV: 0, alternatorA: 0 };
  // Only the lamp's wire leads over: to the ignition alone, or through it to all that hangs on the bus.
  if (ignitionPole) return { vehicleV: 0, ignitionV: heldV * lamp * ignitionOhm, alternatorA: heldV * lamp };
  const all = bus + 1 / ignitionOhm;
  const vehicleV = heldV / (1 + exciterOhm * all);
  return { vehicleV, ignitionV: vehicleV, alternatorA: vehicleV * all };
}

/** What common practice asks for, each only where it is needed here. */
function contactsOf(input: IsolatorOpeningInput, atVehicle: boolean): IsolatorContact[] {
  const { ignitionHoldV, ignitionPole, resistorOhm } = input;
  const holds = (change: Partial<IsolatorOpeningInput>): boolean =>
    opened({ ...input, ...change }).ignitionV > ignitionHoldV;
  const needed: [boolean, IsolatorContact['contact'], string, boolean][] = [
    [true, 'main', 'it parts the battery from everything else', true],
    [
      atVehicle && holds({ ignitionPole: false }),
      'ignition',
      'the alternator feeds the ignition without the battery',
      ignitionPole,
    ],
    [holds({ ignitionPole: true }), 'exciter-diode', 'the wire of the charge lamp feeds the ignition back', false],
    [
      atVehicle,
      'resistor',
      'what the alternator gives while it runs down has nowhere else to go',
      resistorOhm !== null,
    ],
  ];
  return needed.flatMap(([is, contact, because, fitted]) => (is ? [{ contact, because, fitted }] : []));
}

function guard(input: IsolatorOpeningInput): void {
  const fn = 'isolatorOpening';
  needInput(fn, input);
  needOneOf(fn, 'alternatorAt', input.alternatorAt, ['vehicle', 'battery']);
  const above = ['heldV', 'alternatorMostA', 'loadsOhm', 'ignitionOhm', 'ignitionHoldV', 'runDownS'] as const;
  for (const field of above) needMoreThan(fn, field, input[field]);
  needNoLessThan(fn, 'chargingA', input.chargingA);
  if (input.exciterOhm !== null) needMoreThan(fn, 'exciterOhm', input.exciterOhm);
  if (input.resistorOhm !== null) needMoreThan(fn, 'resistorOhm', input.resistorOhm);
  needFlag(fn, 'ignitionPole', input.ignitionPole);
}
