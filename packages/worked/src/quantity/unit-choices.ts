import {
  InputError,
  KG_PER_POUND,
  KPA_PER_PSI,
  L_PER_IMPERIAL_GALLON,
  L_PER_US_GALLON,
  M_PER_FOOT,
  M_PER_MILE,
  MM_PER_INCH,
  STANDARD_GRAVITY,
} from 'loomwright';
import { celsiusToFahrenheit, fahrenheitToCelsius, rational, scaled, toNumber } from './decimal.js';

/** One unit that a reader may switch a field to. */
export interface UnitChoice {
  /** The unit, as shown and as `parseQuantity` reads it. */
  readonly unit: string;
  /** A value in this unit as one in the core's. */
  readonly toCore: (value: number) => number;
  /** A value in the core's unit as one in this. */
  readonly fromCore: (value: number) => number;
}

/** This unit is numerator ÷ denominator of the core's. */
type Row = readonly [unit: string, numerator: number, denominator?: number];

/**
 * The units offered for a field, the usual one first: the core's own, but % for a share. A unit that has no others
 * gives itself alone. It needs no mathjs, so that a page can switch units without loading it.
 *
 * @param coreUnit unit of the field, as `fieldUnit` names it
 * @returns units with exact factors both ways; the functions throw InputError for what is not a finite number
 * @source exact definitions of NIST SP 811 (2008), appendix B, through loomwright's `unit`
 * @example unitChoices('m')[1].toCore(14) //=> 4.2672
 */
export function unitChoices(coreUnit: string): readonly UnitChoice[] {
  if (coreUnit === '°C') {
    const toCore = (value: number): number => toNumber(fahrenheitToCelsius(rational(String(finite(value)))));
    const fromCore = (value: number): number => toNumber(celsiusToFahrenheit(rational(String(finite(value)))));
    return [linear(['°C', 1]), { unit: '°F', toCore, fromCore }];
  }
  return rows(coreUnit).map(linear);
}

/**
 * The unit of a field in which a value is easiest to read: the usual one where its number is from 0.001 to below
 * 100 000, and else the offered one in which the number is nearest to that, of equals the first.
 *
 * @param coreUnit unit of the field, as `fieldUnit` names it
 * @param value value in it
 * @returns one of `unitChoices`
 * @throws InputError when the value is not a finite number
 * @example readableUnit('s', 2.5e-8).unit //=> 'ns'
 */
export function readableUnit(coreUnit: string, value: number): UnitChoice {
  const choices = unitChoices(coreUnit);
  const far = (choice: UnitChoice): number => {
    const size = Math.abs(choice.fromCore(value));
    if (size === 0 || (size >= 1e-3 && size < 1e5)) return 0;
    return size < 1e-3 ? -3 - Math.log10(size) : Math.log10(size) - 5;
  };
  const [usual, ...others] = choices as readonly [UnitChoice, ...UnitChoice[]];
  if (far(usual) === 0) return usual;
  // Of those within the range the one that comes nearest to a number of two digits.
  const plain = (choice: UnitChoice): number => Math.abs(Math.log10(Math.abs(choice.fromCore(value))) - 1.5);
  return others.reduce(
    (best, choice) =>
      far(choice) < far(best) || (far(choice) === far(best) && plain(choice) < plain(best)) ? choice : best,
    usual,
  );
}

function linear([unit, numerator, denominator = 1]: Row): UnitChoice {
  return {
    unit,
    toCore: (value) => scaled(finite(value), numerator, denominator),
    fromCore: (value) => scaled(finite(value), denominator, numerator),
  };
}

function finite(value: number): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new InputError(
      'unitChoices',
      'value',
      typeof value === 'number' ? 'finite' : 'number',
      value,
      'must be a finite number',
    );
  }
  return value;
}

function rows(coreUnit: string): readonly Row[] {
  const own: Row = [coreUnit, 1];
  switch (coreUnit) {
    case 'm':
      return [own, ['ft', M_PER_FOOT], ['in', MM_PER_INCH, 1000], ['mm', 1, 1000]];
    case 'mm':
      return [own, ['in', MM_PER_INCH], ['cm', 10]];
    case 'km':
      return [own, ['mi', M_PER_MILE, 1000], ['m', 1, 1000]];
    case 'K':
      return [own, ['°F', 5, 9]];
    case 'kg':
      return [own, ['lb', KG_PER_POUND], ['g', 1, 1000]];
    case 'kg/m':
      return [own, ['g/m', 1, 1000], ['lb/ft', KG_PER_POUND, M_PER_FOOT]];
    case 'L':
      return [own, ['US gal', L_PER_US_GALLON], ['imp gal', L_PER_IMPERIAL_GALLON]];
    case 'L/h':
      return [own, ['US gal/h', L_PER_US_GALLON], ['imp gal/h', L_PER_IMPERIAL_GALLON]];
    case 'kPa':
      return [own, ['psi', KPA_PER_PSI], ['bar', 100]];
    case 'km/h':
      return [own, ['mph', M_PER_MILE, 1000], ['m/s', 3.6]];
    case 'Ω':
      return [own, ['mΩ', 1, 1000], ['kΩ', 1000]];
    case 'Ω/m':
      return [own, ['mΩ/m', 1, 1000], ['Ω/kft', 1, 1000 * M_PER_FOOT]];
    case 'A':
      return [own, ['mA', 1, 1000], ['µA', 1, 1e6]];
    case 'mA':
      return [own, ['A', 1000]];
    case 'V':
      return [own, ['mV', 1, 1000]];
    case 'mV':
      return [own, ['V', 1000]];
    case 'W':
      return [own, ['mW', 1, 1000], ['kW', 1000]];
    case 'J':
      return [own, ['mJ', 1, 1000], ['kJ', 1000]];
    case 'Wh':
      return [own, ['kWh', 1000]];
    case 'Ah':
      return [own, ['mAh', 1, 1000]];
    case 's':
      return [own, ['ms', 1, 1000], ['µs', 1, 1e6], ['ns', 1, 1e9], ['min', 60], ['h', 3600], ['d', 86400]];
    case 'ms':
      return [own, ['s', 1000], ['µs', 1, 1000], ['ns', 1, 1e6]];
    case 'h':
      return [own, ['min', 1, 60], ['d', 24]];
    case 'Hz':
      return [own, ['kHz', 1000]];
    case 'bit/s':
      return [own, ['kbit/s', 1000], ['Mbit/s', 1e6]];
    case 'F':
      return [own, ['µF', 1, 1e6], ['nF', 1, 1e9]];
    case 'H':
      return [own, ['mH', 1, 1000], ['µH', 1, 1e6]];
    case 'N·m':
      return [own, ['lbf·ft', KG_PER_POUND * STANDARD_GRAVITY * M_PER_FOOT]];
    case 'gₙ':
      return [
        ['g', 1],
        ['m/s²', 1, STANDARD_GRAVITY],
      ];
    case 'g/cm³':
      return [own, ['kg/m³', 1, 1000], ['lb/in³', KG_PER_POUND * 1000, (MM_PER_INCH / 10) ** 3]];
    case '°':
      return [own, ['rad', 180 / Math.PI]];
    case 'fraction':
      return [
        ['%', 1, 100],
        ['', 1],
      ];
    default:
      return [own];
  }
}
