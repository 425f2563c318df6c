import { needInput, needList } from '../error/guard.js';
import { needLoad } from '../load/load.js';
import { settleDiodes } from './diode-states.js';
import type { SettleNetworkInput } from './element.js';
import { ridingOf } from './floating.js';
import { loadStates } from './load-states.js';
import type { SettledNetwork } from './settled.js';

/**
 * Settles the diodes of a network, and its loads of every kind. It is handed to `solveNetwork` as `settle`, and is of no
 * use by itself.
 *
 * Leave it out where all loads are resistances and there are no diodes: whoever does not name it does not carry it.
 *
 * $$I_l(V) \approx I_l(V_0) + g_l\,(V - V_0) \qquad g_l = \frac{\mathrm{d}I_l}{\mathrm{d}V}$$
 *
 * **Diodes** change state until volts and current suit all of them; no state is solved twice by the same rule, so there
 * is an end. **Loads** settle by Newton's steps until their volts would move by less than 1e-10 of the highest source,
 * and count as on where they are switched fast. Constant current, constant power and LED drivers need volts the right
 * way round: what cannot be fed says so (`fed: false`, with the reason) and draws nothing. A resistance, lamp or motor
 * passes current in either direction.
 *
 * @param input the network by numbers, and its equations, as `solveNetwork` has made them
 * @returns volts, currents, state of each load and diode
 * @throws InputError when a load is not whole; ConvergenceError when the states of diodes go round (it names them) or
 * loads do not settle
 * @source circuit-theory (Newton's steps; the diode of the least number first)
 * @example solveNetwork({ reference: 'post', branches: [], sources: [{ name: 'battery', from: 'post', to: 'plus', voltageV: 12, resistanceOhm: 0.5 }], loads: [{ name: 'radio', from: 'plus', to: 'post', load: { kind: 'constant-power', powerW: 22 } }], settle: settleNetwork }).loads[0].currentA //=> 2
 */
export function settleNetwork(input: SettleNetworkInput): SettledNetwork {
  needInput('settleNetwork', input);
  const { fn, network, wiring } = input;
  const { loads = [] } = network;
  needList(fn, 'loads', loads);
  loads.forEach(({ load }, i) => {
    needLoad(fn, load, `loads[${i}].load`);
  });
  const settled = settleDiodes(input);
  const { parts, solved, conducts, stateCount, stepCount } = settled;
  const riding = ridingOf(network, wiring, settled);
  return { parts, solved, ...riding, loads: loadStates(loads, settled), conducts, stateCount, stepCount };
}
