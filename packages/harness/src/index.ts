export { circuitJsonSchema, type ParsedCircuit, parseCircuit } from './circuit/parse.js';
export type { Circuit } from './circuit/schema.js';
export { sizeCircuit, type SizedCircuit } from './circuit/size-circuit.js';
export { type Problem, problemLine } from './file/problem.js';
export { loomJsonSchema, type ParsedLoom, parseLoom } from './loom/parse.js';
export { planLoom } from './loom/plan.js';
export type { Loom } from './loom/schema.js';
export type * from './loom/plan-type.js';
export { drawGrounds, type DrawGroundsOptions } from './drawing/draw-grounds.js';
export { diagnose } from './meter/diagnose.js';
export type {
  Diagnosis,
  ExplainedReading,
  FurtherReading,
  MeterReading,
  Suspect,
  SupplyOff,
} from './meter/diagnosis-type.js';
export { type ParsedReadings, parseReadings } from './meter/parse-readings.js';
export { testPlan } from './meter/test-plan.js';
export type { TestPlan, TestStage, TestStageKey, TestStep } from './meter/test-plan-type.js';
export { drawLoom, type DrawLoomOptions } from './drawing/draw-loom.js';
export { type SheetFile, sheetsCsv } from './sheet/csv.js';
export { sheetFiles } from './sheet/files.js';
export { sheetsHtml, type SheetsHtmlOptions } from './sheet/html.js';
export { sheetsMarkdown } from './sheet/markdown.js';
export { sheetOrder, sheets, standingText } from './sheet/sheets.js';
export type {
  Sheet,
  SheetCell,
  SheetColumn,
  SheetHeader,
  SheetRow,
  SheetSet,
  SheetTable,
  Standing,
} from './sheet/type.js';
export { cellText, headText } from './sheet/cell.js';
