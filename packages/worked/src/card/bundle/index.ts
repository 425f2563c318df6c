export { balanceShiftCard, centreOfMassCard, massToMoveCard } from './balance.js';
export { bundleDiameterCard, packBundleCard, sleeveFillCard } from './diameter.js';
export { insulatedChoices, insulatedWireCard, insulatedWireMassCard } from './insulated.js';
export { cutLengthCard, twistPitchCard } from './length.js';
export { changeList, massList, sizeList, wireList } from './lists.js';
