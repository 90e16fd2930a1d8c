import { boxOfOutline } from '#core/geometry';
import type { Part } from '#core/joinery';

/** Difference in mm up to which an outline counts as its bounding rectangle: a pencil line is wider. */
export const drawable = 0.2;

/** True when the outline of a part is a plain rectangle as far as a pencil can tell. */
export function isRectangle(part: Part): boolean {
  const box = boxOfOutline(part.outline);
  // a triangle has all its corners in those of its box
  if (part.outline.length < 4) return false;
  return part.outline.every((point) => {
    const onX = Math.min(Math.abs(point.x - box.minX), Math.abs(point.x - box.maxX)) <= drawable;
    const onY = Math.min(Math.abs(point.y - box.minY), Math.abs(point.y - box.maxY)) <= drawable;
    return onX && onY && Math.abs(point.bulge ?? 0) < 1e-6;
  });
}
