import { checkAdjustment } from '#core/measuring';
import type { Problem } from '#core/problems';

import type { ShapeOutcome } from '../types.ts';
import { readingsOf } from './shape-readings.ts';

/** What is wrong with the adjustment of a shape, worked out from its readings and the answer alone. Empty for a sound one. */
export function checkOutcome({ shape, adjustment }: ShapeOutcome): readonly Problem[] {
  if (adjustment.readings.length === 0) return [];
  const survey = { seenFrom: shape.seenFrom, readings: readingsOf(shape) };
  return checkAdjustment(survey, adjustment).map((problem) => ({
    ...problem,
    about: problem.about === undefined ? shape.id : `${shape.id}/${problem.about}`,
  }));
}
