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
  bladeTerminals,
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
  type Terminal,
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

/** Widths of blades, as the trade names their families. */
export const bladeNames = ['0.5 mm', '0.64 mm', '1.2 mm', '1.5 mm', '2.8 mm', '4.8 mm', '6.3 mm', '9.5 mm'] as const;

/** What a file says of the terminals of a box, a controller or an item. */
type Takes<Size> =
  | { readonly blade: (typeof bladeNames)[number] }
  | {
      readonly least: Size;
      readonly most: Size;
      readonly insulation?: { readonly least: number; readonly most: number } | undefined;
      readonly current?: number | undefined;
      readonly hot?: { readonly at: number; readonly current: number } | undefined;
    };

/** A terminal as the core describes it. Where the file gives no current its rating stands for none. */
export function terminalOf<Size>(takes: Takes<Size>, areaOf: (size: Size) => number): Terminal {
  if ('blade' in takes) {
    const row = bladeTerminals.rows.find(({ name }) => name === takes.blade);
    if (row === undefined) throw new Error(takes.blade);
    return row;
  }
  const { least, most, insulation, current, hot } = takes;
  const ratedCurrentA = current ?? Number.MAX_VALUE;
  return {
    name: 'terminal',
    areaLeastMm2: areaOf(least),
    areaMostMm2: areaOf(most),
    ...(insulation === undefined ? {} : { insulationLeastMm: insulation.least, insulationMostMm: insulation.most }),
    ratedCurrentA,
    ...(hot === undefined
      ? {}
      : {
          derating: {
            kind: 'points',
            points: [
              [25, ratedCurrentA],
              [hot.at, hot.current],
            ],
          },
        }),
    status: 'derived',
  };
}
