import type { Terms } from './type.js';

/** Names of calibration tables, fault bands, shared sensors, pedal tracks and warnings. */
export const calibrationTerms = {
  cellCount: { label: 'Cells of the controller', symbol: 'K' },
  heldCount: { label: 'Cells used', symbol: 'k' },
  inStepValue: { label: 'Step of what comes in', symbol: 's_x' },
  outStepValue: { label: 'Step of what is shown', symbol: 's_y' },
  wantedErrorValue: { label: 'Error wanted at most', symbol: 'e_\\mathrm{want}' },
  worstErrorValue: { label: 'Off by at most', symbol: 'e' },
  worstInValue: { label: 'That is where the input reads', symbol: 'x' },
  leastErrorValue: { label: 'Before rounding', symbol: 'e_0' },
  roundingLossValue: { label: 'Lost by rounding', symbol: '\\Delta_e' },
  inValue: { label: 'The input reads', symbol: 'x' },
  outValue: { label: 'Shown', symbol: 'y' },
  fromInValue: { label: 'Cell before it', symbol: 'x_i' },
  fromOutValue: { label: 'What that cell shows', symbol: 'y_i' },
  slope: { label: 'Slope of the line', symbol: 'm' },
} as const satisfies Terms;
