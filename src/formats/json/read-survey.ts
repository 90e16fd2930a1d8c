import type { Adjustment, Survey } from '#core/measuring';
import { fail, type Result } from '#core/problems';

import { findRepeats } from '#core/project';
import { matchSchema, parseJson } from './read-document.ts';
import { adjustmentSchema, surveySchema } from './schemas/survey-schemas.ts';

/** The readings in a text, the input of `joggle measure`; fails with every fault and its path. */
export function readSurvey(text: string): Result<Survey> {
  const document = parseJson(text);
  if (!document.ok) return document;
  const survey = matchSchema(document.value, surveySchema);
  if (!survey.ok) return survey;
  const repeated = findRepeats(survey.value.readings, 'readings', 'reading');
  return repeated.length > 0 ? fail(...repeated) : survey;
}

/** The answer of `joggle measure` in a text; fails with every fault and its path. */
export function readAdjustment(text: string): Result<Adjustment> {
  const document = parseJson(text);
  return document.ok ? matchSchema(document.value, adjustmentSchema) : document;
}
