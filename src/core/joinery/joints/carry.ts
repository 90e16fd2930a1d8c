import type { Outline, Point } from '#core/geometry';
import { makeRecess } from '../parts.ts';
import type { Machining } from '../types.ts';

/** Where cuts worked out on a plain board come on a real part: its face that is joined, and each point of the plain one's face on it. */
export interface Carried {
  readonly face: 'face' | 'back';
  readonly size: { readonly length: number; readonly width: number; readonly thickness: number };
  readonly to: (point: Point) => Point;
}

/**
 * Cuts in the face (Z = 0) of a plain board carried on to the part that it stands for, turned and shifted as the part
 * lies. A box that comes to lie askew becomes a prism; what would leave the part is cut off at its edges.
 */
export function carryCuts(cuts: readonly Machining[], where: Carried): readonly Machining[] {
  return cuts.flatMap((one) => carryOne(one, where) ?? []);
}

function carryOne(one: Machining, where: Carried): Machining | null {
  switch (one.kind) {
    case 'recess':
      return carryBox(one, where);
    case 'hole':
      return { ...one, ...where.to(one), from: sideOf(one.from === 'back', where) };
    case 'prism':
      return { ...one, outline: turned(one.outline.map(where.to)), from: sideOf(one.from === 'back', where) };
    case 'bevel':
      throw new Error('a bevel belongs to an end, it cannot be carried on to a face');
  }
}

/** The face joined, or the one behind it. */
function sideOf(behind: boolean, { face }: Carried): 'face' | 'back' {
  return behind === (face === 'face') ? 'back' : 'face';
}

function carryBox(one: Extract<Machining, { kind: 'recess' }>, where: Carried): Machining | null {
  const { min, max } = one.box;
  const { size } = where;
  const corners = [
    { x: min.x, y: min.y },
    { x: max.x, y: min.y },
    { x: max.x, y: max.y },
    { x: min.x, y: max.y },
  ].map(where.to);
  const range = (axis: 'x' | 'y', most: number): readonly [number, number] => {
    const all = corners.map((corner) => corner[axis]);
    return [Math.max(0, Math.min(...all)), Math.min(most, Math.max(...all))];
  };
  const [x, y] = [range('x', size.length), range('y', size.width)];
  if (x[1] - x[0] < 1e-9 || y[1] - y[0] < 1e-9) return null;
  const note = one.note;
  if (!isSquare(corners)) {
    const name = one.name === 'mortise' ? 'mortise' : 'slot';
    const levels = { depth: max.z, ...(min.z > 0 && { below: min.z }) };
    const outline = turned(corners);
    return { kind: 'prism', name, from: where.face, outline, ...levels, ...(note && { note }) };
  }
  const z = where.face === 'face' ? ([min.z, max.z] as const) : flipped(min.z, max.z, size.thickness);
  return makeRecess(one.name, where.face, { x, y, z }, note);
}

const flipped = (from: number, to: number, thickness: number) => [thickness - to, thickness - from] as const;

/** Sides along the axes. */
function isSquare(corners: readonly Point[]): boolean {
  return corners.every((at, i) => {
    const next = corners[(i + 1) % corners.length] ?? at;
    return Math.min(Math.abs(next.x - at.x), Math.abs(next.y - at.y)) < 1e-6;
  });
}

/** The same figure counter-clockwise. */
function turned(outline: Outline): Outline {
  const area = outline.reduce((sum, at, i) => {
    const next = outline[(i + 1) % outline.length] ?? at;
    return sum + at.x * next.y - next.x * at.y;
  }, 0);
  return area < 0 ? outline.toReversed() : outline;
}
