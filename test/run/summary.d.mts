export interface Sum {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export interface Step {
  readonly name: string;
  readonly state: 'ok' | 'failed' | 'not run' | 'skipped';
  readonly tests?: Sum | undefined;
}

export type Counts = Record<string, { readonly computed: number; readonly transcribed: number }>;

export function sumVitest(report: unknown): Sum;
export function countSources(report: unknown, testFolder: string): Counts;
export function conclude(
  steps: readonly Step[],
): Sum & { readonly tests: number; readonly line: string; readonly exitCode: number };
export function sourceLines(reports: readonly Counts[]): string[];
export function slowFiles(report: unknown, testFolder: string, seconds: number): string[];
export function withoutBrowser(inCi: boolean): { readonly state: 'failed' | 'skipped'; readonly output: string };
