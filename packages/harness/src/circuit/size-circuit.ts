import {
  ac4313Ampacity,
  as22759Slash16,
  as22759Slash32,
  type Heating,
  heatingByBalance,
  iso19642ThickWall,
  iso19642ThinWall,
  iso19642UltraThinWall,
  saeGxl,
  saeSxl,
  saeTxl,
  aircraftContinuousBudget,
  aircraftIntermittentBudget,
  awgStranded,
  bladeFuse,
  chargingBudget,
  chooseFuse,
  criticalFeedBudget,
  type FeedPart,
  type FuseToChoose,
  generalFeedBudget,
  geometric,
  heatingByTable,
  iec60228Class2,
  iec60228Class5,
  iec60228Class5Tinned,
  iso19642,
  type JudgedSize,
  lampBudget,
  type Load,
  type NotPossible,
  type Protection,
  relayPickup,
  type RelayPickupResult,
  saeJ1128,
  sizeFeed,
  type SizeFeedInput,
  type SizeFeedResult,
  starterBudget,
  us33Cfr183Ampacity,
} from 'loomwright';
import type { Circuit } from './schema.js';

const bases = [geometric, iso19642, iec60228Class2, iec60228Class5, iec60228Class5Tinned, saeJ1128, awgStranded];
const budgets = [
  criticalFeedBudget,
  generalFeedBudget,
  aircraftContinuousBudget,
  aircraftIntermittentBudget,
  starterBudget,
  chargingBudget,
  lampBudget,
];
const covers = [
  iso19642ThinWall,
  iso19642UltraThinWall,
  iso19642ThickWall,
  saeTxl,
  saeGxl,
  saeSxl,
  as22759Slash16,
  as22759Slash32,
];
const heatings = [us33Cfr183Ampacity, ac4313Ampacity];

/** A circuit with its answer. */
export interface SizedCircuit {
  readonly circuit: Circuit;
  /** What `sizeFeed` was asked. */
  readonly input: SizeFeedInput;
  readonly feed: SizeFeedResult | NotPossible<JudgedSize>;
  /** The relay of the file, or null where it names none. */
  readonly relay: RelayPickupResult | null;
}

/** Sizes the wire and the fuse of a circuit file, and judges its relay. */
export function sizeCircuit(circuit: Circuit): SizedCircuit {
  const input = inputOf(circuit);
  const feed = sizeFeed(input);
  const { relay } = circuit;
  return {
    circuit,
    input,
    feed,
    relay:
      relay === undefined
        ? null
        : relayPickup({
            supplyV: relay.supply,
            driverDropV: relay.driverDrop,
            wireResistanceOhm: relay.wireResistance,
            coilResistanceOhm: relay.coil,
            ratedPickUpV: relay.pickUp,
            ratedDropOutV: relay.dropOut,
            ratedTempC: relay.ratedAt,
            coilTempC: relay.coilTemperature,
          }),
  };
}

function inputOf(circuit: Circuit): SizeFeedInput {
  const { rules } = circuit;
  const budget = budgets.find(({ key }) => key === rules.budget);
  return {
    supplyV: circuit.supply,
    outParts: circuit.out.map((part) => partOf(part, 'out')),
    returnParts: circuit.return.map((part) => partOf(part, 'back') as FeedPart),
    load: loadOf(circuit),
    resistanceBasis: bases.find(({ key }) => key === rules.wire) ?? geometric,
    ...(rules.stock === undefined ? {} : { stock: rules.stock.map((s) => s.areaMm2 ?? s.awg ?? s.saeGauge ?? '') }),
    limits: {
      ...(budget === undefined ? {} : { budget }),
      ...(rules.drop === undefined ? {} : { dropV: rules.drop }),
      ...(rules.wireDrop === undefined ? {} : { wireDropV: rules.wireDrop }),
      ...(rules.loadVoltage === undefined ? {} : { loadV: rules.loadVoltage }),
    },
    judgedAtV: circuit.judgedAt,
    heating: heatingOf(circuit),
    ...(rules.conductorTemperature === undefined ? {} : { conductorTempC: rules.conductorTemperature }),
    leastAreaMm2: rules.leastArea,
    protection: protectionOf(circuit),
  };
}

function heatingOf({ rules }: Circuit): Heating {
  const { insulation: insulationTempC, ambient: ambientTempC } = rules;
  if (rules.heating !== 'heat-balance') {
    const table = heatings.find(({ key }) => key === rules.heating) ?? us33Cfr183Ampacity;
    return { by: heatingByTable, table, insulationTempC, ambientTempC };
  }
  // The schema has seen to it that the four are there.
  return {
    by: heatingByBalance,
    wireTable: covers.find(({ key }) => key === rules.cover) ?? iso19642ThinWall,
    insulationTempC,
    ambientTempC,
    altitudeM: rules.altitude ?? NaN,
    insulationConductivityWPerMK: rules.coverConductivity ?? NaN,
    bundleFactor: rules.bundleShare ?? NaN,
  };
}

function partOf(part: Circuit['out'][number], way: 'out' | 'back'): FeedPart | FuseToChoose {
  const count = part.count ?? 1;
  const many = count === 1 ? '' : ` × ${count}`;
  if (part.wire !== undefined) return { name: `${part.name ?? `wire ${way}`}${many}`, lengthM: part.wire * count };
  const kinds = ['fuse', 'relay', 'switch', 'terminal', 'connector', 'body', 'other'] as const;
  const kind = kinds.find((k) => part[k] !== undefined) ?? 'other';
  const given = part[kind];
  const name = `${part.name ?? kind}${many}`;
  return given === 'chosen' ? { name, fuse: 'chosen' } : { name, kind, resistanceOhm: Number(given) * count };
}

function loadOf({ load }: Circuit): Load {
  switch (load.kind) {
    case 'constant current':
      return { kind: 'constant-current', currentA: load.current };
    case 'resistance':
      return { kind: 'resistance', resistanceOhm: load.resistance };
    case 'constant power':
      return { kind: 'constant-power', powerW: load.power };
    case 'motor':
      return {
        kind: 'motor',
        windingResistanceOhm: load.windingResistance,
        speedConstantRpmPerV: load.speedConstant,
        ratedCurrentA: load.ratedCurrent,
        ratedV: load.ratedVoltage,
        torque: load.torque === 'constant' ? 'constant' : 'speed-squared',
      };
  }
}

function protectionOf({ protection }: Circuit): Protection {
  if ('none' in protection) return { kind: 'none', because: protection.none };
  if ('upstream' in protection) return { kind: 'upstream', name: protection.upstream, mayCarryA: protection.mayCarry };
  return {
    kind: 'fuse',
    by: chooseFuse,
    family: bladeFuse,
    continuousFraction: protection.continuousShare,
    overloadRule: protection.overload,
    fuseTempC: protection.fuseTemperature,
    shortSupplyV: protection.shortVoltage,
    sourceResistanceOhm: protection.sourceResistance,
    clearWithinS: protection.clearWithin,
  };
}
