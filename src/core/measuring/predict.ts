import type { Point } from '#core/geometry';
import { unreachable } from '#core/problems';
import type { Observation, Position, Terms } from './network.ts';

/** What an observation would read, and how that changes with its vector, its base and upright. */
export interface Prediction {
  readonly value: number;
  readonly slope: Point;
  readonly baseSlope: Point;
  readonly tiltSlope: number;
}

const none: Point = { x: 0, y: 0 };

/** What an observation would read at a position, and how it changes with each unknown. */
export function predict(observation: Observation, position: Position): Prediction {
  const bows = observation.bows ?? [];
  const bowed = bows.reduce((sum, [edge, share]) => sum + share * (position.bows?.[edge] ?? 0), 0);
  const straight = predictStraight(observation, position);
  return { ...straight, value: straight.value + bowed };
}

function predictStraight(observation: Observation, position: Position): Prediction {
  const span = spanOf(observation, position);
  const [cos, sin] = [Math.cos(position.tilt), Math.sin(position.tilt)];
  switch (observation.measure) {
    case 'length': {
      const length = Math.hypot(span.x, span.y);
      const slope = length > 0 ? { x: span.x / length, y: span.y / length } : { x: 1, y: 0 };
      return { value: length, slope, baseSlope: none, tiltSlope: 0 };
    }
    case 'plumb': {
      const value = span.x * cos + span.y * sin;
      const tiltSlope = -span.x * sin + span.y * cos;
      return { value, slope: { x: cos, y: sin }, baseSlope: none, tiltSlope };
    }
    case 'level': {
      const value = -span.x * sin + span.y * cos;
      return { value, slope: { x: -sin, y: cos }, baseSlope: none, tiltSlope: -span.x * cos - span.y * sin };
    }
    case 'offset':
      return predictOffset(span, sumTerms(observation.base ?? [], position));
    case 'station':
      return predictStation(span, sumTerms(observation.base ?? [], position));
    case 'board-along':
    case 'board-up':
      return predictTick(observation, span, position);
    case 'angle':
      return predictAngle(span, sumTerms(observation.base ?? [], position));
    case 'bow':
      return { value: 0, slope: none, baseSlope: none, tiltSlope: 0 };
    default:
      return unreachable(observation.measure);
  }
}

/** Distance from the line along `base`, positive to its left. */
function predictOffset(span: Point, base: Point): Prediction {
  const length = Math.hypot(base.x, base.y);
  if (length === 0) return { value: 0, slope: none, baseSlope: none, tiltSlope: 0 };
  const value = (base.x * span.y - base.y * span.x) / length;
  const slope = { x: -base.y / length, y: base.x / length };
  const pull = value / length ** 2;
  const baseSlope = { x: span.y / length - pull * base.x, y: -span.x / length - pull * base.y };
  return { value, slope, baseSlope, tiltSlope: 0 };
}

/** Distance along `base` of the foot of the square on it. */
function predictStation(span: Point, base: Point): Prediction {
  const length = Math.hypot(base.x, base.y);
  if (length === 0) return { value: 0, slope: none, baseSlope: none, tiltSlope: 0 };
  const value = (base.x * span.x + base.y * span.y) / length;
  const slope = { x: base.x / length, y: base.y / length };
  const pull = value / length ** 2;
  const baseSlope = { x: span.x / length - pull * base.x, y: span.y / length - pull * base.y };
  return { value, slope, baseSlope, tiltSlope: 0 };
}

/** Where a point lies on its board; the base slope is that of the board's start, the tilt slope that of its turn. */
function predictTick({ measure, board = '' }: Observation, point: Point, position: Position): Prediction {
  const place = position.boards?.[board] ?? { ...none, turn: 0 };
  const [dx, dy] = [point.x - place.x, point.y - place.y];
  const [cos, sin] = [Math.cos(place.turn), Math.sin(place.turn)];
  const [along, up] = [dx * cos + dy * sin, dy * cos - dx * sin];
  const slope = measure === 'board-along' ? { x: cos, y: sin } : { x: -sin, y: cos };
  const baseSlope = { x: -slope.x, y: -slope.y };
  return measure === 'board-along'
    ? { value: along, slope, baseSlope, tiltSlope: up }
    : { value: up, slope, baseSlope, tiltSlope: -along };
}

/** Turn from `base` to `span`, counter-clockwise, between -pi and pi. */
function predictAngle(span: Point, base: Point): Prediction {
  const value = Math.atan2(base.x * span.y - base.y * span.x, base.x * span.x + base.y * span.y);
  const turned = turnSlope(base);
  return { value, slope: turnSlope(span), baseSlope: { x: -turned.x, y: -turned.y }, tiltSlope: 0 };
}

/** How the direction of a vector changes with its end. */
function turnSlope({ x, y }: Point): Point {
  const square = x * x + y * y;
  return square > 0 ? { x: -y / square, y: x / square } : none;
}

/** Observed less predicted; of an angle the shorter way round. */
export function missOf(observation: Observation, position: Position): number {
  const miss = observation.value - predict(observation, position).value;
  return observation.measure === 'angle' ? Math.atan2(Math.sin(miss), Math.cos(miss)) : miss;
}

/** The vector an observation measures, at a position. */
export function spanOf(observation: Observation, position: Position): Point {
  return sumTerms(observation.terms, position);
}

function sumTerms(terms: Terms, position: Position): Point {
  let [x, y] = [0, 0];
  for (const [name, factor] of terms) {
    const point = position.points[name];
    if (!point) throw new Error(`no such point: ${name}`);
    x += factor * point.x;
    y += factor * point.y;
  }
  return { x, y };
}
