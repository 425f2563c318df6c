import {
  type Heating,
  heatingByBalance,
  type HeatingByBalanceInput,
  heatingByTable,
  type HeatingByTableInput,
  type InsulatedWireTable,
} from 'loomwright';
import { ampacityTableOf } from '../schema/tables.js';
import type { LoomRules } from './schema.js';

type Heated = ReturnType<typeof heatingByBalance>;

/**
 * The heating rule of a loom, for a place and a bundle. What a size bears alone is worked out once for each air
 * temperature; the company of its bundle only scales it: I = F·I₁, T(I) = T₁(I / F), as `heatingByBalance` has it.
 */
export function heatingsOf(
  rules: LoomRules,
  wireTable: InsulatedWireTable,
): (ambientTempC: number, factor: number) => Heating {
  const { insulation: insulationTempC } = rules;
  const known = new Map<number, Map<string, Heated>>();
  return (ambientTempC, factor) => {
    const alone = known.get(ambientTempC) ?? new Map<string, Heated>();
    known.set(ambientTempC, alone);
    const company = (of: Heated): Heated =>
      factor === 1 ? of : { ...of, ampacityA: of.ampacityA * factor, tempC: (currentA) => of.tempC(currentA / factor) };
    if (rules.heating === 'heat-balance') {
      return {
        by: (input: HeatingByBalanceInput) => {
          let heated = alone.get(input.size.label);
          if (heated === undefined)
            alone.set(input.size.label, (heated = heatingByBalance({ ...input, bundleFactor: 1 })));
          return company(heated);
        },
        wireTable,
        insulationTempC,
        ambientTempC,
        altitudeM: rules.altitude,
        insulationConductivityWPerMK: rules.coverConductivity,
        bundleFactor: factor,
      };
    }
    return {
      by: (input: HeatingByTableInput) => {
        let heated = alone.get(input.size.label);
        if (heated === undefined) alone.set(input.size.label, (heated = heatingByTable(input)));
        return company(heated);
      },
      table: ampacityTableOf(rules.heating),
      insulationTempC,
      ambientTempC,
    };
  };
}
