// Compares the sheets of one plan with one another, by what is printed on them. It knows columns and nothing of the
// planner.
import { cellText, type Sheet, type SheetRow, type SheetSet, type SheetTable } from '@loomwright/harness';

interface Printed {
  readonly table: SheetTable;
  readonly row: SheetRow;
  readonly text: (key: string) => string;
}

function printed(sheet: Sheet, file: string): Printed[] {
  return sheet.tables
    .filter((table) => table.file === file)
    .flatMap((table) =>
      table.rows.map((row) => ({
        table,
        row,
        text: (key) => {
          const column = table.columns.find((each) => each.key === key);
          if (column === undefined) throw new Error(`${file} has no column ${key}`);
          return cellText(column, row[key], true);
        },
      })),
    );
}

/** Every disagreement between two sheets, in words. */
export function disagreements(set: SheetSet): string[] {
  const found: string[] = [];
  const same = (what: string, a: string, b: string): void => {
    if (a !== b) found.push(`${what}: '${a}' and '${b}'`);
  };
  const wires = printed(set.wires, 'wire-list');
  const cuts = printed(set.cuts, 'cut-list');
  const spools = printed(set.cuts, 'spools');
  const byWire = new Map(wires.map((row) => [row.text('wire'), row]));

  // Each wire that has a size is cut once, with the same label, size, colour, ends and length.
  same('wires to cut', String(cuts.length), String(wires.filter((row) => row.text('size') !== 'none possible').length));
  for (const cut of cuts) {
    const wire = byWire.get(cut.text('wire'));
    if (wire === undefined) found.push(`${cut.text('wire')} is cut but not listed`);
    else
      for (const key of ['label', 'size', 'colour', 'from', 'to', 'cutM'])
        same(`${cut.text('wire')} ${key}`, cut.text(key), wire.text(key));
  }
  if (new Set(cuts.map((cut) => cut.text('wire'))).size !== cuts.length) found.push('a wire is cut twice');

  // A spool's total is the sum of its pieces as printed on the wire list, in whole centimetres.
  const sums = new Map<string, { cm: number; pieces: number }>();
  for (const wire of wires) {
    if (wire.text('size') === 'none possible') continue;
    const key = `${wire.text('size')} ${wire.text('colour')}`;
    const { cm, pieces } = sums.get(key) ?? { cm: 0, pieces: 0 };
    sums.set(key, { cm: cm + Math.round(Number(wire.text('cutM')) * 100), pieces: pieces + 1 });
  }
  same('spools', String(spools.length), String(sums.size));
  for (const spool of spools) {
    const key = `${spool.text('size')} ${spool.text('colour')}`;
    same(`spool ${key}`, spool.text('totalM'), ((sums.get(key)?.cm ?? 0) / 100).toFixed(2));
    same(`pieces of ${key}`, spool.text('pieceCount'), String(sums.get(key)?.pieces ?? 0));
  }
  const foot = set.cuts.tables.find(({ file }) => file === 'spools')?.foot[0];
  same(
    'all spools',
    Number(foot?.['totalM']).toFixed(2),
    ([...sums.values()].reduce((sum, { cm }) => sum + cm, 0) / 100).toFixed(2),
  );

  // A fuse or output on the chart has the rating that stands beside its wires, and their size.
  const chart = new Map([
    ...printed(set.fuses, 'fuse-chart').map((row) => {
      const box = row.text('box');
      const name = box === 'in the wire' ? row.text('position') : `${box} ${row.text('position')}`;
      return [name, row] as const;
    }),
    ...printed(set.fuses, 'outputs').map((row) => [row.text('channel'), row] as const),
  ]);
  for (const wire of wires) {
    const protectedBy = wire.text('protectedBy');
    if (protectedBy === 'none' || protectedBy === '') continue;
    const [, name = '', rating = '', further] =
      /^(.*), (none fits|[\d.]+ A)( \(further up\))?$/.exec(protectedBy) ?? [];
    const row = chart.get(name);
    if (row === undefined) {
      found.push(`${wire.text('wire')} is protected by '${protectedBy}', which is not on the chart`);
      continue;
    }
    const shown = row.row['settingA'] ?? row.row['ratingA'];
    same(`rating of ${name}`, typeof shown === 'number' ? `${shown} A` : String(shown), rating);
    if (further === undefined && row.text('size') !== wire.text('size') && row.text('circuit') !== 'spare') {
      found.push(`${name}: wire ${row.text('size')} on the chart, ${wire.text('size')} in the list`);
    }
  }

  // The sum of a state is the sum of its loads; a load in the list has its volts among the readings, at that current.
  const volts = printed(set.readings, 'readings-volts');
  for (const table of set.loads.tables) {
    for (const { key, head } of table.columns.slice(1)) {
      const amps = table.rows.flatMap((row) => (typeof row[key] === 'number' ? [row[key]] : []));
      const sum = amps.reduce((all, one) => all + one, 0);
      if (Math.abs(sum - Number(table.foot[0]?.[key])) > 1e-9 * Math.max(1, sum)) found.push(`sum of ${head}`);
      const read = volts.filter((row) => row.row['state'] === head).map((row) => Number(row.row['currentA']));
      const list = (values: readonly number[]): string =>
        [...values]
          .sort((a, b) => a - b)
          .map((v) => v.toFixed(6))
          .join(' ');
      same(`currents in ${head}`, list(amps), list(read));
    }
  }
  return found;
}
