import type { NestJob, NestPlan, NestSheet } from '#core/nesting';
import { fail, type Result } from '#core/problems';

import { findRepeats } from '#core/project';
import { matchSchema, parseJson } from './read-document.ts';
import { nestJobSchema, nestPlanSchema } from './schemas/nest-schemas.ts';

/** The job in a text, the input of `joggle nest`; fails with every fault and its path. */
export function readNestJob(text: string): Result<NestJob> {
  const document = parseJson(text);
  if (!document.ok) return document;
  const job = matchSchema(document.value, nestJobSchema);
  if (!job.ok) return job;
  const sheets = job.value.stock.filter((stock): stock is NestSheet => 'id' in stock);
  const faults = [
    ...findRepeats(sheets, 'stock', 'stock size'),
    ...findRepeats(job.value.parts, 'parts', 'part'),
  ];
  return faults.length > 0 ? fail(...faults) : job;
}

/** The answer of `joggle nest` in a text; fails with every fault and its path. */
export function readNestPlan(text: string): Result<NestPlan> {
  const document = parseJson(text);
  return document.ok ? matchSchema(document.value, nestPlanSchema) : document;
}
