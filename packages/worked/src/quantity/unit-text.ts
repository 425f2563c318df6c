import { namedUnit, unitNames } from './unit-name.js';
import { nearWords } from './near-words.js';

/** What a unit means depends on the field in four places. */
export interface UnitContext {
  /** C and F are degrees here, not coulomb and farad. */
  readonly temperature: boolean;
  /** g is gravity here, not gram. */
  readonly gravity: boolean;
  /** lb is a force here, not a mass; a newton metre is no joule. */
  readonly torque: boolean;
  /** ' and " are minutes and seconds of arc here, not feet and inches. */
  readonly angle: boolean;
}

/** A unit taken apart: SI names that mathjs knows with their powers, and what is left as a factor. */
export interface UnitParts {
  readonly ok: true;
  readonly factor: number;
  readonly powers: Readonly<Record<string, number>>;
  /** The names as written, for what a dimension alone cannot tell. */
  readonly names: readonly string[];
}

/** Why a unit could not be taken apart. */
export interface UnitFault {
  readonly ok: false;
  readonly rule: 'unknownUnit' | 'ambiguous' | 'size';
  readonly hint: string;
}

/** Names that mean several things, and what to write. */
const REFUSED: Readonly<Record<string, string>> = {
  gal: "a gallon is 'US gal' or 'imp gal'",
  gph: "a gallon is 'US gal' or 'imp gal': write 'US gal/h'",
  gpm: "a gallon is 'US gal' or 'imp gal': write 'US gal/min'",
  qt: 'write it in L or US gal',
  pt: 'write it in L or US gal',
  ton: 'there are three tons: write t (1000 kg) or lb',
  psig: 'write psi: the field says whether it is gauge or absolute pressure',
  psia: 'write psi: the field says whether it is gauge or absolute pressure',
  ga: 'write AWG or SAE: the two gauges differ',
  gauge: 'write AWG or SAE: the two gauges differ',
  awg: 'a gauge is a size and fits an area only',
  sae: 'a gauge is a size and fits an area only',
  swg: 'write AWG or SAE, or the area in mm²',
  month: 'months differ: write days',
  year: 'write days',
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Takes the text of a unit apart. It never throws. */
export function unitParts(text: string, context: UnitContext): UnitParts | UnitFault {
  const tokens = normalised(text, context).match(/(?:[A-Za-z]+|%|‰)(?: ?\^ ?-?\d+|\d+)?|\d+|\S/g) ?? [];
  const powers = new Map<string, number>();
  const names: string[] = [];
  let factor = 1;
  let at = 0;
  let depth = 0;
  let fault: UnitFault | null = null;
  const stop = (rule: UnitFault['rule'], hint: string): void => {
    fault ??= { ok: false, rule, hint };
  };

  const unit = (sign: number): void => {
    const token = tokens[at] ?? '';
    if (token === '(' && depth < 4) {
      at++;
      depth++;
      product(sign);
      depth--;
      if (tokens[at] === ')') at++;
      else stop('unknownUnit', 'a bracket is not closed');
      return;
    }
    at++;
    if (token === '1') return;
    const [, word = '', power = '1'] = /^([A-Za-z%‰]+)(?: ?\^? ?(-?[1-4]))?$/.exec(token) ?? [];
    if (word === '') {
      stop('unknownUnit', token === '' ? 'a unit is missing' : `'${token.slice(0, 20)}' is not a unit`);
      return;
    }
    const named = namedUnit(inContext(word, context));
    if (named === null) {
      stop(...unknown(word));
      return;
    }
    names.push(word);
    const signed = sign * Number(power);
    factor *= named.factor ** signed;
    for (const [name, p] of named.terms) powers.set(name, (powers.get(name) ?? 0) + signed * p);
  };

  const product = (sign: number): void => {
    let divided = false;
    if (tokens[at] === '/') {
      at++;
      unit(-sign);
      divided = true;
    } else unit(sign);
    while (fault === null && at < tokens.length && tokens[at] !== ')') {
      const token = tokens[at] as string;
      if (token === '/') {
        at++;
        unit(-sign);
        divided = true;
        continue;
      }
      if (token === '*') at++;
      if (divided) stop('ambiguous', "put what stands below the line in brackets, such as 'W/(m²·K)'");
      unit(sign);
    }
  };

  if (tokens.length > 0) product(1);
  if (fault === null && at < tokens.length) stop('unknownUnit', `'${tokens[at] ?? ''}' is not expected there`);
  return fault ?? { ok: true, factor, powers: Object.fromEntries([...powers].filter(([, p]) => p !== 0)), names };
}

/** One spelling for what people and keyboards write in many. */
function normalised(text: string, context: UnitContext): string {
  const degree = /(?:°|\bdeg(?:ree)?s?\.?)\s*(c(?:elsius)?|f(?:ahrenheit)?|K)(?![A-Za-z])/gi;
  return text
    .replace(/[\u2126\u03a9]/g, 'ohm')
    .replace(/[\u00b5\u03bc]/g, 'u')
    .replace(/℃/g, '°C')
    .replace(/℉/g, '°F')
    .replace(/[º˚]/g, '°')
    .replace(/gₙ|g_n|g₀/g, 'gn')
    .replace(degree, (_, scale: string) => (/^k/i.test(scale) ? 'K' : `deg${scale.charAt(0).toUpperCase()}`))
    .replace(/\b(?:celsius|centigrade)\b/gi, 'degC')
    .replace(/\bfahrenheit\b/gi, 'degF')
    .replace(/(?:\bUS|\bU\.S\.)\s*(?:liquid\s*)?gal(?:lon)?s?\b|\bgal(?:lon)?s?\s*\(US\)/gi, 'usgal')
    .replace(/\b(?:imp(?:erial)?\.?|UK)\s*gal(?:lon)?s?\b|\bgal(?:lon)?s?\s*\((?:imp|UK)\)/gi, 'impgal')
    .replace(/\b(?:sq\.?|square)\s*(mm|cm|m|km|in|ft|inch(?:es)?|f(?:oo|ee)t|met(?:re|er)s?)\b/gi, '$1^2')
    .replace(/\b(mm|cm|m|in|ft)\s*sq(?:uared?)?\b/gi, '$1^2')
    .replace(/\b(?:cu\.?|cubic)\s*(mm|cm|m|in|ft|inch(?:es)?|f(?:oo|ee)t|met(?:re|er)s?)\b/gi, '$1^3')
    .replace(/\bper\b/gi, '/')
    .replace(/\/\s*1000\s*(?:ft|f(?:oo|ee)t)\b/gi, '/kft')
    .replace(/(⁻?)([⁰¹²³⁴-⁹]+)/g, (_, minus: string, digits: string) => {
      const power = [...digits].map((digit) => SUPERSCRIPTS.indexOf(digit)).join('');
      return `^${minus === '' ? '' : '-'}${power}`;
    })
    .replace(/([A-Za-z0-9)])\s*[·⋅∙•×]\s*(?=[A-Za-z(])/g, '$1*')
    .replace(/([A-Za-z])[.-](?=[A-Za-z])/g, '$1*')
    .replace(/''|"/g, context.angle ? 'arcsec' : 'in')
    .replace(/'/g, context.angle ? 'arcmin' : 'ft')
    .replace(/°/g, 'deg');
}

/** The name that a symbol has in this field. */
function inContext(name: string, context: UnitContext): string {
  if (context.temperature && /^[cf]$/i.test(name)) return `deg${name.toUpperCase()}`;
  if (context.gravity && /^g$/i.test(name)) return 'gn';
  if (context.torque && /^(?:lbs?|pounds?)$/i.test(name)) return 'lbf';
  return name;
}

/** What to say of a name that is no unit. */
function unknown(name: string): [rule: UnitFault['rule'], hint: string] {
  const low = name.toLowerCase();
  const refused = [low, low.replace(/s$/, ''), low.replace(/gallons?$/, 'gal')].find((n) => Object.hasOwn(REFUSED, n));
  if (refused !== undefined) {
    const rule = /^(?:ga|gauge|awg|sae|swg)$/.test(refused) ? 'size' : 'ambiguous';
    return [rule, REFUSED[refused] as string];
  }
  const near = nearWords(name, unitNames().map(readable));
  return [
    'unknownUnit',
    `'${name.slice(0, 20)}' is not a unit known here${near.length > 0 ? `: ${near.join(' or ')}?` : ''}`,
  ];
}

/** A name as a reader writes it. */
function readable(name: string): string {
  return name.replace('ohm', 'Ω').replace(/^u/, 'µ');
}
