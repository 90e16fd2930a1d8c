import { asSeen, boxOfNested, cutOutline, type NestedPart, type NestView } from '#core/drawing';
import type { Outline, Point } from '#core/geometry';
import type { Part } from '#core/joinery';
import type { NestPlacement } from '#core/nesting';

import type { PlannedRouting, Understanding } from '../types.ts';
import type { LayoutPaper } from '../view-layout.ts';
import { showSizeIn } from '../words.ts';

/** Turned by an angle about the origin, then moved; mm and degrees, as placements say it. */
export function placeOutline(
  outline: Outline,
  { angle, x, y }: Pick<NestPlacement, 'angle' | 'x' | 'y'>,
): Outline {
  const turn = (angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const place = (point: Point): Point => ({
    x: point.x * cos - point.y * sin + x,
    y: point.x * sin + point.y * cos + y,
  });
  return outline.map((point) => ({ ...point, ...place(point) }));
}

/** A sheet of the router as it is drawn; throws for a sheet the plan does not have. */
export function viewNest(
  understanding: Understanding,
  { group, job, plan }: PlannedRouting,
  sheet: number,
  paper: LayoutPaper,
): NestView {
  const stock = job.stock.find((each) => 'id' in each && each.id === plan.sheets[sheet]?.stock);
  if (!stock || !('id' in stock)) throw new Error(`no sheet ${sheet + 1} in ${group.id}`);
  const parts = nestedParts(
    understanding,
    plan.placements.filter((placement) => placement.sheet === sheet),
  );
  const reach = boxOfNested(parts)?.maxX ?? 0;
  const offcutFrom = reach + (job.gap ?? 0);
  return {
    title: `${group.title} · ${showSizeIn(paper.units ?? 'mm', stock.length, stock.width)}, sheet ${sheet + 1} of ${plan.sheets.length}`,
    stock: { length: stock.length, width: stock.width },
    margin: job.margin ?? 0,
    gap: job.gap ?? 0,
    keepOut: (stock.keepOut ?? []).map(({ x, y, length, width }) => ({
      minX: x,
      minY: y,
      maxX: x + length,
      maxY: y + width,
    })),
    parts,
    offcutFrom: offcutFrom < stock.length ? offcutFrom : null,
    ...paper,
  };
}

/** Parts by their true outlines where they lie, face side up. */
function nestedParts(
  understanding: Understanding,
  placements: readonly NestPlacement[],
): readonly NestedPart[] {
  const parts = new Map(
    understanding.pieces.flatMap((piece) => piece.parts.map((part) => [part.id, part] as const)),
  );
  return placements.map((placement) => {
    const part = parts.get(placement.id);
    if (!part) throw new Error(`no part ${placement.id}`);
    const lay = (outline: Outline): Outline => placeOutline(asSeen(outline, part), placement);
    return { address: part.id, outline: lay(cutOutline(part)), holes: part.holes.map(lay) };
  });
}

/** The parts of a sheet with where they lie, for the router's files. */
export function partsOnSheet(
  understanding: Understanding,
  { plan }: PlannedRouting,
  sheet: number,
): readonly { readonly part: Part; readonly placement: NestPlacement }[] {
  const parts = new Map(
    understanding.pieces.flatMap((piece) => piece.parts.map((part) => [part.id, part] as const)),
  );
  return plan.placements
    .filter((placement) => placement.sheet === sheet)
    .flatMap((placement) => {
      const part = parts.get(placement.id);
      return part ? [{ part, placement }] : [];
    });
}
