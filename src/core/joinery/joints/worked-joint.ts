import { glues } from '#core/materials';
import type { Problem } from '#core/problems';
import { checkWall, openFindings, type Say } from '../piece-findings.ts';
import type { JointCuts } from './fingers.ts';

/** A figure to mark out or to set by. mm unless said. */
export interface JointFigure {
  readonly name: string;
  readonly value: number;
  readonly unit?: 'degrees' | 'count';
}

/** A joint worked out: what is cut from both members in their own frames, what to mark, how to set, what to mind. */
export interface WorkedJoint {
  readonly cuts: JointCuts;
  readonly figures: readonly JointFigure[];
  /** Saw and router settings (joinery C19 to C21). */
  readonly settings: readonly string[];
  readonly findings: readonly Problem[];
}

/** The usual gap on each glued face for a glue, by kind or name, mm: the middle of what it fills well; of an unknown one 0.1 (joinery C). */
export function gluedGap(glue?: string): number {
  const found = glues.find(({ name, kind }) => name === glue || kind === glue);
  return found ? (found.gap[0] + found.gap[1]) / 2 : 0.1;
}

/** The size in a list of tools that is nearest to the one wanted. */
export function nearestTool(tools: readonly number[], wanted: number): number {
  return tools.reduce((best, tool) => (Math.abs(tool - wanted) < Math.abs(best - wanted) ? tool : best));
}

/** The value of a figure by its name; throws when the joint has none of it. */
export function figureOf({ figures }: WorkedJoint, name: string): number {
  const found = figures.find((figure) => figure.name === name);
  if (!found) throw new Error(`no figure called ${name}`);
  return found.value;
}

/** What is found about a joint while it is worked out. */
export function findings(check: (say: Say) => void): readonly Problem[] {
  const { say, all } = openFindings();
  check(say);
  return all();
}

export { checkWall };
