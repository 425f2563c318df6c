import { awgToAreaMm2, wireResistance } from '../conductor/index.js';
import { InputError } from '../error/index.js';
import { needInput, needText } from '../error/guard.js';
import type { SourceKey, SourceStatus } from '../source/index.js';
import type { InsulatedWireRow, InsulatedWireTable } from '../table/index.js';
import { circularMilsToMm2, KG_PER_POUND, M_PER_FOOT, MM_PER_INCH } from '../unit/index.js';
import { insulatedWireMass } from './insulated-wire-mass.js';

export interface InsulatedWireInput {
  /** The type of wire. */
  readonly wireTable: InsulatedWireTable;
  /** Size as its table names it: '2.5' (mm²), '18' or '4/0' (gauge). */
  readonly size: string;
  /** Letter of its temperature class, for types that come in several. */
  readonly temperatureClass?: string;
}

export interface InsulatedWireResult {
  /** Size and type in the words of the trade. */
  readonly label: string;
  /** Copper area in mm². */
  readonly areaMm2: number;
  /** Diameter of the conductor in mm; null where neither it nor a wall is printed. */
  readonly conductorDiameterMm: number | null;
  /** Wall of the insulation in mm; null where it is not printed. */
  readonly wallMm: number | null;
  /** Diameter over the insulation in mm. */
  readonly outerDiameterMm: number;
  /** Smallest diameter over the insulation in mm, where one is printed; else null. */
  readonly leastOuterMm: number | null;
  /** Whether `outerDiameterMm` is the largest allowed or what is usually found. */
  readonly outerIs: 'maximum' | 'typical';
  /** Mass in kg/m; null where neither it nor the dimensions are known. */
  readonly massKgPerM: number | null;
  /** Whether the mass is printed in the table or reckoned from dimensions. */
  readonly massFrom: 'table' | 'dimensions' | null;
  /** Temperature class in °C; null for a type of several classes where no letter was given. */
  readonly maxTempC: number | null;
  /** Largest resistance at 20 °C in Ω/m; null where the size has none in our tables. */
  readonly resistanceOhmPerM: number | null;
  readonly source: SourceKey;
  /** Status of the outer diameter. */
  readonly sourceStatus: SourceStatus;
  readonly massStatus: SourceStatus | null;
  readonly maxTempStatus: SourceStatus;
  readonly resistanceStatus: SourceStatus | null;
  /** What to know of this row, or null. */
  readonly note: string | null;
}

/**
 * One size of an insulated wire, in mm, kg/m and Ω/m.
 *
 * Use it to get diameters for a bundle, a seal or a heat balance from the type and size that a wire is bought by. Each
 * figure says how far it can be trusted; what is not printed is null, not guessed.
 *
 * @param input type, size, class
 * @returns area, diameters, wall, mass, class, largest resistance, each with its status
 * @throws InputError when a field is missing, or the size or the letter is not in the table
 * @source the table's own
 * @example insulatedWire({ wireTable: iso19642ThinWall, size: '2.5', temperatureClass: 'B' }).outerDiameterMm //=> 3
 */
export function insulatedWire(input: InsulatedWireInput): InsulatedWireResult {
  needInput('insulatedWire', input);
  const { wireTable, size, temperatureClass } = input;
  if (typeof wireTable !== 'object' || wireTable === null || wireTable.kind !== 'insulated-wire') {
    throw new InputError(
      'insulatedWire',
      'wireTable',
      wireTable === undefined || wireTable === null ? 'missing' : 'object',
      wireTable,
      'must be a table of insulated wires',
      'import one, such as iso19642ThinWall or saeTxl',
    );
  }
  needText('insulatedWire', 'size', size);
  const row = wireTable.rows.find(([name]) => name === size);
  if (row === undefined) {
    const names = wireTable.rows.map(([name]) => name).join(' ');
    throw new InputError('insulatedWire', 'size', 'inTable', size, `must be a size of ${wireTable.key} (${names})`);
  }
  const [, conductor, wall, outer, mass, outerStatus, massStatus, note] = row;
  const toMm = wireTable.lengthUnit === 'in' ? MM_PER_INCH : 1;
  const areaMm2 = areaOf(wireTable, size);
  const conductorDiameterMm = conductor !== null ? conductor * toMm : wall !== null ? (outer - 2 * wall) * toMm : null;
  const outerDiameterMm = outer * toMm;
  const least = wireTable.leastOuter?.find(([name]) => name === size)?.[1];
  const printed =
    mass === null ? null : wireTable.massUnit === 'kg/km' ? mass / 1000 : (mass * KG_PER_POUND) / (1000 * M_PER_FOOT);
  const reckoned = printed === null ? massFromDimensions(wireTable, row, areaMm2, toMm) : null;
  const resistance = resistanceOf(wireTable, size, areaMm2);
  return {
    label: `${wireTable.sizes === 'mm2' ? `${size} mm²` : `${wireTable.sizes === 'awg' ? 'AWG' : 'SAE'} ${size}`} ${wireTable.title}`,
    areaMm2,
    conductorDiameterMm,
    wallMm: wall === null ? null : wall * toMm,
    outerDiameterMm,
    leastOuterMm: least === undefined ? null : least * toMm,
    outerIs: wireTable.outerIs,
    massKgPerM: printed ?? reckoned,
    massFrom: printed !== null ? 'table' : reckoned !== null ? 'dimensions' : null,
    maxTempC: classOf(wireTable, temperatureClass),
    resistanceOhmPerM: resistance,
    source: wireTable.source,
    sourceStatus: outerStatus,
    massStatus: printed !== null ? massStatus : reckoned !== null ? 'derived' : null,
    maxTempStatus: wireTable.maxTempStatus,
    resistanceStatus: resistance === null ? null : (wireTable.resistance?.status ?? null),
    note: note ?? null,
  };
}

function areaOf(table: InsulatedWireTable, size: string): number {
  const circularMils = table.circularMils?.find(([name]) => name === size)?.[1];
  if (circularMils !== undefined) return circularMilsToMm2(circularMils);
  return table.sizes === 'mm2' ? Number(size) : awgToAreaMm2(size);
}

function classOf(table: InsulatedWireTable, letter: string | undefined): number | null {
  if (letter === undefined) return table.maxTempC;
  const found = table.classes?.find(([name]) => name === letter);
  if (found === undefined) {
    const letters = table.classes?.map(([name]) => name).join(' ') ?? 'none';
    throw new InputError(
      'insulatedWire',
      'temperatureClass',
      'inTable',
      letter,
      `must be a class of ${table.key} (${letters})`,
    );
  }
  return found[1];
}

function resistanceOf(table: InsulatedWireTable, size: string, areaMm2: number): number | null {
  const basis = table.resistance;
  if (basis === null || !basis.rows.some(([name]) => name === size)) return null;
  const named = basis.sizes === 'mm2' ? { areaMm2 } : basis.sizes === 'awg' ? { awg: size } : { saeGauge: size };
  return wireResistance({ ...named, resistanceBasis: basis, lengthM: 1, conductorTempC: 20 }).resistanceOhmPerM;
}

/** Mass by the dimensions, where they are known and hold the copper; the conductor is reckoned full of its circle. */
function massFromDimensions(
  table: InsulatedWireTable,
  row: InsulatedWireRow,
  areaMm2: number,
  toMm: number,
): number | null {
  const [, conductor, wall, outer] = row;
  const inner = conductor ?? (wall === null ? null : outer - 2 * wall);
  if (inner === null) return null;
  const conductorDiameterMm = Math.max(inner * toMm, Math.sqrt((4 / Math.PI) * areaMm2));
  return insulatedWireMass({
    areaMm2,
    conductorDiameterMm,
    outerDiameterMm: Math.max(outer * toMm, conductorDiameterMm),
    insulationDensityKgPerM3: table.insulationDensityKgPerM3,
    lengthM: 1,
  }).massKgPerM;
}
