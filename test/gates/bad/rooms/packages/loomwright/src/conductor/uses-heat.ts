export { any } from '../heat/any.js';
