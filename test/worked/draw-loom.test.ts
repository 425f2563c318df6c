import { describe, expect, it } from 'vitest';
import {
  balanceShift,
  cutLength,
  packBundle,
  type BalanceShiftInput,
  type CutLengthInput,
  type MassChange,
} from 'loomwright';
import { axleBalance, bundleSection, cutPlan } from '@loomwright/worked/draw';

const count = (svg: string, what: RegExp): number => svg.match(what)?.length ?? 0;
/** Every number of an attribute, in order. */
const numbers = (svg: string, name: string): number[] =>
  [...svg.matchAll(new RegExp(` ${name}="(-?[\\d.]+)"`, 'g'))].map((match) => Number(match[1]));

describe('bundleSection', () => {
  const wires = [
    { outerDiameterMm: 1.9, count: 9 },
    { outerDiameterMm: 3.7, count: 2 },
  ];
  const { circles, diameterMm } = packBundle({ wires });
  const base = {
    circles,
    names: ['9 × 1.9 mm', '2 × 3.7 mm'],
    packedDiameterMm: diameterMm,
    diameterMm: 10.2,
    format: (v: number) => `${v.toFixed(1)} mm`,
  };
  it.each([0, 320, 640])('draws two circles a wire and the two around them, at %d px, and none outside', (width) => {
    const svg = bundleSection({ ...base, width });
    expect(count(svg, /<circle /g)).toBe(2 * 11 + 2);
    const [cx, cy, r] = ['cx', 'cy', 'r'].map((name) => numbers(svg, name));
    const middle = cx![0]!;
    cx!.forEach((x, i) => {
      expect(r![i]!).toBeGreaterThan(0);
      expect(Math.hypot(x - middle, cy![i]! - middle) + r![i]!).toBeLessThanOrEqual(r![0]! * 1.001);
    });
  });
  it('says to those who cannot see it what it shows', () => {
    const svg = bundleSection({ ...base, width: 640, boreMm: 12, fits: true });
    expect(svg).toContain(
      'aria-label="Bundle cut across. 9 × 1.9 mm, 2 × 3.7 mm; 10.2 mm to reckon with, through a bore of 12.0 mm"',
    );
    expect(svg).toContain('12.0 mm bore: fits');
    expect(bundleSection({ ...base, width: 640, boreMm: 9, fits: false })).toContain('9.0 mm bore: does not fit');
  });
  it('escapes what the reader wrote', () => {
    expect(bundleSection({ ...base, names: ['<b>', 'x'], width: 640 })).not.toContain('<b>');
  });
});

describe('axleBalance', () => {
  const place = (behindFrontAxleM: number) => ({ behindFrontAxleM, rightOfCentreM: 0 });
  const changes: readonly MassChange[] = [
    { kind: 'added', name: 'winch', massKg: 38, to: place(-0.7) },
    { kind: 'moved', name: 'battery', massKg: 20, from: place(-0.4), to: place(2.9) },
    { kind: 'removed', name: 'spare wheel', massKg: 22, from: place(6) },
  ];
  const input: BalanceShiftInput = { wheelbaseM: 2.6, trackM: 1.5, frontAxleKg: 720, rearAxleKg: 580, changes };
  const { before, after } = balanceShift(input);
  it.each([0, 320, 640])('keeps every mark within its %d px, and true to the wheelbase', (width) => {
    const svg = axleBalance({ wheelbaseM: 2.6, changes, before, after, width, format: (v) => `${v.toFixed(0)} kg` });
    const wide = Number(/viewBox="0 0 ([\d.]+)/.exec(svg)![1]);
    for (const x of [...numbers(svg, 'cx'), ...numbers(svg, 'x')]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(wide);
    }
    const squares = numbers(svg, 'x').length;
    expect(squares).toBeGreaterThan(6);
    // Wheels at 0 and 2.6 m, the centres of gravity in between at their share of the way.
    const [front, , rear, , was, is] = numbers(svg, 'cx') as [number, number, number, number, number, number];
    expect((was - front) / (rear - front)).toBeCloseTo(before.behindFrontAxleM / 2.6, 2);
    expect((is - front) / (rear - front)).toBeCloseTo(after.behindFrontAxleM / 2.6, 2);
    expect(svg).toContain('battery moved');
  });
});

describe('cutPlan', () => {
  const input: CutLengthInput = {
    routeLengthM: 3.2,
    slackFraction: 0.05,
    stripMm: 12,
    repairLoopM: 0,
    cutStepMm: 10,
  };
  it.each([0, 320, 640])('names each part that there is, and no other, at %d px', (width) => {
    const svg = cutPlan({ input, output: cutLength(input), width, format: (v) => `${(v * 1000).toFixed(0)} mm` });
    for (const name of ['route', 'slack', 'strip', 'rounding']) expect(svg).toContain(name);
    for (const name of ['loops', 'twist']) expect(svg).not.toContain(name);
    expect(svg).toContain('cut 3380 mm');
    for (const w of numbers(svg, 'width')) expect(w).toBeGreaterThan(0);
  });
});
