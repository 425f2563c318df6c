export { any } from '../../cli/src/any.js';
