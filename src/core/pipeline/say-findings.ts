import type { Problem } from '#core/problems';
import type { Project } from '#core/project';
import { sayLengths, sayLengthsWithin } from '#core/units';

import type { ShapeOutcome } from './types.ts';

const leftAsIs: ReadonlySet<string> = new Set(['code', 'about', 'source', 'severity', 'id']);

/** The names a user gave: a size in one of them is part of the name and is told as it was written. */
export function userNames(project: Project): readonly string[] {
  const named = [...project.shapes, ...project.pieces, ...project.materials];
  return named.map(({ name }) => name);
}

/** Findings with their lengths told in the units of the project; the very same where nothing changes. */
export function sayFindings(project: Project, findings: readonly Problem[]): readonly Problem[] {
  const names = userNames(project);
  return sayLengthsWithin(findings, (text) => sayLengths(text, project.units, names), leftAsIs);
}

/** What a shape came to, its findings, suspects and advice told in the units of the project. */
export function sayOutcome(outcome: ShapeOutcome, project: Project): ShapeOutcome {
  const { findings, advice, suspects } = outcome.adjustment;
  const names = userNames(project);
  const say = (text: string): string => sayLengths(text, project.units, names);
  const said = sayLengthsWithin({ findings, advice, suspects }, say, leftAsIs);
  return said.findings === findings && said.advice === advice && said.suspects === suspects
    ? outcome
    : { ...outcome, adjustment: { ...outcome.adjustment, ...said } };
}
