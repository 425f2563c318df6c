export { nothing } from './not-there.js';
