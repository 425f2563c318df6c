export { any } from '../index.js';
