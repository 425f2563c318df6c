import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needList, needObject, needText } from '../error/guard.js';
import { type Coil, coilAt, needCoil } from './coil.js';

/** One coil of several. */
export interface DrivenCoil extends Coil {
  readonly name: string;
  /** Temperature of the coil in °C, −60 to 200. */
  readonly coilTempC: number;
  /** Resistance of its own wires in Ω, at least 0. */
  readonly wireResistanceOhm: number;
  /** Inductance in H, above 0: its energy is counted where given. */
  readonly inductanceH?: number;
}

export interface CoilsOnDriverInput {
  /** Voltage at the coils' feed in V, above 0. */
  readonly supplyV: number;
  /** Voltage lost in the driver at any current, in V, at least 0 and at most `supplyV`. */
  readonly driverDropV: number;
  /** Resistance of the driver and of the wire that all share, in Ω, at least 0. */
  readonly sharedResistanceOhm: number;
  /** Most current of the driver in A, above 0. */
  readonly driverMostA: number;
  /** Most energy that the driver's own clamp takes at a switching off, in J, above 0: judged where given. */
  readonly driverMostJ?: number;
  readonly coils: readonly DrivenCoil[];
}

/** One coil of several, solved. */
export interface DrivenCoilState {
  readonly name: string;
  readonly coilV: number;
  readonly currentA: number;
  readonly pickUpV: number;
  readonly state: 'picks' | 'holds' | 'drops';
}

export interface CoilsOnDriverResult {
  /** Current of the driver in A, and volts lost in what all share. */
  readonly currentA: number;
  readonly sharedDropV: number;
  readonly coils: readonly DrivenCoilState[];
  /** Energy of all coils of known inductance, in J: what a driver without suppressors at the coils takes. */
  readonly energyJ: number;
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Several coils on one driver: what it carries, and whether each relay still pulls in.
 *
 * Use it where one output works two fan relays, or a bank of valves. Cold coils draw the most, hot ones need the most
 * volts: ask both.
 *
 * $$V = (V_s - V_d) \frac{1}{1 + R_s \sum_k 1 / (R_k + r_k)} \qquad I = \sum_k \frac{V}{R_k + r_k}$$
 *
 * @param input supply, driver, what is shared, coils
 * @returns current of the driver, each coil's volts and state, energy at switching off, checks
 * @throws InputError when a field is missing or out of range, or there is no coil
 * @source circuit-theory; automotive-relay-notes (ratio of copper resistance through −234.5 °C)
 * @example coilsOnDriver({ supplyV: 12, driverDropV: 0, sharedResistanceOhm: 0, driverMostA: 0.5, coils: [{ name: 'low', coilResistanceOhm: 90, ratedPickUpV: 7.2, ratedDropOutV: 1.6, ratedTempC: 20, coilTempC: 20, wireResistanceOhm: 0 }] }).currentA //=> 0.133
 */
export function coilsOnDriver(input: CoilsOnDriverInput): CoilsOnDriverResult {
  const fn = 'coilsOnDriver';
  needInput(fn, input);
  const { supplyV, driverDropV, sharedResistanceOhm, driverMostA, driverMostJ, coils } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needBetween(fn, 'driverDropV', driverDropV, 0, supplyV);
  needNoLessThan(fn, 'sharedResistanceOhm', sharedResistanceOhm);
  needMoreThan(fn, 'driverMostA', driverMostA);
  if (driverMostJ !== undefined) needMoreThan(fn, 'driverMostJ', driverMostJ);
  needList(fn, 'coils', coils, 1);
  coils.forEach((coil, i) => {
    needObject(fn, `coils[${i}]`, coil);
    needText(fn, `coils[${i}].name`, coil.name);
    needCoil(fn, coil, `coils[${i}].`);
    needBetween(fn, `coils[${i}].coilTempC`, coil.coilTempC, -60, 200);
    needNoLessThan(fn, `coils[${i}].wireResistanceOhm`, coil.wireResistanceOhm);
    if (coil.inductanceH !== undefined) needMoreThan(fn, `coils[${i}].inductanceH`, coil.inductanceH);
  });
  const hot = coils.map((coil) => coilAt(coil, coil.coilTempC, 0, 0));
  const ohms = coils.map((coil, i) => (hot[i] as { coilHotOhm: number }).coilHotOhm + coil.wireResistanceOhm);
  const siemens = ohms.reduce((sum, ohm) => sum + 1 / ohm, 0);
  const acrossV = (supplyV - driverDropV) / (1 + sharedResistanceOhm * siemens);
  const currentA = acrossV * siemens;
  let energyJ = 0;
  const states = coils.map(({ name, inductanceH }, i): DrivenCoilState => {
    const { coilHotOhm, pickUpV, dropOutV } = hot[i] as ReturnType<typeof coilAt>;
    const coilA = acrossV / (ohms[i] as number);
    const coilV = coilA * coilHotOhm;
    energyJ += 0.5 * (inductanceH ?? 0) * coilA * coilA;
    return {
      name,
      coilV,
      currentA: coilA,
      pickUpV,
      state: coilV >= pickUpV ? 'picks' : coilV > dropOutV ? 'holds' : 'drops',
    };
  });
  const given = { source: 'given-by-caller', sourceStatus: 'derived' } as const;
  const checks: Check[] = [
    makeCheck({
      ...given,
      name: 'current of the driver',
      value: currentA,
      limit: driverMostA,
      unit: 'A',
      sense: 'atMost',
    }),
    ...states.map(({ name, coilV, pickUpV }) =>
      makeCheck({
        name: `${name} pulls in`,
        value: coilV,
        limit: pickUpV,
        unit: 'V',
        sense: 'atLeast',
        source: 'automotive-relay-notes',
        sourceStatus: 'published',
      }),
    ),
  ];
  if (driverMostJ !== undefined) {
    checks.push(
      makeCheck({
        ...given,
        name: 'energy at switching off',
        value: energyJ,
        limit: driverMostJ,
        unit: 'J',
        sense: 'atMost',
      }),
    );
  }
  return {
    currentA,
    sharedDropV: currentA * sharedResistanceOhm,
    coils: states,
    energyJ,
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
