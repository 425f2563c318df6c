export { parse } from 'yaml';
