export { bendRadiusCard, crimpPullOutCard, spliceAreaCard, tensilePullOutCard } from './crimp.js';
export { checkTerminalCard, loadingFactorCard, pinCurrentCard } from './terminal.js';
