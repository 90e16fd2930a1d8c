import { buildPiece, requiredPieces, type BuiltPiece, type Piece } from '#core/joinery';
import { adjustSurvey } from '#core/measuring';
import { sortBySeverity, type Problem } from '#core/problems';
import { checkProject, type MeasuredShape, type Project } from '#core/project';

import { groupParts } from './group-parts.ts';
import type { ShapeOutcome, Understanding } from './types.ts';

/** What a project comes to before it is cut: shapes adjusted, pieces built in the order of their letters, parts as cutting jobs. */
export function understandProject(project: Project): Understanding {
  const shapes = project.shapes.map(adjustShape);
  const pieces = buildPieces(project, shapes);
  const { groups, findings } = groupParts(project, pieces);
  return {
    shapes,
    pieces,
    groups,
    findings: sortBySeverity(
      withoutRepeats([
        ...checkProject(project),
        ...shapes.flatMap(findingsOfShape),
        ...pieces.flatMap((piece) => piece.findings),
        ...findings,
        ...groups.flatMap((group) => group.findings),
      ]),
    ),
  };
}

function adjustShape(shape: MeasuredShape): ShapeOutcome {
  const { adjustment, shape: adjusted } = adjustSurvey({
    seenFrom: shape.seenFrom,
    readings: shape.readings,
  });
  return { shape, adjustment, adjusted };
}

/** All pieces in the order of their letters; those that others take sizes from are made first. */
function buildPieces(project: Project, shapes: readonly ShapeOutcome[]): readonly BuiltPiece[] {
  const pieces = byLetter(project.pieces);
  const isAlone = (piece: Piece): boolean => requiredPieces(piece).length === 0;
  const make = (piece: Piece, built: readonly BuiltPiece[]) =>
    [piece, build(piece, project, { shapes, built })] as const;
  const first = pieces.filter(isAlone).map((piece) => make(piece, []));
  const known = first.map(([, built]) => built);
  const rest = pieces.filter((piece) => !isAlone(piece)).map((piece) => make(piece, known));
  const all = new Map([...first, ...rest]);
  return pieces.flatMap((piece) => all.get(piece) ?? []);
}

interface Known {
  readonly shapes: readonly ShapeOutcome[];
  readonly built: readonly BuiltPiece[];
}

function build(piece: Piece, project: Project, { shapes, built }: Known): BuiltPiece {
  const outcome = shapes.find((each) => each.shape.id === piece.shape);
  return buildPiece(piece, {
    shape: outcome?.adjusted ?? null,
    ...(outcome && { shapeName: outcome.shape.name }),
    materials: project.materials,
    settings: project.settings,
    built,
  });
}

/** The findings of a shape, addressed as `shape/reading` since each shape has a reading `d1`. */
function findingsOfShape({ shape, adjustment }: ShapeOutcome): readonly Problem[] {
  return adjustment.findings.map((finding) => ({
    ...finding,
    about: finding.about === undefined ? shape.id : `${shape.id}/${finding.about}`,
  }));
}

/** A before B, Z before AA. */
function byLetter(pieces: readonly Piece[]): readonly Piece[] {
  return [...pieces].sort(
    (a, b) => a.letter.length - b.letter.length || (a.letter < b.letter ? -1 : a.letter > b.letter ? 1 : 0),
  );
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
