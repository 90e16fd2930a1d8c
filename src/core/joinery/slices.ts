import { circleOutline, rectangleOutline, subtractOutlines, type Outline } from '#core/geometry';
import type { Machining, Part } from './types.ts';

/**
 * What of a part lies between two levels, all of one cross-section: along z with its face in the plane, or along the
 * length with y and z in the plane. Outlines in mm; what bounds wood runs counter-clockwise, holes clockwise.
 */
export interface PartSlice {
  readonly axis: 'x' | 'z';
  readonly outlines: readonly Outline[];
  readonly from: number;
  readonly to: number;
}

/** Holes smaller than this are for screws and dowels and are left out, mm. */
const smallestHole = 12;

/** The wood of a part without what its joints, holes and slots take away, in slices one above the other. */
export function slicePart(part: Part): readonly PartSlice[] {
  const axis = hasEndSockets(part) ? 'x' : 'z';
  const { length, width, thickness } = part.finished;
  const whole = axis === 'z' ? thickness : length;
  const blank = axis === 'z' ? part.outline : rectangleOutline(width, thickness);
  const through = axis === 'z' ? part.holes.map((outline) => ({ outline, from: 0, to: whole })) : [];
  const taken = [...through, ...part.machining.flatMap((work) => takenBy(work, axis, whole))];
  const levels = [...new Set([0, whole, ...taken.flatMap(({ from, to }) => [from, to])])]
    .filter((level) => level >= 0 && level <= whole)
    .sort((one, other) => one - other);
  return levels.slice(1).flatMap((to, i) => {
    const from = levels[i] ?? 0;
    const middle = (from + to) / 2;
    const away = taken.filter((each) => each.from <= middle && each.to >= middle);
    const outlines = subtractOutlines(
      [blank],
      away.map(({ outline }) => outline),
    );
    return to - from < 1e-6 || outlines.length === 0 ? [] : [{ axis, outlines, from, to }];
  });
}

/** Sockets worked from an end, as of dovetails: such a board is sliced along its length. */
function hasEndSockets(part: Part): boolean {
  return part.machining.some(
    (work) => work.kind === 'prism' && (work.from === 'start' || work.from === 'end'),
  );
}

interface Taken {
  readonly outline: Outline;
  readonly from: number;
  readonly to: number;
}

function takenBy(work: Machining, axis: 'x' | 'z', whole: number): readonly Taken[] {
  if (work.kind === 'recess') {
    const { min, max } = work.box;
    return axis === 'z'
      ? [{ outline: corners([min.x, max.x], [min.y, max.y]), from: min.z, to: max.z }]
      : [{ outline: corners([min.y, max.y], [min.z, max.z]), from: min.x, to: max.x }];
  }
  if (work.kind === 'bevel') return [];
  const near = axis === 'z' ? 'face' : 'start';
  if (work.from !== near && work.from !== (axis === 'z' ? 'back' : 'end')) return [];
  const { outline, begin, end } = work.kind === 'prism' ? prism(work) : hole(work, whole);
  if (!outline) return [];
  return work.from === near
    ? [{ outline, from: begin, to: end }]
    : [{ outline, from: whole - end, to: whole - begin }];
}

function prism({ outline, below, depth }: Extract<Machining, { kind: 'prism' }>) {
  return { outline, begin: below ?? 0, end: depth };
}

function hole({ x, y, diameter, depth }: Extract<Machining, { kind: 'hole' }>, whole: number) {
  const outline = diameter < smallestHole ? null : circleOutline({ x, y }, diameter / 2);
  return { outline, begin: 0, end: depth === 'through' ? whole : depth };
}

function corners([x0, x1]: readonly [number, number], [y0, y1]: readonly [number, number]): Outline {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}
