import {
  ac4313Ampacity,
  ac4313Switch12V,
  aircraftContinuousBudget,
  aircraftIntermittentBudget,
  type AmpacityTable,
  as22759Slash16,
  as22759Slash32,
  awgStranded,
  bladeFuse,
  boltInFuseSf30,
  boltInFuseSf51,
  chargingBudget,
  type ContactRatioTable,
  criticalFeedBudget,
  type DropBudget,
  type FuseFamily,
  generalFeedBudget,
  geometric,
  iec60228Class2,
  iec60228Class5,
  iec60228Class5Tinned,
  type InsulatedWireTable,
  iso19642,
  iso19642ThickWall,
  iso19642ThinWall,
  iso19642UltraThinWall,
  lampBudget,
  largeBladeFuse,
  miniFuse,
  relayMakerRating,
  type ResistanceBasis,
  saeGxl,
  saeJ1128,
  saeSxl,
  saeTxl,
  starterBudget,
  switchMakerRating,
  us33Cfr183Ampacity,
} from 'loomwright';

// The core's tables by the words of a file. The schemas allow these words only.

/** The table of a conductor's resistance. */
export function basisOf(key: string): ResistanceBasis {
  return find(key, [
    geometric,
    iso19642,
    iec60228Class2,
    iec60228Class5,
    iec60228Class5Tinned,
    saeJ1128,
    awgStranded,
  ] satisfies ResistanceBasis[]);
}

/** The budget of a class of circuits. */
export function budgetOf(key: string): DropBudget {
  return find(key, [
    criticalFeedBudget,
    generalFeedBudget,
    aircraftContinuousBudget,
    aircraftIntermittentBudget,
    starterBudget,
    chargingBudget,
    lampBudget,
  ]);
}

/** The type of wire. */
export function coverOf(key: string): InsulatedWireTable {
  return find(key, [
    iso19642ThinWall,
    iso19642UltraThinWall,
    iso19642ThickWall,
    saeTxl,
    saeGxl,
    saeSxl,
    as22759Slash16,
    as22759Slash32,
  ]);
}

/** The table of currents. */
export function ampacityTableOf(key: string): AmpacityTable {
  return find(key, [us33Cfr183Ampacity, ac4313Ampacity]);
}

/** The family of fuses. */
export function familyOf(key: string): FuseFamily {
  return find(key, [bladeFuse, miniFuse, largeBladeFuse, boltInFuseSf30, boltInFuseSf51]);
}

/** The ratios of contacts to what they switch. */
export function ratioOf(key: string): ContactRatioTable {
  return find(key, [ac4313Switch12V, switchMakerRating, relayMakerRating]);
}

function find<T extends { readonly key: string }>(key: string, all: readonly T[]): T {
  const found = all.find((one) => one.key === key);
  if (found === undefined) throw new Error(`no table is called ${key}`);
  return found;
}

/** What the insulation bears for a while, as the core names it. */
export function wireLimitsOf(bears: { readonly minutes: number; readonly seconds: number }): {
  readonly overloadTempC: number;
  readonly shortTempC: number;
} {
  return { overloadTempC: bears.minutes, shortTempC: bears.seconds };
}
