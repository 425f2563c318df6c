import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineLoader } from 'vitepress';

export interface ListedNotebook {
  readonly title: string;
  readonly summary: string;
  /** Name of the file without its ending: the page of the notebook has the same. */
  readonly name: string;
}

declare const data: readonly ListedNotebook[];
export { data };

const folder = fileURLToPath(new URL('../../../notebooks/', import.meta.url));

interface Cell {
  readonly cell_type: string;
  readonly source: string | readonly string[];
}

/** Every notebook in the folder: its first heading and the first paragraph below it. */
export default defineLoader({
  watch: ['../../../notebooks/*.ipynb'],
  load(): ListedNotebook[] {
    return readdirSync(folder)
      .filter((file) => file.endsWith('.ipynb'))
      .sort()
      .map((file) => {
        const { cells } = JSON.parse(readFileSync(`${folder}${file}`, 'utf8')) as { cells: readonly Cell[] };
        const text = cells
          .filter((cell) => cell.cell_type === 'markdown')
          .map((cell) => (typeof cell.source === 'string' ? cell.source : cell.source.join('')))
          .join('\n\n');
        const [, title = file, rest = ''] = /^#\s+(.+)\n+([\s\S]*)$/m.exec(text) ?? [];
        const summary = rest.split(/\n\s*\n/).find((part) => part.trim() !== '' && !part.startsWith('#')) ?? '';
        const plain = summary.replace(/[*_`]/g, '').replace(/\s+/g, ' ').trim();
        return { title, summary: plain, name: file.replace(/\.ipynb$/, '') };
      });
  },
});
