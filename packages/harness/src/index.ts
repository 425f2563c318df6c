export { circuitJsonSchema, type ParsedCircuit, parseCircuit } from './circuit/parse.js';
export type { Circuit } from './circuit/schema.js';
export { sizeCircuit, type SizedCircuit } from './circuit/size-circuit.js';
export { type Problem, problemLine } from './file/problem.js';
