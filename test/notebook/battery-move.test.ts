// What the notebook comes to, worked out apart from the library: ohms a metre as the cable's data sheet prints them.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const text = readFileSync(new URL('../../docs/notebooks/battery-move.ipynb', import.meta.url), 'utf8');
const newM = 12.5 * 0.3048 + 0.9 + 0.5;

/** Volts at the starter: 12.6 V behind 9 mΩ, joints and contacts of 1.35 mΩ, frame of 0.4, strap of 35 mm². */
function startV(ohmPerKm: number): number {
  const warm = (234.5 + 40) / 254.5;
  const cables = (warm * (ohmPerKm * newM + 0.554 * 16 * 0.0254)) / 1000;
  return 12.6 - 180 * (0.009 + 0.00135 + 0.0004 + cables);
}

describe('battery-move.ipynb', () => {
  it('states the volts of every size', () => {
    for (const [areaMm2, ohmPerKm] of [
      [25, 0.78],
      [35, 0.554],
      [50, 0.386],
      [70, 0.272],
    ] as const) {
      const volts = (Math.floor(startV(ohmPerKm) * 100) / 100).toFixed(2);
      expect(text).toContain(`| in the back, ${areaMm2} mm² | ${volts}\u202fV |`);
    }
  });
  it('states the kilograms of the chosen one, and the joint that is bad', () => {
    const volts = (Math.floor(startV(0.272) * 100) / 100).toFixed(2);
    const kg = (Math.ceil(0.775 * newM * 100) / 100).toFixed(2);
    expect(text).toContain(`70 mm²: ${volts}\u202fV at the starter, ${kg}\u202fkg of cable; bad joint: bulkhead stud`);
  });
  it('states the axle loads: 19.96 kg by 3.3 m on a wheelbase of 2.6 m, and the cables', () => {
    const batteryKg = 44 * 0.45359237;
    const old = [0.4 * 1.4, -0.2] as const;
    const added = [
      [0.775 * 12.5 * 0.3048, 1.2],
      [0.775 * 0.9, -0.1],
      [0.775 * 0.5, 2.8],
    ] as const;
    const moment = batteryKg * 3.3 - old[0] * old[1] + added.reduce((sum, [kg, m]) => sum + kg * m, 0);
    const rear = 580 + moment / 2.6;
    const whole = 1300 - old[0] + added.reduce((sum, [kg]) => sum + kg, 0);
    const kg = (v: number): string => `${v.toFixed(1)}\u202fkg`;
    expect(text).toContain(`| 70 mm² | ${kg(whole - rear)} | ${kg(rear)} | ${kg(whole)} |`);
  });
});
