import type { Shape } from '#core/geometry';
import { buildPiece, requiredPieces, type BuiltPiece, type PieceId } from '#core/joinery';
import { sigmaOfForm } from '#core/measuring';
import type { Project } from '#core/project';

import type { Understanding } from './types.ts';

/** How far each corner is moved to see what the sizes make of it, mm: well above the half millimetre they are rounded to. */
const move = 2;

/** Less than this is rounding, mm. */
const least = 0.05;

/**
 * One standard deviation, mm, of each length in the working of a piece, by its name, as far as it comes from the survey: the
 * piece (and those it takes sizes from) is built anew with each coordinate moved a little both ways, and the covariance of the
 * coordinates carried through. Sizes that do not depend on the survey are left out.
 */
export function sizeDeviations(
  project: Project,
  understanding: Understanding,
  id: PieceId,
): ReadonlyMap<string, number> {
  const chain = chainOf(project, id);
  const shapes = [
    ...new Set(project.pieces.flatMap((each) => (chain.includes(each.id) && each.shape) || [])),
  ];
  const variances = new Map<string, number>();
  for (const shapeId of shapes) {
    const shape = understanding.shapes.find((outcome) => outcome.shape.id === shapeId)?.adjusted;
    if (!shape) continue;
    for (const [name, form] of formsOf(shape, (moved) =>
      lengthsOf(project, understanding, id, { shapeId, moved }),
    ))
      variances.set(name, (variances.get(name) ?? 0) + sigmaOfForm(shape, form) ** 2);
  }
  return new Map(
    [...variances].flatMap(([name, variance]) =>
      variance > least ** 2 ? [[name, Math.sqrt(variance)] as const] : [],
    ),
  );
}

/** The piece and all it takes sizes from, however long the chain. */
function chainOf(project: Project, id: PieceId): readonly PieceId[] {
  const found: PieceId[] = [];
  const open = [id];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (found.includes(next)) continue;
    found.push(next);
    const piece = project.pieces.find((each) => each.id === next);
    if (piece) open.push(...requiredPieces(piece));
  }
  return found;
}

/** How each length changes with each coordinate of the shape. */
function formsOf(
  shape: Shape,
  lengthsWith: (moved: Shape) => ReadonlyMap<string, number>,
): ReadonlyMap<string, Readonly<Record<string, number>>> {
  const forms = new Map<string, Record<string, number>>();
  for (const coordinate of shape.order) {
    const [low, high] = [-move, move].map((by) => lengthsWith(moveCoordinate(shape, coordinate, by)));
    for (const [name, value] of high ?? []) {
      const slope = (value - (low?.get(name) ?? value)) / (2 * move);
      if (Math.abs(slope) > 1e-9) forms.set(name, { ...forms.get(name), [coordinate]: slope });
    }
  }
  return forms;
}

function moveCoordinate(shape: Shape, coordinate: string, by: number): Shape {
  const point = coordinate.slice(0, -2);
  const axis = coordinate.endsWith('.x') ? 'x' : 'y';
  const at = shape.points[point];
  if (!at) return shape;
  return { ...shape, points: { ...shape.points, [point]: { ...at, [axis]: at[axis] + by } } };
}

/** The lengths in the working of a piece when one shape is another. */
function lengthsOf(
  project: Project,
  understanding: Understanding,
  id: PieceId,
  other: { readonly shapeId: string; readonly moved: Shape },
): ReadonlyMap<string, number> {
  const build = (pieceId: PieceId, above: readonly PieceId[]): BuiltPiece | null => {
    const piece = project.pieces.find((each) => each.id === pieceId);
    if (!piece || above.includes(pieceId)) return null;
    const outcome = understanding.shapes.find((each) => each.shape.id === piece.shape);
    const shape = piece.shape === other.shapeId ? other.moved : (outcome?.adjusted ?? null);
    return buildPiece(piece, {
      shape,
      ...(outcome && { shapeName: outcome.shape.name }),
      materials: project.materials,
      settings: project.settings,
      built: requiredPieces(piece).flatMap((giver) => build(giver, [...above, pieceId]) ?? []),
    });
  };
  const steps = build(id, [])?.working ?? [];
  return new Map(steps.flatMap(({ name, value, unit }) => (unit === 'mm' ? [[name, value] as const] : [])));
}
