import type { BuiltPiece } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { Project } from '#core/project';

import { groupSheets } from './group-sheets.ts';
import { groupSolid } from './group-solid.ts';
import type { CuttingGroup } from './types.ts';

/** All parts as cutting jobs, in the order of the project's materials; beside them what no job could be made for. */
export function groupParts(
  project: Project,
  pieces: readonly BuiltPiece[],
): { readonly groups: readonly CuttingGroup[]; readonly findings: readonly Problem[] } {
  const found = project.materials.map((material) => {
    if (material.kind === 'solid') return groupSolid(project, pieces, material);
    const group = groupSheets(project, pieces, material);
    return { groups: group ? [group] : [], findings: [] };
  });
  return {
    groups: found.flatMap((each) => each.groups).filter((group) => group.job.parts.length > 0),
    findings: found.flatMap((each) => [
      ...each.groups.filter((group) => group.job.parts.length === 0).flatMap((group) => group.findings),
      ...each.findings,
    ]),
  };
}
