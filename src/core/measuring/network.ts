import type { Point } from '#core/geometry';
import { unreachable } from '#core/problems';
import { repeatedValue } from './repeats.ts';
import { runOf, sigmaOf } from './methods.ts';
import type { Reading } from './types.ts';

/** How the vectors a reading spans become its value. */
export type Measure = 'length' | 'plumb' | 'level' | 'offset' | 'angle' | 'bow';

/** A sum of points times factors: a vector. */
export type Terms = readonly (readonly [point: string, factor: number])[];

/** A reading as the engine sees it: a measure of the sum of points times factors; angles in radians. */
export interface Observation {
  readonly id: string;
  readonly measure: Measure;
  readonly terms: Terms;
  /** The vector that an offset or an angle is counted from. */
  readonly base?: Terms;
  /** Bows that add to it, each with its share, by `edgeKey`. */
  readonly bows?: readonly (readonly [edge: string, share: number])[];
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
  /** Edges whose bow is an unknown; all others are straight. */
  readonly bows?: readonly string[];
}

/** A guess or an answer: upright is the y axis turned counter-clockwise by `tilt`; bows positive outwards, 0 where not named. */
export interface Position {
  readonly points: Readonly<Record<string, Point>>;
  readonly tilt: number;
  readonly bows?: Readonly<Record<string, number>>;
}

/** One unknown of a network. */
export type Unknown =
  { readonly point: string; readonly axis: 'x' | 'y' } | { readonly tilt: true } | { readonly bow: string };

const degree = Math.PI / 180;

/** A reading as the engine sees it, repeats taken together. */
export function observe(reading: Reading, readings: readonly Reading[] = []): Observation {
  const single = sigmaOf(reading, runOf(reading, readings));
  const { value, count } = repeatedValue(reading, single);
  const { id } = reading;
  const sigma = single / Math.sqrt(count);
  switch (reading.kind) {
    case 'distance':
      return { id, value, sigma, measure: 'length', terms: fromTo(reading) };
    case 'plumb':
    case 'level':
      return { id, value, sigma, measure: reading.kind, terms: fromTo(reading) };
    case 'width':
      return { id, value, sigma, ...observeWidth(reading) };
    case 'offset': {
      const terms = fromTo({ from: reading.from, to: reading.point });
      return { id, value, sigma, measure: 'offset', terms, base: fromTo(reading) };
    }
    case 'angle': {
      const { at, from, to } = reading;
      const rays = { terms: fromTo({ from: at, to }), base: fromTo({ from: at, to: from }) };
      return { id, value: value * degree, sigma: sigma * degree, measure: 'angle', ...rays };
    }
    case 'bow':
      return { id, value, sigma, measure: 'bow', terms: [], bows: [[edgeKey(reading), 1]] };
    default:
      return unreachable(reading);
  }
}

/** Between the edges at a fraction; each bow adds its parabola there, joinery A3. */
function observeWidth({ left, right, at }: Extract<Reading, { kind: 'width' }>) {
  const share = 4 * at * (1 - at);
  const bows = [left, right].map(([from, to]) => [edgeKey({ from, to }), share] as const);
  const terms: Terms = [
    [right[0], 1 - at],
    [right[1], at],
    [left[0], at - 1],
    [left[1], -at],
  ];
  return { measure: 'length', terms, bows } as const;
}

/** One unit of the file in the unit of the engine: a degree in radians, else 1. */
export function unitOf({ measure }: { readonly measure: Measure }): number {
  return measure === 'angle' ? degree : 1;
}

/** The same for an edge named from either end. */
export function edgeKey({ from, to }: { readonly from: string; readonly to: string }): string {
  return JSON.stringify([from, to].sort());
}

function fromTo(reading: { readonly from: string; readonly to: string }): Terms {
  return [
    [reading.to, 1],
    [reading.from, -1],
  ];
}

/** Points in the order in which the readings first mention them. */
export function namesOf(reading: Reading): readonly string[] {
  switch (reading.kind) {
    case 'width':
      return [...reading.left, ...reading.right];
    case 'offset':
      return [reading.from, reading.to, reading.point];
    case 'angle':
      return [reading.from, reading.at, reading.to];
    default:
      return [reading.from, reading.to];
  }
}

/** The unknowns of a network in the order of its design columns. */
export function unknownsOf(network: Network): readonly Unknown[] {
  const axes = ['x', 'y'] as const;
  const coordinates: Unknown[] = network.points.flatMap((point) =>
    axes.flatMap((axis) => (network.held[point]?.[axis] === undefined ? [{ point, axis }] : [])),
  );
  const bows = (network.bows ?? []).map((bow) => ({ bow }));
  return [...coordinates, ...(network.tiltFree ? [{ tilt: true } as const] : []), ...bows];
}
