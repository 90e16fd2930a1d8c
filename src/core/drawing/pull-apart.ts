import { cornersOfBox, joinBoxes3, placePoint } from '#core/geometry';
import type { Box3, Placement, Point3 } from '#core/geometry';
import type { Part } from '#core/joinery';

/** One copy of a part, and where it moves when the piece is shown pulled apart. */
export interface PulledPart {
  readonly part: Part;
  readonly placement: Placement;
  readonly centre: Point3;
  readonly shift: Point3;
}

const spread = 0.3; // how far an outermost part moves out, of its own half side and a share of the longest one
const shareOfLongest = 0.22;
const still = 0.08; // of half a side: parts nearer the middle than this stay in place
const layerGap = 0.07; // of half the longest side: seen between two parts that lay on each other
const touching = 2; // mm between faces that count as lying on each other

const axes = ['x', 'y', 'z'] as const;
type Axis = (typeof axes)[number];

/** What moves as one. */
interface Body {
  readonly box: Box3;
  readonly centre: Point3;
}

/**
 * Every copy of every part with its way out from the middle of the piece, mm; parts of one group, by its name, stay together.
 * Parts that lie on each other come apart far enough to be told apart.
 */
export function pullApart(
  parts: readonly Part[],
  groupOf?: (part: Part) => string | undefined,
): readonly PulledPart[] {
  const placed = parts.flatMap((part) =>
    part.placements.map((placement) => ({ part, placement, box: boxOf(part, placement) })),
  );
  if (placed.length === 0) return [];
  const keys = placed.map(({ part }, i) => groupOf?.(part) ?? `copy ${i}`);
  const bodies = new Map<string, Body>();
  for (const [i, { box }] of placed.entries()) {
    const key = keys[i] ?? '';
    const known = bodies.get(key);
    const joined = known ? joinBoxes3([known.box, box]) : box;
    bodies.set(key, { box: joined, centre: middleOf(joined) });
  }
  const shifts = moveBodies([...bodies.values()]);
  const moves = new Map([...bodies.keys()].map((key, i) => [key, shifts[i]]));
  return placed.map(({ part, placement, box }, i) => ({
    ...{ part, placement, centre: middleOf(box) },
    shift: moves.get(keys[i] ?? '') ?? { x: 0, y: 0, z: 0 },
  }));
}

function moveBodies(bodies: readonly Body[]): readonly Point3[] {
  const whole = joinBoxes3(bodies.map(({ box }) => box));
  const middle = middleOf(whole);
  const half = { x: whole.max.x - middle.x, y: whole.max.y - middle.y, z: whole.max.z - middle.z };
  const longest = Math.max(half.x, half.y, half.z);
  const [x, y, z] = axes.map((axis) => {
    const moved = bodies.map(({ centre }) => {
      const share = half[axis] > 0 ? (centre[axis] - middle[axis]) / half[axis] : 0;
      return Math.abs(share) < still ? 0 : share * spread * (half[axis] + shareOfLongest * longest);
    });
    return partLayers(bodies, { axis, middle: middle[axis], gap: layerGap * longest, moved });
  });
  return bodies.map((_, i) => ({ x: x?.[i] ?? 0, y: y?.[i] ?? 0, z: z?.[i] ?? 0 }));
}

/** The moves along an axis, larger where a body would stay too near to the one it lies on; from the middle outwards. */
function partLayers(
  bodies: readonly Body[],
  given: { readonly axis: Axis; readonly middle: number; readonly gap: number; readonly moved: number[] },
): readonly number[] {
  const { axis, middle, gap, moved } = given;
  const away = (i: number) => (bodies[i]?.centre[axis] ?? 0) - middle;
  const order = bodies.map((_, i) => i).sort((a, b) => Math.abs(away(a)) - Math.abs(away(b)));
  order.forEach((outer, at) => {
    for (const inner of order.slice(0, at)) {
      const [a, b] = [bodies[inner] as Body, bodies[outer] as Body];
      const side = Math.sign(b.centre[axis] - a.centre[axis]);
      if (side === 0 || side !== (Math.sign(away(outer)) || side) || !liesOn(a, b, axis)) continue;
      const least = (moved[inner] ?? 0) + side * gap;
      if (side * ((moved[outer] ?? 0) - least) < 0) moved[outer] = least;
    }
  });
  return moved;
}

/** Face to face along the axis, or one bent round the other: middles apart along this axis and no other. */
function liesOn(a: Body, b: Body, axis: Axis): boolean {
  const shared = (key: Axis) =>
    Math.min(a.box.max[key], b.box.max[key]) - Math.max(a.box.min[key], b.box.min[key]);
  const others = axes.filter((key) => key !== axis);
  if (!others.every((key) => shared(key) > touching)) return false;
  if (Math.abs(shared(axis)) <= touching) return true;
  const near = (key: Axis) => Math.abs(a.centre[key] - b.centre[key]) < touching;
  return shared(axis) > 0 && others.every(near) && !near(axis) && isSlim(a, b, axis);
}

/** Bodies of about one size, such as laminations; a drawer in its carcase is none. */
function isSlim(a: Body, b: Body, axis: Axis): boolean {
  const sizes = [a, b].map(({ box }) => box.max[axis] - box.min[axis]);
  return Math.max(...sizes) < 1.25 * Math.min(...sizes);
}

function boxOf(part: Part, placement: Placement): Box3 {
  const { length, width, thickness } = part.finished;
  const box = { min: { x: 0, y: 0, z: 0 }, max: { x: length, y: width, z: thickness } };
  return joinBoxes3(
    cornersOfBox(box)
      .map((p) => placePoint(placement, p))
      .map((p) => ({ min: p, max: p })),
  );
}

function middleOf(box: Box3): Point3 {
  return {
    x: (box.min.x + box.max.x) / 2,
    y: (box.min.y + box.max.y) / 2,
    z: (box.min.z + box.max.z) / 2,
  };
}
