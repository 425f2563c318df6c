export function isUnitName(name: string): boolean;
