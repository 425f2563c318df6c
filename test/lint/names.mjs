// The ends that the names of numeric fields may have. The one list for the lint rule `house/unit-suffix`.

/** Units, as they end a name: `currentA`, `outLengthM`, `ambientTempC`; `MK` is the metre kelvin of W/(m·K). */
export const UNITS = [
  ...['A', 'V', 'Mv', 'Ohm', 'W', 'Mw', 'J', 'H', 'F', 'Hz', 'Ah', 'Wh', 'A2s', 'OhmMm2', 'Lumen', 'Db', 'Percent'],
  ...['M', 'Mm', 'Mm2', 'M2', 'Mm3', 'M3', 'L', 'Kg', 'G', 'Kpa', 'N', 'Nm', 'Deg', 'Kmh', 'Rpm'],
  ...['S', 'Ms', 'Min', 'Hours', 'Days', 'C', 'K', 'MK', 'Bits', 'Pulses', 'Events'],
];

/** Words without a dimension: a whole name, or its end (`temperatureFactor`, `wireCount`). */
export const DIMENSIONLESS = [
  ...['fraction', 'factor', 'ratio', 'count', 'steps', 'step', 'index', 'share', 'number', 'exponent', 'efficiency'],
  ...['tolerance', 'residual', 'best', 'value', 'limit', 'low', 'high', 'seed', 'bits', 'teeth', 'cylinders', 'runs'],
  ...['emissivity', 'prandtl', 'rayleigh', 'nusselt', 'coefficient', 'weight', 'covariance', 'slope', 'sigma', 'piece'],
  ...['degreesOfFreedom', 'place'],
];

/** Names that stand alone: published constants keep their letters, axes theirs; `into` is an array to be filled. */
export const ALONE = ['a', 'b', 'c', 'd', 'x', 'y', 'k', 'n', 'p', 'into'];

const unit = `(?:${[...UNITS].sort((a, b) => b.length - a.length).join('|')})`;
const withUnit = new RegExp(`[a-z0-9]${unit}(?:Per${unit})*$`);
const word = `(?:${DIMENSIONLESS.join('|')})`;
const capital = `(?:${DIMENSIONLESS.map((w) => w[0].toUpperCase() + w.slice(1)).join('|')})`;
const withoutUnit = new RegExp(`^(?:${word}|[a-z][A-Za-z0-9]*${capital})s?$`);

/** Whether a numeric field may be called so. */
export function isUnitName(name) {
  return withUnit.test(name) || withoutUnit.test(name) || ALONE.includes(name);
}
