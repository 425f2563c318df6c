import { createContentLoader } from 'vitepress';
import { type Chapter, chaptersOf, HANDBOOK_GLOB } from './handbook';

declare const data: readonly Chapter[];
export { data };

/** The whole front matter of the handbook, for its list of chapters and for the reference. */
export default createContentLoader(HANDBOOK_GLOB, { transform: chaptersOf });
