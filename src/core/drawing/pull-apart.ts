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

/** Every copy of every part with its way out from the middle of the piece, mm. */
export function pullApart(parts: readonly Part[]): readonly PulledPart[] {
  const placed = parts.flatMap((part) =>
    part.placements.map((placement) => ({ part, placement, box: boxOf(part, placement) })),
  );
  if (placed.length === 0) return [];
  const whole = joinBoxes3(placed.map((p) => p.box));
  const middle = middleOf(whole);
  const half = { x: whole.max.x - middle.x, y: whole.max.y - middle.y, z: whole.max.z - middle.z };
  const longest = Math.max(half.x, half.y, half.z);
  return placed.map(({ part, placement, box }) => {
    const centre = middleOf(box);
    const along = (key: 'x' | 'y' | 'z') => {
      const share = half[key] > 0 ? (centre[key] - middle[key]) / half[key] : 0;
      return Math.abs(share) < still ? 0 : share * spread * (half[key] + shareOfLongest * longest);
    };
    return { part, placement, centre, shift: { x: along('x'), y: along('y'), z: along('z') } };
  });
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
