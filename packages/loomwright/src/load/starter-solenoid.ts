import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needConductorTempC, needInput } from '../error/guard.js';

export interface StarterSolenoidInput {
  /** Battery in V as the solenoid pulls in, before the motor turns; above 0. */
  readonly supplyV: number;
  /** Battery in V while cranking, above 0 and at most `supplyV`. */
  readonly crankingV: number;
  /** Resistance of its wire, switch and relay contact, out and back, in Ω, at least 0. */
  readonly wireResistanceOhm: number;
  /** Winding that ends at the motor and drops out of the circuit once the contact closes: Ω at `ratedTempC`. */
  readonly pullInResistanceOhm: number;
  /** Winding that ends at ground and stays: Ω at `ratedTempC`. */
  readonly holdInResistanceOhm: number;
  /** Resistance of the motor, through which the pull-in winding finds ground, in Ω, at least 0. */
  readonly motorResistanceOhm: number;
  /** Volts at its terminal with which it is sure to pull in, at `ratedTempC`; above 0. */
  readonly ratedPullInV: number;
  /** Volts at its terminal with which the staying winding alone is sure to hold, at `ratedTempC`; above 0. */
  readonly ratedHoldV: number;
  /** Temperature in °C for which these figures hold. */
  readonly ratedTempC: number;
  /** Coldest and hottest winding to be judged, in °C: hot is a heat-soaked engine. */
  readonly coldTempC: number;
  readonly hotTempC: number;
}

/** The solenoid at one temperature. */
export interface SolenoidState {
  readonly coilTempC: number;
  /** Current in A with both windings, volts at the terminal, and volts needed there. */
  readonly pullInA: number;
  readonly pullInV: number;
  readonly neededPullInV: number;
  /** Least battery in V with which it pulls in. */
  readonly leastSupplyV: number;
  /** The same for holding while cranking. */
  readonly holdA: number;
  readonly holdV: number;
  readonly neededHoldV: number;
  readonly leastCrankingV: number;
  /** `cranks`; `chatters`: pulls in and cannot hold, over and over; `stays-out`: does not pull in. */
  readonly state: 'cranks' | 'chatters' | 'stays-out';
}

export interface StarterSolenoidResult {
  readonly cold: SolenoidState;
  readonly hot: SolenoidState;
  /** The worse of the two. */
  readonly state: SolenoidState['state'];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * Whether a starter's solenoid pulls in and holds at the end of its wire, cold and hot.
 *
 * Use it where a starter clicks or chatters, and to size the wire that feeds its small terminal. Two windings of
 * equal turns pull together; once the contact closes, both ends of the one are at battery volts and the other holds
 * alone. Pull goes with current, so a hot coil needs more volts, while a cold one loads its wire more.
 *
 * $$V_\mathrm{terminal} = V \frac{R}{R + R_\mathrm{wire}},\quad \frac1R = \frac1{R_p + R_\mathrm{motor}} + \frac1{R_h}
 * \qquad V_\mathrm{hold}(T) = V_\mathrm{hold}(T_0) \frac{234.5 + T}{234.5 + T_0}$$
 *
 * @param input battery before and while cranking, wire, windings, temperatures
 * @returns the solenoid cold and hot: currents, volts given and needed, least battery; the worse state; checks
 * @throws InputError when a field is missing or out of range
 * @source circuit-theory; nbs-hb-100 (resistance of copper over temperature)
 * @example starterSolenoid({ supplyV: 12.2, crankingV: 9.6, wireResistanceOhm: 0.03, pullInResistanceOhm: 0.25, holdInResistanceOhm: 0.9, motorResistanceOhm: 0.01, ratedPullInV: 7.5, ratedHoldV: 2.5, ratedTempC: 20, coldTempC: -20, hotTempC: 110 }).hot.neededPullInV //=> 10.0729
 */
export function starterSolenoid(input: StarterSolenoidInput): StarterSolenoidResult {
  const fn = 'starterSolenoid';
  needInput(fn, input);
  const { supplyV, crankingV, ratedPullInV, ratedHoldV, ratedTempC, coldTempC, hotTempC } = input;
  const { wireResistanceOhm, pullInResistanceOhm, holdInResistanceOhm, motorResistanceOhm } = input;
  needMoreThan(fn, 'supplyV', supplyV);
  needMoreThan(fn, 'crankingV', crankingV);
  needBetween(fn, 'crankingV', crankingV, 0, supplyV);
  needNoLessThan(fn, 'wireResistanceOhm', wireResistanceOhm);
  needMoreThan(fn, 'pullInResistanceOhm', pullInResistanceOhm);
  needMoreThan(fn, 'holdInResistanceOhm', holdInResistanceOhm);
  needNoLessThan(fn, 'motorResistanceOhm', motorResistanceOhm);
  needMoreThan(fn, 'ratedPullInV', ratedPullInV);
  needMoreThan(fn, 'ratedHoldV', ratedHoldV);
  needConductorTempC(fn, 'ratedTempC', ratedTempC);
  needBetween(fn, 'coldTempC', coldTempC, -60, 200);
  needBetween(fn, 'hotTempC', hotTempC, coldTempC, 200);
  const siemens = (ratio: number): number =>
    1 / (pullInResistanceOhm * ratio + motorResistanceOhm) + 1 / (holdInResistanceOhm * ratio);
  const at = (coilTempC: number): SolenoidState => {
    const ratio = (234.5 + coilTempC) / (234.5 + ratedTempC);
    const bothOhm = 1 / siemens(ratio);
    const holdOhm = holdInResistanceOhm * ratio;
    const pullInA = supplyV / (wireResistanceOhm + bothOhm);
    const holdA = crankingV / (wireResistanceOhm + holdOhm);
    const neededPullInV = ratedPullInV * siemens(1) * bothOhm;
    const neededHoldV = ratedHoldV * ratio;
    const leastSupplyV = neededPullInV * (1 + wireResistanceOhm / bothOhm);
    const leastCrankingV = neededHoldV * (1 + wireResistanceOhm / holdOhm);
    return {
      coilTempC,
      pullInA,
      pullInV: pullInA * bothOhm,
      neededPullInV,
      leastSupplyV,
      holdA,
      holdV: holdA * holdOhm,
      neededHoldV,
      leastCrankingV,
      state: supplyV < leastSupplyV ? 'stays-out' : crankingV < leastCrankingV ? 'chatters' : 'cranks',
    };
  };
  const cold = at(coldTempC);
  const hot = at(hotTempC);
  const check = (name: string, value: number, limit: number): Check =>
    makeCheck({
      name,
      value,
      limit,
      unit: 'V',
      sense: 'atLeast',
      source: 'given-by-caller',
      sourceStatus: 'derived',
    });
  const checks = [
    check('battery to pull in, cold', supplyV, cold.leastSupplyV),
    check('battery to pull in, hot', supplyV, hot.leastSupplyV),
    check('battery to hold while cranking, cold', crankingV, cold.leastCrankingV),
    check('battery to hold while cranking, hot', crankingV, hot.leastCrankingV),
  ];
  const order = ['stays-out', 'chatters', 'cranks'] as const;
  return {
    cold,
    hot,
    state: order.find((state) => state === cold.state || state === hot.state) ?? 'cranks',
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}
