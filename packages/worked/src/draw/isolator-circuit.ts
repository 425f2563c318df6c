import { drawing, element, ink, label } from './svg.js';
import { symbol } from './symbol.js';

export interface IsolatorCircuitInput {
  /** Where the alternator's heavy wire ends. */
  readonly alternatorAt: 'vehicle' | 'battery';
  readonly ignitionPole: boolean;
  readonly hasResistor: boolean;
  /** Whether a lamp's wire without a diode leads from the alternator to the ignition. */
  readonly hasLamp: boolean;
  /** Volts with the isolator open and the engine turning. */
  readonly vehicleV: number;
  readonly ignitionV: number;
  readonly runsOn: boolean;
  /** Width in px: 320 or more. */
  readonly width: number;
  readonly format: (volts: number) => string;
}

const MOST_WIDTH = 560;
const BUS = 92;
const LAMP = 34;
const ALIVE = 0.5;

const line = (x1: number, y1: number, x2: number, y2: number, c: string): string =>
  element('line', { x1, y1, x2, y2, stroke: c, 'stroke-width': 1.5, 'stroke-linecap': 'round' });
const ground = (x: number, y: number): string[] => [
  line(x - 9, y, x + 9, y, ink.text),
  line(x - 5.5, y + 4, x + 5.5, y + 4, ink.text),
  line(x - 2, y + 8, x + 2, y + 8, ink.text),
];
const dot = (x: number, y: number, c: string): string => element('circle', { cx: x, cy: y, r: 3, fill: c });
const middle = { 'text-anchor': 'middle' } as const;

/** The isolator open and the engine turning: what is alive stands in copper, with its volts. */
export function isolatorCircuit(input: IsolatorCircuitInput): string {
  const { alternatorAt, ignitionPole, hasResistor, hasLamp, vehicleV, ignitionV, runsOn, width, format } = input;
  const wide = Math.min(Math.max(width, 320), MOST_WIDTH);
  const at = (share: number): number => Math.round(wide * share);
  const atVehicle = alternatorAt === 'vehicle';
  const [battery, poleFrom, poleTo] = [at(0.07), at(atVehicle ? 0.16 : 0.3), at(atVehicle ? 0.28 : 0.42)];
  const alternator = at(atVehicle ? 0.38 : 0.21);
  const loads = at(0.55);
  const resistor = at(0.7);
  const [secondFrom, secondTo, ignition] = [at(0.76), at(0.86), at(0.92)];
  const bus = vehicleV > ALIVE ? ink.copper : ink.soft;
  const ign = ignitionV > ALIVE ? ink.copper : ink.soft;
  const left = ink.copper;
  const said = [
    `vehicle's side ${format(vehicleV)}`,
    `ignition ${format(ignitionV)}`,
    runsOn ? 'the engine runs on' : 'the engine stops',
  ];
  return drawing(
    wide,
    216,
    'The isolator open, the engine turning',
    said.join('; '),
    label(0, 14, runsOn ? '✕ the engine runs on' : '✓ the engine stops', {
      'font-weight': 600,
      fill: runsOn ? ink.red : ink.verdigris,
    }),
    // Battery, main pole and bus.
    line(battery, BUS, poleFrom, BUS, left),
    ...open(poleFrom, poleTo, BUS, left, bus),
    line(poleTo, BUS, ignitionPole ? secondFrom : ignition, BUS, bus),
    ...column(battery, left, [symbol('battery', battery, BUS + 40, -90, left)], 'battery', 0),
    ...column(alternator, atVehicle ? bus : left, generator(alternator, ink.copper), 'alternator', 1),
    ...column(loads, bus, [symbol('other', loads, BUS + 40, 90, bus)], 'the rest', 0),
    ...(hasResistor ? column(resistor, bus, [symbol('other', resistor, BUS + 40, 90, bus)], 'resistor', 1) : []),
    ...(ignitionPole ? [...open(secondFrom, secondTo, BUS, bus, ign), line(secondTo, BUS, ignition, BUS, ign)] : []),
    ...column(ignition, ign, [symbol('other', ignition, BUS + 40, 90, ign)], 'ignition', 0),
    label(loads, BUS - 12, format(vehicleV), { ...middle, fill: bus, 'font-weight': 600 }),
    label(ignition, BUS + 114, format(ignitionV), { ...middle, fill: ign, 'font-weight': 600 }),
    ...(hasLamp ? lamp(alternator, ignition, (alternator + ignition) / 2, ignitionV) : []),
  );
}

/** An open pole. */
function open(from: number, to: number, y: number, before: string, after: string): string[] {
  return [
    dot(from, y, before),
    element('circle', { cx: to, cy: y, r: 3, fill: ink.ground, stroke: after, 'stroke-width': 1.5 }),
    line(from, y, to - 6, y - 14, before),
  ];
}

function column(x: number, c: string, body: readonly string[], name: string, row: number): string[] {
  return [
    dot(x, BUS, c),
    line(x, BUS, x, BUS + 20, c),
    ...body,
    line(x, BUS + 60, x, BUS + 70, ink.text),
    ...ground(x, BUS + 70),
    label(x, BUS + 98 + 16 * row, name, { ...middle, fill: ink.soft }),
  ];
}

function generator(x: number, c: string): string[] {
  return [
    element('circle', { cx: x, cy: BUS + 40, r: 13, fill: ink.ground, stroke: c, 'stroke-width': 1.5 }),
    line(x, BUS + 20, x, BUS + 27, c),
    line(x, BUS + 53, x, BUS + 60, c),
    label(x, BUS + 45, 'G', { ...middle, fill: c }),
  ];
}

/** The charge lamp's wire, from the alternator's second terminal over to the ignition. */
function lamp(from: number, to: number, x: number, ignitionV: number): string[] {
  const c = ignitionV > ALIVE ? ink.copper : ink.soft;
  const up = from + 22;
  return [
    line(from + 13, BUS + 40, up, BUS + 40, ink.copper),
    line(up, BUS + 40, up, LAMP, ink.copper),
    line(up, LAMP, x - 20, LAMP, ink.copper),
    symbol('lamp', x, LAMP, 0, ink.copper),
    line(x + 20, LAMP, to, LAMP, c),
    line(to, LAMP, to, BUS, c),
    label(x + 26, LAMP - 8, 'lamp', { fill: ink.soft, 'font-size': 12 }),
  ];
}
