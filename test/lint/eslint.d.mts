import type { Linter } from 'eslint';

export function houseConfig(root: string): Linter.Config[];
declare const config: Linter.Config[];
export default config;
