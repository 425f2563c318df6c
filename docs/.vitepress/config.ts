import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitepress';
import { dark, light } from './code-theme';
import { withContentPolicy } from './content-policy';
import { formulaTrees } from './formula-trees';
import { bookMarkdown } from './markdown';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The site may live under a sub-path: LOOMWRIGHT_BASE=/handbook/ */
const base = `/${process.env['LOOMWRIGHT_BASE'] ?? ''}/`.replace(/\/+/g, '/');

/** The specimen of all that the theme can set is built only on demand: LOOMWRIGHT_PROOF=1 */
const proof = process.env['LOOMWRIGHT_PROOF'] === '1';

/** The page for a wrong address is made by its script; without one there is at least a way back. */
const lost = `<noscript><p>No page is joined to this address. <a href="${base}">Start again</a>.</p></noscript>`;

export default defineConfig({
  base,
  lang: 'en-GB',
  title: 'loomwright',
  titleTemplate: ':title · loomwright',
  description: 'Electrical calculations for people who wire a vehicle themselves.',
  srcExclude: ['README.md', ...(proof ? [] : ['proof/**'])],
  metaChunk: true,
  router: { prefetchLinks: false },
  scrollOffset: 28,
  head: [
    ['link', { rel: 'icon', type: 'image/svg+xml', href: `${base}favicon.svg` }],
    ['meta', { name: 'theme-color', content: '#fbf8f2', media: '(prefers-color-scheme: light)' }],
    ['meta', { name: 'theme-color', content: '#171a18', media: '(prefers-color-scheme: dark)' }],
  ],
  markdown: {
    math: true,
    typographer: true,
    quotes: '“”‘’',
    theme: { light, dark },
    headers: { level: [2] },
    gfmAlerts: false,
    codeCopyButtonTitle: 'Copy this code',
    config: bookMarkdown,
  },
  transformHead: ({ assets }) => {
    const serif = assets.find((file) => /source-serif-4-latin-wght-normal\.[\w-]+\.woff2$/.test(file));
    if (serif === undefined) return [];
    return [['link', { rel: 'preload', href: serif, as: 'font', type: 'font/woff2', crossorigin: '' }]];
  },
  transformHtml: (html) => withContentPolicy(html.replace('<div id="app"></div>', `<div id="app"></div>${lost}`)),
  vite: {
    plugins: [formulaTrees()],
    build: { assetsInlineLimit: 0, target: 'es2022' },
    worker: { format: 'es' },
    resolve: {
      alias: [
        { find: /^loomwright$/, replacement: at('../../packages/loomwright/src/index.ts') },
        { find: /^loomwright\/([\w-]+)$/, replacement: at('../../packages/loomwright/src/$1/index.ts') },
        { find: /^@loomwright\/(worked|harness)$/, replacement: at('../../packages/$1/src/index.ts') },
        { find: /^@loomwright\/(worked|harness)\/([\w-]+)$/, replacement: at('../../packages/$1/src/$2/index.ts') },
      ],
    },
    ssr: { noExternal: [/^loomwright/, /^@loomwright\//] },
  },
});
