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

/** What a shape is of: a four-cornered opening, any outline, cross-sections of the hull, or a run of walls in plan. */
export type ShapeKind = 'opening' | 'outline' | 'sections' | 'walls';

/** An edge of a shape, between two of its named points. `bow` is its offset at mid length, mm, positive outwards. */
export interface ShapeEdge {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly bow?: number;
  /** The way from `from` to `to` where it is curved, ends included, close enough to be joined by straight lines. */
  readonly curve?: readonly Point[];
  /** How far the edge may lie from where it is drawn, one standard deviation square to it, mm. */
  readonly sigma?: number;
}

/** A cross-section of the hull (joinery A6, B7): x from the plane of the fronts to the bare hull, y up, rising. */
export interface ShapeSection {
  readonly name: string;
  /** Where along the boat, from the first section, mm. */
  readonly at: number;
  readonly line: readonly Point[];
  /** Bevel of the hull against square to the section by height, radians, positive where it falls away beyond the section. */
  readonly bevels: readonly { readonly height: number; readonly angle: number }[];
  /** One standard deviation of a point of the line, mm. */
  readonly sigma: number;
}

/** Something in the way: a stringer, a pipe. The box in the plane of the shape, or of the section it names. */
export interface ShapeObstruction {
  readonly name: string;
  readonly box: Box;
  readonly section?: string;
}

/**
 * A measured shape in a plane: named points, the edges between them and the covariance of the coordinates (mm²).
 * `order` names the rows of `covariance`, as `TR.x`. Upright is the y axis turned by `tilt` (radians, counter-clockwise).
 */
export interface Shape {
  /** `opening` when left out. */
  readonly kind?: ShapeKind;
  readonly seenFrom: string;
  readonly points: Readonly<Record<string, Point>>;
  /** Of an outline in order round it, counter-clockwise; of walls from left to right as one stands in the room. */
  readonly edges: readonly ShapeEdge[];
  readonly order: readonly string[];
  readonly covariance: readonly (readonly number[])[];
  readonly tilt: number;
  readonly sections?: readonly ShapeSection[];
  readonly obstructions?: readonly ShapeObstruction[];
  /** How far the fourth corner stands out of the plane of the others, mm (joinery A4). */
  readonly twist?: number;
  /** Of what the opening is cut through, measured at several places, mm. */
  readonly thickness?: { readonly least: number; readonly most: number };
}
