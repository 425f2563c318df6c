export { unit } from 'mathjs';
