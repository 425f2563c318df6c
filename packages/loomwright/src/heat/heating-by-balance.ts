import { insulatedWire } from '../bundle/index.js';
import type { ResolvedSize } from '../conductor/index.js';
import { InputError } from '../error/index.js';
import { needAbove, needBetween, needInput, needObject } from '../error/guard.js';
import type { InsulatedWireTable } from '../table/index.js';
import { ampacity } from './ampacity.js';
import { conductorTemperature } from './conductor-temperature.js';
import type { Heated } from './heating.js';

export interface HeatingByBalanceInput {
  /** The type of wire: its diameters decide. */
  readonly wireTable: InsulatedWireTable;
  /** Temperature class of the insulation in °C, 40 to 300. */
  readonly insulationTempC: number;
  /** Temperature of the air around the wire in °C, −60 to 200. */
  readonly ambientTempC: number;
  /** Altitude in m, −500 to 20 000; 0 is sea level. */
  readonly altitudeM: number;
  /** Thermal conductivity of the insulation in W/(m·K), 0.01 to 10: PVC about 0.17, cross-linked polyethylene 0.29. */
  readonly insulationConductivityWPerMK: number;
  /** Share of the current of a single wire that it bears in its bundle, above 0 to 1: see `bundleFactor`. 1 is alone. */
  readonly bundleFactor: number;
  /** The size to judge, as the conductor tables give it. */
  readonly size: ResolvedSize;
}

/** Heating judged by the balance of heat of the wire itself, alone or as one of a bundle. */
export interface BalanceHeating extends Omit<HeatingByBalanceInput, 'size'> {
  readonly by: typeof heatingByBalance;
}

/**
 * What a size bears, and how hot a current makes it, by the balance of its own heat.
 *
 * Hand it to `sizeFeed` as `heating.by`. It takes the resistance of the size from the basis that sizes the feed, and
 * the diameters from the type of wire. In a bundle a current counts as that current over the bundle's factor.
 *
 * $$I_z = F\,I_\mathrm{single}(T_\mathrm{ins}), \qquad T(I) = T_\mathrm{single}(I / F)$$
 *
 * @param input type of wire, class, ambient, altitude, insulation, company, size
 * @returns current borne in A, and temperature in °C by current; a size that the type does not come in, or whose
 * conductor's diameter is not known, bears nothing
 * @throws InputError when a field is missing or out of range
 * @source heat-balance (as `conductorTemperature`); the wire table's own for the diameters
 * @example heatingByBalance({ wireTable: iso19642ThinWall, insulationTempC: 105, ambientTempC: 40, altitudeM: 0, insulationConductivityWPerMK: 0.17, bundleFactor: 1, size: nearestSizes({ areaMm2: 2.5, table: iso19642 }).atLeast }).ampacityA //=> 36.9674
 */
export function heatingByBalance(input: HeatingByBalanceInput): Heated {
  needInput('heatingByBalance', input);
  const { wireTable, insulationTempC, ambientTempC, altitudeM, insulationConductivityWPerMK, bundleFactor, size } =
    input;
  needObject('heatingByBalance', 'wireTable', wireTable, 'must be a wire table');
  needObject('heatingByBalance', 'size', size, 'must be a size', 'take one from nearestSizes');
  needAbove('heatingByBalance', 'bundleFactor', bundleFactor);
  needBetween('heatingByBalance', 'bundleFactor', bundleFactor, 0, 1);
  const { status } = wireTable;
  const nothing = (because: string): Heated => ({
    ampacityA: 0,
    tempC: () => null,
    because,
    source: wireTable.source,
    status,
  });
  const [kind, name] = nameOf(size);
  if (kind !== wireTable.sizes) return nothing(`${wireTable.key} does not name its sizes as ${size.label}`);
  let wire;
  try {
    wire = insulatedWire({ wireTable, size: name });
  } catch (error) {
    if (!(error instanceof InputError) || error.rule !== 'inTable') throw error;
    return nothing(`${wireTable.key} does not come in ${size.label}`);
  }
  const { conductorDiameterMm, outerDiameterMm } = wire;
  if (conductorDiameterMm === null) return nothing(`the conductor's diameter of ${size.label} is not known`);
  const { resistanceOhmPerM, ratedTempC, metal } = size;
  const inAir = {
    resistanceOhmPerM,
    ratedTempC,
    conductorDiameterMm,
    outerDiameterMm,
    insulationConductivityWPerMK,
    ambientTempC,
    altitudeM,
    ...(metal === 'copper' ? {} : { metal }),
  };
  const { currentA } = ampacity({ ...inAir, maxConductorTempC: insulationTempC });
  if (currentA === 0) return nothing('the air alone is as hot as the insulation bears');
  return {
    ampacityA: currentA * bundleFactor,
    tempC: (current) => conductorTemperature({ ...inAir, currentA: current / bundleFactor }).conductorTempC,
    because: null,
    source: 'heat-balance',
    status: wire.sourceStatus === 'published' ? 'derived' : wire.sourceStatus,
  };
}

/** How a size is named, and its name in tables. */
function nameOf({ label }: ResolvedSize): readonly [kind: 'mm2' | 'awg' | 'sae', name: string] {
  if (label.startsWith('AWG ')) return ['awg', label.slice(4)];
  if (label.startsWith('SAE ')) return ['sae', label.slice(4)];
  return ['mm2', label.replace(/ mm²$/, '')];
}
