export interface Result {
  readonly state: string;
  readonly output: string;
}

export interface Step {
  readonly name: string;
  readonly lanes?: 1 | 2;
  readonly needs?: readonly string[];
  readonly after?: readonly string[];
  readonly do: () => Promise<Result>;
}

export function run(
  line: readonly string[],
  options?: { readonly cwd?: string; readonly env?: Record<string, string> },
): Promise<{ readonly code: number; readonly output: string }>;
export function schedule(
  steps: readonly Step[],
  onDone: (step: Step, result: Result & { readonly seconds: number }) => void,
): Promise<void>;
export function endAll(): void;
