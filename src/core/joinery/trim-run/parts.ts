import {
  boxOfOutline,
  moveOutline,
  outlineArea,
  rectangleOutline,
  subtractOutlines,
  type Outline,
  type Placement,
  type Point,
  type Point3,
} from '#core/geometry';
import { crossing, leftOf, step } from '../flat/polygon.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, MatchedSet, Part } from '../types.ts';
import type { TrimEnd, TrimLayout } from './sizes.ts';

/** The trim of each wall from left to right, then the posts. Frame of the piece: x right and z towards the room as one faces the first wall, y up from the lowest edge of the trim. */
export function trimParts(piece: Piece, layout: TrimLayout): readonly Part[] {
  const along = layout.choices.run.walls.flatMap((_, i) => wallDrafts(layout, i));
  const drafts = [...along, ...postDrafts(layout)];
  return drafts.map((draft, i) => makePart(piece, { ...draft, number: i + 1 }));
}

/** Cotangent of half the angle at an end; nothing where it is square. */
function slopeOf({ book }: TrimLayout, end: TrimEnd): number {
  if (end.kind !== 'mitre') return 0;
  return 1 / Math.tan((book.value(`theta_${end.corner}`) * Math.PI) / 360);
}

/** How far an end goes beyond the end of its wall, at its furthest. */
function beyond({ book }: TrimLayout, end: TrimEnd): number {
  if (end.kind === 'square') return 0;
  const reach = -book.value('D') / Math.tan((book.value(`theta_${end.corner}`) * Math.PI) / 360);
  return end.kind === 'mitre' ? Math.max(0, reach) : reach - book.value(`tangent_${end.corner}`);
}

/** One end of a piece: where it lies along the wall at each distance across its width, and its saw cut. */
interface PieceEnd {
  readonly at: (across: number) => number;
  readonly bevel: number;
  readonly note: string;
}

function wallEnd(layout: TrimLayout, i: number, side: 'left' | 'right'): PieceEnd {
  const { book, choices, ends } = layout;
  const end = ends[i]?.[side] ?? { kind: 'square', corner: 0 };
  const sign = side === 'left' ? -1 : 1;
  const base = side === 'left' ? 0 : book.value(`Lb_${i + 1}`);
  if (end.kind !== 'mitre') return { at: () => base + sign * beyond(layout, end), bevel: 0, note: '' };
  const slope = slopeOf(layout, end);
  const tilt = (choices.tiltDegrees * Math.PI) / 180;
  const depth = book.value('t') * Math.sin(tilt);
  // the furthest of both faces: the back where the corner is an inside one
  const at = (across: number) => base - sign * slope * (across * Math.cos(tilt) + (slope < 0 ? depth : 0));
  const degrees =
    choices.tiltDegrees === 90 ? 90 - book.value(`theta_${end.corner}`) / 2 : book.value(`Y_${end.corner}`);
  const mitre =
    choices.tiltDegrees === 90 ? '' : `, mitre ${Math.abs(book.value(`X_${end.corner}`)).toFixed(2)}°`;
  return { at, bevel: degrees, note: `corner ${end.corner}${mitre}` };
}

function wallDrafts(layout: TrimLayout, i: number): readonly Omit<PartDraft, 'number'>[] {
  const { book, choices, pieces } = layout;
  const count = pieces[i] ?? 1;
  const wall = choices.run.walls[i];
  const [left, right] = [wallEnd(layout, i, 'left'), wallEnd(layout, i, 'right')];
  const first = Math.min(left.at(0), left.at(book.value('w')));
  const t = book.value('t');
  const size = count > 1 ? book.value(`P_${i + 1}`) : book.value(`L_${i + 1}`);
  return Array.from({ length: count }, (_, n) => {
    const from = first + n * (size - t);
    const start = n === 0 ? left : { at: () => from, bevel: -45, note: 'scarf' };
    const end = n === count - 1 ? right : { at: () => from + size, bevel: 45, note: 'scarf' };
    const word = wall?.isReturn ? `Return, ${i === 0 ? 'left' : 'right'}` : `Trim, ${wall?.name ?? ''}`;
    return pieceDraft(layout, { i, start, end, name: count > 1 ? `${word}, piece ${n + 1}` : word });
  });
}

function pieceDraft(
  layout: TrimLayout,
  of: { readonly i: number; readonly start: PieceEnd; readonly end: PieceEnd; readonly name: string },
): Omit<PartDraft, 'number'> {
  const { book, choices, pieces } = layout;
  const { i, start, end } = of;
  const v = book.value;
  const w = v('w');
  const lower = choices.touches === 'lower';
  const [s0, s1] = [Math.min(start.at(0), start.at(w)), Math.max(end.at(0), end.at(w))];
  const figure: Outline = [
    { x: start.at(0), y: 0 },
    { x: end.at(0), y: 0 },
    { x: end.at(w), y: w },
    { x: start.at(w), y: w },
  ];
  const outline = lower
    ? figure.map(({ x, y }) => ({ x: s1 - x, y })).reverse()
    : figure.map(({ x, y }) => ({ x: x - s0, y }));
  const length = (pieces[i] ?? 1) > 1 ? `P_${i + 1}` : `L_${i + 1}`;
  const finished = { length: v(length), width: w, thickness: v('t') };
  return {
    name: of.name,
    material: choices.material,
    oneMore: true,
    finished,
    rough: { length: Math.ceil(finished.length + 20), width: w, thickness: v('t') },
    working: { length, width: 'w', thickness: 't' },
    outline,
    machining: [...bevelOf(start, lower ? 'end' : 'start'), ...bevelOf(end, lower ? 'start' : 'end')],
    faceSide: `face side to the room, face edge ${lower ? 'down' : 'up'}, start to the ${lower ? 'right' : 'left'}`,
    placements: [placementOn(layout, i, lower ? s1 : s0)],
    notes: finished.length < shortest ? ['Short: cut it from the end of a longer stick and glue it on.'] : [],
  };
}

/** A piece shorter than this is cut from a longer stick, mm (joinery B11). */
export const shortest = 60;

function bevelOf({ bevel, note }: PieceEnd, edge: 'start' | 'end'): readonly Machining[] {
  return Math.abs(bevel) < 1e-9 ? [] : [{ kind: 'bevel', edge, degrees: bevel, note }];
}

const up: Point3 = { x: 0, y: 1, z: 0 };

/** A direction of the plan in the frame of the piece. */
const inSpace = ({ x, y }: Point): Point3 => ({ x, y: 0, z: -y });

function placementOn({ book, choices }: TrimLayout, i: number, at: number): Placement {
  const wall = choices.run.walls[i];
  const along = wall?.along ?? { x: 1, y: 0 };
  const tilt = (choices.tiltDegrees * Math.PI) / 180;
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const t = book.value('t');
  const room = { x: along.y, y: -along.x };
  const lower = choices.touches === 'lower';
  const way = lower ? 1 : -1;
  const foot = step(step(wall?.from ?? { x: 0, y: 0 }, along, at), room, t * s);
  const height = lower ? 0 : book.value('w') * s + t * c;
  const out = inSpace(room);
  const yAxis = { x: out.x * c, y: way * s, z: out.z * c };
  const level = inSpace(along);
  const xAxis = lower ? { x: -level.x, y: 0, z: -level.z } : level;
  return placeAt({ ...inSpace(foot), y: height }, xAxis, yAxis);
}

/** The post of each outside corner that has one: a block with its section cut along it (joinery B11). */
function postDrafts(layout: TrimLayout): readonly Omit<PartDraft, 'number'>[] {
  return layout.ends.flatMap(({ right }, i) =>
    right.kind === 'post' ? [postDraft(layout, i, right.corner)] : [],
  );
}

function postDraft(layout: TrimLayout, i: number, corner: number): Omit<PartDraft, 'number'> {
  const { book, choices } = layout;
  const wall = choices.run.walls[i];
  const along = wall?.along ?? { x: 1, y: 0 };
  const { section, at } = postSection(layout, corner);
  const box = boxOfOutline(section);
  const finished = {
    length: book.value('w'),
    width: book.value(`post_W_${corner}`),
    thickness: book.value(`post_T_${corner}`),
  };
  const waste = subtractOutlines(
    [rectangleOutline(finished.width, finished.thickness)],
    [moveOutline(section, -box.minX, -box.minY)],
  );
  const from = step(
    step(wall?.from ?? { x: 0, y: 0 }, along, (wall?.length ?? 0) + at + box.minX),
    { x: along.y, y: -along.x },
    book.value('t') - box.minY,
  );
  return {
    name: `Corner post ${corner}`,
    material: choices.material,
    finished,
    rough: {
      length: Math.ceil(finished.length + 20),
      width: Math.ceil(finished.width + 10),
      thickness: Math.ceil(finished.thickness + 10),
    },
    working: { length: 'w', width: `post_W_${corner}`, thickness: `post_T_${corner}` },
    machining: waste
      .filter((outline) => outlineArea(outline) > 0.5)
      .map((outline) => ({
        ...{ kind: 'prism', name: 'slope', from: 'start', depth: finished.length },
        outline: outline.map(({ x, y }) => ({
          x: Math.min(Math.max(x, 0), finished.width),
          y: Math.min(Math.max(y, 0), finished.thickness),
        })),
        note: `section of the post, radius ${book.value('R')}`,
      })),
    faceSide: 'face side to the room on the left of the corner, start down',
    placements: [placeAt({ ...inSpace(from), y: 0 }, up, inSpace(along))],
    notes: ['Square the block to the corner first, cut it over the wall, then round it.'],
  };
}

/** Puts the sizes of the posts into the working. */
export function sizePosts(layout: TrimLayout): TrimLayout {
  const { ends, book } = layout;
  for (const { right } of ends) {
    if (right.kind !== 'post' || !(book.value('R') > book.value('t'))) continue;
    const box = boxOfOutline(postSection(layout, right.corner).section);
    const what = `post at corner ${right.corner}`;
    book.put(
      `post_W_${right.corner}`,
      box.maxX - box.minX,
      `${what}, along the left wall`,
      'section of the post',
    );
    book.put(`post_T_${right.corner}`, box.maxY - box.minY, `${what}, from its face`, 'section of the post');
  }
  return layout;
}

/**
 * Section of a post seen from above, turned so that the left wall runs along x and its trim has its face at y = 0, the wall
 * at y = t; x counts from where the trim ends. `at`: that place from the end of the wall.
 */
function postSection(
  { book }: TrimLayout,
  corner: number,
): { readonly section: Outline; readonly at: number } {
  const t = book.value('t');
  const theta = book.value(`theta_${corner}`);
  const reach = -t / Math.tan((theta * Math.PI) / 360);
  const tangent = book.value(`tangent_${corner}`);
  const at = reach - tangent;
  // along the right wall, which turns away into the wall side, y growing
  const turned = ((theta - 180) * Math.PI) / 180;
  const along = { x: Math.cos(turned), y: Math.sin(turned) };
  const inwards = leftOf(along);
  const tip = { x: tangent, y: 0 };
  const end = step(tip, along, tangent);
  const foot = step(end, inwards, t);
  const wallCorner = crossing({ at: { x: 0, y: t }, along: { x: 1, y: 0 } }, { at: foot, along }) ?? {
    x: 0,
    y: t,
  };
  const bulge = Math.tan(turned / 4);
  const section: Outline = [{ x: 0, y: 0, bulge }, end, foot, wallCorner, { x: 0, y: t }];
  return { section, at };
}

const between = 8; // mm lost between neighbours on a stick: the kerf and 5 (joinery B11)
const endTrim = 10;

/** Trim of neighbouring walls from one stick in order, so that the grain runs round the corners (joinery B11). */
export function trimSets({ book, choices }: TrimLayout, parts: readonly Part[]): readonly MatchedSet[] {
  const trims = parts.filter(({ name }) => !name.startsWith('Corner post'));
  const sticks: Part[][] = [];
  let used = 0;
  for (const part of choices.touches === 'lower' ? [...trims].reverse() : trims) {
    const more = part.cut.length + between;
    const stick = sticks.at(-1);
    if (stick && used + more <= book.value('stick')) {
      stick.push(part);
      used += more;
    } else {
      sticks.push([part]);
      used = 2 * endTrim + part.cut.length;
    }
  }
  return sticks
    .filter((stick) => stick.length > 1)
    .map((stick, i) => ({
      id: `stick ${i + 1}`,
      parts: stick.map(({ id }) => id),
      direction: 'along',
      between: stick.slice(1).map(() => between),
      trim: endTrim,
    }));
}
