export { understandProject } from './understand-project.ts';
export type { Blank, CuttingGroup, OutputFile, PlannedGroup, ShapeOutcome, Understanding } from './types.ts';
