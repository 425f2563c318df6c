// What must not stand in the repository: paths of one machine, and addresses of registries.

interface Pattern {
  readonly name: string;
  readonly pattern: RegExp;
}

const PATTERNS: readonly Pattern[] = [
  // A place on a disk: a slash at the start of a word, a root folder, and something in it.
  { name: 'machine path', pattern: /(?<![\w./@:$}-])\/(?:home|root|tmp|work|Users|private|opt|mnt)\/[\w.-]/g },
  { name: 'machine path', pattern: /\b[A-Za-z]:\\\\?(?:Users|Documents|Program)/g },
  { name: 'machine path', pattern: /\bfile:\/\/\/[\w]/g },
  { name: 'registry host', pattern: /https?:\/\/(?:registry|npm\.pkg)\b/g },
  { name: 'registry host', pattern: /\bresolution:.*\btarball:/g },
];

/** Each forbidden thing in a text as 'name at line: text'. */
export function forbiddenIn(text: string): string[] {
  const found: string[] = [];
  text.split('\n').forEach((line, i) => {
    for (const { name, pattern } of PATTERNS) {
      for (const match of line.matchAll(pattern)) {
        found.push(`${name} at ${i + 1}: ${line.slice(match.index, match.index + 40)}`);
      }
    }
  });
  return found;
}
