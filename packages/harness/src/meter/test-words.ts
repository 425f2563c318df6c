import type { CautionKey } from '@loomwright/worked/card';
import type { ExpectedReading, PathElement } from '../loom/plan-type.js';
import { MOST_IN_METER_A } from './meter.js';
import type { TestStageKey, TestStep } from './test-plan-type.js';

/** Title, what to do and what can hurt in each stage. */
export const STAGES: Readonly<
  Record<
    TestStageKey,
    { readonly title: string; readonly procedure: readonly string[]; readonly cautions: readonly CautionKey[] }
  >
> = {
  dead: {
    title: 'Dead',
    procedure: [
      'All battery negatives off. Switches and relays open unless a row says otherwise.',
      'Hold the probes together first: what the meter then shows is its leads, and is taken off each reading.',
      'An ohmmeter finds opens, shorts and wrong fuses. It does not prove a joint: only millivolts with the current flowing do.',
    ],
    cautions: ['local-code', 'battery', 'insulation-tester', 'restraint'],
  },
  'first power': {
    title: 'First power',
    procedure: [
      'All fuses out, all switches off, controllers unplugged. A 21 W lamp between each battery’s negative post and its cable: it must stay dark.',
      'With the lamp still in series put in one fuse at a time and switch on what hangs on it. A small load lets the lamp glow; one that burns fully with its load off is a short: pull the fuse and find it.',
      'When all have passed, take the lamp out, put the cable on, and read the current of each fuse in its place.',
      `Up to ${MOST_IN_METER_A} A the meter’s 10 A socket stands in for the fuse; above it only a clamp does.`,
    ],
    cautions: ['battery', 'fuel', 'stored-heat', 'isolator', 'restraint'],
  },
  standing: {
    title: 'Standing, engine off',
    procedure: [
      'Read the posts first, with everything of the state switched on: all volts follow them.',
      'Probe on metal, not on the screw: the joint is what is measured.',
    ],
    cautions: ['battery', 'fuel', 'restraint', 'fan-starts'],
  },
  cranking: {
    title: 'Cranking',
    procedure: [
      'Keep the engine from starting: no fuel and no spark. Crank for five seconds at most, then let the starter cool for a minute.',
      'Out of gear, nobody before the vehicle, probes clipped on and clear of belts and fan. Somebody else turns the key.',
    ],
    cautions: ['fuel', 'battery', 'restraint'],
  },
  running: {
    title: 'Engine running',
    procedure: [
      'Read the posts first. Switch on what the state names, and wait a minute: lamps and motors settle.',
      'Steering, brakes and throttle are proved at walking pace before any road.',
    ],
    cautions: ['fan-starts', 'fuel', 'throttle', 'prove-slowly', 'restraint'],
  },
};

/** What the meter is set to. */
export function settingOf(kind: TestStep['kind'], value: number | null): string {
  switch (kind) {
    case 'ohms':
      return 'Ω, lowest range';
    case 'posts':
    case 'volts':
      return 'V d.c., 20 V range';
    case 'millivolts':
    case 'ground':
      return (value ?? 0) > 180 ? 'V d.c., 2 V range' : 'mV d.c., 200 mV range';
    case 'amps':
      return (value ?? 0) > MOST_IN_METER_A ? 'clamp, d.c.' : 'A d.c., 10 A socket, in place of the fuse';
    case 'lamp':
      return '21 W lamp';
  }
}

const OVER: Readonly<Record<PathElement['kind'], string>> = {
  wire: 'a wire too thin or too long, or strands cut at an end',
  fuse: 'blades or holder loose or burnt, or another rating in its place',
  relay: 'contact burnt, relay not seated, or its coil low on volts',
  switch: 'contact burnt or dirty',
  channel: 'output overloaded or hot',
  terminal: 'crimp bad, bolt loose, paint or corrosion under the terminal',
  connector: 'pin not home, spread or corroded',
  joint: 'bolt loose, paint or corrosion under the ring',
  body: 'paint or rust under the stud, or the body opened at a seam',
};

/** What may be wrong where a reading fails. */
export function ifNotOf({ kind, value, name }: ExpectedReading, part: PathElement['kind'] | null): string {
  switch (kind) {
    case 'posts':
      return 'battery low, or not charged as planned: charge it, or put the measured volts into the file. The volts below follow them.';
    case 'volts':
      return 'Low: a joint in its path or way back, so take the millivolts; or the posts are low too. High: it draws less than planned, or is not on.';
    case 'ground':
      return 'the joint of this point or of one nearer to the battery, a strap, or more current than planned';
    case 'amps':
      return 'More: another load on this fuse, or a way to body. Less or none: something open, or the load not on.';
    case 'millivolts':
      return `${OVER[part ?? 'body']}; or the load draws more than planned`;
    case 'ohms':
      if (name.endsWith('load out'))
        return 'insulation through, a strand across, water in a plug, or a load still plugged in';
      if (part === 'fuse') return 'blown, or another rating';
      if (value === null) return 'open: something unplugged or broken. 0 Ω: a short';
      return 'open: a pin not home, a wire not crimped, a contact not closed';
  }
}
