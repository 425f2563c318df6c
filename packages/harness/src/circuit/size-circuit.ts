import {
  bladeFuse,
  chooseFuse,
  type FeedPart,
  type FuseToChoose,
  type Heating,
  heatingByBalance,
  heatingByTable,
  type JudgedSize,
  type NotPossible,
  type Protection,
  relayPickup,
  type RelayPickupResult,
  sizeFeed,
  type SizeFeedInput,
  type SizeFeedResult,
} from 'loomwright';
import { ampacityTableOf, basisOf, budgetOf, coverOf, wireLimitsOf } from '../schema/tables.js';
import { circuitLoadOf } from '../schema/load-of.js';
import type { Circuit } from './schema.js';

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
  return {
    supplyV: circuit.supply,
    outParts: circuit.out.map((part) => partOf(part, 'out')),
    returnParts: circuit.return.map((part) => partOf(part, 'back') as FeedPart),
    load: circuitLoadOf(circuit.load),
    resistanceBasis: basisOf(rules.wire),
    ...(rules.stock === undefined ? {} : { stock: rules.stock.map((s) => s.areaMm2 ?? s.awg ?? s.saeGauge ?? '') }),
    limits: {
      ...(rules.budget === undefined ? {} : { budget: budgetOf(rules.budget) }),
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
    return { by: heatingByTable, table: ampacityTableOf(rules.heating), insulationTempC, ambientTempC };
  }
  // The schema has seen to it that the four are there.
  return {
    by: heatingByBalance,
    wireTable: coverOf(rules.cover ?? 'iso-19642-thin-wall'),
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

function protectionOf({ protection, rules }: Circuit): Protection {
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
    ...(rules.bears === undefined ? {} : { wireLimits: wireLimitsOf(rules.bears) }),
  };
}
