export { fileSchemas } from './file-schemas.ts';
export type { CheckAnswer, FindingsAnswer } from './file-schemas.ts';
export { identifyFile } from './identify-file.ts';
export type { FileKind } from './identify-file.ts';
export { readCuttingJob, readCuttingPlan } from './read-cutting.ts';
export { readPlanFile } from './read-plan-file.ts';
export { readProject } from './read-project.ts';
export { readAdjustment, readSurvey } from './read-survey.ts';
export { writeJson } from './write-json.ts';
