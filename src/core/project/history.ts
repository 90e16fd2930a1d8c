import { succeed, type Problem, type Result } from '#core/problems';

import { applyCommand } from './apply-command.ts';
import type { Command } from './commands.ts';
import type { Project } from './types.ts';

/** Steps that can be undone; projects share their unchanged parts, so this costs little. */
const mostSteps = 500;

/** The project now, the former ones (the latest last) and those undone (the next one first). */
export interface History {
  readonly past: readonly Project[];
  readonly present: Project;
  readonly future: readonly Project[];
}

/** A history that begins with this project. */
export function startHistory(project: Project): History {
  return { past: [], present: project, future: [] };
}

/** The history after a command; the same history when nothing changes; what was undone before is forgotten. Fails as the command does. */
export function runCommand(history: History, command: Command): Result<History> {
  const next = applyCommand(history.present, command);
  if (!next.ok) return next;
  if (next.value === history.present) return succeed(history, next.problems);
  const past = [...history.past, history.present].slice(-mostSteps);
  return succeed({ past, present: next.value, future: [] }, next.problems);
}

/** What several commands came to that count as one step. */
export interface CommandsRun {
  readonly history: History;
  readonly done: number;
  /** Why the others were not done. */
  readonly problems: readonly Problem[];
}

/** The history after several commands as one step, to be undone at once; those that fail are left out. */
export function runCommands(history: History, commands: readonly Command[]): CommandsRun {
  const start: CommandsRun = { history, done: 0, problems: [] };
  const run = commands.reduce((so: CommandsRun, command): CommandsRun => {
    const next = runCommand(so.history, command);
    if (!next.ok) return { ...so, problems: [...so.problems, ...next.problems] };
    return { ...so, history: next.value, done: so.done + 1 };
  }, start);
  if (run.history === history) return run;
  const past = [...history.past, history.present].slice(-mostSteps);
  return { ...run, history: { past, present: run.history.present, future: [] } };
}

/** The history after another state of the project is put in place of the present one, as one step to be undone. */
export function putInPlace(history: History, project: Project): History {
  if (project === history.present) return history;
  return { past: [...history.past, history.present].slice(-mostSteps), present: project, future: [] };
}

/** One step back, to the very object that was there; the same history at the beginning. */
export function undo(history: History): History {
  const former = history.past.at(-1);
  if (!former) return history;
  return { past: history.past.slice(0, -1), present: former, future: [history.present, ...history.future] };
}

/** One step forward again; the same history when nothing was undone. */
export function redo(history: History): History {
  const [next, ...future] = history.future;
  if (!next) return history;
  return { past: [...history.past, history.present], present: next, future };
}
