export { any } from '../../../docs/any.js';
