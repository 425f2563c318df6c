import { z } from 'zod';
import { quantity, size } from '../file/quantity.js';

// Pieces that the file of one circuit and the loom file share: one vocabulary serves both.

/** Types of insulated wire, by their keys in the core. */
export const cover = z
  .enum([
    'iso-19642-thin-wall',
    'iso-19642-ultra-thin-wall',
    'iso-19642-thick-wall',
    'sae-txl',
    'sae-gxl',
    'sae-sxl',
    'as22759-16',
    'as22759-32',
  ])
  .describe('Type of wire, whose diameters decide the heat balance');

/** Tables of a conductor's resistance. */
export const wireTable = z
  .enum([
    'geometric',
    'iso-19642',
    'iec-60228-class-2',
    'iec-60228-class-5',
    'iec-60228-class-5-tinned',
    'sae-j1128',
    'awg-stranded',
  ])
  .describe('Table of the wire that you buy');

/** Ways of judging the heat of a wire. */
export const heating = z.enum(['heat-balance', 'us-33-cfr-183-425', 'ac-43-13-1b-table-11-9']);

/** Named budgets of the volts that a circuit may lose. */
export const budget = z.enum([
  'critical-feed-3-percent',
  'general-feed-10-percent',
  'ac-43-13-1b-14-v-continuous',
  'ac-43-13-1b-14-v-intermittent',
  'starter-0-8-v',
  'charging-0-7-v',
  'lamp-0-5-v',
]);

/** How a fuse's rating is held against what the wire bears. */
export const overload = z.enum(['strict', 'iec-60364-4-43', 'rating-at-most-ampacity', 'us-33-cfr-183-455']);

/** Sizes that may be chosen. */
export const stock = z.array(size()).min(1).describe('Sizes in stock; the whole table where left out');

export const insulation = quantity('insulationTempC', { min: 40, max: 300 });
/** What the insulation bears for a while. Where given, a wire is held against the longest time of its fuse. */
export const bears = z
  .strictObject({
    minutes: quantity('overloadTempC', { min: 40, max: 400 }).describe(
      'In an overload, for minutes now and then; the class where nothing more is known',
    ),
    seconds: quantity('shortTempC', { min: 40, max: 400 }).describe(
      'In a short of at most 5 s: PVC 160 °C, cross-linked polyethylene 250 °C',
    ),
  })
  .describe('What the insulation bears for a while: holds each wire against the longest time of its fuse');

/** What these temperatures break against the class of the insulation, by the key at fault. */
export function bearsProblems(
  insulationTempC: number,
  given: z.output<typeof bears> | undefined,
): readonly (readonly [key: 'minutes' | 'seconds', message: string])[] {
  if (given === undefined) return [];
  const { minutes, seconds } = given;
  const list: (readonly ['minutes' | 'seconds', string])[] = [];
  if (minutes < insulationTempC) list.push(['minutes', 'must be at least insulation, which it bears for good.']);
  if (seconds <= insulationTempC) list.push(['seconds', 'must be above insulation, which it bears for good.']);
  else if (seconds < minutes) list.push(['seconds', 'must be at least minutes.']);
  return list;
}

export const coverConductivity = quantity('insulationConductivityWPerMK', { min: 0.01, max: 10 });
export const altitude = quantity('altitudeM', { min: -500, max: 20000 });
export const ambient = quantity('ambientTempC', { min: -60, max: 200 });
export const continuousShare = quantity('continuousFraction', { above: 0, max: 1 });
export const fuseTemperature = quantity('fuseTempC', { min: -40, max: 125 });

const motor = {
  windingResistance: quantity('windingResistanceOhm', { above: 0 }),
  speedConstant: z.number().positive().describe('rpm per volt of back-EMF'),
  ratedCurrent: quantity('ratedCurrentA', { above: 0 }),
  ratedVoltage: quantity('ratedV', { above: 0 }),
  torque: z.enum(['constant', 'speed squared']),
};

const plainLoads = [
  z.strictObject({ kind: z.literal('constant current'), current: quantity('currentA', { above: 0 }) }),
  z.strictObject({ kind: z.literal('resistance'), resistance: quantity('resistanceOhm', { above: 0 }) }),
  z.strictObject({ kind: z.literal('constant power'), power: quantity('powerW', { above: 0 }) }),
  z.strictObject({ kind: z.literal('motor'), ...motor }),
] as const;

/** What the end of a circuit of a vehicle draws. */
export const load = z.discriminatedUnion('kind', [...plainLoads]);

/**
 * More kinds, for one circuit on its own. A heater once warm is a `resistance`, electronics behind a capacitor are
 * `constant power`: what sets them apart is their first current, which is not judged there.
 */
const steadyLoads = [
  ...plainLoads,
  z.strictObject({
    kind: z.literal('lamp'),
    power: quantity('ratedPowerW', { above: 0 }),
    ratedVoltage: quantity('ratedV', { above: 0 }).describe('At which it takes that power'),
  }),
  z.strictObject({
    kind: z.literal('LED driver'),
    power: quantity('powerW', { above: 0 }).describe('Of the LEDs'),
    efficiency: quantity('efficiencyFraction', { above: 0, max: 1 }),
    leastVolts: quantity('leastV', { min: 0 }).describe('Below it, it does not work'),
  }),
  z.strictObject({
    kind: z.literal('coil'),
    resistance: quantity('resistanceOhm', { above: 0 }),
    ratedAt: quantity('ratedTempC', { min: -60, max: 200 }).describe('Temperature of that resistance'),
    coilTemperature: quantity('coilTempC', { min: -60, max: 200 }).describe('Cold it draws the most'),
  }),
  z.strictObject({
    kind: z.literal('starter solenoid'),
    pullIn: quantity('resistanceOhm', { above: 0 }).describe('Winding that lets go once the contact has closed'),
    holdIn: quantity('resistanceOhm', { above: 0 }).describe('Winding that stays'),
    stage: z.enum(['pull in', 'hold']),
  }),
] as const;

const duty = quantity('dutyFraction', { above: 0, max: 1 }).describe('Share of the time that it is on');

/** What the end of one circuit draws. */
export const circuitLoad = z.discriminatedUnion('kind', [
  ...steadyLoads,
  z.strictObject({
    kind: z.literal('motor on a bridge'),
    ...motor,
    bridgeResistance: quantity('resistanceOhm', { min: 0 }).describe('Of the two switches in its way'),
    duty,
  }),
  z.strictObject({
    kind: z.literal('switched fast'),
    load: z.discriminatedUnion('kind', [...steadyLoads]).describe('What is switched on and off, whole'),
    duty,
  }),
]);

/** The fields of a relay's coil. */
export const coil = {
  coil: quantity('coilResistanceOhm', { above: 0 }),
  pickUp: quantity('ratedPickUpV', { above: 0 }),
  dropOut: quantity('ratedDropOutV', { min: 0 }),
  ratedAt: quantity('ratedTempC', { min: -60, max: 200 }),
  coilTemperature: quantity('coilTempC', { min: -60, max: 200 }),
};
