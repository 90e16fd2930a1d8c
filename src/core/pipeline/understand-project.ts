import { sortBySeverity, type Problem } from '#core/problems';
import { checkProject, type Project } from '#core/project';

import { buildPieces, type Understood } from './build-pieces.ts';
import { fitPieces } from './fit/fit-pieces.ts';
import { groupParts } from './group-parts.ts';
import { checkPrices } from './check-prices.ts';
import { checkSums } from './check-sums.ts';
import { checkSite } from './check-site.ts';
import { checkMade, withoutMade } from './made-parts.ts';
import { checkTaken, withTaken } from './taken-plans.ts';
import { adjustShape } from './shapes/adjust-shape.ts';
import { groupRouter, withoutRouted } from './router/group-router.ts';
import { sayFindings, sayOutcome } from './say-findings.ts';
import type { ShapeOutcome, Understanding } from './types.ts';

/**
 * What a project comes to before it is cut: shapes adjusted, pieces built in the order of their letters, parts as cutting
 * jobs. What is the same as `before` is taken over from there; the answer is the same as without it.
 */
export function understandProject(project: Project, before?: Understood): Understanding {
  const earlier = before?.project.units === project.units ? before.understanding.shapes : [];
  const shapes = project.shapes.map(
    (shape) => earlier.find((outcome) => outcome.shape === shape) ?? sayOutcome(adjustShape(shape), project),
  );
  const pieces = buildPieces(project, shapes, before);
  const uncut = withoutMade(project, pieces);
  const { groups: bare, findings } = groupParts(project, withoutRouted(project, uncut));
  const groups = withTaken(project, bare);
  const routing = groupRouter(project, uncut);
  return {
    shapes,
    pieces,
    groups,
    routing,
    fits: fitPieces(project, pieces, shapes),
    findings: sayFindings(
      project,
      sortBySeverity(
        withoutRepeats([
          ...checkProject(project),
          ...shapes.flatMap(findingsOfShape),
          ...pieces.flatMap((piece) => piece.findings),
          ...checkMade(project, pieces),
          ...checkSums(project, pieces),
          ...checkSite(project, pieces),
          ...findings,
          ...groups.flatMap((group) => group.findings),
          ...checkTaken(project, groups),
          ...routing.flatMap((group) => group.findings),
          ...checkPrices(project, groups, routing),
        ]),
      ),
    ),
  };
}

/** The findings of a shape, addressed as `shape/reading` since each shape has a reading `d1`. */
function findingsOfShape({ shape, adjustment }: ShapeOutcome): readonly Problem[] {
  return adjustment.findings.map((finding) => ({
    ...finding,
    about: finding.about === undefined ? shape.id : `${shape.id}/${finding.about}`,
  }));
}

function withoutRepeats(findings: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const key = `${finding.code} ${finding.about} ${finding.message}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
