export { default } from './test/lint/eslint.mjs';
