export { parseFormula } from './parse.js';
export { stepsText, workedHtml, workedMarkdown, workedText } from './render.js';
export { resultText } from './result-text.js';
export { show, type Shown } from './show.js';
export { symbolHtml, symbolText } from './symbol.js';
export { type Leaf, type Tree, treeToHtml, treeToTex, treeToText } from './tree.js';
export { scopeOf, work, type Worked, type WorkedResult, workedSteps, type WorkedStep } from './work.js';
