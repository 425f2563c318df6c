import { cruise } from './rooms.mjs';

export default cruise;
