import { expect } from 'vitest';

import {
  applyCommand,
  redo,
  runCommand,
  startHistory,
  undo,
  type Command,
  type Project,
} from '#core/project';

import { freezeDeep } from './freeze-deep.ts';

/**
 * Runs a command on a frozen project, compares the outcome, undoes to the same object, does it again, and replays it
 * from JSON. Gives back the next project.
 */
export function expectCommand(
  before: Project,
  command: Command,
  after: (project: Project) => Project,
): Project {
  freezeDeep(before);
  freezeDeep(command);
  const result = applyCommand(before, command);
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join(' '));
  expect(result.value).toEqual(after(before));

  const history = runCommand(startHistory(before), command);
  if (!history.ok) throw new Error('the history refused what the project took');
  const back = undo(history.value);
  expect(back.present).toBe(before);
  expect(redo(back).present).toBe(history.value.present);

  const replayed = applyCommand(before, JSON.parse(JSON.stringify(command)) as Command);
  expect(replayed).toEqual(result);
  return result.value;
}

/** Checks that a command is refused with this code, with a sentence and what to do. */
export function expectRefused(before: Project, command: Command, code: string): string {
  const result = applyCommand(freezeDeep(before), freezeDeep(command));
  expect(result.ok).toBe(false);
  expect(result.problems.map((problem) => problem.code)).toContain(code);
  for (const problem of result.problems) {
    expect(problem.message).toMatch(/\.$/);
    expect(problem.remedy).toBeTruthy();
  }
  return result.problems.map((problem) => problem.message).join(' ');
}
