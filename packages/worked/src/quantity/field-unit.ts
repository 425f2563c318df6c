/** The end of a field's name and the unit that the core takes there. */
export interface FieldUnit {
  /** End of the name: `M` of `outLengthM`. */
  readonly suffix: string;
  /** Unit as `parseQuantity`, `formatQuantity` and `unitChoices` name it. */
  readonly unit: string;
}

/**
 * Units by the end of a field's name. `TempC` is a temperature, `K` a temperature difference: 10 °F is −12.2 °C as
 * the one and 5.56 K as the other. A name ending in `TimeH` counts hours; any other `H` is an inductance.
 */
export const fieldUnits = [
  { suffix: 'M', unit: 'm' },
  { suffix: 'Mm', unit: 'mm' },
  { suffix: 'Cm', unit: 'cm' },
  { suffix: 'Km', unit: 'km' },
  { suffix: 'Mm2', unit: 'mm²' },
  { suffix: 'Cm2', unit: 'cm²' },
  { suffix: 'M2', unit: 'm²' },
  { suffix: 'Mm3', unit: 'mm³' },
  { suffix: 'Cm3', unit: 'cm³' },
  { suffix: 'M3', unit: 'm³' },
  { suffix: 'L', unit: 'L' },
  { suffix: 'Ml', unit: 'mL' },
  { suffix: 'A', unit: 'A' },
  { suffix: 'Ma', unit: 'mA' },
  { suffix: 'V', unit: 'V' },
  { suffix: 'Mv', unit: 'mV' },
  { suffix: 'Ohm', unit: 'Ω' },
  { suffix: 'OhmMm2', unit: 'Ω·mm²' },
  { suffix: 'W', unit: 'W' },
  { suffix: 'Mw', unit: 'mW' },
  { suffix: 'J', unit: 'J' },
  { suffix: 'Wh', unit: 'Wh' },
  { suffix: 'Ah', unit: 'Ah' },
  { suffix: 'C', unit: '°C' },
  { suffix: 'K', unit: 'K' },
  { suffix: 'Kg', unit: 'kg' },
  { suffix: 'KgM2', unit: 'kg·m²' },
  { suffix: 'GPerCm3', unit: 'g/cm³' },
  { suffix: 'GPerM', unit: 'g/m' },
  { suffix: 'S', unit: 's' },
  { suffix: 'Ms', unit: 'ms' },
  { suffix: 'Us', unit: 'µs' },
  { suffix: 'Min', unit: 'min' },
  { suffix: 'Minutes', unit: 'min' },
  { suffix: 'TimeH', unit: 'h' },
  { suffix: 'Hours', unit: 'h' },
  { suffix: 'Days', unit: 'd' },
  { suffix: 'Hz', unit: 'Hz' },
  { suffix: 'Khz', unit: 'kHz' },
  { suffix: 'Pa', unit: 'Pa' },
  { suffix: 'PaS', unit: 'Pa·s' },
  { suffix: 'Kpa', unit: 'kPa' },
  { suffix: 'H', unit: 'H' },
  { suffix: 'F', unit: 'F' },
  { suffix: 'N', unit: 'N' },
  { suffix: 'Nm', unit: 'N·m' },
  { suffix: 'G', unit: 'gₙ' },
  { suffix: 'Deg', unit: '°' },
  { suffix: 'Rad', unit: 'rad' },
  { suffix: 'Kmh', unit: 'km/h' },
  { suffix: 'Rpm', unit: 'rpm' },
  { suffix: 'Lumen', unit: 'lm' },
  { suffix: 'A2s', unit: 'A²s' },
  { suffix: 'Bits', unit: 'bit' },
  { suffix: 'Bit', unit: 'bit' },
  { suffix: 'Db', unit: 'dB' },
  { suffix: 'Pulses', unit: '1' },
  { suffix: 'Events', unit: '1' },
  { suffix: 'Percent', unit: '%' },
  { suffix: 'Fraction', unit: 'fraction' },
] as const satisfies readonly FieldUnit[];

/** The ends of names that have a unit. */
export type FieldSuffix = (typeof fieldUnits)[number]['suffix'];

/** Units after `Per`, where `H` is an hour and `C` a kelvin, because nothing is counted per henry. */
const DENOMINATORS: readonly FieldUnit[] = [
  { suffix: 'H', unit: 'h' },
  { suffix: 'C', unit: 'K' },
  { suffix: 'G', unit: 'g' },
  { suffix: 'Day', unit: 'd' },
  { suffix: 'Mile', unit: 'mi' },
];

/**
 * The unit that the core takes in a field, by the end of its name, or null where the name names none.
 *
 * The longest end wins (`areaMm2` is mm², not m²), after a small letter or a digit. `Per` builds a quotient of any two
 * ends: `resistanceOhmPerM` is Ω/m, `specificHeatJPerKgK` J/(kg·K), `expansionPerK` 1/K. The core takes no temperature
 * in kelvins, so a name ending in `TempK` has no unit here.
 *
 * @param name field name, `outLengthM`
 * @returns the unit, 'm'; 'K' is a temperature difference, '°C' a temperature, 'fraction' a pure number shown in %
 * @example fieldUnit('resistanceOhmPerM') //=> 'Ω/m'
 */
export function fieldUnit(name: string): string | null {
  if (name.endsWith('TempK')) return null;
  const whole = longest(name, fieldUnits, /[a-z0-9]$/);
  const at = name.lastIndexOf('Per');
  const below = at > 0 ? denominator(name.slice(at + 3)) : null;
  if (below !== null && whole?.suffix.includes('Per') !== true) {
    const head = name.slice(0, at);
    if (!/[a-z0-9]$/i.test(head)) return null;
    const grams = /[a-z0-9]G$/.test(head) ? 'g' : null;
    const above = grams ?? longest(head, fieldUnits, /[a-z0-9]$/)?.unit ?? '1';
    return `${above === 'fraction' ? '1' : above}/${below}`;
  }
  return whole?.unit ?? null;
}

/** The longest end of a text that is a unit and stands after what `before` asks for. */
function longest(text: string, units: readonly FieldUnit[], before: RegExp): FieldUnit | null {
  let found: FieldUnit | null = null;
  for (const unit of units) {
    if (found !== null && unit.suffix.length <= found.suffix.length) continue;
    if (text.endsWith(unit.suffix) && before.test(text.slice(0, -unit.suffix.length))) found = unit;
  }
  return found;
}

/** The units of a text that is nothing but units: `M2K` is (m²·K). */
function denominator(text: string): string | null {
  const units: string[] = [];
  let rest = text;
  while (rest !== '') {
    let found: FieldUnit | null = null;
    for (const unit of [...DENOMINATORS, ...fieldUnits]) {
      if (rest.startsWith(unit.suffix) && unit.suffix.length > (found?.suffix.length ?? 0)) found = unit;
    }
    if (found === null) return null;
    units.push(found.unit);
    rest = rest.slice(found.suffix.length);
  }
  if (units.length === 0) return null;
  return units.length > 1 || /[·/]/.test(units.join()) ? `(${units.join('·')})` : units.join();
}
