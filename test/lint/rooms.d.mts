import type { IForbiddenRuleType, ICruiseOptions } from 'dependency-cruiser';

export const FLOOR: readonly string[];
export const ROOMS: Readonly<Record<string, readonly string[]>>;
export const PACKAGES: Readonly<
  Record<
    string,
    { readonly imports: readonly string[]; readonly modules: Record<string, string>; readonly node: boolean }
  >
>;
export function allowedRooms(room: string): string[];
export const rules: IForbiddenRuleType[];
export const cruise: { forbidden: IForbiddenRuleType[]; options: ICruiseOptions };
