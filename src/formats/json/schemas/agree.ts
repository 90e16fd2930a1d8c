import type { CuttingJob, CuttingPlan } from '#core/cutting';
import type { Piece } from '#core/joinery';
import type { Adjustment, Survey } from '#core/measuring';
import type { Problem } from '#core/problems';
import type { NestJob, NestPlan } from '#core/nesting';
import type { PlanFile, Project } from '#core/project';
import type * as v from 'valibot';

import type { problemSchema } from './basic-schemas.ts';
import type { cuttingJobSchema, cuttingPlanSchema } from './cutting-schemas.ts';
import type { nestJobSchema, nestPlanSchema } from './nest-schemas.ts';
import type { pieceSchema } from './piece-schemas.ts';
import type { planFileSchema, projectSchema } from './project-schemas.ts';
import type { Same } from './same-types.ts';
import type { adjustmentSchema, surveySchema } from './survey-schemas.ts';

/** The types of core are the truth: where a schema drifts from them, one of these lines does not compile. */
export const schemasAgree: {
  readonly problem: Same<v.InferOutput<typeof problemSchema>, Problem>;
  readonly survey: Same<v.InferOutput<typeof surveySchema>, Survey>;
  readonly adjustment: Same<v.InferOutput<typeof adjustmentSchema>, Adjustment>;
  readonly job: Same<v.InferOutput<typeof cuttingJobSchema>, CuttingJob>;
  readonly plan: Same<v.InferOutput<typeof cuttingPlanSchema>, CuttingPlan>;
  readonly nestJob: Same<v.InferOutput<typeof nestJobSchema>, NestJob>;
  readonly nestPlan: Same<v.InferOutput<typeof nestPlanSchema>, NestPlan>;
  readonly piece: Same<v.InferOutput<typeof pieceSchema>, Piece>;
  readonly project: Same<v.InferOutput<typeof projectSchema>, Project>;
  readonly planFile: Same<v.InferOutput<typeof planFileSchema>, PlanFile>;
} = {
  problem: true,
  survey: true,
  adjustment: true,
  job: true,
  plan: true,
  nestJob: true,
  nestPlan: true,
  piece: true,
  project: true,
  planFile: true,
};
