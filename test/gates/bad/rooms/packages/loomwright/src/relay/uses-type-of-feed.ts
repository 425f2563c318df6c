import type { Any } from '../feed/any.js';
export type Mine = Any;
