import type { Point } from '#core/geometry';
import type { Reading } from '#core/measuring';
import { unreachable } from '#core/problems';
import { drawCircle, drawLine, drawText, lettering, makeDrawing } from './marks.ts';
import { drawArrow } from './symbols.ts';
import type { Drawing, Mark } from './types.ts';

type Place<R> = R extends Reading
  ? Omit<R, 'id' | 'value' | 'sigma' | 'method' | 'repeats' | 'toFace' | 'note' | 'toConfirm'>
  : never;

/** Where a reading is taken, without its value; a `Reading` will do. */
export type ReadingPlace = Place<Reading>;

// An opening that is visibly not square, as a share of its height
const corners: Readonly<Record<string, Point>> = {
  BL: { x: 0, y: 0 },
  BR: { x: 0.62, y: 0.04 },
  TR: { x: 0.72, y: 1 },
  TL: { x: 0.1, y: 0.93 },
};

/** What a sketch stands for before its true shape is known. */
export interface SketchRing {
  /** In their order: round an outline counter-clockwise, of walls from left to right as one faces them. */
  readonly corners: readonly string[];
  /** False: the last corner does not lead back to the first. */
  readonly closed?: boolean;
  /** Walls in plan are faced from below: they go round clockwise. */
  readonly isClockwise?: boolean;
}

/** The four corners of an opening. */
export const openingRing: SketchRing = { corners: ['BL', 'BR', 'TR', 'TL'] };

/** Places for named points in a sketch one unit high: corners of the ring where they belong, others in a row beside them. */
export function sketchPoints(
  names: readonly string[],
  ring: SketchRing = openingRing,
): Readonly<Record<string, Point>> {
  const placed = ring === openingRing ? corners : placeRing(ring);
  // a point may be called as something that every object has, as `constructor`
  const others = names.filter((name) => !Object.hasOwn(placed, name));
  const beside = (name: string): Point => ({ x: 0.95, y: (others.indexOf(name) + 0.5) / others.length });
  const place = (name: string): Point =>
    (Object.hasOwn(placed, name) ? placed[name] : undefined) ?? beside(name);
  return Object.fromEntries(names.map((name) => [name, place(name)]));
}

/** Corners evenly round an oval, the first two at the bottom (of walls, seen from above, at the top). */
function placeRing({ corners: ring, closed = true, isClockwise = false }: SketchRing): Record<string, Point> {
  const share = (2 * Math.PI) / Math.max(closed ? ring.length : ring.length + 1, 2);
  const start = -Math.PI / 2 - share / 2;
  return Object.fromEntries(
    ring.map((name, at) => {
      const angle = start + at * share;
      const y = 0.5 * Math.sin(angle) * (isClockwise ? -1 : 1);
      return [name, { x: 0.36 + 0.36 * Math.cos(angle), y: 0.5 + y }];
    }),
  );
}

/** The named points a reading is taken between. */
export function pointsOfReading(reading: ReadingPlace): readonly string[] {
  switch (reading.kind) {
    case 'width':
      return [...reading.left, ...reading.right];
    case 'twist':
      return [...reading.first, ...reading.second];
    case 'offset':
    case 'ordinate':
      return [reading.from, reading.to, reading.point];
    case 'tick':
      return [reading.point];
    case 'thickness':
      return [];
    case 'angle':
      return [reading.from, reading.at, reading.to];
    default:
      return [reading.from, reading.to];
  }
}

/** A small sketch, of an opening unless a ring is given, that shows where the tape, plumb line or level goes; 34 mm high unless said. */
export function drawReadingSketch(reading: ReadingPlace, height = 34, ring = openingRing): Drawing {
  const named = pointsOfReading(reading);
  const points = sketchPoints([...new Set([...ring.corners, ...named])], ring);
  const at = (name: string): Point => ({
    x: (points[name]?.x ?? 0) * height,
    y: (points[name]?.y ?? 0) * height,
  });
  const { corners: round, closed = true } = ring;
  const marks: Mark[] = [
    { kind: 'path', points: round.map(at), closed, pen: 'thin', ...(closed && { fill: 'paper' }) },
    ...Object.keys(points).map((name) => drawName(name, at(name), { bold: named.includes(name), height })),
    ...drawTapeOn(reading, at, height),
  ];
  return makeDrawing('Where the reading is taken', 1, marks, 2);
}

function drawName(name: string, at: Point, style: { readonly bold: boolean; readonly height: number }): Mark {
  const right = at.x > style.height * 0.3;
  const up = at.y > style.height * 0.5;
  return drawText({ x: at.x + (right ? 1.5 : -1.5), y: at.y + (up ? 0.5 : -lettering.small - 0.5) }, name, {
    height: lettering.small,
    align: right ? 'start' : 'end',
    weight: style.bold ? 'bold' : 'normal',
    tone: style.bold ? 'ink' : 'soft',
  });
}

function drawTapeOn(reading: ReadingPlace, at: (name: string) => Point, height: number): readonly Mark[] {
  switch (reading.kind) {
    case 'distance':
      return drawTape(at(reading.from), at(reading.to));
    case 'width': {
      const share = (names: readonly [string, string]): Point => {
        const [a, b] = [at(names[0]), at(names[1])];
        return { x: a.x + (b.x - a.x) * reading.at, y: a.y + (b.y - a.y) * reading.at };
      };
      return drawTape(share(reading.left), share(reading.right));
    }
    case 'plumb':
    case 'level':
      return drawDrop(reading.kind, at(reading.from), at(reading.to));
    case 'offset':
    case 'ordinate': {
      const [a, b, p] = [at(reading.from), at(reading.to), at(reading.point)];
      return [drawLine([a, b], 'centre'), ...drawTape(footOn(a, b, p), p)];
    }
    case 'angle':
      return [
        drawLine([at(reading.from), at(reading.at), at(reading.to)], 'cut'),
        drawCircle(at(reading.at), 0.8, 'none', 'ink'),
      ];
    case 'bow': {
      const [a, b] = [at(reading.from), at(reading.to)];
      return [
        drawLine([a, b], 'cut'),
        drawCircle({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, 0.8, 'none', 'ink'),
      ];
    }
    case 'tick':
      return drawTip(at(reading.point), height);
    case 'twist':
      return [reading.first, reading.second].flatMap(([a, b]) => drawTape(at(a), at(b)));
    case 'thickness':
      return [drawText({ x: 0.1 * height, y: height / 2 }, reading.place, { height: lettering.small })];
    default:
      return unreachable(reading);
  }
}

/** Plumb line or level from the first point, and the way from there to the second. */
function drawDrop(kind: 'plumb' | 'level', a: Point, b: Point): readonly Mark[] {
  const foot = kind === 'plumb' ? { x: a.x, y: b.y } : { x: b.x, y: a.y };
  const bob =
    kind === 'plumb' ? drawCircle(a, 0.9, 'outline', 'ink') : drawCircle(foot, 0.9, 'outline', 'paper');
  const arrow = drawArrow(foot, b, 'outline', Math.min(1.8, Math.hypot(b.x - foot.x, b.y - foot.y)));
  return [drawLine([a, foot], 'centre'), ...arrow, bob];
}

/** The pointed end of a stick that touches a point, coming from the middle of the opening; a tooth to show which way it lies. */
function drawTip(tip: Point, height: number): readonly Mark[] {
  const middle = { x: 0.36 * height, y: 0.5 * height };
  const length = Math.hypot(middle.x - tip.x, middle.y - tip.y) || 1;
  const along = { x: (middle.x - tip.x) / length, y: (middle.y - tip.y) / length };
  const on = (by: number, aside: number): Point => ({
    x: tip.x + along.x * by * height - along.y * aside * height,
    y: tip.y + along.y * by * height + along.x * aside * height,
  });
  const outline = [on(0, 0), on(0.08, 0.025), on(0.2, 0.025), on(0.22, 0.045), on(0.24, 0.025)];
  const back = [on(0.38, 0.025), on(0.38, -0.025), on(0.08, -0.025)];
  return [
    { kind: 'path', points: [...outline, ...back], closed: true, pen: 'cut', fill: 'paper' },
    drawCircle(tip, 0.8, 'none', 'ink'),
  ];
}

/** Where a square from the point meets the line through both ends; the first end when they fall together. */
export function footOn(a: Point, b: Point, p: Point): Point {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1);
  return { x: a.x + t * dx, y: a.y + t * dy };
}

function drawTape(a: Point, b: Point): readonly Mark[] {
  return [drawLine([a, b], 'cut'), drawCircle(a, 0.8, 'none', 'ink'), drawCircle(b, 0.8, 'none', 'ink')];
}
