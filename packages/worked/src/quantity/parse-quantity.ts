import { awgToAreaMm2 } from 'loomwright';
import { unitRatio } from './adapter.js';
import { exactFactor, fahrenheitToCelsius, plus, type Rational, rational, times, toNumber } from './decimal.js';
import { parseGauge } from './gauge.js';
import { numberText, tidy } from './number-text.js';
import { QuantityError, type QuantityRule } from './quantity-error.js';
import { quantityName } from './quantity-name.js';
import { unitChoices } from './unit-choices.js';
import { type UnitContext, unitParts, type UnitParts } from './unit-text.js';

/** Throws; keeps what every error of one field says. */
type Fail = (rule: QuantityRule, hint?: string) => never;

const LONGEST = 100;

const NO_GEOMETRY =
  "an SAE size has no geometry of its own: give it as the field size, with resistanceBasis 'sae-j1128', or write mm²";

/**
 * The number that the core takes for a quantity as people write it.
 *
 * The unit is asked for and its dimension checked; nothing is guessed. The result is the double nearest to the exact
 * value wherever the conversion has an exact definition, so `'7 in'` is 177.8 mm and `'2.5 mm²'` is 2.5.
 *
 * Read are: `14 ft`, `14'`, `5 ft 3 in`, `3/8"`, `1 1/2 in`, `2.5 mm²`, `2.5 mm2`, `250 kcmil`, `12 mA`, `3.4 mΩ`,
 * `4.9 mΩ/m`, `1.588 ohm/kft`, `185 °F`, `85 C` (for a temperature), `10 °F` (for a difference), `1.2 µF`, `4k7` and
 * `120R` (for ohms, as on a resistor), `4n7` (for farads), `3 %`, `0.03` (for a share), `1 h 30 min`, `2 US gal`,
 * `60 mph`, `40 Ah`, `1.2×10⁻³ Ω`, `14 AWG` (for an area in mm²: that of solid wire); a true minus sign, thin spaces and fractions such as ½.
 * Refused, each with the way to put it right: a number without its unit, a comma, a bare gallon or ton, a range, a
 * unit of another dimension, a unit that is not known, a gauge where it is no area.
 *
 * @param text what was written
 * @param unitOfField unit that the core takes, as `fieldUnit` names it: 'm', '°C' (a temperature), 'K' (a temperature
 * difference), 'fraction', 'Ω/m'
 * @param field name of the field, for the error
 * @returns the number in that unit
 * @throws QuantityError for anything that is not such a quantity
 * @source exact definitions of NIST SP 811 (2008), appendix B, through loomwright's `unit`
 * @example parseQuantity('14 ft', 'm', 'outLengthM') //=> 4.2672
 */
export function parseQuantity(text: string, unitOfField: string, field: string): number {
  const fail: Fail = (rule, hint) => {
    throw new QuantityError(field, rule, text, describe(unitOfField), hint);
  };
  if (typeof text === 'number')
    fail('unit', `write it with its unit, as text: '${String(text)} ${exampleUnit(unitOfField)}'`);
  if (typeof text !== 'string') fail('text', 'a quantity is a text');
  if (text.length > LONGEST) fail('long', `no quantity has more than ${LONGEST} signs`);
  const tidied = tidy(text);
  if (tidied === '') fail('empty', 'nothing was written');
  if (unitOfField === 'mm²') {
    const gauge = parseGauge(tidied, field);
    if (gauge !== null && 'awg' in gauge) return awgToAreaMm2(gauge.awg);
    if (gauge !== null) fail('size', NO_GEOMETRY);
  }
  const context = contextOf(unitOfField);
  const code = resistorCode(tidied, unitOfField);
  const value = code ?? pairOf(tidied, unitOfField, context, fail) ?? single(tidied, unitOfField, context, fail);
  const result = toNumber(value);
  if (!Number.isFinite(result)) fail('magnitude', 'no computer number is that large');
  if (result === 0 && value.num !== 0n) fail('magnitude', 'no computer number is that small');
  return result;
}

/** One number with one unit. */
function single(text: string, unitOfField: string, context: UnitContext, fail: Fail): Rational {
  const number = numberText(text);
  if (!number.ok) return fail(number.rule, number.hint);
  return converted(number.value, number.rest.trim(), unitOfField, context, fail);
}

/** Two numbers with two units that belong together: 5 ft 3 in, 1 h 30 min, 2 lb 4 oz, 30° 15'. */
function pairOf(text: string, unitOfField: string, context: UnitContext, fail: Fail): Rational | null {
  const pair = /^([+-]?) ?(\d[\d./ ]*?) ?([a-zA-Z]+|'|°),?[ -]?(\d[\d./ ]*?) ?([a-zA-Z]+|''|"|')$/.exec(text);
  if (!pair) return null;
  const [, sign = '', n1 = '', u1 = '', n2 = '', u2 = ''] = pair;
  if (!PAIRS.some(([big, small]) => big.test(u1) && small.test(u2))) return null;
  const first = single(`${n1} ${u1}`, unitOfField, context, fail);
  const second = single(`${n2} ${u2}`, unitOfField, context, fail);
  const sum = plus(first, second);
  return sign === '-' ? { ...sum, num: -sum.num } : sum;
}

const PAIRS: readonly (readonly [RegExp, RegExp])[] = [
  [/^(?:'|ft|foot|feet)$/i, /^(?:"|''|in|inch|inches)$/i],
  [/^(?:h|hr|hrs|hours?)$/i, /^(?:min|mins|minutes?)$/i],
  [/^(?:min|mins|minutes?)$/i, /^(?:s|secs?|seconds?)$/i],
  [/^(?:lb|lbs|pounds?)$/i, /^(?:oz|ounces?)$/i],
  [/^(?:°|deg|degrees?)$/i, /^(?:'|arcmin)$/i],
];

/** The letter codes of parts (IEC 60062, from memory): 4k7, 4.7k, 120R, 1M, R47 for ohms; 4n7, 100n for farads. */
function resistorCode(text: string, unitOfField: string): Rational | null {
  const scale: Readonly<Record<string, number>> =
    unitOfField === 'Ω' ? { R: 0, K: 3, k: 3, M: 6, G: 9 } : unitOfField === 'F' ? { p: -12, n: -9, u: -6, µ: -6 } : {};
  const code = /^(?:(\d{0,4})([RKkMGpnuµ])(\d{0,4})|(\d{1,4}\.\d{1,6})([RKkMGpnuµ])) ?(?:Ω|[Oo]hms?)?$/.exec(text);
  if (code === null) return null;
  const [, whole = '', letter, part = '', decimal, after] = code;
  const exponent = scale[letter ?? after ?? ''];
  if (exponent === undefined || (decimal ?? `${whole}${part}`) === '') return null;
  return rational(`${decimal ?? `${whole === '' ? '0' : whole}.${part}`}e${exponent}`);
}

/** A value in the unit that was written as a value in the field's own. */
function converted(value: Rational, written: string, unitOfField: string, context: UnitContext, fail: Fail): Rational {
  const key = `${unitOfField}\u0000${written}`;
  const factor = factors.get(key);
  if (factor !== undefined) return times(value, factor);
  const own = unitParts(ownText(unitOfField), context);
  if (!own.ok) throw new QuantityError('unitOfField', 'unknownUnit', unitOfField, 'a unit known here', own.hint);
  const pure = unitOfField === 'fraction' || unitOfField === '1' || unitOfField === '';
  if (written === '') {
    if (pure) return value;
    return fail('unit', `the number has no unit: write '${short(value)} ${exampleUnit(unitOfField)}'`);
  }
  const given = unitParts(directCurrent(written), context);
  if (!given.ok) return fail(given.rule, oddRest(written) ?? given.hint);
  if (unitOfField === '°C') return temperature(value, given, fail);
  const torqueAsEnergy = unitOfField === 'N·m' && given.names.some((name) => /^[mkM]?(?:J|Wh|Ws)$|joule/i.test(name));
  const ratio = torqueAsEnergy ? null : ratioOf(given, own);
  if (ratio === null) {
    const is = quantityName(given.powers);
    return fail(
      'dimension',
      `'${written}' is ${torqueAsEnergy ? 'an energy' : (is ?? 'something else')}${slip(written, unitOfField)}`,
    );
  }
  const exact = exactFactor(ratio);
  if (factors.size < MOST_FACTORS) factors.set(key, exact);
  return times(value, exact);
}

/** Factors found before: a file of a vehicle writes some dozen units, hundreds of times. */
const factors = /* @__PURE__ */ new Map<string, Rational>();
const MOST_FACTORS = 1000;

/** A Celsius temperature: an offset, never a scale alone. */
function temperature(value: Rational, given: UnitParts, fail: Fail): Rational {
  const alone = given.names.length === 1 && Object.entries(given.powers).join() === 'K,1';
  const scale = alone ? given.names[0] : undefined;
  if (scale === undefined) return fail('dimension', 'a temperature is written in °C, °F or K');
  if (/^k/i.test(scale)) return plus(value, rational('-273.15'));
  if (/f$/i.test(scale)) return fahrenheitToCelsius(value);
  return value;
}

/** How many of the field's unit make one of the given, or null where the dimensions differ. */
function ratioOf(given: UnitParts, own: UnitParts): number | null {
  const rest = new Map(Object.entries(given.powers));
  for (const [name, power] of Object.entries(own.powers)) rest.set(name, (rest.get(name) ?? 0) - power);
  // The same names cancel, so that no conversion is asked for where there is none.
  const ratio = [...rest.values()].every((power) => power === 0) ? 1 : unitRatio(product(given), product(own));
  return ratio === null ? null : (ratio * given.factor) / own.factor;
}

/** Powers of SI names as mathjs writes them. */
function product(parts: UnitParts): string {
  return Object.entries(parts.powers)
    .map(([name, power]) => `${name}^${power}`)
    .join(' * ');
}

function ownText(unitOfField: string): string {
  return unitOfField === 'fraction' || unitOfField === '1' ? '' : unitOfField;
}

function contextOf(unitOfField: string): UnitContext {
  return {
    temperature: unitOfField === '°C' || unitOfField === 'K',
    gravity: unitOfField === 'gₙ',
    torque: unitOfField === 'N·m',
    angle: unitOfField === '°' || unitOfField === 'rad',
  };
}

/** The trade writes V DC and A DC; it is the same volt. */
function directCurrent(written: string): string {
  return written.replace(/^([mku]?[VA]|volts?|amps?) ?(?:DC|dc|d\.c\.)$/, '$1');
}

/** What the rest of a text says of the slip, before its unit is looked at. */
function oddRest(rest: string): string | null {
  if (/^(?:-|\.\.|to |…)/.test(rest)) return 'write one number, not a range';
  if (/^(?:±|\+\/?-)/.test(rest)) return 'write the value alone, without its tolerance';
  if (/^ ?\d/.test(rest)) return 'write the number without spaces in it';
  if (/^,/.test(rest)) return 'write the number with a point and no comma';
  return null;
}

/** Common slips between units of two dimensions. */
function slip(written: string, unitOfField: string): string {
  if (unitOfField === 's' && written === 'm') return ': minutes are written min';
  if ((unitOfField === '°C' || unitOfField === 'K') && /^(?:°|deg)/.test(written)) return ': write °C or °F';
  if (unitOfField.includes('(')) return `: write it as ${unitOfField}`;
  if (unitOfField === 'Hz' && /rpm/i.test(written)) return ': speed and frequency differ by the number of teeth';
  return '';
}

function describe(unitOfField: string): string {
  const own = unitParts(ownText(unitOfField), contextOf(unitOfField));
  const temperatures = unitOfField === '°C' ? 'a temperature' : unitOfField === 'K' ? 'a temperature difference' : null;
  if (unitOfField === 'fraction') return 'a share (a number such as 0.03, or 3 %)';
  const name = temperatures ?? (unitOfField === 'N·m' ? 'a torque' : own.ok ? quantityName(own.powers) : null);
  if (unitOfField === '1' || unitOfField === '') return 'a plain number';
  return `${name ?? 'a quantity'} with its unit (${unitChoices(unitOfField)
    .map(({ unit }) => unit)
    .join(', ')})`;
}

function exampleUnit(unitOfField: string): string {
  return unitChoices(unitOfField)[0]?.unit ?? unitOfField;
}

function short(value: Rational): string {
  return String(Number(toNumber(value).toPrecision(6)));
}
