import { cornersOfBox, unplacePoint, type Box3, type Placement, type Point3 } from '#core/geometry';
import { makeRecess, type Range } from '../parts.ts';
import type { Machining, Part, PartFace } from '../types.ts';

/** Wood taken out of a piece where it lies, whatever parts it meets there. */
export interface BoxCut {
  readonly name: Extract<Machining, { kind: 'recess' }>['name'];
  /** In the frame of the piece. */
  readonly box: Box3;
  /** Out of the face it is worked from, in the frame of the piece. */
  readonly out: Point3;
  readonly note: string;
}

/** The parts with a box taken out of each that it meets; of parts that lie askew or more than once nothing is taken. */
export function cutBox(parts: readonly Part[], cut: BoxCut): readonly Part[] {
  return parts.map((part) => {
    const at = onlyPlace(part);
    const ranges = at && clipTo(part, localBox(at, cut.box));
    if (!at || !ranges) return part;
    const recess = makeRecess(cut.name, faceTowards(at, cut.out), ranges, cut.note);
    return { ...part, machining: [...part.machining, recess] };
  });
}

/** A hole from the face of the piece right through the part that lies there. */
export function drillThrough(
  parts: readonly Part[],
  hole: { readonly at: Point3; readonly diameter: number; readonly note: string },
): readonly Part[] {
  return parts.map((part) => {
    const at = onlyPlace(part);
    const p = at && unplacePoint(at, hole.at);
    if (!p || !isOver(part, p)) return part;
    const drilled: Machining = {
      ...{ kind: 'hole', from: 'face', x: p.x, y: p.y, diameter: hole.diameter, depth: 'through' },
      note: hole.note,
    };
    return { ...part, machining: [...part.machining, drilled] };
  });
}

const isOver = ({ finished: { length, width } }: Part, { x, y }: Point3) =>
  x > 0 && x < length && y > 0 && y < width;

/** Where a part lies that lies once and square. */
function onlyPlace({ placements }: Part): Placement | null {
  const [at] = placements;
  if (!at || placements.length > 1) return null;
  const isSquare = [at.xAxis, at.yAxis].every((axis) =>
    Object.values(axis).every((share: number) => Math.abs(share) < 1e-9 || Math.abs(share) > 1 - 1e-9),
  );
  return isSquare ? at : null;
}

interface Ranges {
  readonly x: Range;
  readonly y: Range;
  readonly z: Range;
}

function localBox(at: Placement, box: Box3): Ranges {
  const corners = cornersOfBox(box).map((corner) => unplacePoint(at, corner));
  const span = (axis: 'x' | 'y' | 'z'): Range => [
    Math.min(...corners.map((corner) => corner[axis])),
    Math.max(...corners.map((corner) => corner[axis])),
  ];
  return { x: span('x'), y: span('y'), z: span('z') };
}

const leastCut = 1e-6; // mm; less is a face that only touches

function clipTo({ finished }: Part, { x, y, z }: Ranges): Ranges | null {
  const clip = ([from, to]: Range, most: number): Range => [Math.max(0, from), Math.min(most, to)];
  const inside = {
    x: clip(x, finished.length),
    y: clip(y, finished.width),
    z: clip(z, finished.thickness),
  };
  return Object.values(inside).every(([from, to]: Range) => to - from > leastCut) ? inside : null;
}

/** The face of a part that looks this way. */
export function faceTowards(at: Placement, way: Point3): PartFace {
  const from = unplacePoint(at, at.origin);
  const tip = unplacePoint(at, {
    x: at.origin.x + way.x,
    y: at.origin.y + way.y,
    z: at.origin.z + way.z,
  });
  const along = { x: tip.x - from.x, y: tip.y - from.y, z: tip.z - from.z };
  if (Math.abs(along.x) > 0.5) return along.x > 0 ? 'end' : 'start';
  if (Math.abs(along.y) > 0.5) return along.y > 0 ? 'far-edge' : 'face-edge';
  return along.z > 0 ? 'back' : 'face';
}
