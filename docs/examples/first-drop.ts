// prettier-ignore
// #region shown
import {
  iso19642,
  voltageDrop,
  wireResistance,
} from 'loomwright';

const { resistanceOhmPerM } = wireResistance({
  areaMm2: 2.5,
  resistanceBasis: iso19642,
  lengthM: 1,
  conductorTempC: 20,
});

const drop = voltageDrop({
  supplyV: 13.8,
  currentA: 15,
  outLengthM: 5.5,
  returnLengthM: 1,
  resistanceOhmPerM,
  ratedTempC: 20,
  conductorTempC: 60,
});
// #endregion shown

export { drop };
