import { describe, expect, it } from 'vitest';
import {
  cellText,
  type LoomPlan,
  parseLoom,
  planLoom,
  sheetFiles,
  sheetOrder,
  sheets,
  sheetsCsv,
  sheetsHtml,
  sheetsMarkdown,
} from '@loomwright/harness';
import { parseHTML } from 'linkedom';
import { disagreements } from '../support/sheets-agree.js';
import { sandpiperText, smallPlan } from '../support/small-plan.js';

const set = sheets(smallPlan);
const csv = Object.fromEntries(sheetsCsv(set).map(({ name, text }) => [name, text]));
const lines = (name: string): string[] => (csv[name] ?? '').trimEnd().split('\r\n');

/** Rows of a CSV file, by the grammar of RFC 4180. */
function readCsv(text: string): string[][] {
  return text
    .trimEnd()
    .split('\r\n')
    .map((line) =>
      [...`${line},`.matchAll(/(?:"((?:[^"]|"")*)"|([^,"]*)),/g)].map(([, quoted, bare]) =>
        quoted === undefined ? (bare ?? '') : quoted.replaceAll('""', '"'),
      ),
    );
}

describe('sheets by hand', () => {
  // Lengths 1.7004 and 2.25 m of 1.5 mm² red: 1.71 and 2.25 m to cut, 3.96 m of the spool.
  it('rounds lengths up to a centimetre and adds what is cut', () => {
    expect(lines('spools.csv')).toEqual([
      'Size,Colour,Pieces,"Longest, m","In all, m"',
      '0.75 mm²,red,1,3.40,3.40',
      '1.5 mm²,black,1,1.20,1.20',
      '1.5 mm²,red,2,2.25,3.96',
      '6 mm²,red,1,0.50,0.50',
    ]);
    expect(set.cuts.tables[0]?.foot[0]).toMatchObject({ pieceCount: 5, totalM: 9.06 });
  });
  it('cuts the longest first and names what cannot be cut', () => {
    const red = set.cuts.tables.find(({ title }) => title === '1.5 mm², red');
    expect(red?.rows.map(({ wire }) => wire)).toEqual(['horn out 2', 'horn out']);
    expect(set.cuts.tables[0]?.note).toContain('T5 tail lamp back');
  });
  it('lists the positions of a box in order, spares among them, and what has no fuse with its reason', () => {
    expect(lines('fuse-chart.csv').slice(1)).toEqual([
      'front box,1,none fits,blade fuse,tail lamp,0.75 mm²,2.50,33,',
      'front box,2,15 A,blade fuse,horn,1.5 mm²,8.50,71,carries the load',
      'front box,10,,blade fuse,spare,,,,',
    ]);
    expect(lines('outputs.csv').slice(1)).toEqual([
      'module A2,7.5 A,8 A,tail lamp,0.75 mm²,2.51',
      'module A10,,8 A,spare,,',
    ]);
    expect(lines('without-a-fuse.csv').slice(1)).toEqual(['short and sleeved,feeder front box,8.50']);
  });
  it('rounds currents up, volts at a load down, millivolts up; says why there is no ohm', () => {
    expect(lines('load-list.csv')).toEqual(['Load,"day, A","night, A"', 'horn,6.00,6.00', 'tail lamp,,2.51']);
    // 13.4999 V by the plan; healthy from 12.656 V to 14.344 V; the meter errs by 0.5 % and 0.02 V.
    expect(lines('readings-volts.csv')[1]).toContain(
      'day,"volts at horn, day",horn,horn +,horn −,6.00 A,13.49 V,12.58 to 14.43 V,"V d.c., 20 V range",',
    );
    expect(lines('readings-millivolts.csv')[1]).toContain('30.1 mV');
    expect(
      lines('readings-ohms.csv')
        .slice(1)
        .map((line) => line.split(',').at(-1)),
    ).toEqual(['', 'open: no reading']);
  });
  it('counts what each battery gives, and what cannot be fed', () => {
    const [table] = set.loads.tables;
    expect(table?.foot).toEqual([
      { load: 'All loads', 'day A': 6, 'night A': 8.504 },
      { load: 'From main', 'day A': 6.001, 'night A': 8.504 },
    ]);
    expect(table?.note).toContain('Cannot be fed, and not counted: fridge in night.');
    expect(table?.note).toContain('Without a stable operating point, and not counted: winch in night.');
  });
  it('shows margins short rounded up and left rounded down', () => {
    expect(set.findings.tables.map(({ rows }) => rows.map(({ margin }) => margin))).toEqual([
      ['10\u202f% short'],
      ['25\u202f% left'],
    ]);
  });
});

describe('no two sheets disagree', () => {
  it('on the plan by hand', () => expect(disagreements(set)).toEqual([]));
  it('on the whole of Sandpiper', () => {
    const parsed = parseLoom(sandpiperText);
    if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
    const plan = planLoom(parsed.loom);
    expect(plan.wires.length).toBeGreaterThan(100);
    expect(disagreements(sheets(plan))).toEqual([]);
  });
  it.each([
    ['a length', 'wires', 'cutM', 9.99, /horn|tail|feeder/],
    ['a label', 'cuts', 'label', 'X', /label/],
    ['a rating', 'fuses', 'ratingA', 20, /rating of front box 2/],
    ['a size', 'wires', 'size', '4 mm²', /size/],
    ['a current', 'loads', 'day A', 7, /day/],
    ['a total', 'cuts', 'totalM', 1, /spool/],
  ] as const)('and the comparison sees %s that does', (_, sheet, key, value, wanted) => {
    const spoilt = {
      ...set,
      [sheet]: {
        ...set[sheet],
        tables: set[sheet].tables.map((table) => ({
          ...table,
          rows: table.rows.map((row) => (row[key] === undefined || row[key] === null ? row : { ...row, [key]: value })),
        })),
      },
    };
    expect(disagreements(spoilt).join('\n')).toMatch(wanted);
  });
  it('and a wire that is missing from one of them', () => {
    const without = sheets({ ...smallPlan, wires: smallPlan.wires.slice(1) });
    expect(disagreements({ ...set, cuts: without.cuts })).not.toEqual([]);
  });
});

describe('writers', () => {
  const html = sheetsHtml(set, { date: '3 May <b>' });
  const { document } = parseHTML(html);
  it('print the same rows and figures in HTML, Markdown and CSV', () => {
    const text = (of: string): string => of.replaceAll('\u202f', ' ').replaceAll('−', '-');
    const markdown = text(sheetsMarkdown(set)).replace(/\\(.)/g, '$1');
    const rows = [...document.querySelectorAll('table.rows tbody tr')].map((row) => text(row.textContent));
    const inCsv = sheetsCsv(set).flatMap(({ text: file }) => readCsv(file));
    const markdownRows = markdown.split('\n').filter((line) => line.startsWith('| '));
    for (const { columns, rows: data } of sheetOrder(set).flatMap(({ tables }) => tables)) {
      for (const row of data) {
        const all = columns.filter(({ kind }) => kind === 'text' || kind === 'number');
        const cells = all
          .filter(({ dataOnly }) => dataOnly !== true)
          .map((column) => text(cellText(column, row[column.key])));
        expect(rows.some((line) => cells.every((cell) => line.includes(cell)))).toBe(true);
        expect(markdownRows.some((line) => cells.every((cell) => line.includes(cell)))).toBe(true);
        const plain = all.map((column) => cellText(column, row[column.key], true));
        expect(inCsv.some((line) => plain.every((cell) => line.includes(cell) || line.includes(`'${cell}`)))).toBe(
          true,
        );
      }
    }
    expect(document.querySelectorAll('table.rows tbody tr').length).toBe(
      sheetOrder(set)
        .flatMap(({ tables }) => tables)
        .reduce((sum, { rows, foot }) => sum + rows.length + foot.length, 0),
    );
  });
  it('put vehicle, sheet and date at the head of every sheet, cautions at its foot', () => {
    const heads = [...document.querySelectorAll('.running')].map((head) => head.textContent);
    expect(heads).toHaveLength(8);
    for (const [i, { title }] of sheetOrder(set).entries()) {
      expect(heads[i]).toContain('Trial <cart>');
      expect(heads[i]).toContain(title);
      expect(heads[i]).toContain('1 limit is NOT MET');
      expect(heads[i]).toContain('3 May <b>');
    }
    expect(document.querySelectorAll('.sheet > tfoot .foot').length).toBe(8);
    expect(html).toContain('Sneak paths are not looked for.');
  });
  it('leave the date to the pencil where none is given, and ask no clock', () => {
    expect(sheetsHtml(set)).toContain('Date <span class="fill">');
    expect(sheetsHtml(set)).toBe(sheetsHtml(sheets(smallPlan)));
    expect(sheetsHtml(set)).not.toMatch(/20\d\d/);
  });
  it('give a box to tick for every wire and a blank for every reading', () => {
    const of = (title: string) =>
      [...document.querySelectorAll('.sheet')].find((each) =>
        each.querySelector('.running')?.textContent?.includes(title),
      );
    expect(of('Wire list')?.querySelectorAll('.box')).toHaveLength(6);
    // Six readings, and the lamp before the one battery.
    expect(of('Expected readings')?.querySelectorAll('td .fill')).toHaveLength(7);
  });
  it('escape what the file says, and ask for nothing from elsewhere', () => {
    expect(html).not.toContain('<cart>');
    expect(html).not.toContain('<lose>');
    expect(html).not.toMatch(/\b(?:src|href|url)\s*[=(]/i);
    expect(sheetsMarkdown(set)).toContain('\\| \\<lose\\>');
  });
  it('write CSV that a spreadsheet reads as text: quotes doubled, formulas disarmed', () => {
    expect(lines('wire-list.csv')[4]).toContain(`4,"'=T4, ""x""",tail lamp out`);
    for (const { text } of sheetsCsv(set)) {
      const [head = [], ...rows] = readCsv(text);
      for (const row of rows) expect(row).toHaveLength(head.length);
    }
  });
  it('hand out every file once', () => {
    const names = sheetFiles(smallPlan).map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(
      expect.arrayContaining(['sheets.html', 'sheets.md', 'sheets.json', 'wire-list.csv', 'loom-volts.svg']),
    );
  });
});

describe('edges', () => {
  const empty: LoomPlan = {
    ...smallPlan,
    circuits: [],
    wires: [],
    bundles: [],
    fuses: [],
    channels: [],
    states: [],
    readings: [],
    findings: [],
    notJudged: [],
  };
  it('an empty plan has sheets that say so', () => {
    const none = sheets(empty);
    expect(disagreements(none)).toEqual([]);
    expect(sheetsHtml(none)).toContain('Nothing to list.');
    expect(sheetsHtml(none)).toContain('Every limit met.');
    expect(sheetsMarkdown(none)).toContain('every limit met');
  });
  it('more than nine states are laid in blocks', () => {
    const states = Array.from({ length: 20 }, (_, i) => ({ ...smallPlan.states[0]!, name: `state ${i + 1}` }));
    const { loads } = sheets({ ...smallPlan, states });
    expect(loads.tables.map(({ columns }) => columns.length - 1)).toEqual([9, 9, 2]);
    expect(new Set(loads.tables.map(({ file }) => file)).size).toBe(3);
  });
});
