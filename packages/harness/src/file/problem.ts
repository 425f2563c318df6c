/** One thing wrong with a file, where it is, and what to do. */
export interface Problem {
  /** Line and column, from 1; null where the file as a whole is meant. */
  readonly line: number | null;
  readonly column: number | null;
  /** Dotted path of the field: `path.out[2].wire`. */
  readonly field: string;
  /** Stable word for the rule that was broken. */
  readonly rule: 'syntax' | 'size' | 'missing' | 'unknown-key' | 'type' | 'quantity' | 'choice' | 'range' | 'rule';
  /** The whole sentence. */
  readonly message: string;
  /** The name that was probably meant, for a mistyped one. */
  readonly likely: string | null;
}

/** A problem as one line: `pump.yaml:7:12 load.current: …`. */
export function problemLine(file: string, problem: Problem): string {
  const at = problem.line === null ? file : `${file}:${problem.line}:${problem.column ?? 1}`;
  const meant = problem.likely === null ? '' : ` Did you mean '${problem.likely}'?`;
  return `${at} ${problem.field === '' ? '' : `${problem.field}: `}${problem.message}${meant}`;
}
