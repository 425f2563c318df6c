import {
  coilCharge,
  type CoilChargeInput,
  coilSuppression,
  type CoilSuppressionInput,
  injectorFeed,
  type InjectorFeedInput,
  lampAtVoltage,
  type LampAtVoltageInput,
  type LampInrushResult,
  loadCurrents,
  type LoadCurrentsInput,
  motorStart,
  type MotorStartInput,
  relayMap,
  type RelayPickupInput,
  starterSolenoid,
  type StarterSolenoidInput,
  type Suppressor,
} from 'loomwright';
import type { ChartSeries, ChartSpec } from '@loomwright/worked/plot';

type Points = [number, number][];

/** So many values from one to another, evenly. */
function evenly(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

/** Peak, r.m.s. and mean of a load over its duty. */
export function currentsByDuty(input: LoadCurrentsInput, dutyFraction: number, label: string): ChartSpec | null {
  const { load } = input;
  if (load.kind !== 'pwm') return null;
  const at = (duty: number): { peakA: number; rmsA: number; meanA: number } | null => {
    const result = loadCurrents({ ...input, load: { ...load, dutyFraction: duty } });
    return result.possible ? result : null;
  };
  const line = (key: 'peakA' | 'rmsA' | 'meanA'): Points =>
    evenly(0.01, 1, 34).flatMap((duty) => {
      const found = at(duty);
      return found === null ? [] : [[duty * 100, found[key]] as [number, number]];
    });
  const here = at(dutyFraction);
  return {
    title: 'Peak for the channel, r.m.s. for wire and fuse, mean for the battery',
    x: { label: 'On', unit: '%', domain: [0, 100] },
    y: { label: 'Current', unit: 'A' },
    series: [
      { name: 'peak', points: line('peakA'), colour: 'copper', as: 'line', labelAt: 6 },
      { name: 'r.m.s.', points: line('rmsA'), colour: 'text', as: 'line', labelAt: 9 },
      { name: 'mean', points: line('meanA'), colour: 'blue', as: 'line', labelAt: 18 },
    ],
    ...(here === null ? {} : { chosen: { x: dutyFraction * 100, y: here.rmsA, label } }),
  };
}

/** The surge of a lamp over time. */
export function surgeByTime(output: LampInrushResult, label: string): ChartSpec {
  const { timesS, currentsA, steadyA, settledS, peakA } = output;
  const points = timesS.flatMap((t, i): Points =>
    i % 6 === 0 || i === timesS.length - 1 ? [[t * 1000, currentsA[i] as number]] : [],
  );
  const end = Math.max(settledS * 1250, 1e-3);
  return {
    title: 'Current from the moment of switching on',
    x: { label: 'Time', unit: 'ms', domain: [0, end] },
    y: { label: 'Current', unit: 'A', domain: [0, peakA * 1.05] },
    series: [
      { name: '', points, colour: 'copper', as: 'line' },
      {
        name: 'steady',
        points: [
          [0, steadyA],
          [end, steadyA],
        ],
        colour: 'text',
        as: 'line',
      },
    ],
    chosen: { x: 0, y: peakA, label },
  };
}

/** Light and life of a lamp over the volts that reach it. */
export function lightByVolts(input: LampAtVoltageInput, label: string): ChartSpec {
  const low = input.ratedV * 0.75;
  const at = (lampV: number): number => 100 * lampAtVoltage({ ...input, lampV }).lightFraction;
  const points = evenly(low, input.ratedV * 1.12, 24).map((v): [number, number] => [v, at(v)]);
  return {
    title: 'Light by the volts at the lamp',
    x: { label: 'At the lamp', unit: 'V' },
    y: { label: 'Light', unit: '% of rated' },
    series: [{ name: '', points, colour: 'text', as: 'line' }],
    ...(input.lampV >= low && input.lampV <= input.ratedV * 1.12
      ? { chosen: { x: input.lampV, y: at(input.lampV), label } }
      : {}),
  };
}

/** The current of a motor as it starts, beside a soft start of a second, or switched on hard beside its own ramp. */
export function startByTime(input: MotorStartInput, label: string): ChartSpec {
  const own = motorStart(input);
  const other = motorStart({ ...input, rampS: input.rampS > 0 ? 0 : 1 });
  const line = ({ timesS, currentsA }: typeof own): Points =>
    timesS.map((t, i): [number, number] => [t, currentsA[i] as number]);
  const soft = input.rampS > 0;
  const points = line(own);
  return {
    title: 'Current of the motor from the moment of switching on',
    x: { label: 'Time', unit: 's' },
    y: { label: 'Current', unit: 'A', domain: [0, Math.max(own.peakA, other.peakA, own.stallA) * 1.05] },
    series: [
      { name: soft ? 'this soft start' : 'hard', points, colour: 'copper', as: 'line', labelAt: 26 },
      {
        name: soft ? 'hard' : 'soft, over 1 s',
        points: line(other),
        colour: 'blue',
        as: 'line',
        labelAt: 22,
      },
    ],
    limits: [{ axis: 'y', value: own.stallA, name: 'rotor held', fails: 'above' }],
    chosen: { x: own.peakTimeS, y: own.peakA, label },
  };
}

/** Supply at which a relay picks up and lets go, over the temperature of its coil. */
export function relayByTemperature(input: RelayPickupInput, coilTempC: number, label: string): ChartSpec {
  const { driverDropV, wireResistanceOhm, coilResistanceOhm, ratedPickUpV, ratedDropOutV, ratedTempC } = input;
  const coilTempsC = evenly(-40, 160, 21);
  const { rows } = relayMap({
    driverDropV,
    wireResistanceOhm,
    coilResistanceOhm,
    ratedPickUpV,
    ratedDropOutV,
    ratedTempC,
    suppliesV: [12],
    coilTempsC,
  });
  const line = (key: 'leastSupplyV' | 'dropOutSupplyV'): Points =>
    rows.map((row): [number, number] => [row.coilTempC, row[key]]);
  return {
    title: 'Supply from which it pulls in, and at which it lets go',
    x: { label: 'Coil', unit: '°C' },
    y: { label: 'Supply', unit: 'V', domain: [0, Math.max(16, input.supplyV * 1.1)] },
    series: [
      { name: 'pulls in above', points: line('leastSupplyV'), colour: 'verdigris', as: 'line', labelAt: 2 },
      { name: 'lets go below', points: line('dropOutSupplyV'), colour: 'red', as: 'line', labelAt: 2 },
    ],
    ...(coilTempC <= 160 ? { chosen: { x: coilTempC, y: input.supplyV, label } } : {}),
  };
}

/** Every kind of suppression of one coil: peak at the driver against the time until it lets go. */
export function suppressionMap(input: CoilSuppressionInput): ChartSpec {
  const kinds: readonly (readonly [string, Suppressor, ChartSeries['colour']])[] = [
    ['diode', { kind: 'diode', forwardV: 0.8 }, 'blue'],
    ['zener 24 V', { kind: 'diode-zener', forwardV: 0.8, zenerV: 24 }, 'verdigris'],
    ['TVS 40 V', { kind: 'tvs', clampV: 40, place: 'coil' }, 'copper'],
    ['47 Ω', { kind: 'resistor', resistanceOhm: 47 }, 'soft'],
    ['680 Ω', { kind: 'resistor', resistanceOhm: 680 }, 'soft'],
  ];
  const all = kinds.map(([name, suppressor, colour]) => {
    const { releaseS, peakDriverV } = coilSuppression({ ...input, suppressor });
    return { name, colour, point: [releaseS * 1000, peakDriverV ?? 0] as [number, number] };
  });
  return {
    title: 'What holds the peak down lets go late',
    x: { label: 'Contact open after', unit: 'ms', domain: [0, Math.max(...all.map(({ point }) => point[0])) * 1.3] },
    y: {
      label: 'Peak at the driver',
      unit: 'V',
      domain: [0, Math.max(input.driverMostV, ...all.map(({ point }) => point[1])) * 1.15],
    },
    series: all.map(({ name, colour, point }) => ({ name, colour, points: [point], as: 'dots' as const, labelAt: 0 })),
    limits: [{ axis: 'y', value: input.driverMostV, name: 'driver', fails: 'above' }],
  };
}

/** Peak, r.m.s. and mean in the feed of ignition coils over the supply. */
export function coilsByVolts(input: CoilChargeInput, label: string): ChartSpec {
  const volts = evenly(8, 15, 29);
  const line = (key: 'peakA' | 'rmsA' | 'meanA'): Points =>
    volts.flatMap((supplyV) => {
      const result = coilCharge({ ...input, supplyV });
      return result.possible ? [[supplyV, result[key]] as [number, number]] : [];
    });
  const here = coilCharge(input);
  return {
    title: 'The three currents of the feed by the supply',
    x: { label: 'Supply', unit: 'V' },
    y: { label: 'Feed', unit: 'A' },
    series: [
      { name: 'peak', points: line('peakA'), colour: 'copper', as: 'line', labelAt: 8 },
      { name: 'r.m.s.', points: line('rmsA'), colour: 'text', as: 'line', labelAt: 8 },
      { name: 'mean', points: line('meanA'), colour: 'blue', as: 'line', labelAt: 12 },
    ],
    ...(here.possible ? { chosen: { x: input.supplyV, y: here.peakA, label } } : {}),
  };
}

/** Opening delay of an injector over the supply. */
export function delayByVolts(input: InjectorFeedInput, label: string): ChartSpec | null {
  if (input.openingA === undefined) return null;
  const at = (supplyV: number): number | null => {
    const result = injectorFeed({ ...input, supplyV });
    return result.possible ? result.openingDelayS : null;
  };
  const points = evenly(7, 16, 28).flatMap((v): Points => {
    const delay = at(v);
    return delay === null ? [] : [[v, delay * 1000]];
  });
  const here = at(input.supplyV);
  return {
    title: 'How late the needle lifts, by the supply',
    x: { label: 'Supply', unit: 'V' },
    y: { label: 'Delay', unit: 'ms' },
    series: [{ name: '', points, colour: 'text', as: 'line' }],
    ...(here === null ? {} : { chosen: { x: input.supplyV, y: here * 1000, label } }),
  };
}

/** Battery that a starter's solenoid asks for, by the resistance of its wire, cold and hot. */
export function batteryByWire(input: StarterSolenoidInput, label: string): ChartSpec {
  const most = Math.max(0.2, input.wireResistanceOhm * 1.4);
  const line = (at: 'cold' | 'hot'): Points =>
    evenly(0, most, 21).map((wireResistanceOhm): [number, number] => [
      1000 * wireResistanceOhm,
      starterSolenoid({ ...input, wireResistanceOhm })[at].leastSupplyV,
    ]);
  return {
    title: 'Battery that it takes to pull in, by the resistance of its wire',
    x: { label: 'Wire, out and back', unit: 'mΩ' },
    y: { label: 'Battery', unit: 'V' },
    series: [
      { name: 'hot', points: line('hot'), colour: 'red', as: 'line', labelAt: 4 },
      { name: 'cold', points: line('cold'), colour: 'blue', as: 'line', labelAt: 12 },
    ],
    limits: [{ axis: 'y', value: input.supplyV, name: 'battery', fails: 'above' }],
    chosen: {
      x: 1000 * input.wireResistanceOhm,
      y: starterSolenoid(input).hot.leastSupplyV,
      label,
    },
  };
}
