import type { CuttingJob, CuttingPlan } from '#core/cutting';
import { fail, type Problem, type Result } from '#core/problems';

import { findRepeats } from '#core/project';
import { matchSchema, parseJson } from './read-document.ts';
import { cuttingJobSchema, cuttingPlanSchema } from './schemas/cutting-schemas.ts';

/** The job in a text, the input of `joggle cut`; fails with every fault and its path. */
export function readCuttingJob(text: string): Result<CuttingJob> {
  const document = parseJson(text);
  if (!document.ok) return document;
  const job = matchSchema(document.value, cuttingJobSchema);
  if (!job.ok) return job;
  const faults = [
    ...findRepeats(job.value.stock, 'stock', 'stock size'),
    ...findRepeats(job.value.parts, 'parts', 'part'),
    ...checkDimensions(job.value),
  ];
  return faults.length > 0 ? fail(...faults) : job;
}

/** The answer of `joggle cut` in a text; fails with every fault and its path. */
export function readCuttingPlan(text: string): Result<CuttingPlan> {
  const document = parseJson(text);
  return document.ok ? matchSchema(document.value, cuttingPlanSchema) : document;
}

/** In two dimensions everything has a width, in one nothing has. */
function checkDimensions(job: CuttingJob): readonly Problem[] {
  const isOneWay = job.cuts?.style === 'length';
  const items = [
    ...job.stock.map((stock, index) => ({ item: stock, path: `stock[${index}].width` })),
    ...job.parts.map((part, index) => ({ item: part, path: `parts[${index}].width` })),
  ];
  return items
    .filter(({ item }) => (item.width === undefined) !== isOneWay)
    .map(({ item, path }) => ({
      severity: 'stop',
      code: isOneWay ? 'unknown-key' : 'missing-key',
      about: path,
      message: isOneWay
        ? `${path} is ${item.width}, but with the style "length" nothing has a width.`
        : `${path} is missing: "${item.id}" has a length of ${item.length} and no width.`,
      remedy: isOneWay
        ? 'Leave the width out, or choose another style in cuts.style.'
        : 'Add the width, or set cuts.style to "length" to cut bars to length only.',
    }));
}
