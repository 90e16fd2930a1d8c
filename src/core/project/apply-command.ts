import { fail, hasStop, succeed, unreachable, type Problem, type Result } from '#core/problems';

import { applyPieceCommand } from './apply-piece-command.ts';
import { applyRackCommand } from './apply-rack-command.ts';
import { applyReadingCommand, applyShapeCommand } from './apply-shape-command.ts';
import { applyShapeItemCommand } from './apply-shape-item-command.ts';
import { checkProject } from './check-project.ts';
import type { Command, WholeCommand } from './commands.ts';
import { isSame } from './lists.ts';
import type { MadePart, Project, TakenPlan } from './types.ts';

/**
 * The project after a command: the only way to a new one. Parts that did not change are shared, and a command that
 * changes nothing gives back the same object. Fails with sentences when the command cannot be done, or would leave a
 * fault in the project that was not there before.
 */
export function applyCommand(project: Project, command: Command): Result<Project> {
  const next = applyUnchecked(project, command);
  if (!next.ok) return next;
  if (isSame(next.value, project)) return succeed(project);
  const before = checkProject(project).map(identify);
  const fresh = checkProject(next.value).filter((problem) => !before.includes(identify(problem)));
  return hasStop(fresh) ? fail(...fresh) : succeed(next.value, fresh);
}

function applyUnchecked(project: Project, command: Command): Result<Project> {
  switch (command.kind) {
    case 'add-shape':
    case 'change-shape':
    case 'remove-shape':
      return applyShapeCommand(project, command);
    case 'add-item':
    case 'change-item':
    case 'remove-item':
    case 'rename-corner':
      return applyShapeItemCommand(project, command);
    case 'add-reading':
    case 'change-reading':
    case 'remove-reading':
    case 'add-repeat':
    case 'remove-repeat':
      return applyReadingCommand(project, command);
    case 'add-piece':
    case 'change-piece':
    case 'set-parameter':
    case 'remove-piece':
      return applyPieceCommand(project, command);
    case 'add-material':
    case 'change-material':
    case 'remove-material':
    case 'add-stock':
    case 'change-stock':
    case 'remove-stock':
    case 'cut-stock':
      return applyRackCommand(project, command);
    default:
      return succeed(applyWholeCommand(project, command));
  }
}

function applyWholeCommand(project: Project, command: WholeCommand): Project {
  switch (command.kind) {
    case 'set-name':
      return { ...project, name: command.name };
    case 'set-currency':
      return { ...project, currency: command.currency, pricesIncludeTax: command.pricesIncludeTax };
    case 'set-paper':
      return { ...project, paper: command.paper };
    case 'set-units':
      return { ...project, units: command.units };
    case 'change-settings':
      return { ...project, settings: changeSettings(project.settings, command) };
    case 'change-tools':
      return { ...project, tools: { ...project.tools, ...command.tools } };
    case 'set-done':
      return { ...project, done: tick(project.done, command.mark, command.done) };
    case 'set-made':
      return { ...project, made: setMade(project.made ?? [], command.part, command.made) };
    case 'set-routed':
      return { ...project, routed: tick(project.routed ?? [], command.part, command.routed) };
    case 'take-plan':
      return { ...project, taken: [...takenBut(project, command.taken.group), command.taken] };
    case 'release-plan':
      return { ...project, taken: takenBut(project, command.group) };
    case 'set-route':
      return { ...project, route: command.route };
    case 'set-fixing-price':
      return withFixingPrice(project, command.item, command.price);
    default:
      return unreachable(command);
  }
}

function tick(done: readonly string[], mark: string, isDone: boolean): readonly string[] {
  if (done.includes(mark) === isDone) return done;
  return isDone ? [...done, mark] : done.filter((each) => each !== mark);
}

function takenBut({ taken = [] }: Project, group: string): readonly TakenPlan[] {
  return taken.filter((each) => each.group !== group);
}

function setMade(made: readonly MadePart[], part: string, next: MadePart | null): readonly MadePart[] {
  const others = made.filter((each) => each.part !== part);
  return next === null ? others : [...others, next];
}

function withFixingPrice(project: Project, item: string, price: number | null): Project {
  const others = (project.fixingPrices ?? []).filter((each) => each.item !== item);
  return { ...project, fixingPrices: price === null ? others : [...others, { item, price }] };
}

/** What makes two findings the same one, though a place in a list has moved. */
function identify(problem: Problem): string {
  return `${problem.code} ${problem.message}`;
}

function changeSettings(
  now: Project['settings'],
  { settings, cleared = [] }: Extract<Command, { kind: 'change-settings' }>,
): Project['settings'] {
  if (cleared.length === 0) return { ...now, ...settings };
  const isCleared = (key: string): boolean => cleared.some((each) => each === key);
  const left = Object.entries({ ...now, ...settings }).filter(([key]) => !isCleared(key));
  return Object.fromEntries(left) as unknown as Project['settings'];
}
