import type { Problem } from '#core/problems';
import type { PlanFile, Project } from '#core/project';

import { roughOf } from './list-parts.ts';
import { blanksOf } from './need.ts';
import type { PlannedGroup, PlannedRouting, Understanding } from './types.ts';

/** `plan.json`: the jobs with their answers and the parts they are for, so that it can be checked on its own. */
export function makePlanFile(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  rest: { readonly findings: readonly Problem[]; readonly routed: readonly PlannedRouting[] },
): PlanFile {
  return {
    version: 1,
    project: project.name,
    currency: project.currency,
    groups: planned.map(({ group, plan }) => ({
      id: group.id,
      title: group.title,
      material: group.material,
      form: group.form,
      job: group.job,
      blanks: group.blanks,
      plan,
    })),
    ...(rest.routed.length > 0 && {
      routing: rest.routed.map(({ group, job, plan }) => ({
        id: group.id,
        title: group.title,
        material: group.material,
        job,
        plan,
      })),
    }),
    parts: understanding.pieces.flatMap((piece) =>
      piece.parts.map((part) => ({
        id: part.id,
        piece: part.piece,
        name: part.name,
        quantity: part.quantity,
        hand: part.hand,
        material: part.material,
        finished: part.finished,
        cut: part.cut,
        rough: roughOf(part, understanding.groups),
        ...(part.staves && { staves: blanksOf(part) }),
        ...(part.spare !== undefined && { spare: part.spare }),
      })),
    ),
    findings: rest.findings,
  };
}
