export type { Blank, CuttingGroup, OutputFile, PlannedGroup, ShapeOutcome, Understanding } from './types.ts';
