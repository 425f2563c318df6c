import { fileURLToPath } from 'node:url';

/** The repository's folder. */
export const root: string = fileURLToPath(new URL('../../', import.meta.url));
