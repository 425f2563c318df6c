import { fieldUnit, parseQuantity, parseSize, QuantityError } from '@loomwright/worked/quantity';
import type { SizeInput } from 'loomwright';
import { z } from 'zod';

interface Range {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
}

/**
 * A quantity with its unit, such as `14 ft`, as the number that the core wants. `field` is the core's name, whose end
 * tells the unit. A bare number is an error that says so.
 */
export function quantity(field: string, range: Range = {}) {
  const unit = fieldUnit(field);
  if (unit === null) throw new Error(`${field} has no unit`);
  return z.union([z.string(), z.number()]).transform((given, context): number => {
    let value: number;
    try {
      value = parseQuantity(String(given), unit, field);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      context.addIssue({ code: 'custom', message: `${sentence(error)}.`, params: { rule: 'quantity' } });
      return z.NEVER;
    }
    const broken =
      range.min !== undefined && value < range.min
        ? `at least ${range.min}`
        : range.above !== undefined && value <= range.above
          ? `above ${range.above}`
          : range.max !== undefined && value > range.max
            ? `at most ${range.max}`
            : null;
    if (broken !== null) {
      context.addIssue({ code: 'custom', message: `must be ${broken}, got ${given}.`, params: { rule: 'range' } });
      return z.NEVER;
    }
    return value;
  });
}

/** A wire size: `2.5 mm²`, `18 AWG`, `SAE 18`. */
export function size() {
  return z.string().transform((given, context): SizeInput => {
    try {
      return parseSize(given, 'size');
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      context.addIssue({ code: 'custom', message: `${sentence(error)}.`, params: { rule: 'quantity' } });
      return z.NEVER;
    }
  });
}

/** The error's text without the field's own name, which the problem carries already. */
function sentence(error: QuantityError): string {
  return error.message.replace(/^\S+ /, '').replace(/\.$/, '');
}
