// What the notebook comes to, worked out apart from the library: the letters and their covariance by mpmath.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fixture } from '../temperature/fixture.js';

const text = readFileSync(new URL('../../docs/notebooks/kettle-calibration.ipynb', import.meta.url), 'utf8');

describe('kettle-calibration.ipynb', () => {
  it('states the result of the arithmetic', () => {
    const { letters, inverseNormal } = fixture.fits['kettle']!;
    const [a, b, c] = letters;
    const l = Math.log(190);
    const y = a + b * l + c * l ** 3;
    const g = [1, l, l ** 3];
    let variance = 0;
    g.forEach((gi, i) => g.forEach((gj, j) => (variance += gi * gj * inverseNormal[i]![j]!)));
    const curveK = Math.sqrt(variance) / y ** 2;
    const readingK = (0.005 * (b + 3 * c * l * l)) / y ** 2;
    const bandK = Math.ceil(20 * Math.hypot(curveK, readingK)) / 10;
    expect(text).toContain(`190 Ω is ${(1 / y - 273.15).toFixed(2)}\u202f°C ± ${bandK.toFixed(1)}\u202fK`);
  });
});
