import type { Shape } from '#core/geometry';
import { gapToShapeOf, type BuiltPiece } from '#core/joinery';
import {
  adviseEdge,
  bestExtraReading,
  edgeUncertainties,
  type EdgeFit,
  type ExtraReading,
  type GapLimits,
} from '#core/measuring';
import type { Project } from '#core/project';
import type { LengthSystem } from '#core/units';

import { readingsOf } from '../shapes/shape-readings.ts';
import { wordOrdinates } from '../shapes/shape-words.ts';
import type { PieceFit, ShapeOutcome } from '../types.ts';
import { edgeGaps } from './edge-gaps.ts';

/** A pack can be this thin and this thick, mm (joinery A11). */
const packed: GapLimits = { least: 2, most: 18 };
/** A gap that is seen may become twice as wide as it was meant, at least this wide, mm (common practice, no source). */
const widestSeen = 4;
/** Shapes of more points are not searched for a reading more: it would take longer than it helps. */
const mostPoints = 40;

/** The fit of every piece to the shape it takes its size from; pieces that leave no gap to any edge are left out. */
export function fitPieces(
  project: Project,
  pieces: readonly BuiltPiece[],
  shapes: readonly ShapeOutcome[],
): readonly PieceFit[] {
  return pieces.flatMap((built) => {
    const id = project.pieces.find((each) => each.id === built.piece)?.shape;
    const outcome = shapes.find(({ shape }) => shape.id === id);
    if (!outcome?.adjusted || built.parts.length === 0) return [];
    return fitPiece(built, outcome, { shape: outcome.adjusted, units: project.units });
  });
}

function fitPiece(
  built: BuiltPiece,
  outcome: ShapeOutcome,
  { shape, units }: { readonly shape: Shape; readonly units: LengthSystem },
): readonly PieceFit[] {
  const fits = planFits(built, shape);
  if (fits.length === 0) return [];
  const edges = fits.map((fit) => adviseEdge(fit, units));
  const { piece, letter, name } = built;
  const chance = edges.reduce((product, edge) => product * edge.chance, 1);
  const extra = findExtra(fits, outcome, shape);
  const doubts = findDoubts(outcome);
  return [{ piece, letter, name, shape: outcome.shape.id, doubts, edges, chance, extra }];
}

function findDoubts({ shape, adjustment, ordinateSlips = [] }: ShapeOutcome): readonly string[] {
  return [
    ...adjustment.suspects.map(({ id }) => id),
    ...ordinateSlips.map(({ item, at }) => wordOrdinates(shape, item, at)),
  ];
}

/** What is planned along each edge: by the places of the parts where the opening is known in the piece, else by its gap. */
function planFits(built: BuiltPiece, shape: Shape): readonly EdgeFit[] {
  const limits = limitsOf(built);
  if (shape.sections) return planSections(built, shape.sections);
  const spread = edgeUncertainties(shape);
  const uncertainty = (name: string): number => {
    const at = shape.edges.findIndex((edge) => edge.name === name);
    return Math.max(spread[at] ?? 0, 2 * (shape.edges[at]?.sigma ?? 0));
  };
  const gaps = edgeGaps(built, shape);
  if (gaps.length > 0)
    return gaps.map(({ edge, gap, deviation, cover }) => ({
      ...{ name: edge.name, gap, deviation, uncertainty: uncertainty(edge.name), limits: limits(gap) },
      ...(cover !== undefined && { cover }),
    }));
  const gap = gapOf(built);
  if (gap === null || shape.kind === 'walls') return [];
  return shape.edges.map(({ name, bow = 0 }) => ({
    ...{ name, gap: gap + Math.min(0, bow), deviation: Math.max(0, bow) },
    ...{ uncertainty: uncertainty(name), limits: limits(gap) },
  }));
}

/** Along a hull the piece stands clear of it by the same everywhere. */
function planSections(built: BuiltPiece, sections: NonNullable<Shape['sections']>): readonly EdgeFit[] {
  const gap = gapOf(built);
  if (gap === null) return [];
  const limits = limitsOf(built)(gap);
  return sections.map(({ name, sigma }) => ({ name, gap, deviation: 0, uncertainty: 2 * sigma, limits }));
}

/** The gap of a piece that follows the edges of its shape; null of one that does not. */
function gapOf({ kind, working }: BuiltPiece): number | null {
  const key = gapToShapeOf(kind);
  if (key === undefined) return null;
  return working.find(({ parameter }) => parameter === key)?.value ?? null;
}

function limitsOf({ working }: BuiltPiece): (gap: number) => GapLimits {
  const isPacked = working.some(({ parameter }) => parameter?.startsWith('packing') === true);
  return isPacked ? () => packed : (gap) => ({ least: 0, most: Math.max(widestSeen, 2 * gap) });
}

function findExtra(
  fits: readonly EdgeFit[],
  { shape: measured }: ShapeOutcome,
  shape: Shape,
): ExtraReading | null {
  const [tightest] = fits.toSorted((a, b) => a.gap - a.limits.least - (b.gap - b.limits.least));
  if (!tightest || shape.edges.length === 0 || Object.keys(shape.points).length > mostPoints) return null;
  if (measured.kind === 'outline' && measured.traced) return null; // its corners come from a drawing, not from a tape
  const { gap, limits, cover } = tightest;
  return bestExtraReading(shape, readingsOf(measured), {
    gap,
    limits,
    ...(cover !== undefined && { cover }),
  });
}
