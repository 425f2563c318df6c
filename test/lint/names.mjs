// Names of numeric fields, for the lint rule `house/unit-suffix`. The units that a name can end in are data in
// `worked/quantity`, where texts are converted by them; here stand the words that need none.
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

const source = fileURLToPath(new URL('../../packages/worked/src/quantity/field-unit.ts', import.meta.url));
const [{ text }] = buildSync({ entryPoints: [source], bundle: true, write: false, format: 'esm' }).outputFiles;
const { fieldUnit } = await import(`data:text/javascript,${encodeURIComponent(text)}`);

/** Units that tables and results have and no text is converted by: mW, per cent as printed, circular mils. */
const PRINTED = /(?:[a-z0-9](?:Mw|Percent)|[cC]ircularMils)$/;

/** Words without a dimension: a whole name, or its end (`temperatureFactor`, `wireCount`). */
const DIMENSIONLESS = [
  ...['fraction', 'factor', 'ratio', 'count', 'steps', 'step', 'index', 'share', 'number', 'exponent', 'efficiency'],
  ...['tolerance', 'residual', 'best', 'value', 'limit', 'low', 'high', 'seed', 'bits', 'teeth', 'cylinders', 'runs'],
  ...['emissivity', 'prandtl', 'rayleigh', 'nusselt', 'coefficient', 'weight', 'covariance', 'slope', 'sigma', 'piece'],
  ...['degreesOfFreedom', 'place'],
];

/** Names that stand alone: published constants keep their letters, axes theirs; `into` is an array to be filled. */
const ALONE = ['a', 'b', 'c', 'd', 'x', 'y', 'k', 'n', 'p', 'K', 'beta', 'into'];

const word = DIMENSIONLESS.join('|');
const capital = DIMENSIONLESS.map((w) => w[0].toUpperCase() + w.slice(1)).join('|');
const withoutUnit = new RegExp(`^(?:${word}|[a-z][A-Za-z0-9]*(?:${capital}))s?$`);

/** Whether a numeric field may be called so. */
export function isUnitName(name) {
  return fieldUnit(name) !== null || PRINTED.test(name) || withoutUnit.test(name) || ALONE.includes(name);
}
