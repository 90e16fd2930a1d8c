import {
  checkRoute,
  findAssemblyOrder,
  takeRoute,
  type AssemblyOrder,
  type GateAnswer,
  type Load,
} from '#core/fitting';
import { isCarriedInParts, type BuiltPiece, type Gate } from '#core/joinery';
import { sortBySeverity, type Problem } from '#core/problems';
import type { Project } from '#core/project';

import type { Understanding } from './types.ts';

/** How a piece goes together and gets to its place. */
export interface Carrying {
  readonly order: AssemblyOrder;
  /** How it takes each gate of the route: its largest unit, or the first that does not pass. */
  readonly gates: readonly GateAnswer[];
  readonly findings: readonly Problem[];
}

/** Whether a piece can be put together at all, and whether it goes the whole route as one unit (joinery F1 to F6, G19, G20). */
export function checkCarrying(built: BuiltPiece, route: readonly Gate[]): Carrying {
  const order = findAssemblyOrder(built.parts);
  const loads = loadsOf(built);
  const narrow =
    built.parts.length > 0 && route.length > 0 ? loads.flatMap((load) => checkRoute(load, route) ?? []) : [];
  return {
    order,
    gates: built.parts.length > 0 ? worstAnswers(loads, route) : [],
    findings: [
      ...(order.found === false ? [lockedParts(built, order.locked)] : []),
      ...narrow.map((found) => ({ ...found, about: built.letter })),
    ],
  };
}

/** For each gate the answer of the first load that does not pass it, else that of the largest. */
function worstAnswers(loads: readonly Load[], route: readonly Gate[]): readonly GateAnswer[] {
  const answers = loads.map((load) => takeRoute(load, route));
  return route.flatMap((_, i) => {
    const here = answers.flatMap((each) => each[i] ?? []);
    return here.find((answer) => !answer.passes) ?? here[0] ?? [];
  });
}

/** What is carried as one, the largest first: the whole piece, the units it comes in, or its single parts. */
function loadsOf(built: BuiltPiece): readonly Load[] {
  const { kind, letter, name, envelope, loads, parts } = built;
  if (isCarriedInParts(kind))
    return parts
      .map((part) => ({ name: `${part.id} ${part.name}`, ...part.finished }))
      .sort((one, other) => other.length * other.width - one.length * one.width);
  const units = loads ?? [{ name, box: envelope }];
  return units.map(({ name: what, box: { min, max } }) => ({
    name: `${letter} ${what}`,
    length: max.x - min.x,
    width: max.y - min.y,
    thickness: max.z - min.z,
  }));
}

function lockedParts(built: BuiltPiece, locked: readonly string[]): Problem {
  const named =
    locked.length > 8 ? `${locked.slice(0, 8).join(', ')} and ${locked.length - 8} more` : locked.join(', ');
  return {
    severity: 'stop',
    code: 'no-assembly-order',
    about: built.letter,
    message: `${built.name} cannot be put together by straight moves: ${named} lock each other.`,
    remedy: 'Open a housing on its face, leave one joint loose, or glue these parts up as a unit.',
    source: 'joinery F6, G20',
  };
}

/** What a project comes to, with what is found about putting its pieces together and carrying them. */
export function withCarrying(project: Project, understanding: Understanding): Understanding {
  const found = understanding.pieces.flatMap((built) => checkCarrying(built, project.route ?? []).findings);
  if (found.length === 0) return understanding;
  return { ...understanding, findings: sortBySeverity([...understanding.findings, ...found]) };
}
