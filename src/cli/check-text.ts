import { checkJob, checkPlan } from '#core/cutting';
import { adjustSurvey, checkAdjustment, type Survey } from '#core/measuring';
import { checkNest, checkNestJob } from '#core/nesting';
import { checkOutcome, understandProject, withCarrying } from '#core/pipeline';
import { succeed, unreachable, type Problem, type Result } from '#core/problems';
import type { Project } from '#core/project';
import { checkDxf } from '#formats/dxf';
import {
  identifyFile,
  readAdjustment,
  readCuttingJob,
  readCuttingPlan,
  readNestJob,
  readNestPlan,
  readPlanFile,
  readProject,
  readSurvey,
  type FileKind,
} from '#formats/json';

import { checkSvg, checkTable } from './check-tables.ts';

/** What a file is and what is wrong with it; `against` where it is a plan: what is wrong with it for the job in a text. */
export interface CheckedFile {
  readonly kind: FileKind | 'dxf' | 'svg' | 'csv';
  readonly findings: readonly Problem[];
  readonly against?: (job: string) => Result<readonly Problem[]>;
}

/** Reads any of our files by its content, by its ending where that does not say; fails when it cannot be read at all. */
export function checkText(path: string, text: string): Result<CheckedFile> {
  if (/\.dxf$/i.test(path)) return succeed({ kind: 'dxf', findings: checkDxf(text) });
  if (/\.svg$/i.test(path)) return succeed({ kind: 'svg', findings: checkSvg(text) });
  if (/\.csv$/i.test(path)) return succeed({ kind: 'csv', findings: checkTable(text) });
  const kind = identifyFile(text);
  return kind.ok ? checkJson(kind.value, text) : kind;
}

function checkJson(kind: FileKind, text: string): Result<CheckedFile> {
  switch (kind) {
    case 'project':
      return after(kind, readProject(text), checkProjectFile);
    case 'survey':
      return after(kind, readSurvey(text), checkSurveyFile);
    case 'adjustment':
      return after(kind, readAdjustment(text), (adjustment) => adjustment.findings);
    case 'cutting-job':
      return after(kind, readCuttingJob(text), checkJob);
    case 'cutting-plan': {
      const plan = readCuttingPlan(text);
      return plan.ok ? planOf(kind, plan.value, readCuttingJob, checkPlan) : plan;
    }
    case 'nest-job':
      return after(kind, readNestJob(text), checkNestJob);
    case 'nest-plan': {
      const plan = readNestPlan(text);
      return plan.ok ? planOf(kind, plan.value, readNestJob, checkNest) : plan;
    }
    case 'plan-file':
      return after(kind, readPlanFile(text), (file) => [
        ...file.groups.flatMap((group) => checkPlan(group.job, group.plan)),
        ...file.findings,
      ]);
    case 'check-answer':
      return succeed({ kind, findings: [] });
    default:
      return unreachable(kind);
  }
}

/** What a project comes to, and whether the adjustments of its shapes hold. */
function checkProjectFile(project: Project): readonly Problem[] {
  const understanding = withCarrying(project, understandProject(project));
  return [...understanding.findings, ...understanding.shapes.flatMap(checkOutcome)];
}

function checkSurveyFile(survey: Survey): readonly Problem[] {
  const { adjustment } = adjustSurvey(survey);
  return [...adjustment.findings, ...checkAdjustment(survey, adjustment)];
}

/** A plan, which can be checked against its job. */
function planOf<Job, Plan extends { readonly findings: readonly Problem[] }>(
  kind: FileKind,
  plan: Plan,
  readJob: (text: string) => Result<Job>,
  check: (job: Job, plan: Plan) => readonly Problem[],
): Result<CheckedFile> {
  const against = (text: string): Result<readonly Problem[]> => {
    const job = readJob(text);
    return job.ok ? succeed(check(job.value, plan)) : job;
  };
  return succeed({ kind, findings: plan.findings, against });
}

/** What is found in a document that could be read; a document that could not be read fails. */
function after<T>(
  kind: FileKind,
  read: Result<T>,
  find: (value: T) => readonly Problem[],
): Result<CheckedFile> {
  if (!read.ok) return read;
  return succeed({ kind, findings: withoutRepeats([...read.problems, ...find(read.value)]) });
}

function withoutRepeats(findings: readonly Problem[]): readonly Problem[] {
  const keys = findings.map((finding) => JSON.stringify(finding));
  return findings.filter((_, index) => keys.indexOf(keys[index] ?? '') === index);
}
