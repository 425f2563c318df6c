import { fieldUnit, formatQuantity } from '@loomwright/worked/quantity';
import { defineLoader } from 'vitepress';
import { given, written } from '../../../examples/first-inputs';

interface ReadQuantity {
  readonly written: string;
  readonly field: string;
  readonly read: string;
}

declare const data: readonly ReadQuantity[];
export { data };

/** What the first page's quantities are read as: computed when the site is built, so that no page loads the parser. */
export default defineLoader({
  watch: ['../../../examples/first-inputs.ts'],
  load(): ReadQuantity[] {
    return (Object.keys(written) as (keyof typeof written)[]).map((field) => ({
      written: written[field],
      field,
      read: formatQuantity(given[field], fieldUnit(field) ?? '', { digits: 4 }),
    }));
  },
});
