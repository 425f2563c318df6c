// #region shown
import { inputs } from '@loomwright/worked';

const written = {
  currentA: '12 A',
  outLengthM: '14 ft',
  areaMm2: '14 AWG',
  ambientTempC: '150 °F',
};

const given = inputs(written);
// #endregion shown

export { given, written };
