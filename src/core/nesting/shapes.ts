import { figureArea, hullOfRing, boxOfRing, ringArea, turnOf, turnRing } from './rings.ts';
import type { Figure, Ring } from './rings.ts';
import { findPoles } from './poles.ts';
import type { Pole } from './poles.ts';

/** A part as the search sees it: its true figure, and the one that must not clash, grown by half the gap. */
export interface ShapeSource {
  readonly figure: Figure;
  readonly grown: Figure;
  /** The outline whose corners are laid to corners of others. */
  readonly matched: Ring;
  /** Degrees. */
  readonly angles: readonly number[];
}

/**
 * Every part at every angle ("pose"), laid out flat for the inner loop. A pose is measured from the lower left corner of
 * the box of its true figure.
 */
export interface Shapes {
  readonly count: number;
  /** The first pose of each source; one more entry than sources. */
  readonly firstPose: Int32Array;
  readonly source: Int32Array;
  readonly angle: Float64Array;
  /** From the corner of the box to the outline's own origin. */
  readonly originX: Float64Array;
  readonly originY: Float64Array;
  readonly width: Float64Array;
  readonly height: Float64Array;
  /** Box of the grown figure: minX, minY, maxX, maxY of each pose. */
  readonly box: Float64Array;
  readonly edgeStart: Int32Array;
  /** x0, y0, x1, y1 of each edge of the grown figure. */
  readonly edges: Float64Array;
  /** x, y of the corners that may meet those of other parts: of the true figure where there is no gap. */
  readonly cornerStart: Int32Array;
  readonly corners: Float64Array;
  readonly poleStart: Int32Array;
  /** x, y, radius of circles inside the grown figure, the largest first. */
  readonly poles: Float64Array;
  /** Fourth root of the area of the convex hull: how much room moving it takes. */
  readonly bulk: Float64Array;
  /** Diagonal of the box. */
  readonly span: Float64Array;
}

interface Pose {
  readonly source: number;
  readonly angle: number;
  readonly origin: readonly [number, number];
  readonly size: readonly [number, number];
  /** Of the true figure. */
  readonly outlines: readonly Ring[];
  /** Of the grown one. */
  readonly rings: readonly Ring[];
  readonly matched: Ring;
  readonly poles: readonly Pole[];
  readonly bulk: number;
}

export function layOutShapes(sources: readonly ShapeSource[]): Shapes {
  const firstPose = new Int32Array(sources.length + 1);
  const poses: Pose[] = [];
  sources.forEach((source, i) => {
    firstPose[i] = poses.length;
    poses.push(...posesOf(source, i));
    firstPose[i + 1] = poses.length;
  });
  return flatten(poses, firstPose);
}

function posesOf(source: ShapeSource, index: number): readonly Pose[] {
  const poles = findPoles(source.grown, figureArea(source.grown));
  const bulk = Math.abs(ringArea(hullOfRing(source.grown.outer))) ** 0.25;
  const poses: Pose[] = [];
  for (const angle of new Set(source.angles)) {
    const pose = makePose({ source, index, angle, poles, bulk });
    if (!poses.some((other) => looksSame(other, pose))) poses.push(pose);
  }
  return poses;
}

function makePose(given: {
  readonly source: ShapeSource;
  readonly index: number;
  readonly angle: number;
  readonly poles: readonly Pole[];
  readonly bulk: number;
}): Pose {
  const { source, angle } = given;
  const { sin, cos } = turnOf(angle);
  const [minX, minY, maxX, maxY] = boxOfRing(turnRing(source.figure.outer, angle));
  const lay = (ring: Ring) => turnRing(ring, angle).map((value, i) => value - (i % 2 === 0 ? minX : minY));
  return {
    source: given.index,
    angle,
    origin: [-minX, -minY],
    size: [maxX - minX, maxY - minY],
    outlines: [source.figure.outer, ...source.figure.holes].map(lay),
    rings: [source.grown.outer, ...source.grown.holes].map(lay),
    matched: lay(source.matched),
    poles: given.poles.map(({ x, y, r }) => ({
      x: x * cos - y * sin - minX,
      y: x * sin + y * cos - minY,
      r,
    })),
    bulk: given.bulk,
  };
}

/** Two angles of a symmetrical part are one to the search, however it was grown. */
function looksSame(a: Pose, b: Pose): boolean {
  const near = 1e-9 * Math.hypot(...a.size);
  if (Math.abs(a.size[0] - b.size[0]) > near || Math.abs(a.size[1] - b.size[1]) > near) return false;
  return a.outlines.every((ring) => b.outlines.some((other) => sameCorners(ring, other, near)));
}

function sameCorners(a: Ring, b: Ring, near: number): boolean {
  if (a.length !== b.length) return false;
  const isAt = (shift: number) =>
    a.every((value, i) => Math.abs(value - (b[(i + shift) % b.length] as number)) <= near);
  for (let shift = 0; shift < b.length; shift += 2) if (isAt(shift)) return true;
  return false;
}

function flatten(poses: readonly Pose[], firstPose: Int32Array): Shapes {
  const edges: number[] = [];
  const poles: number[] = [];
  const corners: number[] = [];
  const cornerStart = new Int32Array(poses.length + 1);
  const edgeStart = new Int32Array(poses.length + 1);
  const poleStart = new Int32Array(poses.length + 1);
  const box = new Float64Array(4 * poses.length);
  poses.forEach((pose, p) => {
    for (const ring of pose.rings) pushEdges(edges, ring);
    for (const { x, y, r } of pose.poles) poles.push(x, y, r);
    corners.push(...pose.matched);
    cornerStart[p + 1] = corners.length / 2;
    edgeStart[p + 1] = edges.length / 4;
    poleStart[p + 1] = poles.length / 3;
    box.set(boxOfRing(pose.rings[0] as Ring), 4 * p);
  });
  const each = (value: (pose: Pose) => number) => Float64Array.from(poses, value);
  return {
    count: poses.length,
    firstPose,
    source: Int32Array.from(poses, (pose) => pose.source),
    angle: each((pose) => pose.angle),
    originX: each((pose) => pose.origin[0]),
    originY: each((pose) => pose.origin[1]),
    width: each((pose) => pose.size[0]),
    height: each((pose) => pose.size[1]),
    box,
    edgeStart,
    edges: Float64Array.from(edges),
    cornerStart,
    corners: Float64Array.from(corners),
    poleStart,
    poles: Float64Array.from(poles),
    bulk: each((pose) => pose.bulk),
    span: each((pose) => Math.hypot(...pose.size)),
  };
}

function pushEdges(edges: number[], ring: Ring): void {
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    edges.push(ring[j] as number, ring[j + 1] as number, ring[i] as number, ring[i + 1] as number);
  }
}
