/** A point or vector in a plane, mm; x to the right, y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A point or vector in space, mm; seen from the viewing side x is right, y up, z towards the viewer. */
export interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Smallest axis-parallel rectangle round something, mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Axis-parallel box in space, mm. */
export interface Box3 {
  readonly min: Point3;
  readonly max: Point3;
}

/**
 * A corner of a path and the way to the next one: `bulge` 0 or absent is a straight line, else an arc with
 * bulge = tan(included angle / 4), positive counter-clockwise.
 */
export interface PathPoint extends Point {
  readonly bulge?: number;
}

/** A closed path of lines and arcs; the last point leads back to the first. Counter-clockwise when it bounds material. */
export type Outline = readonly PathPoint[];

/** Where a part sits: its own origin and axes given in the frame of the piece. z follows as x cross y. */
export interface Placement {
  readonly origin: Point3;
  readonly xAxis: Point3;
  readonly yAxis: Point3;
}

/** An edge of a shape, between two of its named points. `bow` is its offset at mid length, mm, positive outwards. */
export interface ShapeEdge {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly bow?: number;
}

/**
 * A measured shape in a plane: named points, the edges between them and the covariance of the coordinates (mm²).
 * `order` names the rows of `covariance`, as `TR.x`. Upright is the y axis turned by `tilt` (radians, counter-clockwise).
 */
export interface Shape {
  readonly seenFrom: string;
  readonly points: Readonly<Record<string, Point>>;
  readonly edges: readonly ShapeEdge[];
  readonly order: readonly string[];
  readonly covariance: readonly (readonly number[])[];
  readonly tilt: number;
}
