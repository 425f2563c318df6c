export { any } from '../table/any.js';
