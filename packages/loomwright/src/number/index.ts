export { findRoot, type FindRootInput } from './find-root.js';
