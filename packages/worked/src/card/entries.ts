import { InputError } from 'loomwright';

// Lists as people write them in one line. An entry that cannot be read is named, with what one looks like.

const SEMICOLONS = /[;\n]/;
const SEMICOLONS_OR_COMMAS = /[;,\n]/;

/** What stands between the separators, trimmed; empty entries are left out. */
export function entriesOf(text: string, parted: 'semicolons' | 'commas' = 'semicolons'): string[] {
  return text
    .split(parted === 'commas' ? SEMICOLONS_OR_COMMAS : SEMICOLONS)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
}

/** The same where numbers may be negative: a true minus is read as a hyphen. */
export function signedEntriesOf(text: string, parted: 'semicolons' | 'commas' = 'semicolons'): string[] {
  return entriesOf(text.replace(/\u2212/g, '-'), parted);
}

/** The error for an entry that cannot be read. */
export function unread(
  fn: string,
  field: string,
  entry: string,
  like: string,
  hint = 'entries are parted by semicolons',
): InputError {
  return new InputError(fn, field, 'text', entry, `must read like ${like}`, hint);
}
