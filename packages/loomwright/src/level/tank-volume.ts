import { InputError } from '../error/index.js';
import { needMoreThan, needNoLessThan } from '../error/bounded.js';
import { needBetween, needInput, needInteger, needOneOf } from '../error/guard.js';

export interface TankVolumeInput {
  /** `box`; `lying`: a cylinder with its axis level; `standing`: one with its axis upright. All sizes are inside ones. */
  readonly shape: 'box' | 'lying' | 'standing';
  /** Length in mm, above 0: of the box or of the cylinder without its ends. */
  readonly lengthMm: number;
  /** Width of the box or diameter of the cylinder in mm, above 0. */
  readonly widthMm: number;
  /** Height of the box in mm, above 0; null for a cylinder, whose height follows from the rest. */
  readonly heightMm: number | null;
  /** Depth of each dished end (half of an ellipsoid) in mm, at least 0; 0 for flat ends, and for a box. */
  readonly headDepthMm: number;
  /** Level where it is measured, upwards from the floor of the tank there, 0 to the height of the tank. */
  readonly levelMm: number;
  /** How far the tank is tilted along its length, 0 to 45; 0 for dished ends and for a standing cylinder. */
  readonly tiltDeg: number;
  /** Where the level is measured: from the low end along the length in mm, 0 to the length. No matter without tilt. */
  readonly measuredFromLowMm: number;
  /** Rows of the strapping table above its first, 1 to 200. */
  readonly rowCount: number;
}

/** One row of the strapping table. */
export interface TankRow {
  readonly levelMm: number;
  readonly levelFraction: number;
  readonly volumeL: number;
}

export interface TankVolumeResult {
  readonly volumeL: number;
  /** The whole tank, and the share of it that is full. */
  readonly totalL: number;
  readonly fillFraction: number;
  /** Greatest level that can be measured. */
  readonly highestLevelMm: number;
  /** Litres by the level, at equal steps from the floor to the top. Tilted, a level of 0 may still hold some. */
  readonly strapping: readonly TankRow[];
}

/**
 * Litres in a tank by the level: a box, a cylinder lying or standing, flat or dished ends, and a tilted box or lying
 * cylinder; with its strapping table.
 *
 * Inside sizes, no baffles, pipes or rounded edges: a real tank is calibrated with cans. Tilt is along the length; a
 * tank that is tilted holds the same, but the float sees it elsewhere.
 *
 * $$V = L \left(r^2 \arccos\frac{r - h}{r} - (r - h)\sqrt{2rh - h^2}\right) + \frac{c}{r}\,\frac{\pi h^2 (3r - h)}{3}$$
 *
 * @param input shape, sizes, level, tilt
 * @returns litres, share, strapping table
 * @throws InputError when a field is missing or out of range, or a tilt is given for dished ends or a standing cylinder
 * @source horizontal-tank-problem (segment of a circle); tank-fill-table (two dished ends); tilted: the same area integrated along the length in closed form
 * @example tankVolume({ shape: 'lying', lengthMm: 1000, widthMm: 400, heightMm: null, headDepthMm: 0, levelMm: 200, tiltDeg: 0, measuredFromLowMm: 0, rowCount: 10 }).volumeL //=> 62.8319
 */
export function tankVolume(input: TankVolumeInput): TankVolumeResult {
  const highestLevelMm = guard(input);
  const { levelMm, rowCount, lengthMm, tiltDeg } = input;
  const slope = Math.tan((tiltDeg * Math.PI) / 180);
  const at = (level: number): number => litres(input, level, slope);
  const totalL = litres(input, highestLevelMm + slope * lengthMm, slope);
  const volumeL = at(levelMm);
  return {
    volumeL,
    totalL,
    fillFraction: volumeL / totalL,
    highestLevelMm,
    strapping: Array.from({ length: rowCount + 1 }, (_, i) => {
      const level = (highestLevelMm * i) / rowCount;
      return { levelMm: level, levelFraction: i / rowCount, volumeL: at(level) };
    }),
  };
}

function litres(input: TankVolumeInput, level: number, slope: number): number {
  const { shape, lengthMm, widthMm, headDepthMm, measuredFromLowMm } = input;
  const height = input.heightMm ?? widthMm;
  const r = widthMm / 2;
  if (shape === 'standing') return standing(r, lengthMm, headDepthMm, level) / 1e6;
  const [area, summed] =
    shape === 'box'
      ? [(h: number) => widthMm * h, (h: number) => (widthMm * h * h) / 2]
      : [(h: number) => segment(r, h), (h: number) => segmentSummed(r, h)];
  const clamp = (h: number): number => Math.min(height, Math.max(0, h));
  if (slope === 0) {
    const h = clamp(level);
    const heads = shape === 'lying' ? (headDepthMm / r) * ((Math.PI * h * h * (3 * r - h)) / 3) : 0;
    return (lengthMm * area(h) + heads) / 1e6;
  }
  // Depths at both ends, and the area summed between them; above the top it stays that of the whole section.
  const deep = level + slope * measuredFromLowMm;
  const shallow = deep - slope * lengthMm;
  const low = clamp(shallow);
  const high = clamp(deep);
  const full = Math.max(0, deep - Math.max(height, shallow));
  // A difference so small that the sums would cancel: Simpson's rule, exact to the fourth order of it.
  const wet =
    high - low < 1e-3 * height
      ? ((high - low) * (area(low) + 4 * area((low + high) / 2) + area(high))) / 6
      : summed(high) - summed(low);
  return (wet + full * area(height)) / slope / 1e6;
}

/** arccos((r − h)/r), in a form that keeps its digits next to the floor and the top. */
function angle(r: number, h: number): number {
  return 2 * Math.atan2(Math.sqrt(Math.max(0, h)), Math.sqrt(Math.max(0, 2 * r - h)));
}

/** Area of a circle up to a depth. */
function segment(r: number, h: number): number {
  const u = r - h;
  return r * r * angle(r, h) - u * Math.sqrt(Math.max(0, h * (2 * r - h)));
}

/** Its sum over the depth from the floor. */
function segmentSummed(r: number, h: number): number {
  const u = r - h;
  const s = Math.sqrt(Math.max(0, h * (2 * r - h)));
  return r * r * (s - u * angle(r, h)) - (s * s * s) / 3;
}

/** An upright cylinder between two dished ends, in mm³. */
function standing(r: number, length: number, c: number, level: number): number {
  const base = Math.PI * r * r;
  /** A dished end filled from its middle up to its rim. */
  const end = (h: number): number => (c === 0 ? 0 : base * ((h * h) / c - (h * h * h) / (3 * c * c)));
  const bottom = Math.min(level, c);
  const middle = Math.min(Math.max(level - c, 0), length);
  const top = Math.min(Math.max(level - c - length, 0), c);
  return end(bottom) + base * middle + end(c) - end(c - top);
}

function guard(input: TankVolumeInput): number {
  const fn = 'tankVolume';
  needInput(fn, input);
  const { shape, lengthMm, widthMm, heightMm, headDepthMm, levelMm, tiltDeg } = input;
  needOneOf(fn, 'shape', shape, ['box', 'lying', 'standing']);
  for (const field of ['lengthMm', 'widthMm'] as const) needBetween(fn, field, input[field], 1e-3, 1e6);
  needNoLessThan(fn, 'headDepthMm', headDepthMm);
  if (headDepthMm !== 0) needBetween(fn, 'headDepthMm', headDepthMm, 1e-3, 1e6);
  if (shape === 'box') {
    needMoreThan(fn, 'heightMm', heightMm as number);
    needBetween(fn, 'heightMm', heightMm as number, 1e-3, 1e6);
    if (headDepthMm !== 0) throw new InputError(fn, 'headDepthMm', 'range', headDepthMm, 'must be 0 for a box');
  } else if (heightMm !== null) {
    const hint = 'the height follows from the diameter or the length';
    throw new InputError(fn, 'heightMm', 'range', heightMm, 'must be null for a cylinder', hint);
  }
  needBetween(fn, 'tiltDeg', tiltDeg, 0, 45);
  if (tiltDeg !== 0) {
    needBetween(fn, 'tiltDeg', tiltDeg, 1e-6, 45);
    if (headDepthMm !== 0 || shape === 'standing') {
      const must = 'must be 0 for dished ends and for a standing cylinder';
      throw new InputError(fn, 'tiltDeg', 'range', tiltDeg, must);
    }
  }
  needBetween(fn, 'measuredFromLowMm', input.measuredFromLowMm, 0, lengthMm);
  needInteger(fn, 'rowCount', input.rowCount, 1);
  needBetween(fn, 'rowCount', input.rowCount, 1, 200);
  const highest = shape === 'standing' ? lengthMm + 2 * headDepthMm : (heightMm ?? widthMm);
  needBetween(fn, 'levelMm', levelMm, 0, highest, 'the tank is no higher');
  return highest;
}
