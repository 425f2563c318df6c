import { ac4313CircularMils } from './ac-43-13-1b.js';
import type { InsulatedWireRow, InsulatedWireTable } from './insulated-type.js';
import type { ConductorTable } from './type.js';

// No. 26 is 19 strands of No. 38, 4.0 mil; the others are as AC 43.13-1B prints them.
const CIRCULAR_MILS: readonly (readonly [size: string, circularMils: number])[] = /* @__PURE__ */ (() => [
  ['26', 304] as const,
  ...ac4313CircularMils,
])();

/** AS22759 tin-plated copper, largest resistance at 20 °C. */
export const as22759Tin: ConductorTable = {
  kind: 'table',
  key: 'as22759-tin',
  source: 'sae-as22759',
  status: 'memory',
  place:
    'SAE AS22759, tin-plated copper, ohm per 1000 ft at 20 °C, from memory; 22 to 10 AWG printed alike in AC 43.13-1B table 11-9',
  sizes: 'awg',
  metal: 'tinned-copper',
  ratedTempC: 20,
  prints: 'ohm/kft',
  circularMils: CIRCULAR_MILS,
  rows: [
    ['26', 41.3],
    ['24', 26.2],
    ['22', 16.2],
    ['20', 9.88],
    ['18', 6.23],
    ['16', 4.81],
    ['14', 3.06],
    ['12', 2.02],
    ['10', 1.26],
    ['8', 0.701],
    ['6', 0.445],
    ['4', 0.28],
    ['2', 0.183],
    ['1', 0.149],
    ['1/0', 0.116],
  ],
};

/** AS22759 silver-plated copper, largest resistance at 20 °C. From memory. */
export const as22759Silver: ConductorTable = {
  kind: 'table',
  key: 'as22759-silver',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759, silver-plated copper, ohm per 1000 ft at 20 °C, from memory',
  sizes: 'awg',
  metal: 'copper',
  ratedTempC: 20,
  prints: 'ohm/kft',
  circularMils: CIRCULAR_MILS,
  rows: [
    ['26', 38.4],
    ['24', 24.3],
    ['22', 15.1],
    ['20', 9.19],
    ['18', 5.79],
    ['16', 4.52],
    ['14', 2.88],
    ['12', 1.9],
    ['10', 1.19],
    ['8', 0.658],
    ['6', 0.418],
    ['4', 0.264],
    ['2', 0.17],
    ['1', 0.139],
    ['1/0', 0.108],
  ],
};

/** AS22759 silver-plated high-strength copper alloy, largest resistance at 20 °C. From memory. */
export const as22759Alloy: ConductorTable = {
  kind: 'table',
  key: 'as22759-alloy',
  source: 'sae-as22759',
  status: 'memory',
  place:
    'SAE AS22759, silver-plated high-strength alloy, ohm per 1000 ft at 20 °C, from memory; its change with temperature is taken as that of copper',
  sizes: 'awg',
  metal: 'copper',
  ratedTempC: 20,
  prints: 'ohm/kft',
  circularMils: CIRCULAR_MILS,
  rows: [
    ['26', 44.8],
    ['24', 28.4],
    ['22', 17.5],
    ['20', 10.7],
  ],
};

// Outer diameter and greatest mass from memory, conductor diameter as printed in a stranded wire chart.
const MEDIUM: readonly InsulatedWireRow[] = [
  ['24', 0.024, null, 0.045, 2.4, 'memory', 'memory'],
  ['22', 0.031, null, 0.05, 3.4, 'memory', 'memory'],
  ['20', 0.037, null, 0.058, 5.1, 'memory', 'memory'],
  ['18', 0.049, null, 0.068, 7.4, 'memory', 'memory'],
  ['16', 0.058, null, 0.077, 9.4, 'memory', 'memory'],
  ['14', null, null, 0.091, 13.9, 'memory', 'memory'],
  ['12', null, null, 0.111, 21.1, 'memory', 'memory'],
  ['10', null, null, 0.137, 32.7, 'memory', 'memory'],
  ['8', null, null, 0.2, 63, 'memory', 'memory', 'low confidence'],
  ['6', null, null, 0.248, 98, 'memory', 'memory', 'low confidence'],
  ['4', null, null, 0.31, 155, 'memory', 'memory', 'low confidence'],
  ['2', null, null, 0.39, 240, 'memory', 'memory', 'low confidence'],
  ['1', null, null, 0.44, 295, 'memory', 'memory', 'low confidence'],
  ['1/0', null, null, 0.49, 375, 'memory', 'memory', 'low confidence'],
];

const LIGHT: readonly InsulatedWireRow[] = [
  ['26', 0.02, null, 0.032, 1.4, 'memory', 'memory'],
  ['24', 0.024, null, 0.037, 2, 'memory', 'memory'],
  ['22', 0.031, null, 0.043, 2.9, 'memory', 'memory'],
  ['20', 0.037, null, 0.05, 4.4, 'memory', 'memory'],
  ['18', 0.049, null, 0.06, 6.6, 'memory', 'memory'],
  ['16', 0.058, null, 0.068, 8.4, 'memory', 'memory'],
  ['14', null, null, 0.085, 12.9, 'memory', 'memory'],
  ['12', null, null, 0.103, 19.8, 'memory', 'memory'],
];

const LIGHT_SMALL: readonly InsulatedWireRow[] = [
  ['26', 0.02, null, 0.032, 1.4, 'memory', 'memory'],
  ['24', 0.024, null, 0.037, 2, 'memory', 'memory'],
  ['22', 0.031, null, 0.043, 2.9, 'memory', 'memory'],
  ['20', 0.037, null, 0.05, 4.4, 'memory', 'memory'],
];

const DUAL: readonly InsulatedWireRow[] = [
  ['26', 0.02, null, 0.04, 1.7, 'memory', 'memory'],
  ['24', 0.024, null, 0.045, 2.4, 'memory', 'memory'],
  ['22', 0.031, null, 0.05, 3.4, 'memory', 'memory'],
  ['20', 0.037, null, 0.058, 5, 'memory', 'memory'],
  ['18', 0.049, null, 0.07, 7.6, 'memory', 'memory'],
  ['16', 0.058, null, 0.077, 9.6, 'memory', 'memory'],
  ['14', null, null, 0.094, 14.3, 'memory', 'memory'],
  ['12', null, null, 0.112, 21.6, 'memory', 'memory'],
  ['10', null, null, 0.139, 33.6, 'memory', 'memory'],
  ['8', null, null, 0.195, 62, 'memory', 'memory', 'low confidence'],
  ['6', null, null, 0.24, 97, 'memory', 'memory', 'low confidence'],
  ['4', null, null, 0.3, 152, 'memory', 'memory', 'low confidence'],
  ['2', null, null, 0.37, 235, 'memory', 'memory', 'low confidence'],
  ['1', null, null, 0.415, 290, 'memory', 'memory', 'low confidence'],
  ['1/0', null, null, 0.46, 370, 'memory', 'memory', 'low confidence'],
];

/** SAE AS22759/16: extruded ETFE, medium weight, tinned copper, 150 °C. */
export const as22759Slash16: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'as22759-16',
  title: 'AS22759/16, extruded ETFE, medium weight, tinned copper',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759/16, 600 V; diameters ±0.002 in to No. 14; mass is the greatest allowed',
  sizes: 'awg',
  insulation: 'ETFE',
  insulationDensityKgPerM3: 1700,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 150,
  maxTempStatus: 'published',
  resistance: as22759Tin,
  rows: MEDIUM,
  circularMils: CIRCULAR_MILS,
};

/** SAE AS22759/32: crosslinked ETFE, light, tinned copper, 150 °C. */
export const as22759Slash32: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'as22759-32',
  title: 'AS22759/32, crosslinked ETFE, light, tinned copper',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759/32, 600 V; diameters ±0.002 in to No. 14; mass is the greatest allowed',
  sizes: 'awg',
  insulation: 'ETFE',
  insulationDensityKgPerM3: 1700,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 150,
  maxTempStatus: 'memory',
  resistance: as22759Tin,
  rows: LIGHT,
  circularMils: CIRCULAR_MILS,
};

/** SAE AS22759/33: crosslinked ETFE, light, silvered high-strength alloy, 200 °C. */
export const as22759Slash33: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'as22759-33',
  title: 'AS22759/33, crosslinked ETFE, light, silvered high-strength alloy',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759/33, 600 V; diameters ±0.002 in to No. 14; mass is the greatest allowed',
  sizes: 'awg',
  insulation: 'ETFE',
  insulationDensityKgPerM3: 1700,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 200,
  maxTempStatus: 'memory',
  resistance: as22759Alloy,
  rows: LIGHT_SMALL,
  circularMils: CIRCULAR_MILS,
};

/** SAE AS22759/34: crosslinked ETFE, two walls, tinned copper, 150 °C. */
export const as22759Slash34: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'as22759-34',
  title: 'AS22759/34, crosslinked ETFE, two walls, tinned copper',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759/34, 600 V; diameters ±0.002 in to No. 14; mass is the greatest allowed',
  sizes: 'awg',
  insulation: 'ETFE',
  insulationDensityKgPerM3: 1700,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 150,
  maxTempStatus: 'memory',
  resistance: as22759Tin,
  rows: DUAL,
  circularMils: CIRCULAR_MILS,
};

/** SAE AS22759/43: crosslinked ETFE, two walls, silvered copper, 200 °C. */
export const as22759Slash43: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'as22759-43',
  title: 'AS22759/43, crosslinked ETFE, two walls, silvered copper',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759/43, 600 V; diameters ±0.002 in to No. 14; mass is the greatest allowed',
  sizes: 'awg',
  insulation: 'ETFE',
  insulationDensityKgPerM3: 1700,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 200,
  maxTempStatus: 'memory',
  resistance: as22759Silver,
  rows: DUAL,
  circularMils: CIRCULAR_MILS,
};

/** SAE AS22759/44: crosslinked ETFE, light, silvered copper, 200 °C. */
export const as22759Slash44: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'as22759-44',
  title: 'AS22759/44, crosslinked ETFE, light, silvered copper',
  source: 'sae-as22759',
  status: 'memory',
  place: 'SAE AS22759/44, 600 V; diameters ±0.002 in to No. 14; mass is the greatest allowed',
  sizes: 'awg',
  insulation: 'ETFE',
  insulationDensityKgPerM3: 1700,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 200,
  maxTempStatus: 'memory',
  resistance: as22759Silver,
  rows: LIGHT,
  circularMils: CIRCULAR_MILS,
};
