import type { Point } from '#core/geometry';
import type { Reading } from '#core/measuring';
import { boxOfMark, drawLine, drawText, joinBoxes, lettering, makeDrawing } from './marks.ts';
import { openingRing, pointsOfReading, sketchPoints, type SketchRing } from './reading-sketch.ts';
import { unitNote } from './scales.ts';
import { drawReading } from './survey-readings.ts';
import type { SurveySheet } from './survey-sheet.ts';
import { meanOf } from './survey-view.ts';
import type { SurveyView } from './survey-view.ts';
import type { Drawing, Mark } from './types.ts';

/** A sketch of no particular shape with the readings entered so far, and what they leave open. */
export function drawEnteredReadings(view: SurveyView): Drawing {
  const ring = view.ring ?? openingRing;
  const names = namesOf(view.readings, ring);
  const size = Math.max(30, Math.min(view.width - 40, 90));
  const points = scalePoints(sketchPoints(names, ring), size);
  const shape = { seenFrom: '', points, edges: edgesOf(ring), order: [], covariance: [], tilt: 0 };
  const sheet: SurveySheet = {
    view: { adjustment: view.adjustment, shape, ...(view.units && { units: view.units }) },
    points,
    centre: meanOf(Object.values(points)),
    scale: 1,
    taken: [],
  };
  const marks: Mark[] = [
    ...shape.edges.map(({ from, to }) => drawLine([points[from] as Point, points[to] as Point], 'hidden')),
    ...view.readings.flatMap((reading) => drawReading(reading, sheet)),
    ...Object.entries(points).map(([name, at]) => drawName(name, at, sheet.centre)),
  ];
  const box = joinBoxes(marks.map(boxOfMark));
  const open = view.adjustment.undetermined.slice(0, 4);
  const scale = `Sketch, not to scale${unitNote(view.units)}: the readings do not fix the shape yet.`;
  const rows = view.isBare === true ? [] : [scale, ...open];
  const foot = rows.map((row, i) =>
    drawText({ x: box.minX, y: box.minY - 7 - i * 4.2 }, row, { height: lettering.small, tone: 'soft' }),
  );
  return { ...makeDrawing('Survey, readings so far', 1, [...marks, ...foot], 3), isUnscaled: true };
}

function namesOf(readings: readonly Reading[], ring: SketchRing): readonly string[] {
  return [...new Set([...ring.corners, ...readings.flatMap(pointsOfReading)])];
}

function scalePoints(points: Readonly<Record<string, Point>>, size: number): Readonly<Record<string, Point>> {
  return Object.fromEntries(
    Object.entries(points).map(([name, p]) => [name, { x: p.x * size, y: p.y * size }]),
  );
}

function edgesOf({ corners, closed = true }: SketchRing) {
  const ends = closed ? corners : corners.slice(0, -1);
  return ends.map((from, i) => ({ name: '', from, to: corners[(i + 1) % corners.length] ?? from }));
}

function drawName(name: string, at: Point, centre: Point): Mark {
  const right = at.x >= centre.x;
  const y = at.y >= centre.y ? at.y + 3 : at.y - 3 - lettering.large;
  return drawText({ x: at.x + (right ? 2.5 : -2.5), y }, name, {
    height: lettering.large,
    weight: 'bold',
    align: right ? 'start' : 'end',
    link: name,
  });
}
