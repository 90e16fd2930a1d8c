import type { Point } from '#core/geometry';
import type { ChosenSides } from '../flat/choose-sides.ts';
import { leftBy, lineOf } from '../flat/polygon.ts';
import type { Side } from '../flat/shape-sides.ts';

/** A solid edge goes straight across a bow of up to this much, mm (common practice, no source). */
const straightAcross = 2;

/** The sides with those made straight that get a solid edge and hardly bow; what of them bows in is kept as `inwards`. */
export function straightenLipped(chosen: ChosenSides, lipped: readonly number[]): ChosenSides {
  return {
    ...chosen,
    sides: chosen.sides.map((side, i) => (lipped.includes(i + 1) ? straightened(side) : side)),
  };
}

function straightened(side: Side): Side {
  const offs = side.between.map((point: Point) => leftBy(point, lineOf(side.from, side.to)));
  const [least, most] = [Math.min(0, ...offs), Math.max(0, ...offs)];
  if (offs.length === 0 || Math.max(-least, most) > straightAcross) return side;
  return { ...side, between: [], deviation: most - least, inwards: most };
}
