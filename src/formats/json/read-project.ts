import { fail, succeed, type Problem, type Result } from '#core/problems';
import { checkProject, upgradeProject, type Project } from '#core/project';

import { matchSchema, parseJson } from './read-document.ts';
import { projectSchema } from './schemas/project-schemas.ts';

/** Faults with which the document cannot be told apart from another; the rest is shown beside the project. */
const fatal: readonly string[] = [
  'id-twice',
  'letter-twice',
  'letter-unfit',
  'value-out-of-range',
  'moisture-order',
];

/**
 * The project in a text, brought to the newest version. Fails with every fault of form and value, each with its path;
 * a reference that leads nowhere comes as a finding beside the project, so that it can be mended in the app.
 */
export function readProject(text: string): Result<Project> {
  const document = parseJson(text);
  if (!document.ok) return document;
  const upgraded = upgradeProject(document.value);
  const isNewer = upgraded.problems.some(({ code }) => code === 'newer-version');
  if (!isNewer && isSomethingElse(document.value)) return fail(somethingElse);
  if (!upgraded.ok) return upgraded;
  const project = matchSchema(upgraded.value, projectSchema);
  if (!project.ok) return project;
  const problems = checkProject(project.value);
  return problems.some(isFatal) ? fail(...problems) : succeed(project.value, problems);
}

/** Another file of ours or anyone's: one by one its faults as a project would tell the user nothing. */
const somethingElse: Problem = {
  severity: 'stop',
  code: 'not-a-project',
  message: 'This file does not hold a project: it has neither shapes nor pieces.',
  remedy:
    'Choose a file that was saved as a project; plans, jobs and lists are made from one and do not lead back to it.',
};

function isSomethingElse(document: unknown): boolean {
  const isObject = typeof document === 'object' && document !== null && !Array.isArray(document);
  return isObject && !('shapes' in document) && !('pieces' in document);
}

function isFatal(problem: Problem): boolean {
  return fatal.includes(problem.code);
}
