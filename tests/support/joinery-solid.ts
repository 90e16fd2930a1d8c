import { isInside, unplacePoint } from '#core/geometry';
import type { Point3 } from '#core/geometry';
import type { BuiltPiece, Machining, Part } from '#core/joinery';

/** Whether a point of the piece's frame lies in the wood of a part, its machining (screw holes apart) taken away. */
export function occupies(part: Part, point: Point3, placement = part.placements[0]): boolean {
  if (!placement) return false;
  const p = unplacePoint(placement, point);
  const { length, width, thickness } = part.finished;
  const inBlock = p.x > 0 && p.x < length && p.y > 0 && p.y < width && p.z > 0 && p.z < thickness;
  if (!inBlock || !isInside({ x: p.x, y: p.y }, part.outline)) return false;
  return !part.machining.some((machining) => takes(machining, p, part));
}

/** The same, with all points within `margin` in the wood too: touching faces do not count. */
export function occupiesDeep(part: Part, point: Point3, margin = 0.15): boolean {
  const steps = [-margin, 0, margin];
  return steps.every((d) =>
    (['x', 'y', 'z'] as const).every((axis) => occupies(part, { ...point, [axis]: point[axis] + d })),
  );
}

function takes(machining: Machining, p: Point3, part: Part): boolean {
  const { length, width, thickness } = part.finished;
  switch (machining.kind) {
    case 'recess': {
      const { min, max } = machining.box;
      return (['x', 'y', 'z'] as const).every((axis) => p[axis] > min[axis] && p[axis] < max[axis]);
    }
    case 'prism': {
      const depthAt = {
        face: p.z,
        back: thickness - p.z,
        'face-edge': p.y,
        'far-edge': width - p.y,
        start: p.x,
        end: length - p.x,
      };
      const flat = {
        face: [p.x, p.y],
        back: [p.x, p.y],
        'face-edge': [p.x, p.z],
        'far-edge': [p.x, p.z],
        start: [p.y, p.z],
        end: [p.y, p.z],
      };
      const [x = 0, y = 0] = flat[machining.from];
      const depth = depthAt[machining.from];
      return (
        depth > (machining.below ?? 0) && depth < machining.depth && isInside({ x, y }, machining.outline)
      );
    }
    case 'bevel': {
      const slope = Math.tan((machining.degrees * Math.PI) / 180);
      const lost = slope > 0 ? slope * (thickness - p.z) : -slope * p.z;
      if (machining.edge === 'start') return p.x < lost;
      if (machining.edge === 'end') return p.x > length - lost;
      return machining.edge === 'face-edge' ? p.y < lost : p.y > width - lost;
    }
    case 'hole':
      return false;
  }
}

/** Pairs of parts that lie in the same wood at one of the points. */
export function overlaps(built: BuiltPiece, points: readonly Point3[]): readonly string[] {
  const found = new Set<string>();
  for (const point of points) {
    const there = built.parts.filter((part) => occupiesDeep(part, point)).map((part) => part.name);
    if (there.length > 1) found.add(there.join(' + '));
  }
  return [...found];
}
