import type { InsulatedWireRow, InsulatedWireTable } from './insulated-type.js';
import { saeJ1128 } from './sae-j1128.js';

/**
 * Copper of the usual strands in circular mils: 7/30, 7/28, 16/30, 19/29, 19/27, 19/25, 19/23, 19/21. Strands as in
 * trade notes; each is somewhat above the least area of the standard, by which the resistance goes.
 */
const STRANDS: InsulatedWireTable['circularMils'] = [
  ['22', 700],
  ['20', 1111],
  ['18', 1600],
  ['16', 2426],
  ['14', 3831],
  ['12', 6088],
  ['10', 9704],
  ['8', 15433],
];

// Conductor from the strands, wall from memory; outer diameter and mass worked out from both.
const TXL: readonly InsulatedWireRow[] = [
  ['22', 0.03, 0.016, 0.062, 3.5, 'derived', 'derived'],
  ['20', 0.0378, 0.016, 0.07, 5, 'derived', 'derived'],
  ['18', 0.047, 0.016, 0.079, 6.8, 'derived', 'derived'],
  ['16', 0.0565, 0.016, 0.088, 9.6, 'derived', 'derived'],
  ['14', 0.071, 0.016, 0.103, 14.3, 'derived', 'derived'],
  ['12', 0.0895, 0.018, 0.126, 22.1, 'derived', 'derived'],
  ['10', 0.113, 0.02, 0.153, 34.4, 'derived', 'derived'],
];

const GXL: readonly InsulatedWireRow[] = [
  ['20', 0.0378, 0.023, 0.084, 6, 'derived', 'derived'],
  ['18', 0.047, 0.023, 0.093, 7.9, 'derived', 'derived'],
  ['16', 0.0565, 0.023, 0.102, 10.8, 'derived', 'derived'],
  ['14', 0.071, 0.023, 0.117, 15.7, 'derived', 'derived'],
  ['12', 0.0895, 0.026, 0.141, 24.2, 'derived', 'derived'],
  ['10', 0.113, 0.031, 0.175, 37.9, 'derived', 'derived'],
  ['8', 0.1425, 0.037, 0.217, 59.4, 'derived', 'derived'],
];

const SXL: readonly InsulatedWireRow[] = [
  ['20', 0.0378, 0.03, 0.098, 7.2, 'derived', 'derived'],
  ['18', 0.047, 0.03, 0.107, 9.2, 'derived', 'derived'],
  ['16', 0.0565, 0.032, 0.12, 12.7, 'derived', 'derived'],
  ['14', 0.071, 0.035, 0.141, 18.7, 'derived', 'derived'],
  ['12', 0.0895, 0.037, 0.163, 27.4, 'derived', 'derived'],
  ['10', 0.113, 0.041, 0.195, 41.4, 'derived', 'derived'],
  ['8', 0.1425, 0.043, 0.229, 61.9, 'derived', 'derived'],
];

/** SAE J1128 type TXL: thin wall, crosslinked polyethylene, 125 °C. */
export const saeTxl: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-txl',
  title: 'TXL, thin-wall crosslinked polyethylene',
  source: 'sae-j1128-dimensions',
  status: 'memory',
  place: 'SAE J1128 type TXL: walls from memory, diameters and masses derived at 1.40 g/cm³ of insulation',
  sizes: 'sae',
  insulation: 'XLPE',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 125,
  maxTempStatus: 'published',
  resistance: saeJ1128,
  rows: TXL,
  circularMils: STRANDS,
};

/** SAE J1128 type GXL: medium wall, crosslinked polyethylene, 125 °C. */
export const saeGxl: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-gxl',
  title: 'GXL, medium-wall crosslinked polyethylene',
  source: 'sae-j1128-dimensions',
  status: 'memory',
  place: 'SAE J1128 type GXL: walls from memory, diameters and masses derived at 1.40 g/cm³ of insulation',
  sizes: 'sae',
  insulation: 'XLPE',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 125,
  maxTempStatus: 'published',
  resistance: saeJ1128,
  rows: GXL,
  circularMils: STRANDS,
};

/** SAE J1128 type SXL: thick wall, crosslinked polyethylene, 125 °C. */
export const saeSxl: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-sxl',
  title: 'SXL, thick-wall crosslinked polyethylene',
  source: 'sae-j1128-dimensions',
  status: 'memory',
  place: 'SAE J1128 type SXL: walls from memory, diameters and masses derived at 1.40 g/cm³ of insulation',
  sizes: 'sae',
  insulation: 'XLPE',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 125,
  maxTempStatus: 'published',
  resistance: saeJ1128,
  rows: SXL,
  circularMils: STRANDS,
};

/** SAE J1128 type GPT: medium wall, PVC, 80 °C by the notes that were read. */
export const saeGpt: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-gpt',
  title: 'GPT, medium-wall PVC',
  source: 'sae-j1128-dimensions',
  status: 'memory',
  place:
    'SAE J1128 type GPT: walls from memory, diameters and masses derived at 1.40 g/cm³ of insulation; 80 °C read, 85 °C from memory in newer practice',
  sizes: 'sae',
  insulation: 'PVC',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 80,
  maxTempStatus: 'published',
  resistance: saeJ1128,
  rows: GXL,
  circularMils: STRANDS,
};

/** SAE J1128 type HDT: PVC with the wall of SXL. From memory. */
export const saeHdt: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-hdt',
  title: 'HDT, thick-wall PVC',
  source: 'sae-j1128-dimensions',
  status: 'memory',
  place:
    'SAE J1128 type HDT: walls from memory, diameters and masses derived at 1.40 g/cm³ of insulation; that it has the wall of SXL is from memory',
  sizes: 'sae',
  insulation: 'PVC',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 80,
  maxTempStatus: 'memory',
  resistance: saeJ1128,
  rows: SXL,
  circularMils: STRANDS,
};

/** The 125 °C cable that one data sheet calls GXL; its diameters fit the thick wall. Do not take them for GXL. */
export const gxlSheet: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'gxl-sheet',
  title: 'primary cable of one data sheet titled GXL',
  source: 'gxl-data-sheet',
  status: 'published',
  place: 'data sheet, −40 to 125 °C, 60 V; diameters 7 to 15 % above the GXL wall: maxima, or a thick wall',
  sizes: 'sae',
  insulation: 'XLPE',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 125,
  maxTempStatus: 'published',
  resistance: saeJ1128,
  rows: [
    ['20', null, null, 0.096, 7, 'published', 'published'],
    ['18', null, null, 0.102, 9, 'published', 'published'],
    ['16', null, null, 0.118, 13, 'published', 'published'],
    ['14', null, null, 0.137, 19, 'published', 'published'],
    ['12', null, null, 0.16, 26, 'published', 'published'],
    ['10', null, null, 0.191, 40, 'published', 'published'],
    ['8', null, null, 0.234, 64, 'published', 'published'],
  ],
  circularMils: STRANDS,
};

// Walls from memory with low confidence; diameters from the least area and a strand fill of 0.75.
const BATTERY: readonly InsulatedWireRow[] = [
  ['6', null, 0.06, 0.306, 108, 'derived', 'derived', 'low confidence'],
  ['4', null, 0.065, 0.353, 151, 'derived', 'derived', 'low confidence'],
  ['2', null, 0.065, 0.419, 237, 'derived', 'derived', 'low confidence'],
  ['1', null, 0.065, 0.452, 288, 'derived', 'derived', 'low confidence'],
  ['1/0', null, 0.065, 0.493, 359, 'derived', 'derived', 'low confidence'],
  ['2/0', null, 0.065, 0.538, 445, 'derived', 'derived', 'low confidence'],
  ['3/0', null, 0.078, 0.616, 570, 'derived', 'derived', 'low confidence'],
  ['4/0', null, 0.078, 0.679, 724, 'derived', 'derived', 'low confidence'],
];

/** SAE J1127 type SGT: PVC battery cable, 80 °C. From memory and derived. */
export const saeSgt: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-sgt',
  title: 'SGT, PVC battery cable',
  source: 'sae-j1127-dimensions',
  status: 'memory',
  place: 'SAE J1127: least areas from memory, walls from memory with low confidence, diameters and masses derived',
  sizes: 'sae',
  insulation: 'PVC',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 80,
  maxTempStatus: 'memory',
  resistance: saeJ1128,
  rows: BATTERY,
  circularMils: /* @__PURE__ */ (() => saeJ1128.rows)(),
};

/** SAE J1127 type SGX: crosslinked polyethylene battery cable, 125 °C. From memory and derived. */
export const saeSgx: InsulatedWireTable = {
  kind: 'insulated-wire',
  key: 'sae-sgx',
  title: 'SGX, crosslinked battery cable',
  source: 'sae-j1127-dimensions',
  status: 'memory',
  place: 'SAE J1127: least areas from memory, walls from memory with low confidence, diameters and masses derived',
  sizes: 'sae',
  insulation: 'XLPE',
  insulationDensityKgPerM3: 1400,
  lengthUnit: 'in',
  massUnit: 'lb/kft',
  outerIs: 'typical',
  maxTempC: 125,
  maxTempStatus: 'memory',
  resistance: saeJ1128,
  rows: BATTERY,
  circularMils: /* @__PURE__ */ (() => saeJ1128.rows)(),
};
