import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('./', import.meta.url));

interface Output {
  readonly output_type: string;
  readonly data?: Readonly<Record<string, string | readonly string[]>>;
  readonly text?: string | readonly string[];
}

interface Cell {
  readonly cell_type: string;
  readonly source: string | readonly string[];
  readonly outputs?: readonly Output[];
}

const joined = (text: string | readonly string[] | undefined): string => [text ?? ''].flat().join('');

/** Each notebook as a page: its words, its code, and its outputs as they were when it was last run and checked. */
export default {
  watch: ['./*.ipynb'],
  paths(): { params: { name: string }; content: string }[] {
    return readdirSync(folder)
      .filter((file) => file.endsWith('.ipynb'))
      .map((file) => {
        const { cells } = JSON.parse(readFileSync(`${folder}${file}`, 'utf8')) as { cells: readonly Cell[] };
        return { params: { name: file.replace(/\.ipynb$/, '') }, content: cells.map(page).join('\n\n') };
      });
  },
};

function page(cell: Cell): string {
  const source = joined(cell.source);
  if (cell.cell_type === 'markdown') return source;
  return [`\`\`\`ts\n${source}\n\`\`\``, ...(cell.outputs ?? []).map(output)].join('\n\n');
}

function output({ data, text }: Output): string {
  if (data === undefined) return plain(joined(text));
  if (data['text/markdown'] !== undefined)
    return `<div class="notebook-output">\n\n${joined(data['text/markdown'])}\n\n</div>`;
  const html = data['text/html'] ?? data['image/svg+xml'];
  if (html !== undefined) {
    // One line, so that Markdown takes it as one block of HTML; Vue takes no <style> in a template.
    const line = joined(html)
      .replace(/<style>[\s\S]*?<\/style>/g, '')
      .replace(/\s*\n\s*/g, ' ');
    const scrolls = 'class="scroll" tabindex="0" role="group" aria-label="Figure, scrolls sideways where it is narrow"';
    return `<div class="notebook-output" v-pre><div ${scrolls}>${line}</div></div>`;
  }
  return plain(joined(data['text/plain']));
}

function plain(text: string): string {
  return `<div class="notebook-output">\n\n\`\`\`text\n${text.trimEnd()}\n\`\`\`\n\n</div>`;
}
