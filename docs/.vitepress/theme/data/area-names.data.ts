import { defineLoader } from 'vitepress';
import areas, { type Area } from './areas.data';

declare const data: readonly string[];
export { data };

/** Names only: they stand in the rail of every page of the reference. */
export default defineLoader({
  watch: ['../../../../packages/loomwright/package.json', '../../../../packages/loomwright/src/*/*.ts'],
  async load(): Promise<string[]> {
    const listed = (await areas.load([])) as readonly Area[];
    return listed.filter((area) => area.functions.length > 0).map((area) => area.name);
  },
});
