export { cards } from './all.js';
export { cautions, type CautionKey } from './caution.js';
export * from './bundle/index.js';
export * from './bus/index.js';
export * from './calibration/index.js';
export * from './conductor/index.js';
export * from './divider/index.js';
export * from './feed/index.js';
export * from './heat/index.js';
export * from './joint/index.js';
export * from './level/index.js';
export * from './load/index.js';
export * from './network/index.js';
export * from './protection/index.js';
export * from './relay/index.js';
export * from './signal/index.js';
export * from './supply/index.js';
export * from './temperature/index.js';
export { statusWords } from './status.js';
export { nomenclature, termOf, type Term, type Terms } from './nomenclature/index.js';
export {
  type Card,
  type Choice,
  type ChoiceField,
  type Constant,
  defineCard,
  type Field,
  type FlagField,
  type NumberField,
  type ResultField,
  type Step,
  type TextField,
  type Uses,
  type Values,
} from './type.js';
export { codeOf, exampleValues, inputOf } from './values.js';
