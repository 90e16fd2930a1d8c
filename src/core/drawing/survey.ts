import { distanceBetween } from '#core/geometry';
import type { Point, Shape } from '#core/geometry';
import type { Reading } from '#core/measuring';
import { readableTurn } from './dimension.ts';
import { exaggeratePoints } from './exaggerate.ts';
import { boxOfMark, drawLine, drawText, joinBoxes, lettering, makeDrawing } from './marks.ts';
import { chooseScale, formatFine, formatMm, formatScale, heightFor, unitNote } from './scales.ts';
import { curveOnPaper, drawObstructions, drawOrdinates } from './survey-curves.ts';
import { drawEnteredReadings } from './survey-entered.ts';
import { drawReading } from './survey-readings.ts';
import type { SurveySheet } from './survey-sheet.ts';
import { meanOf } from './survey-view.ts';
import type { SurveyView } from './survey-view.ts';
import type { Drawing, Mark } from './types.ts';

const besideShape = 64; // mm of paper for tape lines, names and numbers left and right together

/**
 * The measured shape with its corners (2 sigma, mm), every tape line with its reading, plumb and level marks, residuals as
 * tails (mm), and suspects in the fault pen. Without a shape: a neutral sketch with what has been entered.
 */
export function drawSurvey(view: SurveyView): Drawing {
  const { shape } = view;
  if (!shape || Object.keys(shape.points).length < 2) return drawEnteredReadings(view);
  const times = view.exaggerate ?? 1;
  const shown = exaggeratePoints(shape, times);
  const extent = extentOf([...Object.values(shown), ...shape.edges.flatMap(({ curve }) => curve ?? [])]);
  const scale = scaleFor(extent, view);
  const points = Object.fromEntries(
    Object.entries(shown).map(([name, p]) => [name, { x: p.x * scale, y: p.y * scale }]),
  );
  const centre = meanOf(Object.values(points));
  const sheet: SurveySheet = { view, points, centre, scale, taken: [] };
  const outline = shape.edges.flatMap((edge) => {
    const curve = curveOnPaper(edge, shape, points, scale);
    if (!curve) return drawEdge(edge, { points, centre, times, scale });
    const [from, to] = [points[edge.from], points[edge.to]];
    const chord = from && to ? [drawLine([from, to], 'hidden')] : [];
    return [drawLine(curve, 'cut', edge.name), ...chord];
  });
  const tapes = [...view.readings].sort(byRoom).flatMap((reading) => drawReading(reading, sheet));
  const walls = shape.kind === 'walls' ? drawWallNames(shape, sheet) : [];
  const names = Object.entries(points).flatMap(([name, at]) => drawCorner(name, at, sheet));
  const curves = drawOrdinates(view.ordinates ?? [], shape, sheet);
  const marks = [
    ...drawObstructions(shape.obstructions ?? [], scale),
    ...outline,
    ...curves,
    ...tapes,
    ...walls,
    ...names,
  ];
  const foot = view.isBare === true ? [] : drawFoot(marks, view, scale);
  return makeDrawing(`Survey, seen ${shape.seenFrom}`, scale, [...marks, ...foot], 3);
}

/** Readings whose text has the least choice of place come first: plumb and level, widths, then the others. */
function byRoom(a: Reading, b: Reading): number {
  const rank = {
    ...{ plumb: 0, level: 0, width: 1, distance: 2, offset: 2, ordinate: 2, bow: 3, angle: 3, tick: 3 },
    ...{ twist: 4, thickness: 4 },
  };
  return rank[a.kind] - rank[b.kind];
}

/** A scale of technical drawing; on a screen, where nobody lays a rule, whatever fills the room. */
function scaleFor(extent: { readonly wide: number; readonly tall: number }, view: SurveyView): number {
  const choose =
    view.isBare === true ? (size: number, room: number) => room / Math.max(size, 1) : chooseScale;
  return Math.min(
    choose(extent.wide, Math.max(view.width - besideShape, 20)),
    choose(extent.tall, Math.max(heightFor(view) - besideShape, 20)),
  );
}

function extentOf(points: readonly Point[]) {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { wide: Math.max(...xs) - Math.min(...xs), tall: Math.max(...ys) - Math.min(...ys) };
}

function drawEdge(
  edge: Shape['edges'][number],
  sheet: {
    readonly points: Readonly<Record<string, Point>>;
    readonly centre: Point;
    readonly times: number;
    readonly scale: number;
  },
): readonly Mark[] {
  const [from, to] = [sheet.points[edge.from], sheet.points[edge.to]];
  if (!from || !to) return [];
  const chord = distanceBetween(from, to);
  const bow = (edge.bow ?? 0) * sheet.scale * sheet.times;
  // an arc that bulges away from the middle turns left when the middle lies to the left of its way
  const left =
    (to.x - from.x) * (sheet.centre.y - from.y) - (to.y - from.y) * (sheet.centre.x - from.x) > 0 ? 1 : -1;
  const bulge = chord > 0 ? (left * 2 * bow) / chord : 0;
  return [drawLine([{ ...from, ...(bulge !== 0 && { bulge }) }, to], 'cut', edge.name)];
}

/** Names of walls, on the side of the room: right of the way from left to right. */
function drawWallNames({ edges }: Shape, { points }: SurveySheet): readonly Mark[] {
  return edges.flatMap(({ name, from, to }): readonly Mark[] => {
    const [a, b] = [points[from], points[to]];
    if (!a || !b) return [];
    const turn = Math.atan2(b.y - a.y, b.x - a.x);
    const off = readableTurn(turn) === turn ? 1.5 + lettering.small : 1.5;
    const at = { x: (a.x + b.x) / 2 + Math.sin(turn) * off, y: (a.y + b.y) / 2 - Math.cos(turn) * off };
    const style = { height: lettering.small, align: 'middle', tone: 'soft', link: name } as const;
    return [drawText(at, name, { ...style, turn: readableTurn(turn) })];
  });
}

/** Name of a corner and how well it is known, set outwards from the shape. */
function drawCorner(name: string, at: Point, sheet: SurveySheet): readonly Mark[] {
  const found = sheet.view.adjustment.points.find((point) => point.id === name);
  const right = at.x >= sheet.centre.x;
  const up = at.y >= sheet.centre.y;
  const x = at.x + (right ? 2.5 : -2.5);
  const y = at.y + (up ? 3 : -3 - lettering.large);
  const align = right ? 'start' : 'end';
  const marks = [drawText({ x, y }, name, { height: lettering.large, weight: 'bold', align, link: name })];
  // the origin and the direction of the axis are agreed, not measured
  if (!found || (found.sx === 0 && found.sy === 0)) return marks;
  const text = `±${formatFine(2 * Math.max(found.sx, found.sy), sheet.view.units)}`;
  const below = up ? y + lettering.large + 1.5 : y - lettering.small - 1.5;
  return [
    ...marks,
    drawText({ x, y: below }, text, { height: lettering.small, align, tone: 'soft', link: name }),
  ];
}

function drawFoot(marks: readonly Mark[], view: SurveyView, scale: number): readonly Mark[] {
  const box = joinBoxes(marks.map(boxOfMark));
  const times = view.exaggerate ?? 1;
  const unit = view.units === 'inch' ? 'inches' : 'mm';
  const rows = [
    `Seen ${view.adjustment.seenFrom} · ${formatScale(scale)}${unitNote(view.units)} · ± in ${unit}, 19 times in 20`,
    times === 1 ? 'Drawn true.' : `Out of square drawn ${formatMm(times)} times too large.`,
    `Signed number and thick tail: reading minus best fit, ${unit}.`,
  ];
  return rows.map((row, i) =>
    drawText({ x: box.minX, y: box.minY - 7 - i * 4.2 }, row, { height: lettering.small, tone: 'soft' }),
  );
}
