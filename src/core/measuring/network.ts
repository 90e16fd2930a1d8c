import type { Point } from '#core/geometry';
import { unreachable } from '#core/problems';
import { repeatedValue } from './repeats.ts';
import { runOf, sigmaOf } from './methods.ts';
import type { Reading } from './types.ts';

/** How the vector a reading spans becomes its value. */
export type Measure = 'length' | 'plumb' | 'level';

/** A reading as the engine sees it: a measure of the sum of points times factors. */
export interface Observation {
  readonly id: string;
  readonly measure: Measure;
  readonly terms: readonly (readonly [point: string, factor: number])[];
  readonly value: number;
  readonly sigma: number;
}

/** Named points, what is held of them, and what was observed. Lengths in any one unit. */
export interface Network {
  readonly points: readonly string[];
  readonly held: Readonly<Record<string, Partial<Point>>>;
  readonly observations: readonly Observation[];
  /** Whether upright is an unknown; otherwise it is the y axis. */
  readonly tiltFree: boolean;
}

/** A guess or an answer: upright is the y axis turned counter-clockwise by `tilt`. */
export interface Position {
  readonly points: Readonly<Record<string, Point>>;
  readonly tilt: number;
}

/** One unknown of a network. */
export type Unknown = { readonly point: string; readonly axis: 'x' | 'y' } | { readonly tilt: true };

/** A reading as the engine sees it, repeats taken together. */
export function observe(reading: Reading, readings: readonly Reading[] = []): Observation {
  const sigma = sigmaOf(reading, runOf(reading, readings));
  const { value, count } = repeatedValue(reading, sigma);
  const base = { id: reading.id, value, sigma: sigma / Math.sqrt(count) };
  switch (reading.kind) {
    case 'distance':
      return { ...base, measure: 'length', terms: fromTo(reading) };
    case 'plumb':
    case 'level':
      return { ...base, measure: reading.kind, terms: fromTo(reading) };
    case 'width': {
      const { left, right, at } = reading;
      const terms: [string, number][] = [
        [right[0], 1 - at],
        [right[1], at],
        [left[0], at - 1],
        [left[1], -at],
      ];
      return { ...base, measure: 'length', terms };
    }
    default:
      return unreachable(reading);
  }
}

function fromTo(reading: { readonly from: string; readonly to: string }): [string, number][] {
  return [
    [reading.to, 1],
    [reading.from, -1],
  ];
}

/** Points in the order in which the readings first mention them. */
export function namesOf(reading: Reading): readonly string[] {
  return reading.kind === 'width' ? [...reading.left, ...reading.right] : [reading.from, reading.to];
}

/** The unknowns of a network in the order of its design columns. */
export function unknownsOf(network: Network): readonly Unknown[] {
  const axes = ['x', 'y'] as const;
  const coordinates: Unknown[] = network.points.flatMap((point) =>
    axes.flatMap((axis) => (network.held[point]?.[axis] === undefined ? [{ point, axis }] : [])),
  );
  return network.tiltFree ? [...coordinates, { tilt: true }] : coordinates;
}

/** What an observation would read at a position, and how it changes with each unknown. */
export function predict(
  observation: Observation,
  position: Position,
): { readonly value: number; readonly slope: Point; readonly tiltSlope: number } {
  const span = spanOf(observation, position);
  const [cos, sin] = [Math.cos(position.tilt), Math.sin(position.tilt)];
  switch (observation.measure) {
    case 'length': {
      const length = Math.hypot(span.x, span.y);
      const slope = length > 0 ? { x: span.x / length, y: span.y / length } : { x: 1, y: 0 };
      return { value: length, slope, tiltSlope: 0 };
    }
    case 'plumb': {
      const value = span.x * cos + span.y * sin;
      return { value, slope: { x: cos, y: sin }, tiltSlope: -span.x * sin + span.y * cos };
    }
    case 'level': {
      const value = -span.x * sin + span.y * cos;
      return { value, slope: { x: -sin, y: cos }, tiltSlope: -span.x * cos - span.y * sin };
    }
    default:
      return unreachable(observation.measure);
  }
}

/** The vector an observation measures, at a position. */
export function spanOf(observation: Observation, position: Position): Point {
  let [x, y] = [0, 0];
  for (const [name, factor] of observation.terms) {
    const point = position.points[name];
    if (!point) throw new Error(`no such point: ${name}`);
    x += factor * point.x;
    y += factor * point.y;
  }
  return { x, y };
}

/** Row of the design: change of the observation with each unknown. */
export function designRow(
  observation: Observation,
  position: Position,
  unknowns: readonly Unknown[],
): readonly number[] {
  const { slope, tiltSlope } = predict(observation, position);
  return unknowns.map((unknown) => {
    if ('tilt' in unknown) return tiltSlope;
    const factor = observation.terms.reduce((sum, [name, f]) => (name === unknown.point ? sum + f : sum), 0);
    return factor * slope[unknown.axis];
  });
}
