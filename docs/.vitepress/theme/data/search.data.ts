import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import MiniSearch from 'minisearch';
import { createMarkdownRenderer, defineLoader, type MarkdownEnv, type SiteConfig } from 'vitepress';
import areas, { type Area } from './areas.data';
import terms, { type ListedTerm } from './nomenclature.data';
import { type SearchEntry, searchOptions } from './search';

/** The index as text, so that only a reader who searches pays for parsing it. */
declare const data: string;
export { data };

/** One entry for the opening of each page, one for each of its headings of the second rank, one for each function. */
export default defineLoader({
  watch: ['../../../**/*.md', '!../../../node_modules/**'],
  async load(): Promise<string> {
    const site = (globalThis as unknown as { VITEPRESS_CONFIG: SiteConfig }).VITEPRESS_CONFIG;
    const md = await createMarkdownRenderer(site.srcDir, site.markdown, site.site.base, site.logger);
    const index = new MiniSearch<SearchEntry>(searchOptions);
    for (const page of site.pages.filter((each) => !each.startsWith('api/'))) {
      const path = join(site.srcDir, page);
      const written = site.dynamicRoutes.routes.find((route) => route.path === page)?.content;
      const source = written ?? (existsSync(path) ? readFileSync(path, 'utf8') : '');
      const env: MarkdownEnv = { path, relativePath: page };
      const html = md.render(source, env);
      const url = `/${page.replace(/(^|\/)index\.md$/, '$1').replace(/\.md$/, '.html')}`;
      for (const entry of entriesOf(url, html, env.frontmatter ?? {})) if (!index.has(entry.id)) index.add(entry);
    }
    index.addAll(((await areas.load([])) as readonly Area[]).flatMap(entriesOfArea));
    index.addAll(((await terms.load([])) as readonly ListedTerm[]).map(entryOfTerm));
    return JSON.stringify(index);
  },
});

function entriesOf(url: string, html: string, front: Readonly<Record<string, unknown>>): SearchEntry[] {
  if (front['search'] === false) return [];
  const [start = '', ...sections] = html.split(/(?=<h2\b)/);
  const page = String(front['title'] ?? plain(/<h1[^>]*>(.*?)<\/h1>/s.exec(start)?.[1] ?? ''));
  const names = Array.isArray(front['answers']) ? front['answers'].join(' ') : '';
  const opening = plain(`${front['question'] ?? ''} ${start}`);
  const rest = sections.map((section) => {
    const [whole = '', anchor = '', heading = ''] = /^<h2 id="([^"]*)"[^>]*>(.*?)<\/h2>/s.exec(section) ?? [];
    const text = plain(section.slice(whole.length));
    return { id: `${url}#${anchor}`, page, title: '', section: plain(heading), names: '', text, lead: leadOf(text) };
  });
  return [{ id: url, page, title: page, section: '', names, text: opening, lead: leadOf(opening) }, ...rest];
}

/** The functions of an area, each with its own page in the reference. */
function entriesOfArea({ name: area, functions }: Area): SearchEntry[] {
  return functions.map(({ name, summary }) => {
    const text = summary.replace(/[`$]/g, '');
    return {
      id: `/api/${area}/${name}.html`,
      page: 'Reference',
      title: '',
      section: name,
      names: name,
      text,
      lead: leadOf(text),
    };
  });
}

/** A name of the nomenclature. */
function entryOfTerm({ name, meaning, unit }: ListedTerm): SearchEntry {
  const text = unit === '' ? meaning : `${meaning}, ${unit}`;
  return {
    id: `/reference/nomenclature.html#${name}`,
    page: 'Nomenclature',
    title: '',
    section: name,
    names: name,
    text,
    lead: text,
  };
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** Words only: no tags, no mathematics, no permalinks, no expressions of a template. */
function plain(html: string): string {
  return html
    .replace(/<mjx-container[\s\S]*?<\/mjx-container>/g, ' ')
    .replace(/<a class="header-anchor"[\s\S]*?<\/a>/g, '')
    .replace(/<(script|style|svg)[\s\S]*?<\/\1>/g, ' ')
    .replace(/<span class="lang">[^<]*<\/span>/g, '')
    .replace(/\{\{[\s\S]*?\}\}/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&([a-z]+|#39);/gi, (_, name: string) => ENTITIES[name] ?? ' ')
    .replace(/\s+/g, ' ')
    .replace(/ ([.,;:?!)])/g, '$1')
    .trim();
}

function leadOf(text: string): string {
  return text.length <= 120 ? text : `${text.slice(0, 120).replace(/\s+\S*$/, '')} …`;
}
