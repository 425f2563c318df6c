import { type Check, makeCheck } from '../check/index.js';
import { InputError } from '../error/index.js';
import { needEarthly, needMoreThan } from '../error/bounded.js';
import { needBetween, needObject, needOneOf, needText } from '../error/guard.js';
import { type CalibrationCell, needCells } from '../number/cells.js';
import type { DropBudget } from '../table/index.js';
import { lookUp } from './look-up.js';

/** How volts at the input become the sensor's unit. */
export type OffsetScale =
  /** One volt more means so much more, not 0. */
  | { readonly kind: 'slope'; readonly valuePerV: number }
  /** Volts and what is shown for them, rising in volts, always the same way in value. Outside there is no reading. */
  | { readonly kind: 'points'; readonly cells: readonly CalibrationCell[] }
  /** A function that reads a value from volts, such as one around `linearSensor`; null where it has no reading. */
  | { readonly kind: 'function'; readonly by: (inputV: number) => number | null };

/** A sensor, where its ground is taken and how an offset of that ground reaches its reading. */
export interface OffsetSensor {
  readonly name: string;
  /** Point that its ground is taken from, and the ground of the controller that reads it. */
  readonly groundAt: string;
  readonly controllerAt: string;
  /** Whether its ground is a wire, that can be laid elsewhere, or the body that it is screwed into. */
  readonly groundedBy: 'wire' | 'body';
  /** Volts of its own; a share of the controller's supply; a resistance with its pull-up there; two wires read as a pair. */
  readonly reads: 'absolute' | 'ratiometric' | 'pull-up' | 'differential';
  /** Volts at the input without loads, at the place that is judged: 0 to the reference; a share at most the supply. */
  readonly inputV: number;
  readonly scale?: OffsetScale;
  /** Unit of the scale, for checks. */
  readonly unit?: string;
  /** Budget of its ground's shift, such as `sensorGroundBudget`; not judged on a differential sensor. */
  readonly budget?: DropBudget;
  /** Most that the reading may be off, in mV, above 0. */
  readonly permittedMv?: number;
  /** The same in the sensor's unit, above 0; needs a scale. One of the three must be there. */
  readonly permittedValue?: number;
}

/** What a shift of the sensor's ground does to its reading. */
export interface OffsetError {
  /** By how much the sensor's ground stands above the controller's, in mV. */
  readonly shiftMv: number;
  /** By how much the reading is off, in mV and in counts of the converter, not rounded. */
  readonly errorMv: number;
  readonly errorCount: number;
  /** Whether the reading is held at an end of the converter. */
  readonly overRange: 'no' | 'below' | 'above';
  /** What is shown, and by how much that is off; null without a scale or where it has no reading. */
  readonly shownValue: number | null;
  readonly errorValue: number | null;
}

/** What the controller's converter and supply are. */
export interface OffsetConverter {
  readonly supplyV: number;
  readonly referenceV: number;
  readonly converterBits: number;
}

/** A sensor with what follows from it alone. */
export interface ReadySensor {
  readonly sensor: OffsetSensor;
  /** Share of a shift that reaches the reading. */
  readonly passedFraction: number;
  /** What it shows without loads; null without a scale. */
  readonly trueValue: number | null;
  readonly errorOf: (shiftV: number) => OffsetError;
  /** Largest shift upwards and downwards, in V, that meets every limit; null where any does. */
  readonly mostRaisedV: number | null;
  readonly mostLoweredV: number | null;
  /** Largest share of what is borne that shifts between these two take: at most 1 is met. */
  readonly shareOf: (raisedV: number, loweredV: number) => number;
}

const PASSES = ['absolute', 'ratiometric', 'pull-up', 'differential'];

/** Checks a sensor and works out what it bears. */
export function readySensor(fn: string, at: string, sensor: OffsetSensor, converter: OffsetConverter): ReadySensor {
  needSensor(fn, at, sensor, converter);
  const { reads, inputV, scale } = sensor;
  const { supplyV, referenceV, converterBits } = converter;
  const passedFraction = reads === 'differential' ? 0 : reads === 'absolute' ? 1 : 1 - inputV / supplyV;
  const trueValue = scale === undefined || scale.kind === 'slope' ? null : valueOf(fn, at, scale, inputV);
  if (scale !== undefined && scale.kind !== 'slope' && trueValue === null) {
    throw new InputError(fn, `${at}.inputV`, 'range', inputV, 'must lie where the scale has a reading');
  }
  const errorOf = (shiftV: number): OffsetError => {
    const exactV = inputV + passedFraction * shiftV;
    const readV = Math.min(Math.max(exactV, 0), referenceV);
    // Nought, not minus nought, for what passes nothing.
    const errorV = readV === exactV ? passedFraction * shiftV + 0 : readV - inputV;
    const shownValue = scale === undefined || scale.kind === 'slope' ? null : valueOf(fn, at, scale, readV);
    return {
      shiftMv: shiftV * 1000,
      errorMv: errorV * 1000,
      errorCount: (errorV / referenceV) * 2 ** converterBits,
      overRange: exactV < 0 ? 'below' : exactV > referenceV ? 'above' : 'no',
      shownValue,
      errorValue:
        scale?.kind === 'slope'
          ? errorV * scale.valuePerV
          : shownValue === null
            ? null
            : shownValue - (trueValue as number),
    };
  };
  const meets = (shiftV: number): boolean => {
    const error = errorOf(shiftV);
    return limitsOf(sensor).every(({ limit, of }) => {
      const size = of(error);
      return size !== null && size <= limit;
    });
  };
  const mostRaisedV = largest((v) => meets(v), referenceV);
  const mostLoweredV = largest((v) => meets(-v), referenceV);
  const shareOf = (raisedV: number, loweredV: number): number =>
    Math.max(mostRaisedV === null ? 0 : raisedV / mostRaisedV, mostLoweredV === null ? 0 : -loweredV / mostLoweredV);
  return { sensor, passedFraction, trueValue, errorOf, mostRaisedV, mostLoweredV, shareOf };
}

function valueOf(
  fn: string,
  at: string,
  scale: Exclude<OffsetScale, { kind: 'slope' }>,
  inputV: number,
): number | null {
  if (scale.kind === 'points') return lookUp({ cells: scale.cells, inValue: inputV, outside: 'fault' }).outValue;
  const value = scale.by(inputV);
  if (value !== null) needEarthly(fn, `${at}.scale.by`, value);
  return value;
}

/** A sensor at the very end of its scale bears nothing; this stands for it, so that a share of it is a number. */
const LEAST_V = 1e-12;

/** The largest shift up to an end that still meets; null where the end does. Nothing that does not meet comes out. */
function largest(meets: (shiftV: number) => boolean, endV: number): number | null {
  if (meets(endV)) return null;
  let low = 0;
  let high = endV;
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2;
    if (meets(middle)) low = middle;
    else high = middle;
  }
  return Math.max(low, LEAST_V);
}

interface OffsetLimit {
  readonly name: string;
  readonly unit: string;
  readonly limit: number;
  readonly of: (error: OffsetError) => number | null;
  readonly budget?: DropBudget;
}

function limitsOf({ name, reads, unit, budget, permittedMv, permittedValue }: OffsetSensor): readonly OffsetLimit[] {
  const limits: OffsetLimit[] = [];
  if (budget !== undefined && reads !== 'differential') {
    const of = ({ shiftMv }: OffsetError): number => Math.abs(shiftMv);
    limits.push({ name: `ground of ${name}`, unit: 'mV', limit: budget.dropV * 1000, of, budget });
  }
  if (permittedMv !== undefined) {
    const of = ({ errorMv }: OffsetError): number => Math.abs(errorMv);
    limits.push({ name: `reading of ${name}`, unit: 'mV', limit: permittedMv, of });
  }
  if (permittedValue !== undefined) {
    const of = ({ errorValue }: OffsetError): number | null => (errorValue === null ? null : Math.abs(errorValue));
    limits.push({ name: `${name} in its unit`, unit: unit ?? '', limit: permittedValue, of });
  }
  return limits;
}

/** A check a limit, judged by the worse of two errors. */
export function offsetChecks({ sensor }: ReadySensor, raised: OffsetError, lowered: OffsetError): readonly Check[] {
  return limitsOf(sensor).map(({ name, unit, limit, of, budget }) => {
    const sizes = [of(raised), of(lowered)];
    const none = sizes.includes(null);
    return makeCheck({
      name,
      value: none ? null : Math.max(...(sizes as number[])),
      limit,
      unit,
      sense: 'atMost',
      source: budget?.source ?? 'given-by-caller',
      sourceStatus: budget?.status ?? 'derived',
      ...(none ? { because: 'the reading is moved to where its scale has none' } : {}),
    });
  });
}

function needSensor(fn: string, at: string, sensor: OffsetSensor, { supplyV, referenceV }: OffsetConverter): void {
  needObject(fn, at, sensor);
  const { reads, inputV, scale, budget, permittedMv, permittedValue } = sensor;
  for (const field of ['name', 'groundAt', 'controllerAt'] as const) needText(fn, `${at}.${field}`, sensor[field]);
  needOneOf(fn, `${at}.groundedBy`, sensor.groundedBy, ['wire', 'body']);
  needOneOf(fn, `${at}.reads`, reads, PASSES);
  const share = reads === 'ratiometric' || reads === 'pull-up';
  needBetween(fn, `${at}.inputV`, inputV, 0, share ? Math.min(supplyV, referenceV) : referenceV);
  if (budget !== undefined) {
    needObject(fn, `${at}.budget`, budget);
    needMoreThan(fn, `${at}.budget.dropV`, budget.dropV);
  }
  if (permittedMv !== undefined) needMoreThan(fn, `${at}.permittedMv`, permittedMv);
  if (sensor.unit !== undefined) needText(fn, `${at}.unit`, sensor.unit);
  if (permittedValue !== undefined) needMoreThan(fn, `${at}.permittedValue`, permittedValue);
  if (budget === undefined && permittedMv === undefined && permittedValue === undefined) {
    const must = 'or permittedMv or permittedValue is required: by which it is judged';
    throw new InputError(fn, `${at}.budget`, 'missing', undefined, must);
  }
  if (scale !== undefined) needScale(fn, `${at}.scale`, scale);
  else if (permittedValue !== undefined) {
    throw new InputError(fn, `${at}.scale`, 'missing', undefined, 'is required for permittedValue');
  }
}

function needScale(fn: string, at: string, scale: OffsetScale): void {
  needObject(fn, at, scale);
  needOneOf(fn, `${at}.kind`, scale.kind, ['slope', 'points', 'function']);
  if (scale.kind === 'slope') {
    needEarthly(fn, `${at}.valuePerV`, scale.valuePerV);
    needMoreThan(fn, `${at}.valuePerV`, Math.abs(scale.valuePerV));
  } else if (scale.kind === 'points') {
    const { cells } = scale;
    needCells(fn, `${at}.cells`, cells);
    const way = Math.sign((cells[1] as CalibrationCell).outValue - (cells[0] as CalibrationCell).outValue);
    cells.forEach(({ outValue }, i) => {
      const before = cells[i - 1];
      if (before === undefined || way * (outValue - before.outValue) > 0) return;
      const must = 'must go the same way as the ones before: a sensor that turns back tells nothing';
      throw new InputError(fn, `${at}.cells[${i}].outValue`, 'order', outValue, must);
    });
  } else if (typeof scale.by !== 'function') {
    throw new InputError(fn, `${at}.by`, 'missing', scale.by, 'must be a function from volts to a value');
  }
}
