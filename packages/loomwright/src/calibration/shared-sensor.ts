import { type Check, makeCheck, tightestCheck } from '../check/index.js';
import { needMoreThan } from '../error/bounded.js';
import { needInput, needOneOf, needOwnName } from '../error/guard.js';
import { clamped } from '../number/cells.js';
import { needDevice, needSensor, type SharedDevice, type SharedSensorKind, solveNode } from './shared-node.js';

export interface SharedSensorInput {
  readonly sensor: SharedSensorKind;
  /**
   * Whose power feeds the sensor: when that device is off, so is the sensor. `own` for a supply that is always there,
   * and for a sensor that needs none.
   */
  readonly fedBy: 'first' | 'second' | 'own';
  /** The device that the sensor was meant for, and the one that listens as well. */
  readonly first: SharedDevice;
  readonly second: SharedDevice;
  /** Most that the other device may move a reading, in V, above 0. */
  readonly allowedErrorV: number;
}

/** What one device has and shows in one state. */
export interface SharedReading {
  readonly name: string;
  readonly powered: boolean;
  /** Volts at its pin; null where nothing holds the wire. */
  readonly pinV: number | null;
  /** What it shows in its own unit; null without a table, without power, or where the pin floats. */
  readonly shownValue: number | null;
  /** By how much pin and reading are off what they would be with this device alone; null likewise. */
  readonly errorV: number | null;
  readonly errorValue: number | null;
  /** Current from the wire into the device in A, below 0 where it feeds the wire, and into its protection alone. */
  readonly intoA: number | null;
  readonly clampA: number | null;
}

export interface SharedState {
  readonly powered: 'both' | 'first' | 'second';
  /** Whether the sensor has its supply. */
  readonly sensorFed: boolean;
  /** Volts of the wire; null where nothing holds it. */
  readonly nodeV: number | null;
  readonly first: SharedReading;
  readonly second: SharedReading;
}

/** One way to mend it, and the worst error of the first device with it. */
export interface SharedCure {
  readonly code: 'no-second-pulls' | 'ten-times-series' | 'buffer' | 'one-switch' | 'feed-from-first';
  readonly words: string;
  /** Null where nothing then holds the wire. */
  readonly firstErrorV: number | null;
}

export interface SharedSensorResult {
  /** Volts at the pin of each device with it alone on the sensor, both powered: what its table was made for. */
  readonly firstAloneV: number | null;
  readonly secondAloneV: number | null;
  readonly firstAloneValue: number | null;
  readonly secondAloneValue: number | null;
  /** Both powered, the first alone, the second alone. */
  readonly states: readonly SharedState[];
  readonly cures: readonly SharedCure[];
  readonly checks: readonly Check[];
  readonly decidedBy: string;
}

/**
 * What two devices show that share one sensor, each with the other powered and not.
 *
 * Each brings its pull-up, pull-down and protection diode. A device without power is not gone: its rail is near ground,
 * its pull-up pulls down, and its diode drains the wire into it. A table made for one device alone is then false, and
 * changes with a key. What the resistors at both pins are must be known or measured. Where the device without power
 * feeds the sensor, that is dead too, and the other reads what is left: a track on a dead rail, an open output.
 *
 * $$V = \frac{\dfrac{E}{R_s} + \sum_d \dfrac{E_d}{R_d}}{\dfrac{1}{R_s} + \sum_d \dfrac{1}{R_d}}$$
 *
 * with each device as $E_d$ behind $R_d$: its pulls, or its diode where that conducts.
 *
 * @param input sensor, who feeds it, both devices, what may be moved
 * @returns each device alone with the sensor fed, three states with volts, readings and currents, cures, checks
 * @throws InputError when a field is missing or out of range, or a diode has no resistance before it,
 * or both devices have one name
 * @source circuit-theory (Millman's theorem; a diode as a fixed drop)
 * @example sharedSensor({ sensor: { kind: 'potentiometer', supplyV: 5, resistanceOhm: 2000, wiperFraction: 0.8, deadSupplyOhm: 0 }, fedBy: 'first', first: { name: 'owner', seriesOhm: 0, pullUpOhm: null, pullDownOhm: 100000, railV: 5, clampDropV: null }, second: { name: 'listener', seriesOhm: 2200, pullUpOhm: null, pullDownOhm: 10000, railV: 5, clampDropV: 0.6 }, allowedErrorV: 0.02 }).states[1].nodeV //=> 3.5583
 */
export function sharedSensor(input: SharedSensorInput): SharedSensorResult {
  const fn = 'sharedSensor';
  needInput(fn, input);
  const { sensor, fedBy, first, second, allowedErrorV } = input;
  needSensor(fn, sensor);
  needOneOf(fn, 'fedBy', fedBy, ['first', 'second', 'own']);
  needDevice(fn, 'first', first);
  needDevice(fn, 'second', second);
  needOwnName(fn, 'second.name', second.name, new Set([first.name]));
  needMoreThan(fn, 'allowedErrorV', allowedErrorV);
  const firstAloneV = aloneOf(sensor, first);
  const secondAloneV = aloneOf(sensor, second);
  const states = (['both', 'first', 'second'] as const).map((powered): SharedState => {
    const on = [powered !== 'second', powered !== 'first'] as const;
    const sensorFed = fedIn(fedBy, on);
    const { nodeV, devices } = solveNode(sensor, [first, second], on, sensorFed);
    const reading = (d: 0 | 1, device: SharedDevice, aloneV: number | null): SharedReading => {
      const found = devices[d];
      const pinV = found?.pinV ?? null;
      const live = on[d] && pinV !== null;
      const shown = live ? shownBy(device, pinV) : null;
      const wanted = shownBy(device, aloneV);
      return {
        name: device.name,
        powered: on[d],
        pinV,
        shownValue: shown,
        errorV: live && aloneV !== null ? pinV - aloneV : null,
        errorValue: shown === null || wanted === null ? null : shown - wanted,
        intoA: found?.intoA ?? null,
        clampA: found?.clampA ?? null,
      };
    };
    return {
      powered,
      sensorFed,
      nodeV,
      first: reading(0, first, firstAloneV),
      second: reading(1, second, secondAloneV),
    };
  });
  const checks = checksOf(states, allowedErrorV);
  return {
    firstAloneV,
    secondAloneV,
    firstAloneValue: shownBy(first, firstAloneV),
    secondAloneValue: shownBy(second, secondAloneV),
    states,
    cures: curesOf(input, firstAloneV),
    checks,
    decidedBy: tightestCheck(checks)?.name ?? '',
  };
}

/** Whether the sensor has its supply with these devices on. */
const fedIn = (fedBy: SharedSensorInput['fedBy'], [first, second]: readonly [boolean, boolean]): boolean =>
  fedBy === 'own' || (fedBy === 'first' ? first : second);

function aloneOf(sensor: SharedSensorKind, device: SharedDevice): number | null {
  return solveNode(sensor, [device], [true], true).devices[0]?.pinV ?? null;
}

function shownBy({ cells }: SharedDevice, pinV: number | null): number | null {
  return cells === undefined || pinV === null ? null : clamped(cells, pinV);
}

function checksOf(states: readonly SharedState[], allowedErrorV: number): readonly Check[] {
  return states.flatMap((state) =>
    [state.first, state.second]
      .filter(({ powered }) => powered)
      .map(({ name, errorV }) => {
        const dead = state.sensorFed ? 'the other without power' : 'the other and the sensor without power';
        const other = state.powered === 'both' ? 'both powered' : dead;
        return makeCheck({
          name: `error of ${name}, ${other}`,
          value: errorV === null ? null : Math.abs(errorV),
          limit: allowedErrorV,
          unit: 'V',
          sense: 'atMost',
          source: 'given-by-caller',
          sourceStatus: 'derived',
          ...(errorV === null ? { because: 'nothing holds the wire, alone or shared' } : {}),
        });
      }),
  );
}

/** A buffer's input: so much to ground, and no diode to a rail that may be dead. */
const BUFFER_OHM = 1e7;

function curesOf(input: SharedSensorInput, aloneV: number | null): readonly SharedCure[] {
  const { sensor, first, second } = input;
  const worst = (
    other: SharedDevice,
    states: readonly (readonly [boolean, boolean])[],
    fedBy = input.fedBy,
  ): number | null => {
    let most: number | null = 0;
    for (const on of states) {
      const pinV = solveNode(sensor, [first, other], on, fedIn(fedBy, on)).devices[0]?.pinV;
      if (pinV === undefined || aloneV === null || most === null) most = null;
      else most = Math.max(most, Math.abs(pinV - aloneV));
    }
    return most;
  };
  const either = [
    [true, true],
    [true, false],
  ] as const;
  const { name } = second;
  return [
    {
      code: 'no-second-pulls',
      words: `take the pull-up and the pull-down out of ${name}, and make its table anew`,
      firstErrorV: worst({ ...second, pullUpOhm: null, pullDownOhm: null }, either),
    },
    {
      code: 'ten-times-series',
      words: `ten times the resistance in series with ${name} (at least 10 kΩ), and make its table anew`,
      firstErrorV: worst({ ...second, seriesOhm: Math.max(10 * second.seriesOhm, 10_000) }, either),
    },
    {
      code: 'buffer',
      words: `a buffer before ${name}, fed with the sensor`,
      firstErrorV: worst({ ...second, pullUpOhm: null, pullDownOhm: BUFFER_OHM, clampDropV: null }, either),
    },
    {
      code: 'one-switch',
      words: 'both on one switch, so that none is ever without power alone',
      firstErrorV: worst(second, [[true, true]]),
    },
    ...(input.fedBy === 'second'
      ? [
          {
            code: 'feed-from-first',
            words: `feed the sensor from ${first.name}, not from ${name}`,
            firstErrorV: worst(second, either, 'first'),
          } as const,
        ]
      : []),
  ];
}
