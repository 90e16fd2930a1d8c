import { requiredPieces, type BuiltPiece, type PartId, type PieceId } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { Project } from '#core/project';

import type { PlannedGroup, Understanding } from './types.ts';

/** Parts that must not be cut as things stand, each with the finding that says so first. */
export function findBlocked(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
): ReadonlyMap<PartId, Problem> {
  const blocked = new Map<PartId, Problem>();
  const block = (ids: readonly PartId[], finding: Problem): void => {
    for (const id of ids) if (!blocked.has(id)) blocked.set(id, finding);
  };
  for (const finding of understanding.findings)
    if (finding.severity === 'stop') block(concerned(finding, project, understanding), finding);
  for (const piece of understanding.pieces)
    for (const finding of piece.findings)
      if (finding.severity === 'stop') block(inPiece(finding, piece), finding);
  for (const { group, plan } of planned)
    for (const finding of plan.findings)
      if (finding.severity === 'stop') {
        const blank = group.blanks.find((each) => each.id === finding.about);
        block(
          (blank ? [blank] : group.blanks).flatMap((each) => each.parts.map((part) => part.part)),
          finding,
        );
      }
  return blocked;
}

/** Parts that a finding of the whole concerns: by path or address of part, piece, shape, group or material; all when it says nothing. */
function concerned(finding: Problem, project: Project, understanding: Understanding): readonly PartId[] {
  const about = finding.about ?? '';
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  if (about === '') return parts.map((part) => part.id);
  const group = understanding.groups.find((each) => each.id === about);
  if (group) return group.blanks.flatMap((blank) => blank.parts.map((part) => part.part));
  const routing = understanding.routing.find((each) => each.id === about);
  if (routing) return routing.job.parts.map((part) => part.id);
  const [first = ''] = about.split('/');
  const atPath = project.pieces[Number(/^pieces\[(\d+)\]/.exec(about)?.[1] ?? -1)];
  const named = project.pieces
    .filter(
      (piece) => piece === atPath || piece.id === about || piece.letter === about || piece.shape === first,
    )
    .map((piece) => piece.id);
  const pieces = [...named, ...sizedBy(project, named)];
  return parts
    .filter((part) => part.id === about || part.material === about || pieces.includes(part.piece))
    .map((part) => part.id);
}

/** Pieces that take their size from one of these: what holds up a frame holds up its door. */
function sizedBy(project: Project, ids: readonly PieceId[]): readonly PieceId[] {
  return project.pieces
    .filter((piece) => requiredPieces(piece).some((id) => ids.includes(id)))
    .map((piece) => piece.id);
}

/** Parts of a piece that one of its own findings concerns: the part named, else all. */
function inPiece(finding: Problem, piece: BuiltPiece): readonly PartId[] {
  const ids = idsOf(piece);
  return finding.about !== undefined && ids.includes(finding.about) ? [finding.about] : ids;
}

function idsOf(piece: BuiltPiece): readonly PartId[] {
  return piece.parts.map((part) => part.id);
}
