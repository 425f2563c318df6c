// The handbook against the library: every public function is reached from a page, and every page and example holds.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import * as harness from '@loomwright/harness';
import * as core from 'loomwright';
import * as check from 'loomwright/check';
import * as error from 'loomwright/error';
import * as number from 'loomwright/number';
import * as unit from 'loomwright/unit';
import { cards } from '@loomwright/worked/card';

const folder = fileURLToPath(new URL('../../docs/handbook/', import.meta.url));

interface Front {
  readonly title?: unknown;
  readonly question?: unknown;
  readonly chapter?: unknown;
  readonly order?: unknown;
  readonly answers?: unknown;
}

/** The front matter of a page; an empty object where it has none. */
function frontOf(text: string): Front {
  const [, yaml = ''] = /^---\n([\s\S]*?)\n---\n/.exec(text) ?? [];
  return (parse(yaml) ?? {}) as Front;
}

/** What a page's front matter lacks. */
function frontFaults(front: Front): string[] {
  const texts = (['title', 'question', 'chapter'] as const).flatMap((field) =>
    typeof front[field] === 'string' && front[field] !== '' ? [] : [`no ${field}`],
  );
  const order = typeof front.order === 'number' ? [] : ['no order'];
  const { answers } = front;
  const names =
    Array.isArray(answers) && answers.length > 0 && answers.every((name) => typeof name === 'string')
      ? []
      : ['no answers'];
  const question =
    typeof front.question === 'string' && !front.question.endsWith('?') ? ['question is no question'] : [];
  return [...texts, ...order, ...names, ...question];
}

const pages = readdirSync(folder)
  .filter((file) => file.endsWith('.md') && file !== 'index.md')
  .map((file) => ({ name: file.replace('.md', ''), front: frontOf(readFileSync(`${folder}${file}`, 'utf8')) }));
const answersOf = ({ front }: (typeof pages)[number]): readonly string[] =>
  Array.isArray(front.answers) ? (front.answers as string[]) : [];
const answered = new Set(pages.flatMap(answersOf));
const isFunction = (value: unknown): boolean => typeof value === 'function' && !/^class\b/.test(String(value));

/** Areas that the reference alone leads to, and why no page of the handbook asks for them. */
const WITHOUT_PAGE: readonly (readonly [area: object, reason: string])[] = [
  [unit, 'a converter says all in its name; fields take units as written'],
  [error, 'errors are met, not asked for'],
  [check, 'building blocks of answers: a reader meets checks in the answers themselves'],
  [number, 'numerical methods that the calculations stand on, with no question of the trade'],
];

describe('every public function', () => {
  const others = new Set(WITHOUT_PAGE.flatMap(([area]) => Object.keys(area)));
  const asked = Object.entries(core)
    .filter(([name, value]) => isFunction(value) && !others.has(name))
    .map(([name]) => name);

  it('is found', () => {
    expect(asked.length).toBeGreaterThan(60);
    expect(asked).toContain('sizeFeed');
  });

  it('is reached from a page of the handbook', () => {
    const missing = asked.filter((name) => !answered.has(name)).sort();
    expect(missing, `no page answers with ${missing.join(', ')}`).toEqual([]);
  });
});

describe.each(pages.map((page) => [page.name, page] as const))('page %s', (_, page) => {
  it('has a whole front matter, and answers with functions that exist', () => {
    expect(frontFaults(page.front)).toEqual([]);
    const unknown = answersOf(page).filter(
      (name) => !isFunction(({ ...core, ...harness } as Readonly<Record<string, unknown>>)[name]),
    );
    expect(unknown).toEqual([]);
  });
});

it('no two pages have the same place', () => {
  const orders = pages.map(({ front }) => front.order);
  expect(orders.filter((order, i) => orders.indexOf(order) !== i)).toEqual([]);
});

describe.each(Object.values(cards).map((card) => [card.name, card] as const))('card of %s', (name, card) => {
  it('names a page that answers with it', () => {
    const page = pages.find((each) => each.name === card.page);
    expect(
      page,
      `there is no page ${card.page}; ${name} is answered on ${pages
        .filter((each) => answersOf(each).includes(name))
        .map((each) => each.name)
        .join(', ')}`,
    ).toBeDefined();
    if (page !== undefined) expect(answersOf(page)).toContain(name);
  });
});

interface WorkedExample {
  readonly source: string;
  readonly prints: Readonly<Record<string, string>>;
}

// The examples are another workspace's files: they come by their places, and their types from what is asked of them.
interface WithGlob {
  glob<T>(pattern: string, options: { readonly eager: true; readonly import: string }): Readonly<Record<string, T>>;
}
const examples = (import.meta as unknown as WithGlob).glob<WorkedExample>('../../docs/examples/*.example.ts', {
  eager: true,
  import: 'default',
});
const [workExample] = Object.values(
  (import.meta as unknown as WithGlob).glob<(example: WorkedExample) => unknown>(
    '../../docs/examples/worked-example.ts',
    {
      eager: true,
      import: 'workExample',
    },
  ),
) as [(example: WorkedExample) => unknown];

describe('worked examples', () => {
  it('are found', () => {
    expect(Object.keys(examples).length).toBeGreaterThan(4);
  });

  it.each(Object.entries(examples))('%s gives what its source prints', (_, example) => {
    expect(core.sources).toHaveProperty([example.source]);
    expect(Object.keys(example.prints).length).toBeGreaterThan(0);
    expect(() => workExample(example)).not.toThrow();
  });

  it('a printed result that differs throws', () => {
    const [example] = Object.values(examples) as [WorkedExample];
    const wrong = Object.fromEntries(Object.keys(example.prints).map((name) => [name, '-1234.5']));
    expect(() => workExample({ ...example, prints: wrong })).toThrow('prints -1234.5');
  });
});

describe('the test itself', () => {
  it('finds a front matter that is not whole', () => {
    expect(frontFaults({})).toEqual(['no title', 'no question', 'no chapter', 'no order', 'no answers']);
    expect(frontFaults(frontOf('---\ntitle: A\nquestion: B\nchapter: C\norder: 1\nanswers: [d]\n---\n'))).toEqual([
      'question is no question',
    ]);
    expect(frontFaults({ title: 'A', question: 'B?', chapter: 'C', order: 1, answers: [] })).toEqual(['no answers']);
  });
});
