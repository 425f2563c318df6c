export const UNITS: readonly string[];
export const DIMENSIONLESS: readonly string[];
export const ALONE: readonly string[];
export function isUnitName(name: string): boolean;
