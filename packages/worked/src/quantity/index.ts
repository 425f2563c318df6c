export { math, type MathNode, type Unit } from './adapter.js';
export { type FieldSuffix, type FieldUnit, fieldUnit, fieldUnits } from './field-unit.js';
export {
  formatNumber,
  type FormatOptions,
  formatParts,
  formatQuantity,
  type FormatQuantityOptions,
  type FormattedQuantity,
  type Prefix,
  type Round,
} from './format.js';
export { type Size } from './gauge.js';
export { type Inputs, inputs } from './inputs.js';
export { nearWords } from './near-words.js';
export { parseQuantity } from './parse-quantity.js';
export { parseSize } from './parse-size.js';
export { QuantityError, type QuantityRule } from './quantity-error.js';
export { type NamedTable, type TableFields, tables } from './table.js';
export { readableUnit, type UnitChoice, unitChoices } from './unit-choices.js';
