import type { Problem } from '#core/problems';
import * as v from 'valibot';

import type { FileKind } from './identify-file.ts';
import { exact, findingsSchema } from './schemas/basic-schemas.ts';
import { cuttingJobSchema, cuttingPlanSchema } from './schemas/cutting-schemas.ts';
import { nestJobSchema, nestPlanSchema } from './schemas/nest-schemas.ts';
import { planFileSchema, projectSchema } from './schemas/project-schemas.ts';
import { adjustmentSchema, surveySchema } from './schemas/survey-schemas.ts';

/** Answer of `joggle check`. */
export interface CheckAnswer {
  readonly kind: FileKind | 'dxf' | 'svg' | 'csv';
  readonly findings: readonly Problem[];
}

/** Answer to wrong use or unreadable input. */
export interface FindingsAnswer {
  readonly findings: readonly Problem[];
}

const checkAnswerSchema = exact({
  kind: v.picklist([
    'project',
    'survey',
    'adjustment',
    'cutting-job',
    'cutting-plan',
    'nest-job',
    'nest-plan',
    'plan-file',
    'check-answer',
    'dxf',
    'svg',
    'csv',
  ]),
  findings: findingsSchema,
}) satisfies v.GenericSchema<CheckAnswer>;

const findingsAnswerSchema = exact({ findings: findingsSchema }) satisfies v.GenericSchema<FindingsAnswer>;

/** The schema of every input and output, by the name of its JSON Schema file. */
export const fileSchemas = {
  project: projectSchema,
  survey: surveySchema,
  adjustment: adjustmentSchema,
  'cutting-job': cuttingJobSchema,
  'cutting-plan': cuttingPlanSchema,
  'nest-job': nestJobSchema,
  'nest-plan': nestPlanSchema,
  'plan-file': planFileSchema,
  'check-answer': checkAnswerSchema,
  findings: findingsAnswerSchema,
} as const;
