import {
  boxOfOutline,
  reverseOutline,
  type Outline,
  type Placement,
  type Point,
  type Point3,
} from '#core/geometry';

/** A plane in the frame of the piece; who looks at the face sides lying in it sees `right` to the right and `up` upwards. */
export interface Plane {
  readonly origin: Point3;
  readonly right: Point3;
  readonly up: Point3;
}

/** The plane of the front, face sides to the viewer, some mm nearer to him. */
export function frontPlane(z = 0): Plane {
  return { origin: { x: 0, y: 0, z }, right: { x: 1, y: 0, z: 0 }, up: { x: 0, y: 1, z: 0 } };
}

/** A flat part where it lies: its outline in its own frame, and the way from the plane into that frame. */
export interface LaidFlat {
  readonly length: number;
  readonly width: number;
  readonly outline: Outline;
  readonly placement: Placement;
  /** A figure of the plane in the frame of the part, counter-clockwise when it was. */
  readonly toPart: (figure: Outline) => Outline;
}

export const upwards: Point = { x: 0, y: 1 };
export const rightwards: Point = { x: 1, y: 0 };

/**
 * A part cut to an outline of the plane, its length along a direction and its width to the right of that, so that its
 * face side lies in the plane and its thickness behind it.
 */
export function layFlat(outline: Outline, along: Point, plane: Plane): LaidFlat {
  const aside = { x: along.y, y: -along.x };
  const mirrored = (figure: Outline): Outline =>
    reverseOutline(
      figure.map((p) => ({
        x: p.x * along.x + p.y * along.y,
        y: p.x * aside.x + p.y * aside.y,
        ...(p.bulge && { bulge: -p.bulge }),
      })),
    );
  const box = boxOfOutline(mirrored(outline));
  const toPart = (figure: Outline): Outline =>
    mirrored(figure).map((p) => ({ ...p, x: p.x - box.minX, y: p.y - box.minY }));
  const corner = {
    x: along.x * box.minX + aside.x * box.minY,
    y: along.y * box.minX + aside.y * box.minY,
  };
  return {
    length: box.maxX - box.minX,
    width: box.maxY - box.minY,
    outline: toPart(outline),
    placement: {
      origin: inPlane(plane, corner, plane.origin),
      xAxis: turn(plane, along),
      yAxis: turn(plane, aside),
    },
    toPart,
  };
}

const none: Point3 = { x: 0, y: 0, z: 0 };

function turn(plane: Plane, way: Point): Point3 {
  return inPlane(plane, way, none);
}

function inPlane({ right, up }: Plane, { x, y }: Point, from: Point3): Point3 {
  return {
    x: from.x + right.x * x + up.x * y,
    y: from.y + right.y * x + up.y * y,
    z: from.z + right.z * x + up.z * y,
  };
}
