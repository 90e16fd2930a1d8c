import {
  boxOfOutline,
  flattenOutline,
  offsetOutline,
  simplifyOutlines,
  type Box,
  type Outline,
  type Point,
} from '#core/geometry';

/** Two outlines as near to each other as they can lie: how far the second is moved, and the box round both. */
export interface Nestled {
  readonly move: Point;
  readonly length: number;
  readonly width: number;
}

/** Arcs against their chords, mm: added to the gap, so that nothing comes nearer than that. */
const flatness = 0.2;

/** Places tried along a side at first, and how often they are tried again ten times as close round the best. */
const places = 48;
const refinings = 2;

/**
 * The second outline slid against the first along either axis, to where the box round both is smallest by `grade`. Wherever
 * it lies, the two are `gap` apart, mm.
 */
export function slideTogether(
  first: Outline,
  second: Outline,
  gap: number,
  grade: (length: number, width: number) => number,
): Nestled {
  // with the chords of the second and those of the grown first nothing comes nearer than the gap
  const [grown = first] = simplifyOutlines(offsetOutline(first, gap + 2 * flatness), 0.7 * flatness);
  const b = flattenOutline(second, flatness);
  const boxes = { a: boxOfOutline(first), b: boxOfOutline(second) };
  const along = bestSlide({ boxes, sidesA: sidesOf(grown), sidesB: sidesOf(b), grade });
  const across = bestSlide({
    boxes: { a: swapBox(boxes.a), b: swapBox(boxes.b) },
    sidesA: sidesOf(grown.map(swap)),
    sidesB: sidesOf(b.map(swap)),
    grade: (length, width) => grade(width, length),
  });
  const crossed = { move: swap(across.move), length: across.width, width: across.length };
  return grade(along.length, along.width) <= grade(crossed.length, crossed.width) ? along : crossed;
}

interface Slide {
  readonly boxes: { readonly a: Box; readonly b: Box };
  /** Of the first with the gap round it, and of the second. */
  readonly sidesA: readonly Side[];
  readonly sidesB: readonly Side[];
  readonly grade: (length: number, width: number) => number;
}

const swap = ({ x, y }: Point): Point => ({ x: y, y: x });
const swapBox = ({ minX, minY, maxX, maxY }: Box): Box => ({
  minX: minY,
  minY: minX,
  maxX: maxY,
  maxY: maxX,
});

function bestSlide(slide: Slide): Nestled {
  const { a: boxA, b: boxB } = slide.boxes;
  const low = boxA.minY - boxB.maxY;
  const high = boxA.maxY - boxB.minY;
  let step = (high - low) / places;
  const sides = [boxA.minY - boxB.minY, boxA.maxY - boxB.maxY];
  let best = bestOf(
    [...sides, ...range(low, high, step)].map((y) => nestle(slide, y)),
    slide.grade,
  );
  for (let i = 0; i < refinings; i++) {
    const around = range(best.move.y - step, best.move.y + step, step / 10);
    best = bestOf([best, ...around.map((y) => nestle(slide, y))], slide.grade);
    step /= 10;
  }
  return best;
}

function range(low: number, high: number, step: number): readonly number[] {
  return Array.from({ length: Math.round((high - low) / step) + 1 }, (_, i) => low + i * step);
}

function bestOf(all: readonly Nestled[], grade: Slide['grade']): Nestled {
  return all.reduce((best, each) =>
    grade(each.length, each.width) < grade(best.length, best.width) - 1e-9 ? each : best,
  );
}

/** The second at this height, slid from the right until it touches. */
function nestle({ boxes: { a, b }, sidesA, sidesB }: Slide, y: number): Nestled {
  const x = reachOf(sidesA, sidesB, y);
  // what lies wholly above or below is not stopped: it comes to the left side of the first
  const move = { x: Number.isFinite(x) ? x : a.minX - b.minX, y };
  return {
    move,
    length: Math.max(a.maxX, b.maxX + move.x) - Math.min(a.minX, b.minX + move.x),
    width: Math.max(a.maxY, b.maxY + y) - Math.min(a.minY, b.minY + y),
  };
}

/**
 * How far right the second must lie, moved up by `up`, to have all of the first on its left at every height. Between the
 * heights of corners the sides are straight, so that looking at those is enough.
 */
function reachOf(sidesA: readonly Side[], sidesB: readonly Side[], up: number): number {
  let reach = -Infinity;
  for (const one of sidesA) {
    for (const two of sidesB) {
      const low = Math.max(one.low.y, two.low.y + up);
      const high = Math.min(one.high.y, two.high.y + up);
      if (low > high) continue;
      const far = (y: number) => xAt(one, y) - xAt(two, y - up);
      reach = Math.max(reach, far(low), far(high));
    }
  }
  return reach;
}

interface Side {
  readonly low: Point;
  readonly high: Point;
}

/** The sides that are not level: the ends of those that are belong to others. */
function sidesOf(points: readonly Point[]): readonly Side[] {
  return points.flatMap((from, i) => {
    const to = points[(i + 1) % points.length] as Point;
    if (from.y === to.y) return [];
    return from.y < to.y ? [{ low: from, high: to }] : [{ low: to, high: from }];
  });
}

function xAt({ low, high }: Side, y: number): number {
  return low.x + ((high.x - low.x) * (y - low.y)) / (high.y - low.y);
}
