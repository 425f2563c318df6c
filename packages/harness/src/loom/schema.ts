import { z } from 'zod';
import { quantity, size } from '../file/quantity.js';
import { bladeNames } from '../schema/tables.js';
import * as trade from '../schema/trade.js';

// The loom file: everything that is on a vehicle. Keys are trade words; every quantity carries its unit. Things with a
// name stand in maps under it, so that no name can be given twice and their order means nothing.

const ohm = () => quantity('resistanceOhm', { min: 0, max: 1e6 });
const metres = () => quantity('lengthM', { min: 0, max: 1000 });
/** Length of a cable that is to be sized. */
const cableLength = () => quantity('lengthM', { above: 0, max: 1000 });
const amps = () => quantity('currentA', { above: 0, max: 1e4 });
const named = <T extends z.ZodType>(value: T) => z.record(z.string().min(1).max(80), value);
const name = (what: string) => z.string().min(1).max(80).describe(`Name of ${what}`);

/** Terminals: of a family of blades, or by the figures of their own data. */
const takes = z.union([
  z.strictObject({
    blade: z.enum(bladeNames).describe('Width of the blade: usual figures of its family, from memory'),
  }),
  z.strictObject({
    least: size().describe('Thinnest wire that the crimp takes'),
    most: size().describe('Thickest wire that the crimp takes'),
    insulation: z
      .strictObject({ least: quantity('diameterMm', { above: 0 }), most: quantity('diameterMm', { above: 0 }) })
      .optional()
      .describe('Diameters over the insulation that its seal or grip takes'),
    current: amps().optional().describe('What one contact carries at 25 °C'),
    hot: z
      .strictObject({ at: quantity('ambientTempC', { min: 26, max: 200 }), current: amps() })
      .optional()
      .describe('What it carries in heat; without it nothing is promised above 25 °C'),
  }),
]);

/** Where a feed begins: at a battery, a position of a fuse box, or an output of a controller. Exactly one of them. */
const from = z.union([
  z.strictObject({ battery: name('a battery') }),
  z.strictObject({ box: name('a fuse box'), position: z.int().min(1).max(500) }),
  z.strictObject({ controller: name('a controller'), channel: name('one of its channels') }),
]);

/** A fuse outside of a box, or why there is none. */
const inLine = z.union([
  z.strictObject({
    fuse: z.enum(['blade-fuse', 'mini-fuse', 'large-blade-fuse', 'bolt-in-fuse-sf30', 'bolt-in-fuse-sf51']),
    at: name('the place of the fuse'),
    rerating: quantity('ambientFraction', { above: 0, max: 1.5 })
      .optional()
      .describe('Share of the rating left in its heat, from its own data: for families without a curve'),
    resistance: ohm().optional().describe('Its resistance hot, from its own data: for families without a figure'),
    melting: quantity('meltingI2tA2s', { above: 0 })
      .optional()
      .describe('Its typical melting I²t, from its own data: tells which of two fuses in a row opens first'),
    clearWithin: quantity('clearWithinS', { above: 0 })
      .optional()
      .describe('Time within which it must clear a short at the far end; that of the rules unless given'),
  }),
  z.strictObject({ none: z.string().min(1).describe('Why no fuse is allowed here; the plan repeats it') }),
]);

/** A way to another ground point: through the body, or by a strap that the plan sizes. */
const way = {
  to: name('the ground point that it leads to').optional(),
  body: ohm().optional().describe('Resistance of the body or frame from here to there'),
  strap: cableLength().optional().describe('Length of a strap or cable from here to there; its size is chosen'),
};

/** A further way from a ground point: a second strap, a second piece of body, a strap to a battery's negative post. */
const bond = z.union([
  z.strictObject({
    to: name('another ground point'),
    body: ohm().describe('Resistance of the body or frame from here to there'),
  }),
  z.strictObject({
    to: name('another ground point'),
    strap: cableLength().describe('Length of a strap or cable from here to there; its size is chosen'),
  }),
  z.strictObject({
    battery: name('a battery, to whose negative post it leads'),
    strap: cableLength().describe('Length of a strap or cable from here to there; its size is chosen'),
  }),
  z.strictObject({
    to: name('another ground point'),
    stray: quantity('resistanceOhm', { above: 0, max: 1e6 }).describe(
      'Resistance of what ties both together though it was not laid for current: a throttle cable, a shield, a hinge',
    ),
    bears: amps().describe('Current above which it is harmed'),
    note: z.string().optional(),
  }),
]);

const battery = z.strictObject({
  place: name('a place'),
  ground: name('the ground point of its negative cable'),
  cable: cableLength().describe('Length of the negative cable; its size is chosen'),
  resistance: ohm().describe('Internal resistance: limits a short; volts at its posts are given by state'),
  capacity: quantity('chargeAh', { above: 0 }).optional(),
  note: z.string().optional(),
});

const alternator = z.strictObject({
  place: name('a place'),
  battery: name('the battery that it charges'),
  ground: name('the ground point of its case'),
  current: amps().describe('Largest output'),
  idleCurrent: amps().describe('Output at idle'),
  protection: inLine,
});

const isolator = z.strictObject({
  place: name('a place'),
  between: z.tuple([name('a battery'), name('another battery')]),
  current: amps().describe('Largest current that flows through it for long'),
  resistance: ohm(),
  protection: z.tuple([inLine, inLine]).describe('At the end of each battery: both ends are alive'),
});

/** A cable between the positive posts of two batteries that stand in parallel. */
const link = z.strictObject({
  between: z.tuple([name('a battery'), name('another battery')]),
  cable: cableLength().describe('Length from post to post; its size is chosen'),
  protection: inLine.describe('In the cable, at the end of the first'),
});

const place = z.strictObject({
  x: quantity('xM').describe('Forward from the rear axle'),
  y: quantity('yM').describe('To the left of the middle'),
  ambient: trade.ambient.describe('Hottest air there'),
  water: z.enum(['dry', 'wet']),
  note: z.string().optional(),
});

const route = z.strictObject({
  from: name('a place'),
  to: name('another place'),
  length: quantity('lengthM', { above: 0, max: 1000 }),
  ambient: trade.ambient.optional().describe('Where the way between is hotter than both of its ends'),
});

const ground = z.strictObject({
  place: name('a place'),
  joint: ohm().describe('Resistance of stud and ring terminals to the metal'),
  ...way,
  bonds: z.array(bond).min(1).max(20).optional().describe('Further ways from here; they may close loops'),
  note: z.string().optional(),
});

const fuseBox = z.strictObject({
  place: name('a place'),
  from,
  protection: inLine.optional().describe('Of the cable that feeds it; not where a fuse position feeds it'),
  family: z.enum(['blade-fuse', 'mini-fuse', 'large-blade-fuse']).describe('Fuses of its positions'),
  positions: z.int().min(1).max(500),
  temperature: trade.fuseTemperature.describe('Around the fuses'),
  contact: ohm().describe('Of the two contacts of one fuse together'),
  takes: takes.optional().describe('What its terminals take'),
});

const channel = z.strictObject({
  current: amps().describe('Rating at the temperature of the controller'),
  resistance: ohm().describe('Switched on and hot'),
  settings: z.array(amps()).min(1).describe('Trip currents that it can be set to'),
  side: z.enum(['high', 'low']).describe('Whether it feeds its load, or pulls a relay coil to ground'),
  tripDelay: quantity('delayS', { min: 0 }).describe('How long the current must stay above'),
});

const input = z.strictObject({
  kind: z.enum(['voltage', 'resistance', 'switch', 'pulse']),
  pullUp: quantity('resistanceOhm', { above: 0 }).optional(),
});

const controller = z.strictObject({
  place: name('a place'),
  from: from.optional().describe('Left out where a display or sensor has its feed as an item'),
  protection: inLine.optional(),
  ground: name('a ground point'),
  ownCurrent: amps().describe('What it draws itself'),
  total: amps().optional().describe('Most that all channels may draw together'),
  temperature: quantity('moduleTempC', { min: -40, max: 150 }),
  contact: ohm().describe('Of one pin of its connector'),
  takes: takes.optional(),
  budget: trade.budget,
  on: z.array(name('a state')),
  channels: named(channel),
  inputs: named(input),
});

const bus = z.strictObject({
  size: size(),
  members: z.array(name('a controller or an item')).min(2).describe('In the order of the line, end to end'),
  stubs: metres().describe('Longest stub from the line to a member'),
});

/** A type of relay, described once. */
const relayType = z.strictObject({
  ...trade.coil,
  contact: ohm(),
  current: amps().describe('Rating of the contact, resistive'),
  ratedVoltage: quantity('ratedV', { above: 0 }),
  make: amps().optional().describe('Current that it may close on'),
  fullTo: quantity('fullTempC', { min: -60, max: 200 }).describe('Air up to which the rating holds'),
  noneAt: quantity('noneTempC', { min: -60, max: 300 }).describe('Air at which nothing of it is left'),
});

const control = z.union([
  z.strictObject({ switch: name('an item that is a switch') }),
  z.strictObject({ controller: name('a controller'), channel: name('one of its channels') }),
]);

const back = z.union([
  z.strictObject({ ground: name('a ground point') }).describe('By a wire to a ground point'),
  z.strictObject({ body: name('a ground point') }).describe('Through its own case, bolted to a ground point'),
  z.strictObject({ battery: name('a battery') }).describe('By a wire all the way to the negative post'),
  z.strictObject({ controller: name('a controller') }).describe('By a wire to its signal ground'),
]);

const common = {
  place: name('a place'),
  connector: ohm().describe('Of one pin of its connector'),
  takes: takes.optional().describe('What its terminals take'),
  colour: z.string().min(1).max(20).optional().describe('Of its wire; that of the rules unless given'),
  note: z.string().optional(),
};

const loadItem = z.strictObject({
  kind: z.literal('load'),
  ...common,
  load: trade.load.describe('What it draws while it runs'),
  nature: z.enum(['resistive', 'lamp', 'motor', 'inductive', 'solenoid', 'capacitor']).describe('For contacts'),
  peak: amps().optional().describe('Highest current in use for seconds, such as a loaded winch'),
  inrush: amps().optional().describe('First current at switching on'),
  inrushTime: quantity('durationS', { above: 0 }).optional().describe('Until it has settled'),
  duty: quantity('dutyFraction', { above: 0, max: 1 }).describe(
    'Share of the time on in its states: for energy only. A wire is judged by the whole current',
  ),
  budget: trade.budget.describe('What may be lost from battery to load and back'),
  leastVolts: quantity('loadV', { above: 0 }).optional().describe('Below it, it does not work'),
  from,
  protection: inLine.optional().describe('Only where it is fed from a battery'),
  switch: name('a switch in its wire').optional(),
  relay: z
    .strictObject({ type: name('a relay type'), at: name('the place of the relay'), control })
    .optional()
    .describe('Where a relay switches it'),
  return: back,
  on: z.array(name('a state')).describe('States in which it runs'),
  cranks: z
    .boolean()
    .optional()
    .describe('Whether it turns the engine over; unless given, what has the budget starter-0-8-v does'),
});

const sensorItem = z.strictObject({
  kind: z.literal('sensor'),
  ...common,
  input: z.strictObject({ controller: name('a controller'), input: name('one of its inputs') }),
  supply: z.boolean().describe('Whether the controller supplies it by a wire of its own'),
  current: amps().describe('What it draws from that supply or puts into the input'),
  return: back,
});

const switchItem = z.strictObject({
  kind: z.literal('switch'),
  ...common,
  resistance: ohm().describe('Of its closed contact'),
  current: amps().describe('Rating of its contact, resistive'),
  ratedVoltage: quantity('ratedV', { above: 0 }),
  return: back.optional().describe('Where it pulls a relay or an input to ground'),
  input: z.strictObject({ controller: name('a controller'), input: name('one of its inputs') }).optional(),
});

const item = z.discriminatedUnion('kind', [loadItem, sensorItem, switchItem]);

const state = z.strictObject({
  volts: named(quantity('supplyV', { above: 0, max: 1000 })).describe('At the posts of each battery'),
  atRest: named(quantity('supplyV', { above: 0, max: 1000 }))
    .optional()
    .describe('Volts of a battery without load, instead of volts: those at its posts follow from its resistance'),
  alternator: z.enum(['off', 'idle', 'full']),
  isolator: z.enum(['open', 'closed']),
  note: z.string().optional(),
});

const rules = z.strictObject({
  wire: trade.wireTable,
  stock: trade.stock.optional(),
  insulation: trade.insulation,
  bears: trade.bears.optional(),
  heating: trade.heating,
  cover: trade.cover.describe('Type of wire: its diameters, and its heat balance where that is the rule'),
  coverConductivity: trade.coverConductivity,
  altitude: trade.altitude,
  bundle: z
    .enum(['mil-w-5088', 'eee-inst-002', 'us-33-cfr-183', 'nec-310-15', 'heat'])
    .describe('Rule for the current of a wire in a bundle'),
  bundleDiameter: z.enum(['packing', 'multiplication-factor']),
  leastArea: quantity('leastAreaMm2', { min: 0 }).describe('Smallest area that stands being handled'),
  leastSignalArea: quantity('leastAreaMm2', { min: 0 }).describe('The same for wires of sensors and coils'),
  terminal: ohm().describe('Of one crimped blade or pin at a box, relay or ground of an ordinary circuit'),
  stud: ohm().describe('Of one ring terminal bolted to a post, a stud or a bolt-in fuse'),
  slack: quantity('slackFraction', { min: 0, max: 1 }).describe('Allowance on the way, for bends and slack'),
  ends: metres().describe('Allowance at each end of a wire, for stripping and a second try'),
  overload: trade.overload,
  continuousShare: trade.continuousShare,
  clearWithin: quantity('clearWithinS', { above: 0 }),
  shortVoltage: quantity('shortSupplyV', { above: 0 }).describe('Of a low battery, for a short at the far end'),
  feederDrop: quantity('dropV', { above: 0 }).describe('What a feeder of a fuse box or controller may lose'),
  strapDrop: quantity('dropV', { above: 0 }).describe('What a strap or negative cable may lose'),
  signalDrop: quantity('dropV', { above: 0 }).describe('What a wire of a sensor or a coil may lose'),
  sensorShift: quantity('dropV', { above: 0 })
    .optional()
    .describe('What the ground of a sensor may stand off that of its controller; not judged unless given'),
  unfused: metres().describe('Most wire between a source and its first fuse'),
  coilDriverDrop: quantity('driverDropV', { min: 0 }).describe('Lost in what switches a relay coil'),
  ratio: z
    .enum(['ac-43-13-1b-switch-12-v', 'switch-maker-rating', 'relay-maker-rating'])
    .describe('By how much a contact must exceed the load that it switches'),
  colours: named(z.string().min(1).max(20))
    .optional()
    .describe('Colours by use: feed, load, ground, coil, signal, reference, sensor ground, bus'),
});

/** The schema of a loom file. */
export const loomSchema = z.strictObject({
  vehicle: z.strictObject({ name: z.string().min(1), note: z.string().optional() }),
  supply: z.strictObject({
    batteries: named(battery),
    alternator: alternator.optional(),
    isolator: isolator.optional(),
    links: named(link).optional().describe('Cables between batteries that stand in parallel'),
  }),
  places: named(place),
  routes: named(route),
  grounds: named(ground),
  fuseBoxes: named(fuseBox),
  controllers: named(controller),
  buses: named(bus),
  relayTypes: named(relayType),
  items: named(item),
  states: named(state),
  rules,
});

/** A loom file, read and checked: numbers in the core's units. */
export type Loom = z.output<typeof loomSchema>;
export type LoomItem = Loom['items'][string];
export type LoomLoad = Extract<LoomItem, { kind: 'load' }>;
export type LoomSensor = Extract<LoomItem, { kind: 'sensor' }>;
export type LoomSwitch = Extract<LoomItem, { kind: 'switch' }>;
export type LoomFrom = z.output<typeof from>;
export type LoomReturn = z.output<typeof back>;
export type LoomTakes = z.output<typeof takes>;
export type LoomInLine = z.output<typeof inLine>;
export type LoomRules = Loom['rules'];
export type LoomBond = z.output<typeof bond>;
