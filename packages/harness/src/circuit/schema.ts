import { z } from 'zod';
import { quantity } from '../file/quantity.js';
import * as trade from '../schema/trade.js';

// One circuit on its own: a fragment of the loom file. Keys are trade words; every quantity carries its unit.

const partKinds = ['wire', 'fuse', 'relay', 'switch', 'terminal', 'connector', 'body', 'other'] as const;

/** One thing in a path: exactly one of the kinds, with its length (a wire) or its resistance (all else). */
const part = z
  .strictObject({
    wire: quantity('lengthM', { min: 0 }).optional().describe('Length of wire of the size being chosen'),
    fuse: z
      .union([z.literal('chosen'), quantity('resistanceOhm', { min: 0 })])
      .optional()
      .describe('Resistance hot, or `chosen`: that of the fuse that the plan chooses'),
    relay: quantity('resistanceOhm', { min: 0 }).optional(),
    switch: quantity('resistanceOhm', { min: 0 }).optional(),
    terminal: quantity('resistanceOhm', { min: 0 }).optional(),
    connector: quantity('resistanceOhm', { min: 0 }).optional(),
    body: quantity('resistanceOhm', { min: 0 })
      .optional()
      .describe('Resistance of the body or frame between two studs'),
    other: quantity('resistanceOhm', { min: 0 }).optional(),
    name: z.string().min(1).optional(),
    count: z.int().min(1).max(100).optional().describe('How many of them; 1 unless given'),
  })
  .superRefine((value, context) => {
    const given = partKinds.filter((kind) => value[kind] !== undefined);
    if (given.length !== 1) {
      context.addIssue({
        code: 'custom',
        message: `must be one of ${partKinds.join(', ')}, ${given.length === 0 ? 'none is given' : `got ${given.join(' and ')}`}.`,
      });
    }
  });

const protection = z.union([
  z.strictObject({
    fuse: z.enum(['blade-fuse']),
    overload: trade.overload,
    continuousShare: trade.continuousShare,
    fuseTemperature: trade.fuseTemperature,
    shortVoltage: quantity('shortSupplyV', { above: 0 }),
    sourceResistance: quantity('sourceResistanceOhm', { min: 0 }),
    clearWithin: quantity('clearWithinS', { above: 0 }),
  }),
  z.strictObject({ upstream: z.string().min(1), mayCarry: quantity('mayCarryA', { above: 0 }) }),
  z.strictObject({ none: z.string().min(1).describe('Why no protection is allowed here') }),
]);

const relay = z.strictObject({
  supply: quantity('supplyV', { above: 0 }),
  driverDrop: quantity('driverDropV', { min: 0 }),
  wireResistance: quantity('wireResistanceOhm', { min: 0 }),
  ...trade.coil,
});

/** The schema of a file with one circuit. */
export const circuitSchema = z
  .strictObject({
    circuit: z.string().min(1).describe('Name of the circuit'),
    vehicle: z.string().min(1).optional(),
    note: z.string().optional(),
    supply: quantity('supplyV', { above: 0 }).describe('Voltage at the start of the path'),
    judgedAt: z
      .array(quantity('supplyV', { above: 0 }))
      .describe('Other supply voltages at which the drop is judged; may be empty'),
    load: trade.circuitLoad,
    out: z.array(part).min(1).describe('From the supply to the load, in order'),
    return: z.array(part).describe('From the load back to the supply, in order'),
    rules: z.strictObject({
      wire: trade.wireTable,
      stock: trade.stock.optional(),
      insulation: trade.insulation,
      bears: trade.bears.optional(),
      ambient: trade.ambient,
      heating: trade.heating,
      cover: trade.cover.optional(),
      coverConductivity: trade.coverConductivity.optional(),
      altitude: trade.altitude.optional(),
      bundleShare: quantity('bundleFraction', { above: 0, max: 1 })
        .optional()
        .describe('What the wire bears in its bundle, as a share of what it bears alone'),
      budget: trade.budget.optional(),
      drop: quantity('dropV', { above: 0 }).optional().describe('Most volts lost out and back'),
      wireDrop: quantity('wireDropV', { above: 0 }).optional().describe('Most volts lost in the wire alone'),
      loadVoltage: quantity('loadV', { above: 0 }).optional().describe('Fewest volts at the load'),
      conductorTemperature: quantity('conductorTempC', { min: -100, max: 400 }).optional(),
      leastArea: quantity('leastAreaMm2', { min: 0 }).describe('Smallest area that stands being handled here'),
    }),
    protection,
    relay: relay.optional(),
  })
  .superRefine((value, context) => {
    const issue = (path: PropertyKey[], message: string): void => {
      context.addIssue({ code: 'custom', path, message });
    };
    value.return.forEach((item, i) => {
      if (item.fuse === 'chosen') issue(['return', i, 'fuse'], 'the fuse to choose stands on the way out.');
    });
    const chosen = value.out.flatMap((item, i) => (item.fuse === 'chosen' ? [i] : []));
    const [first, second] = chosen;
    if (second !== undefined) issue(['out', second, 'fuse'], 'only one fuse of a path can be chosen.');
    if (first !== undefined && !('fuse' in value.protection)) {
      issue(['out', first, 'fuse'], 'a fuse can be chosen only where protection names a fuse family.');
    }
    const { budget, drop, wireDrop, loadVoltage } = value.rules;
    if (budget === undefined && drop === undefined && wireDrop === undefined && loadVoltage === undefined) {
      issue(['rules'], 'needs a budget, drop, wireDrop or loadVoltage: how much may be lost.');
    }
    for (const [key, message] of trade.bearsProblems(value.rules.insulation, value.rules.bears)) {
      issue(['rules', 'bears', key], message);
    }
    if (value.rules.bears !== undefined && !('fuse' in value.protection)) {
      issue(['rules', 'bears'], 'is held against the times of a fuse, and protection names none.');
    }
    if (value.relay !== undefined && value.relay.dropOut > value.relay.pickUp) {
      issue(['relay', 'dropOut'], 'must be at most pickUp: it lets go below where it pulls in.');
    }
    if (value.relay !== undefined && value.relay.driverDrop > value.relay.supply) {
      issue(['relay', 'driverDrop'], 'must be at most supply.');
    }
    const { load } = value;
    if (
      (load.kind === 'motor' || load.kind === 'motor on a bridge') &&
      load.ratedCurrent * load.windingResistance >= load.ratedVoltage
    ) {
      issue(
        ['load', 'ratedCurrent'],
        'must be below ratedVoltage over windingResistance, its current when it is stalled.',
      );
    }
    const balance = ['cover', 'coverConductivity', 'altitude', 'bundleShare'] as const;
    const given = balance.filter((key) => value.rules[key] !== undefined);
    if (value.rules.heating === 'heat-balance' && given.length < balance.length) {
      const lacking = balance.filter((key) => !given.includes(key));
      issue(['rules'], `needs ${lacking.join(', ')} for the heat balance.`);
    }
    if (value.rules.heating !== 'heat-balance' && given.length > 0) {
      issue(['rules', given[0] as string], 'belongs to the heat balance, not to a table of currents.');
    }
    if (value.rules.wire === 'geometric' && value.rules.stock === undefined) {
      issue(['rules'], 'needs stock with the geometric wire, which has no sizes of its own.');
    }
    if (value.return.concat(value.out).every((item) => item.wire === undefined))
      issue(['out'], 'holds no wire to size.');
  });

/** A file with one circuit, read and checked: numbers in the core's units. */
export type Circuit = z.output<typeof circuitSchema>;
