import {
  drawHullSection,
  drawSurvey,
  openingRing,
  type Drawing,
  type SketchRing,
  type SurveyOrdinate,
} from '#core/drawing';
import type { MeasuredShape } from '#core/project';
import { formatNumber, type LengthSystem } from '#core/units';

import { wallPoint } from './shapes/adjust-walls.ts';
import { readingsOf } from './shapes/shape-readings.ts';
import type { ShapeOutcome } from './types.ts';

/** Paper to draw on, and how. */
export interface ShapeRoom {
  /** mm of paper. */
  readonly width: number;
  readonly height?: number;
  readonly units?: LengthSystem;
  /** How many times too large what is out of square is drawn. */
  readonly exaggerate?: number;
  /** Without the lines below it, where what they say stands beside it. */
  readonly isBare?: boolean;
}

/** A shape of any kind as it was measured: one drawing, or one for each hull section; none while there is nothing to draw. */
export function viewShape(outcome: ShapeOutcome, room: ShapeRoom): readonly Drawing[] {
  const { shape, adjustment, adjusted } = outcome;
  if (shape.kind === 'sections') return viewSections(outcome, room);
  const ring = ringOf(shape);
  if (!adjusted && ring.corners.length === 0) return [];
  const isWhole = ring.corners.every((corner) => adjusted?.points[corner] !== undefined);
  return [
    drawSurvey({
      shape: isWhole ? adjusted : null,
      readings: readingsOf(shape),
      adjustment,
      ordinates: ordinatesOf(outcome),
      ring,
      ...room,
    }),
  ];
}

/** The points of a shape in the order of its edges, to be sketched before they are measured. */
export function ringOf(shape: MeasuredShape): SketchRing {
  switch (shape.kind) {
    case 'opening':
      return openingRing;
    case 'outline':
      return { corners: shape.corners };
    case 'sections':
      return { corners: [] };
    case 'walls': {
      const closed = shape.closed === true;
      const count = shape.walls.length === 0 ? 0 : shape.walls.length + (closed ? 0 : 1);
      const corners = Array.from({ length: count }, (_, at) => wallPoint(at));
      return { corners, closed, isClockwise: true };
    }
  }
}

/** The address of an ordinate: its curve or section, and its station. */
export function ordinateId(item: string, station: number): string {
  return `${item}@${formatNumber(station, 1)}`;
}

function ordinatesOf({ shape, ordinateSlips = [] }: ShapeOutcome): readonly SurveyOrdinate[] {
  if (shape.kind !== 'outline') return [];
  return (shape.curves ?? []).flatMap(({ id, from, to, ordinates }) =>
    ordinates.map(({ at, value }, place) => ({
      ...{ from, to, at, value, link: ordinateId(id, at) },
      isSuspect: ordinateSlips.some((slip) => slip.item === id && slip.at.includes(place)),
    })),
  );
}

function viewSections(
  { shape, adjusted, ordinateSlips = [] }: ShapeOutcome,
  room: ShapeRoom,
): readonly Drawing[] {
  if (shape.kind !== 'sections') return [];
  return (adjusted?.sections ?? []).flatMap((section) => {
    const measured = shape.sections.find(({ name }) => name === section.name);
    if (!measured) return [];
    const { width, height, units, isBare } = room;
    return [
      drawHullSection({
        section,
        seenFrom: shape.seenFrom,
        ordinates: measured.ordinates.map((ordinate, place) => ({
          ...ordinate,
          link: ordinateId(measured.id, ordinate.height),
          isSuspect: ordinateSlips.some((slip) => slip.item === measured.id && slip.at.includes(place)),
        })),
        obstructions: (adjusted?.obstructions ?? []).filter(
          (each) => each.section === undefined || each.section === section.name,
        ),
        width,
        ...(height !== undefined && { height }),
        ...(units && { units }),
        ...(isBare !== undefined && { isBare }),
      }),
    ];
  });
}
