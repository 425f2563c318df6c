import { InputError } from '../error/index.js';
import { needAbove, needBetween, needInput, needInteger, needOneOf } from '../error/guard.js';
import { alongPrism, plumb, segment, segmentSummed, tiltedBox, tiltedHead } from './tank-shape.js';

export interface TankVolumeInput {
  /** `box`; `lying`: a cylinder with its axis level; `standing`: one with its axis upright. All sizes are inside ones. */
  readonly shape: 'box' | 'lying' | 'standing';
  /** Length in mm, 1 to 100 000: of the box or of the cylinder without its ends. */
  readonly lengthMm: number;
  /** Width of the box or diameter of the cylinder in mm, 1 to 100 000. */
  readonly widthMm: number;
  /** Height of the box in mm, 1 to 100 000; null for a cylinder, whose height follows from the rest. */
  readonly heightMm: number | null;
  /** Depth of each dished end (half of an ellipsoid) in mm, 1 to 100 000; 0 for flat ends, and for a box. */
  readonly headDepthMm: number;
  /**
   * Level where it is measured, 0 to the height of the tank: upwards from the floor, square to it. In a standing cylinder
   * along its axis, from its lowest point when it stands plumb.
   */
  readonly levelMm: number;
  /** How far the tank is tilted, 0 to 45: along the length of a box or a lying cylinder, from plumb a standing one. */
  readonly tiltDeg: number;
  /**
   * Where the level is measured: from the low end along the length in mm, 0 to the length; in a standing cylinder from
   * the low side along its diameter. No matter without tilt.
   */
  readonly measuredFromLowMm: number;
  /** How far a box is tilted across its width as well, 0 to 45; 0 for a cylinder. */
  readonly crossTiltDeg: number;
  /** Where the level is measured: from the low side across the width of a box in mm, 0 to the width. */
  readonly measuredFromLowSideMm: number;
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

/** A thimble, and more than any tank on wheels holds. */
const LEAST_L = 0.001;
const MOST_L = 200_000;

/**
 * Litres in a tank by the level: a box, a cylinder lying or standing, flat or dished ends, plumb or tilted, a box both
 * ways; with its strapping table.
 *
 * Inside sizes, no baffles, pipes or rounded edges: a real tank is calibrated with cans. A tank that is tilted holds
 * the same, but the float sees it elsewhere. A lying cylinder that is rolled about its own axis is no other tank.
 *
 * $$V = L \left(r^2 \arccos\frac{r - h}{r} - (r - h)\sqrt{2rh - h^2}\right) + \frac{c}{r}\,\frac{\pi h^2 (3r - h)}{3}$$
 *
 * @param input shape, sizes, level, tilt
 * @returns litres, share, strapping table
 * @throws InputError when a field is missing or out of range, the sizes make less than a millilitre or more than 200 000 L, or a second tilt is given for a cylinder
 * @source horizontal-tank-problem (segment of a circle); tank-fill-table (two dished ends); tilted: the same area integrated along the length in closed form, dished ends by quadrature to 10⁻⁹
 * @example tankVolume({ shape: 'lying', lengthMm: 1000, widthMm: 400, heightMm: null, headDepthMm: 0, levelMm: 200, tiltDeg: 0, measuredFromLowMm: 0, crossTiltDeg: 0, measuredFromLowSideMm: 0, rowCount: 10 }).volumeL //=> 62.8319
 */
export function tankVolume(input: TankVolumeInput): TankVolumeResult {
  const highestLevelMm = guard(input);
  const { shape, levelMm, rowCount, lengthMm, widthMm, headDepthMm } = input;
  const at = (level: number): number => litres(input, level);
  const totalL =
    shape === 'box'
      ? (lengthMm * widthMm * highestLevelMm) / 1e6
      : (Math.PI * (widthMm / 2) ** 2 * (lengthMm + (4 * headDepthMm) / 3)) / 1e6;
  if (!(totalL >= LEAST_L && totalL <= MOST_L)) {
    const must = `must make a tank of ${LEAST_L} to ${MOST_L} L with the other sizes`;
    const hint = `that makes ${Number(totalL.toPrecision(2))} L: are all sizes in mm?`;
    throw new InputError('tankVolume', 'lengthMm', 'range', lengthMm, must, hint);
  }
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

function litres(input: TankVolumeInput, level: number): number {
  const { shape, lengthMm, widthMm, heightMm, headDepthMm, measuredFromLowMm } = input;
  const r = widthMm / 2;
  const slope = slopeOf(input.tiltDeg);
  if (shape === 'box') {
    const crossSlope = slopeOf(input.crossTiltDeg);
    const deep = level + slope * measuredFromLowMm + crossSlope * input.measuredFromLowSideMm;
    return tiltedBox([lengthMm, widthMm, heightMm as number], deep, slope, crossSlope) / 1e6;
  }
  if (shape === 'standing') {
    if (slope === 0) return plumb(r, lengthMm, headDepthMm, level) / 1e6;
    // Each section across the axis is wet from its low side up to where the surface meets it.
    const bottom = measuredFromLowMm + (level - headDepthMm) / slope;
    const top = bottom - lengthMm / slope;
    const body = slope * (segmentSummed(r, bottom) - segmentSummed(r, top));
    return (body + bothHeads(r, headDepthMm, bottom, top, 1 / slope)) / 1e6;
  }
  const deep = level + slope * measuredFromLowMm;
  const section = { height: widthMm, area: (h: number) => segment(r, h), summed: (h: number) => segmentSummed(r, h) };
  const body = alongPrism(section, lengthMm, deep, slope);
  if (slope !== 0) return (body + bothHeads(r, headDepthMm, deep, deep - slope * lengthMm, slope)) / 1e6;
  const h = Math.min(widthMm, Math.max(0, level));
  return (body + (headDepthMm / r) * ((Math.PI * h * h * (3 * r - h)) / 3)) / 1e6;
}

const slopeOf = (tiltDeg: number): number => Math.tan((tiltDeg * Math.PI) / 180);

/** Both dished ends: the depth at the rim of each, and how fast it grows outwards at the low one. */
function bothHeads(r: number, c: number, low: number, high: number, rise: number): number {
  return c === 0 ? 0 : tiltedHead(r, c, low, rise) + tiltedHead(r, c, high, -rise);
}

function guard(input: TankVolumeInput): number {
  const fn = 'tankVolume';
  needInput(fn, input);
  const { shape, lengthMm, widthMm, heightMm, headDepthMm, levelMm } = input;
  needOneOf(fn, 'shape', shape, ['box', 'lying', 'standing']);
  const size = (field: 'lengthMm' | 'widthMm' | 'heightMm' | 'headDepthMm'): void => {
    const value = input[field] as number;
    needAbove(fn, field, value);
    needBetween(fn, field, value, 1, 1e5, value < 1 ? 'is this in m?' : '');
  };
  size('lengthMm');
  size('widthMm');
  if (headDepthMm !== 0) size('headDepthMm');
  if (shape === 'box') {
    size('heightMm');
    if (headDepthMm !== 0) throw new InputError(fn, 'headDepthMm', 'range', headDepthMm, 'must be 0 for a box');
  } else if (heightMm !== null) {
    const hint = 'the height follows from the diameter or the length';
    throw new InputError(fn, 'heightMm', 'range', heightMm, 'must be null for a cylinder', hint);
  }
  for (const field of ['tiltDeg', 'crossTiltDeg'] as const) {
    needBetween(fn, field, input[field], 0, 45);
    if (input[field] !== 0) needBetween(fn, field, input[field], 1e-6, 45);
  }
  const { crossTiltDeg } = input;
  if (crossTiltDeg !== 0 && shape !== 'box') {
    const must = 'must be 0 for a cylinder';
    throw new InputError(fn, 'crossTiltDeg', 'range', crossTiltDeg, must, 'turn a standing one so that tiltDeg is all');
  }
  needBetween(fn, 'measuredFromLowMm', input.measuredFromLowMm, 0, shape === 'standing' ? widthMm : lengthMm);
  needBetween(fn, 'measuredFromLowSideMm', input.measuredFromLowSideMm, 0, widthMm);
  needInteger(fn, 'rowCount', input.rowCount, 1);
  needBetween(fn, 'rowCount', input.rowCount, 1, 200);
  const highest = shape === 'standing' ? lengthMm + 2 * headDepthMm : (heightMm ?? widthMm);
  needBetween(fn, 'levelMm', levelMm, 0, highest, 'the tank is no higher');
  return highest;
}
