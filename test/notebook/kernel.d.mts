/** What a cell gave: outputs as nbformat has them, or an error. */
export interface CellResult {
  readonly outputs: readonly object[];
  readonly error: string | null;
}
export declare function runCells(cells: readonly string[], folder: string, seconds?: number): Promise<CellResult[]>;
export declare function codeOf(notebook: {
  readonly cells: readonly { readonly cell_type: string; readonly source?: string | readonly string[] }[];
}): string[];
