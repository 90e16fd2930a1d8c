import type { Result } from '#core/problems';
import type { PlanFile } from '#core/project';

import { matchSchema, parseJson } from './read-document.ts';
import { planFileSchema } from './schemas/project-schemas.ts';

/** A `plan.json` in a text; fails with every fault and its path. */
export function readPlanFile(text: string): Result<PlanFile> {
  const document = parseJson(text);
  return document.ok ? matchSchema(document.value, planFileSchema) : document;
}
