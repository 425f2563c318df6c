// Writes the reference of every public name into api/: one page a function, one an area with its constants and types.
// Typedoc reads the sources themselves, so that nothing has to be built for it but the list of sources.
import { mkdirSync, readdirSync, readFileSync, existsSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { nomenclature } from '@loomwright/worked/card';
import { sources } from 'loomwright';
import { Application, OptionDefaults, ReflectionKind } from 'typedoc';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const API = at('./api/');

/** Every entry in the order of its package's subpaths: where its source is, how it is imported, where its pages go. */
function entries() {
  const found = [];
  for (const folder of ['loomwright', 'worked', 'harness']) {
    const home = at(`../packages/${folder}/`);
    const { name, exports } = JSON.parse(readFileSync(`${home}package.json`, 'utf8'));
    const areas = Object.keys(exports).flatMap((path) => /^\.\/([\w-]+)$/.exec(path)?.[1] ?? []);
    for (const area of areas.length > 0 ? areas : ['']) {
      const file = area === '' ? `${home}src/index.ts` : `${home}src/${area}/index.ts`;
      if (!existsSync(file)) continue;
      const path = [folder === 'loomwright' ? '' : folder, area].filter(Boolean).join('/');
      found.push({ file, from: area === '' ? name : `${name}/${area}`, path, label: path.replace('/', ', ') });
    }
  }
  return found;
}

/** Which page of the handbook answers with a function, by its front matter. */
function handbookPages() {
  const pages = new Map();
  for (const file of readdirSync(at('./handbook/')).filter((name) => name.endsWith('.md'))) {
    const [, front = ''] = /^---\n([\s\S]*?)\n---/.exec(readFileSync(at(`./handbook/${file}`), 'utf8')) ?? [];
    const title = /^title:\s*(.+)$/m.exec(front)?.[1]?.replace(/^(['"])(.*)\1$/, '$2');
    const answers = /^answers:\s*\[([^\]]*)\]/m.exec(front)?.[1] ?? '';
    const listed = /^answers:\s*\n((?:\s+- .*\n?)*)/m.exec(front)?.[1] ?? '';
    for (const name of [...answers.split(','), ...listed.split(/\s+- /)].map((each) => each.trim())) {
      if (name !== '' && title !== undefined) pages.set(name, [...(pages.get(name) ?? []), { file, title }]);
    }
  }
  return pages;
}

const list = entries();
const app = await Application.bootstrap({
  entryPoints: list.map(({ file }) => file),
  tsconfig: at('./tsconfig.api.json'),
  blockTags: [...OptionDefaults.blockTags, '@source'],
  sort: ['source-order'],
  skipErrorChecking: true,
  excludeExternals: true,
  logLevel: 'Error',
});
const project = await app.convert();
if (project === undefined) throw new Error('typedoc read nothing');

const handbook = handbookPages();
const moduleOf = ({ file }) =>
  project.children.find((module) => module.sources?.some((source) => file.endsWith(source.fileName)));
const areas = list.map((entry) => ({ ...entry, members: moduleOf(entry)?.children ?? [] }));

/** Where each name has its page or its place: `link` from the folder of another page. */
const places = new Map();
for (const area of areas) {
  area.functions = area.members.filter((member) => member.kind === ReflectionKind.Function);
  area.constants = area.members.filter((member) => member.kind === ReflectionKind.Variable);
  const own = new Set(area.functions.flatMap(({ name }) => [`${upper(name)}Input`, `${upper(name)}Result`]));
  const types = area.members.filter((member) => !area.functions.includes(member) && !area.constants.includes(member));
  area.types = types.filter(({ name, kind }) => !own.has(name) && kind !== ReflectionKind.Reference);
  for (const member of area.functions) place(member.name, `${area.path}/${member.name}.md`);
  for (const member of area.constants) place(member.name, `${area.path}/index.md#${member.name}`);
  for (const member of types) {
    if (member.kind === ReflectionKind.Reference) continue;
    const [, owner = ''] = /^(.*)(?:Input|Result)$/.exec(member.name) ?? [];
    const fn = own.has(member.name) ? area.functions.find(({ name }) => upper(name) === owner) : undefined;
    place(member.name, fn === undefined ? `${area.path}/index.md#${member.name}` : `${area.path}/${fn.name}.md`);
  }
}

function upper(name) {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The core's name comes first where another package has the same. */
function place(name, path) {
  if (!places.has(name)) places.set(name, path);
}

/** The way from an area's folder up to that of all. */
function upTo(area) {
  return '../'.repeat(area.path.split('/').length);
}

/** Words of a doc block as Markdown that Vue does not take for a template: mathematics and code stay as they are. */
function words(parts, area, self) {
  return (parts ?? [])
    .map(({ kind, text }) => (kind === 'code' ? code(text, area, self) : safe(text)))
    .join('')
    .trim();
}

function safe(text) {
  return text
    .split(/(\$\$[\s\S]+?\$\$|\$[^$\n]+?\$)/)
    .map((piece, i) => (i % 2 === 1 ? piece : piece.replace(/</g, '&lt;').replace(/\{\{/g, '&#123;&#123;')))
    .join('');
}

/** A name that the packages export is a link to it. */
function code(text, area, self) {
  const name = /^`(\w+)`$/.exec(text)?.[1];
  const path = name === undefined || name === self ? undefined : places.get(name);
  return path === undefined ? text : `[${text}](${upTo(area)}${path})`;
}

function html(text) {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

/** A type as HTML, with the names of our own types as links. */
function typeHtml(type, area) {
  if (type === undefined) return '';
  switch (type.type) {
    case 'reference': {
      const args = type.typeArguments?.map((each) => typeHtml(each, area)).join(', ');
      const path = places.get(type.name);
      const target = path === undefined ? undefined : `${upTo(area)}${path.replace('.md', '.html')}`;
      const name = target === undefined ? html(type.name) : `<a href="${target}">${html(type.name)}</a>`;
      return args === undefined || args === '' ? name : `${name}&lt;${args}&gt;`;
    }
    case 'union':
      // The compiler writes the keys of all sources out.
      if (type.types.length > 20) return typeHtml({ type: 'reference', name: 'SourceKey' }, area);
      return type.types.map((each) => typeHtml(each, area)).join(' | ');
    case 'intersection':
      return type.types.map((each) => typeHtml(each, area)).join(' &amp; ');
    case 'array':
      return /union|intersection|typeOperator/.test(type.elementType.type)
        ? `(${typeHtml(type.elementType, area)})[]`
        : `${typeHtml(type.elementType, area)}[]`;
    case 'typeOperator':
      return type.operator === 'readonly' ? typeHtml(type.target, area) : html(type.toString());
    case 'tuple':
      return `[${type.elements.map((each) => typeHtml(each, area)).join(', ')}]`;
    case 'namedTupleMember':
      return `${html(type.name)}: ${typeHtml(type.element, area)}`;
    case 'rest':
      return `...${typeHtml(type.elementType, area)}`;
    case 'literal':
      return html(typeof type.value === 'string' ? `'${type.value}'` : String(type.value));
    case 'reflection': {
      const text = type.toString();
      if (text.length <= 160) return html(text);
      const names = type.declaration.children?.map(({ name }) => name).join('; ');
      return names === undefined ? '(…) =&gt; …' : `{ ${html(names)} }`;
    }
    default:
      return html(type.toString());
  }
}

/** Fields of an object: name, type, what it is. */
function fields(reflection, area, ownOnly = false) {
  const properties = (reflection.children ?? []).filter(
    ({ kind, inheritedFrom }) => kind === ReflectionKind.Property && !(ownOnly && inheritedFrom !== undefined),
  );
  if (properties.length === 0) return '';
  const rows = properties.map((property) => {
    const type = typeHtml(property.type, area);
    const may = property.flags.isOptional ? ' <span class="may">may be left out</span>' : '';
    const text = words(property.comment?.summary, area) || meaning(property, area);
    return `<div>\n<dt><code v-pre>${property.name}</code> <span class="type">${type}</span>${may}</dt>\n<dd>\n\n${text}\n\n</dd>\n</div>\n`;
  });
  return `<dl class="fields">\n${rows.join('')}</dl>\n`;
}

/** What a field without words of its own is: the nomenclature's label, or the first sentence of its type. */
function meaning({ name, type }, area) {
  if (name in nomenclature) return `${nomenclature[name].label}.`;
  const declared = area.members.find((member) => member.name === type?.name);
  return opening(words(declared?.comment?.summary, area)).first;
}

function tag(comment, name) {
  return comment?.blockTags.filter((each) => each.tag === name) ?? [];
}

const KEYS = new RegExp(
  `(?<![\\w-])(?:${Object.keys(sources)
    .sort((a, b) => b.length - a.length)
    .join('|')})(?![\\w-])`,
  'g',
);

/** A doc block's tag as a sentence, its errors as links. */
function sentence(text, area) {
  const whole = /[.!?:$`]$/.test(text) || text === '' ? text : `${text}.`;
  const start = whole.match(/^[\w-]+/)?.[0] ?? '';
  return (start in sources ? whole : upper(whole)).replace(
    /(?<!\[`?)\b(?:Input|Convergence)Error\b(?!`?\])/g,
    (name) => `[${name}](${upTo(area)}${places.get(name) ?? 'error/index.md'})`,
  );
}

/** The keys of sources as links to the list of sources. */
function withSources(text, area) {
  return text.replace(KEYS, (key) => `[${key}](${upTo(area)}../reference/sources.md#${key})`);
}

function frontMatter(values) {
  return `---\n${Object.entries(values)
    .map(([key, value]) => `${key}: ${JSON.stringify(value)}`)
    .join('\n')}\n---\n`;
}

/** The first sentence, which stands below the title, and the rest. */
function opening(text) {
  const [, first = text, rest = ''] = /^([\s\S]*?[.:])(?:\s+(?=[A-Z$`[])|$)([\s\S]*)$/.exec(text) ?? [];
  return { first, rest };
}

/** A sentence without marks, for front matter. */
function plain(text) {
  return text
    .replace(/\[(`?[^\]]*`?)\]\([^)]*\)/g, '$1')
    .replace(/[`*]/g, '')
    .replace(/&lt;/g, '<')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/:$/, '.');
}

function functionPage(fn, area) {
  const [signature] = fn.signatures;
  const { comment, parameters = [], type } = signature;
  const { first, rest } = opening(words(comment?.summary, area, fn.name));
  // A sentence with mathematics in it cannot stand in the front matter.
  const lead = first.includes('$')
    ? { question: '', text: `${first} ${rest}` }
    : { question: plain(first), text: rest };
  const named = (suffix) => area.members.find(({ name }) => name === `${upper(fn.name)}${suffix}`);
  const out = [];
  const section = (title, body) => {
    if (body.trim() !== '') out.push(`## ${title}\n\n${body.trim()}`);
  };
  out.push(`\`import { ${fn.name} } from '${area.from}'\``, lead.text);
  const input = named('Input');
  if (input?.children !== undefined) section('Input', fields(input, area));
  else {
    const rows = parameters.map((parameter) => {
      const may = parameter.flags.isOptional ? ' <span class="may">may be left out</span>' : '';
      return `<div>\n<dt><code v-pre>${parameter.name}</code> <span class="type">${typeHtml(parameter.type, area)}</span>${may}</dt>\n<dd>\n\n${words(parameter.comment?.summary, area)}\n\n</dd>\n</div>\n`;
    });
    section('Input', rows.length === 0 ? '' : `<dl class="fields">\n${rows.join('')}</dl>`);
  }
  const [returns] = tag(comment, '@returns');
  const result = named('Result');
  section(
    'Result',
    [
      `<p class="returns"><span class="type">${typeHtml(type, area)}</span></p>`,
      sentence(words(returns?.content, area), area),
      result?.children === undefined ? '' : fields(result, area),
    ].join('\n\n'),
  );
  const throws = tag(comment, '@throws').map(({ content }) => words(content, area));
  const [refused = '', ...range] = throws.join('\n').split(/\n(?=Valid )/);
  section('What it refuses', sentence(refused, area));
  section('Range', sentence(range.join('\n'), area));
  const cited = tag(comment, '@source').map(({ content }) => words(content, area));
  section('Source', withSources(sentence(cited.join('\n'), area), area));
  const examples = tag(comment, '@example').map(({ content }) => content.map(({ text }) => text).join(''));
  section('Example', examples.map(spread).join('\n\n'));
  const pages = handbook.get(fn.name) ?? [];
  section(
    'In the handbook',
    pages.map(({ file, title }) => `- [${title}](${upTo(area)}../handbook/${file})`).join('\n'),
  );
  return (
    frontMatter({
      title: fn.name,
      ...(lead.question === '' ? {} : { question: lead.question }),
      chapter: area.label,
      area: area.path,
      siblings: area.functions.map(({ name }) => name),
      search: false,
    }) + `\n${out.filter((part) => part.trim() !== '').join('\n\n')}\n`
  );
}

/** A call that is longer than a line of the page is broken after its braces and commas. */
function spread(fence) {
  return fence.replace(/^(?!```)(.*?)\s*\/\/=> (.*)$/gm, (line, call, stated) =>
    line.length <= 62 ? line : `${broken(call, '')}\n//=> ${stated}`,
  );
}

/** Code whose longest group of braces or brackets stands on lines of its own, as deep as the width asks for. */
function broken(text, indent) {
  if (indent.length + text.length <= 60) return text;
  const open = text.search(/[{[]/);
  const close = Math.max(text.lastIndexOf('}'), text.lastIndexOf(']'));
  if (open < 0 || close < open) return text;
  const parts = [''];
  let depth = 0;
  for (const letter of text.slice(open + 1, close)) {
    if ('([{'.includes(letter)) depth += 1;
    if (')]}'.includes(letter)) depth -= 1;
    if (letter === ',' && depth === 0) parts.push('');
    else parts[parts.length - 1] += letter;
  }
  const rows = parts
    .filter((part) => part.trim() !== '')
    .map((part) => `${indent}  ${broken(part.trim(), `${indent}  `)},\n`);
  return `${text.slice(0, open + 1)}\n${rows.join('')}${indent}${text.slice(close)}`;
}

function areaPage(area) {
  const out = [`\`import { … } from '${area.from}'\``];
  const firstOf = (member) => {
    const comment = member.comment ?? member.signatures?.[0]?.comment;
    return opening(words(comment?.summary, area, member.name)).first;
  };
  if (area.functions.length > 0) {
    const rows = area.functions.map(
      (fn) => `<div>\n<dt>\n\n[\`${fn.name}\`](./${fn.name}.md)\n\n</dt>\n<dd>\n\n${firstOf(fn)}\n\n</dd>\n</div>\n`,
    );
    out.push('## Functions', `<dl class="fields">\n${rows.join('')}</dl>`);
  }
  if (area.constants.length > 0) {
    const rows = area.constants.map(
      (each) =>
        `<div>\n<dt id="${each.name}"><code v-pre>${each.name}</code> <span class="type">${constantType(each, area)}</span></dt>\n<dd>\n\n${words(each.comment?.summary, area)}\n\n</dd>\n</div>\n`,
    );
    out.push('## Constants and tables', `<dl class="fields">\n${rows.join('')}</dl>`);
  }
  if (area.types.length > 0) {
    out.push('## Types');
    for (const each of area.types) {
      out.push(`### ${each.name} {#${each.name}}`, words(each.comment?.summary, area, each.name));
      if (each.type !== undefined && each.type.type !== 'reflection')
        out.push(`<p class="returns"><span class="type">${typeHtml(each.type, area)}</span></p>`);
      const above = (each.extendedTypes ?? []).filter(({ name }) => places.has(name));
      if (above.length > 0)
        out.push(
          `<p class="returns">With the fields of <span class="type">${above.map((type) => typeHtml(type, area)).join(', ')}</span>.</p>`,
        );
      out.push(fields(each.type?.declaration ?? each, area, above.length > 0));
    }
  }
  return (
    frontMatter({
      title: upper(area.label),
      chapter: 'Reference',
      area: area.path,
      siblings: area.functions.map(({ name }) => name),
      search: false,
    }) + `\n${out.filter((part) => part.trim() !== '').join('\n\n')}\n`
  );
}

/** The type of a constant where it is a name or short; the type of a literal says no more than its value. */
function constantType({ type }, area) {
  const text = typeHtml(type, area);
  return type?.type === 'reference' || text.length < 60 ? text : '';
}

rmSync(API, { recursive: true, force: true });
let pages = 0;
function write(path, text) {
  const file = `${API}${path}`;
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  pages += 1;
}
for (const area of areas) {
  write(`${area.path}/index.md`, areaPage(area));
  for (const fn of area.functions) write(`${area.path}/${fn.name}.md`, functionPage(fn, area));
}
console.log(`api: ${pages} pages`);
