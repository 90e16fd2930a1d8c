import type { Point } from '#core/geometry';
import { makeRecess, type Range } from '../parts.ts';
import type { BuiltPiece, Machining, Part, PartFace } from '../types.ts';

export type FrameSide = 'left' | 'right' | 'head' | 'sill';

const inwards: Readonly<Record<FrameSide, Point>> = {
  left: { x: 1, y: 0 },
  right: { x: -1, y: 0 },
  head: { x: 0, y: -1 },
  sill: { x: 0, y: 1 },
};

/** A member of a frame as a door meets it: where its inner face runs, and how to cut into that. */
export interface InnerFace {
  readonly side: FrameSide;
  readonly part: Part;
  /** Whether the member lies flat to the viewer, its inner edge to the door; else on edge as a lining, its face to the door. */
  readonly flat: boolean;
  /** Wood from the inner face to the outside. */
  readonly depth: number;
  /** Wood from the near face to the far one. */
  readonly through: number;
  /** A point of the inner face, and the direction along it in which the part's own x grows. */
  readonly at: Point;
  readonly along: Point;
}

/** The side of the opening that a part of a frame closes; null for stops, covers and whatever else. */
export function sideOf(part: Part, { kind, letter }: BuiltPiece): FrameSide | null {
  if (kind === 'free-frame') {
    const order = ['sill', 'right', 'head', 'left'] as const;
    return order.find((_, i) => part.id === `${letter}${i + 1}`) ?? null;
  }
  if (part.name.startsWith('Jamb')) return part.hand === 'right' ? 'right' : 'left';
  return part.name === 'Head' ? 'head' : part.name === 'Sill' ? 'sill' : null;
}

/** The inner face of a member; null where it runs another way than its side should, so that nothing is cut by it. */
export function innerFace(part: Part, built: BuiltPiece): InnerFace | null {
  const side = sideOf(part, built);
  const placed = part.placements[0];
  if (!side || !placed) return null;
  const { origin, xAxis, yAxis } = placed;
  const flat = !part.faceSide.startsWith('face side to the door opening');
  const way = inwards[side];
  const far = flat && yAxis.x * way.x + yAxis.y * way.y > 0 ? part.finished.width : 0;
  const isUpright = way.y === 0;
  if (Math.abs(isUpright ? xAxis.y : xAxis.x) < 0.5) return null;
  return {
    side,
    part,
    flat,
    depth: flat ? part.finished.width : part.finished.thickness,
    through: flat ? part.finished.thickness : part.finished.width,
    at: { x: origin.x + yAxis.x * far, y: origin.y + yAxis.y * far },
    along: { x: xAxis.x, y: xAxis.y },
  };
}

/** How far along its part a height of a jamb, or a distance from the left of a head or sill, comes. */
export function alongAt({ side, at, along }: InnerFace, where: number): number {
  return side === 'left' || side === 'right' ? (where - at.y) / along.y : (where - at.x) / along.x;
}

/** The inner face of a head or sill over a point from the left, or of a jamb beside a height. */
export function innerAt(face: InnerFace, where: number): number {
  const share = alongAt(face, where);
  const { side, at, along } = face;
  return side === 'left' || side === 'right' ? at.x + along.x * share : at.y + along.y * share;
}

/** A recess in the inner face: along the part, into its wood, from the near face to the far one. */
export function cutInner(
  face: InnerFace,
  name: Extract<Machining, { kind: 'recess' }>['name'],
  range: { readonly x: Range; readonly into: Range; readonly through: Range },
  note: string,
): Machining {
  const { x, into, through } = range;
  if (!face.flat) return makeRecess(name, 'face', { x, y: through, z: into }, note);
  const from = innerEdge(face);
  const width = face.depth;
  const y: Range = from === 'face-edge' ? into : [width - into[1], width - into[0]];
  return makeRecess(name, from, { x, y, z: through }, note);
}

/** A hole into the inner face. */
export function drillInner(
  face: InnerFace,
  hole: { readonly x: number; readonly through: number; readonly diameter: number; readonly depth: number },
  note: string,
): Machining {
  const { x, through: y, diameter, depth } = hole;
  const from: PartFace = face.flat ? innerEdge(face) : 'face';
  return { kind: 'hole', from, x, y, diameter, depth, note };
}

function innerEdge({ part, side }: InnerFace): 'face-edge' | 'far-edge' {
  const axis = part.placements[0]?.yAxis;
  const way = inwards[side];
  return axis && axis.x * way.x + axis.y * way.y > 0 ? 'far-edge' : 'face-edge';
}
