import {
  type Network,
  settleNetwork,
  type SneakPathsResult,
  type SneakState,
  sneakPaths,
  solveNetwork,
} from 'loomwright';

// Sandpiper's isolator in seven wirings, all figures invented. The chassis is the reference.

/** What a wiring does to the network that all share. */
interface Wiring {
  readonly name: string;
  /** Where the alternator's heavy wire ends, and what opens with the isolator. */
  readonly alternatorAt: 'bus' | 'plus';
  readonly opens: readonly string[];
  readonly diode?: true;
  readonly serviceBattery?: true;
  readonly winchAtBattery?: true;
}

const WIRINGS: readonly Wiring[] = [
  { name: 'main pole alone', alternatorAt: 'bus', opens: ['main pole'] },
  { name: 'main pole and one in the ignition', alternatorAt: 'bus', opens: ['main pole', 'second pole'] },
  { name: 'alternator straight at the battery', alternatorAt: 'plus', opens: ['main pole'] },
  { name: 'the same, and a diode at the lamp', alternatorAt: 'plus', opens: ['main pole'], diode: true },
  { name: 'in the negative, one pole', alternatorAt: 'bus', opens: ['negative pole'] },
  {
    name: 'both poles; a second battery by relay',
    alternatorAt: 'bus',
    opens: ['main pole', 'second pole'],
    serviceBattery: true,
  },
  {
    name: 'both poles; a winch at the battery',
    alternatorAt: 'bus',
    opens: ['main pole', 'second pole'],
    winchAtBattery: true,
  },
];

const resistance = (resistanceOhm: number): { readonly kind: 'resistance'; readonly resistanceOhm: number } => ({
  kind: 'resistance',
  resistanceOhm,
});

function networkOf({ alternatorAt, diode, serviceBattery, winchAtBattery }: Wiring): Network {
  return {
    reference: 'chassis',
    settle: settleNetwork,
    branches: [],
    sources: [
      { name: 'battery', from: 'minus', to: 'plus', voltageV: 12.6, resistanceOhm: 0.008 },
      { name: 'alternator', from: 'chassis', to: alternatorAt, voltageV: 14.2, resistanceOhm: 0.02 },
      { name: 'exciter terminal', from: 'chassis', to: 'exciter', voltageV: 14, resistanceOhm: 0.5 },
      ...(serviceBattery === true
        ? [{ name: 'second battery', from: 'chassis', to: 'bus', voltageV: 12.4, resistanceOhm: 0.02 }]
        : []),
    ],
    switches: [
      { name: 'main pole', from: 'plus', to: 'bus', closed: true, resistanceOhm: 0.0003 },
      { name: 'negative pole', from: 'minus', to: 'chassis', closed: true, resistanceOhm: 0.0003 },
      { name: 'second pole', from: 'bus', to: 'ignition', closed: true, resistanceOhm: 0.01 },
    ],
    diodes:
      diode === true ? [{ name: 'diode', from: 'lamp end', to: 'exciter', forwardV: 0.7, resistanceOhm: 0.05 }] : [],
    loads: [
      { name: 'fuse box', from: 'bus', to: 'chassis', load: resistance(8) },
      { name: 'coil and pump', from: 'ignition', to: 'chassis', load: resistance(4) },
      {
        name: 'charge lamp',
        from: 'ignition',
        to: diode === true ? 'lamp end' : 'exciter',
        load: resistance(48),
      },
      ...(winchAtBattery === true ? [{ name: 'winch', from: 'plus', to: 'chassis', load: resistance(400) }] : []),
    ],
  };
}

/** One row of the table: volts with the engine turning and with it stopped, and by which way the worst is fed. */
export interface WiringRow {
  readonly name: string;
  readonly turningBusV: number;
  readonly turningIgnitionV: number;
  readonly stoppedBusV: number;
  readonly stoppedWinchV: number | null;
  readonly way: string;
}

const volts = ({ cases }: SneakPathsResult, state: string, name: string): number =>
  cases.find((each) => each.state === state)?.nodes.find(({ node }) => node === name)?.voltageV ?? 0;

/** All wirings with the isolator open. */
export function wiringRows(): readonly WiringRow[] {
  return WIRINGS.map((wiring) => {
    const network = networkOf(wiring);
    const state = (name: string, away: readonly string[]): SneakState => ({
      name,
      open: wiring.opens,
      away,
      relaysBefore: 'released',
      deadNodes: ['bus', 'ignition', ...(wiring.winchAtBattery === true ? ['plus'] : [])],
    });
    const found = sneakPaths({
      network,
      states: [state('turning', []), state('stopped', ['alternator', 'exciter terminal'])],
      faults: [],
      relays: [],
      aliveV: 0.5,
      by: solveNetwork,
    });
    const stopped = found.unwanted.filter((each) => each.state === 'stopped');
    const worst = stopped[0] ?? found.unwanted[0];
    return {
      name: wiring.name,
      turningBusV: volts(found, 'turning', 'bus'),
      turningIgnitionV: volts(found, 'turning', 'ignition'),
      stoppedBusV: volts(found, 'stopped', 'bus'),
      stoppedWinchV: wiring.winchAtBattery === true ? volts(found, 'stopped', 'plus') : null,
      way: worst === undefined ? 'none' : [worst.fedFrom ?? '', ...worst.path].join(' → '),
    };
  });
}
