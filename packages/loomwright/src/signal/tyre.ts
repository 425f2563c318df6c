import { InputError } from '../error/index.js';
import { MM_PER_INCH } from '../unit/index.js';

/** Overall diameter in mm of a new tyre by its size marking: 205/55R16, 7.5R16 is refused, 31x10.5R15 is taken. */
export function tyreDiameterMm(fn: string, size: string): number {
  if (typeof size !== 'string') {
    const rule = size === undefined ? 'missing' : 'text';
    throw new InputError(fn, 'tyreSize', rule, size, "must be a text such as '205/55R16'");
  }
  const plain = size.replace(/\s+/g, '').toUpperCase();
  const metric = /^(?:P|LT)?(\d{3})\/(\d{2,3})(?:Z?R|-|B|D)(\d{2}(?:\.\d)?)C?$/.exec(plain);
  if (metric !== null) {
    const [width, aspect, rim] = metric.slice(1).map(Number) as [number, number, number];
    return rim * MM_PER_INCH + (2 * width * aspect) / 100;
  }
  const inches = /^(?:LT)?(\d{2}(?:\.\d+)?)[X×](\d{1,2}(?:\.\d+)?)(?:R|-)(\d{2}(?:\.\d)?)(?:LT)?$/.exec(plain);
  if (inches !== null) return Number(inches[1]) * MM_PER_INCH;
  const must = "must be a size such as '205/55R16' or '31x10.5R15'";
  throw new InputError(fn, 'tyreSize', 'text', size, must, 'else measure the rolling circumference');
}
