import { isInside, reverseOutline } from '#core/geometry';
import type { Box3, Outline, Point } from '#core/geometry';
import type { Machining, Part } from '#core/joinery';
import { unreachable } from '#core/problems';

type Of<K extends Machining['kind']> = Extract<Machining, { kind: K }>;

/**
 * A figure of the part's own frame as it looks from the face side: x still to the right, y now from the far edge up to the face
 * edge, which comes to lie at the top. The part's z runs away from whoever looks at the face, so its y must run down.
 */
export function asSeen(outline: Outline, part: Part): Outline {
  return reverseOutline(
    outline.map((p) => ({ ...seenPoint(p, part), ...(p.bulge !== undefined && { bulge: -p.bulge }) })),
  );
}

/** A point of the part's own frame in the view of the face side. */
export function seenPoint(point: Point, part: Part): Point {
  return { x: point.x, y: part.finished.width - point.y };
}

/** A closed contour of machining in a view of the part, mm of the part. */
export interface SeenContour {
  readonly outline: Outline;
  /** Lies on the near side of the view: drawn full, else dashed. */
  readonly near: boolean;
}

/** What a machining shows in the view of the face side (`asSeen`); null when nothing. */
export function seenOnFace(machining: Machining, part: Part): SeenContour | null {
  const contour = contourOnFace(machining, part);
  return contour && { ...contour, outline: asSeen(contour.outline, part) };
}

/** The same in the part's own frame. */
function contourOnFace(machining: Machining, part: Part): SeenContour | null {
  const { thickness } = part.finished;
  switch (machining.kind) {
    case 'recess': {
      const { min, max } = machining.box;
      return { outline: between(min.x, min.y, max.x, max.y), near: min.z <= 0.01 };
    }
    case 'prism':
      return { outline: prismOnFace(machining, part), near: isNearFace(machining, thickness) };
    case 'hole':
      return holeOnFace(machining, part);
    case 'bevel':
      return null;
    default:
      return unreachable(machining);
  }
}

/** What a machining shows in the view of the face edge: x along the length, y across the thickness, the face side below; null when nothing. */
export function seenOnEdge(machining: Machining, part: Part): SeenContour | null {
  switch (machining.kind) {
    case 'recess': {
      const { min, max } = machining.box;
      return { outline: between(min.x, min.z, max.x, max.z), near: min.y <= 0.01 };
    }
    case 'prism': {
      const box = prismBox(machining, part);
      return {
        outline: between(box.min.x, box.min.z, box.max.x, box.max.z),
        near: box.min.y <= 0.01,
      };
    }
    case 'hole': {
      const box = holeBox(machining, part);
      return { outline: between(box.min.x, box.min.z, box.max.x, box.max.z), near: false };
    }
    case 'bevel':
      return null;
    default:
      return unreachable(machining);
  }
}

/** The part seen from its face edge, the face side below: ends sawn off square across the thickness slope. */
export function edgeContour(part: Part): Outline {
  const { length, thickness } = part.finished;
  const lost = (edge: 'start' | 'end', onFace: boolean): number =>
    part.machining.reduce((most, one) => {
      if (one.kind !== 'bevel' || one.edge !== edge || one.degrees > 0 !== onFace) return most;
      return Math.max(most, thickness * Math.tan((Math.abs(one.degrees) * Math.PI) / 180));
    }, 0);
  return [
    { x: lost('start', true), y: 0 },
    { x: length - lost('end', true), y: 0 },
    { x: length - lost('end', false), y: thickness },
    { x: lost('start', false), y: thickness },
  ];
}

function between(x1: number, y1: number, x2: number, y2: number): Outline {
  return [
    { x: x1, y: y1 },
    { x: x2, y: y1 },
    { x: x2, y: y2 },
    { x: x1, y: y2 },
  ];
}

function isNearFace(prism: Of<'prism'>, thickness: number): boolean {
  if (prism.from === 'face') return (prism.below ?? 0) <= 0.01;
  if (prism.from === 'back') return prism.depth >= thickness - 0.01;
  return prism.outline.some((p) => p.y <= 0.01);
}

function prismOnFace(prism: Of<'prism'>, part: Part): Outline {
  if (prism.from === 'face' || prism.from === 'back') return prism.outline;
  const { min, max } = prismBox(prism, part);
  return between(min.x, min.y, max.x, max.y);
}

function holeOnFace(hole: Of<'hole'>, part: Part): SeenContour {
  const r = hole.diameter / 2;
  if (hole.from === 'face' || hole.from === 'back') {
    const outline: Outline = [
      { x: hole.x - r, y: hole.y, bulge: 1 },
      { x: hole.x + r, y: hole.y, bulge: 1 },
    ];
    return { outline, near: hole.from === 'face' || hole.depth === 'through' };
  }
  const { min, max } = holeBox(hole, part);
  return { outline: between(min.x, min.y, max.x, max.y), near: false };
}

function prismBox(prism: Of<'prism'>, part: Part): Box3 {
  const us = prism.outline.map((p) => p.x);
  const vs = prism.outline.map((p) => p.y);
  const u: [number, number] = [Math.min(...us), Math.max(...us)];
  const v: [number, number] = [Math.min(...vs), Math.max(...vs)];
  const box = boxFrom(prism.from, { u, v }, prism.depth, part);
  // a slot within the thickness begins below the face it is measured from
  const below = prism.from === 'face' ? (prism.below ?? 0) : 0;
  return { ...box, min: { ...box.min, z: Math.max(box.min.z, below) } };
}

function holeBox(hole: Of<'hole'>, part: Part): Box3 {
  const r = hole.diameter / 2;
  const depth = hole.depth === 'through' ? Infinity : hole.depth;
  return boxFrom(hole.from, { u: [hole.x - r, hole.x + r], v: [hole.y - r, hole.y + r] }, depth, part);
}

/** The block that something reaching `depth` in from a face takes up. */
function boxFrom(
  from: Of<'hole'>['from'],
  range: { readonly u: readonly [number, number]; readonly v: readonly [number, number] },
  depth: number,
  part: Part,
): Box3 {
  const { length, width, thickness } = part.finished;
  const { u, v } = range;
  const into = (size: number, far: boolean): [number, number] =>
    far ? [Math.max(0, size - depth), size] : [0, Math.min(size, depth)];
  const make = (x: readonly number[], y: readonly number[], z: readonly number[]): Box3 => ({
    min: { x: x[0] ?? 0, y: y[0] ?? 0, z: z[0] ?? 0 },
    max: { x: x[1] ?? 0, y: y[1] ?? 0, z: z[1] ?? 0 },
  });
  switch (from) {
    case 'face':
    case 'back':
      return make(u, v, into(thickness, from === 'back'));
    case 'face-edge':
    case 'far-edge':
      return make(u, into(width, from === 'far-edge'), v);
    case 'start':
    case 'end':
      return make(into(length, from === 'end'), u, v);
    default:
      return unreachable(from);
  }
}

/** A point well inside an outline, near the middle of its box when that is inside; for marks and lettering. */
export function innerPoint(outline: Outline, wanted: Point): Point {
  if (isInside(wanted, outline)) return wanted;
  const middles = outline.map((p, i) => {
    const q = outline[(i + Math.floor(outline.length / 2)) % outline.length] ?? p;
    return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  });
  return middles.find((p) => isInside(p, outline)) ?? wanted;
}
