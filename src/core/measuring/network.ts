import type { Point } from '#core/geometry';
import { unreachable } from '#core/problems';
import { repeatedValue } from './repeats.ts';
import { runOf, sigmaOf, stationSigma } from './methods.ts';
import type { Reading } from './types.ts';

/** How the vectors a reading spans become its value. */
export type Measure =
  'length' | 'plumb' | 'level' | 'offset' | 'station' | 'angle' | 'bow' | 'board-along' | 'board-up';

/** A sum of points times factors: a vector. */
export type Terms = readonly (readonly [point: string, factor: number])[];

/** A reading as the engine sees it: a measure of the sum of points times factors; angles in radians. */
export interface Observation {
  readonly id: string;
  /** The second number of a reading that has two. */
  readonly part?: 'station';
  readonly measure: Measure;
  readonly terms: Terms;
  /** The vector that an offset or an angle is counted from. */
  readonly base?: Terms;
  /** The board it was ticked on. */
  readonly board?: string;
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
  /** Corners of an outline counter-clockwise, where their order is known. */
  readonly corners?: readonly string[];
  /** Edges whose bow is an unknown; all others are straight. */
  readonly bows?: readonly string[];
  /** Boards whose place is an unknown. */
  readonly boards?: readonly string[];
}

/** Where a board lies: the start of its lower edge, and the turn of that edge from the x axis, radians. */
export interface BoardPlace extends Point {
  readonly turn: number;
}

/** A guess or an answer: upright is the y axis turned counter-clockwise by `tilt`; bows positive outwards, 0 where not named. */
export interface Position {
  readonly points: Readonly<Record<string, Point>>;
  readonly tilt: number;
  readonly bows?: Readonly<Record<string, number>>;
  readonly boards?: Readonly<Record<string, BoardPlace>>;
}

/** One unknown of a network. */
export type Unknown =
  | { readonly point: string; readonly axis: 'x' | 'y' }
  | { readonly tilt: true }
  | { readonly bow: string }
  | { readonly board: string; readonly part: keyof BoardPlace };

const degree = Math.PI / 180;

/** A reading as the engine sees it, repeats taken together: the value, then a station; nothing where it tells of no point. */
export function observe(reading: Reading, readings: readonly Reading[] = []): readonly Observation[] {
  const single = sigmaOf(reading, runOf(reading, readings));
  const { value, count } = repeatedValue(reading, single);
  const { id } = reading;
  const sigma = single / Math.sqrt(count);
  switch (reading.kind) {
    case 'distance':
      return [{ id, value, sigma, measure: 'length', terms: fromTo(reading) }];
    case 'plumb':
    case 'level':
      return [{ id, value, sigma, measure: reading.kind, terms: fromTo(reading) }];
    case 'width':
      return [{ id, value, sigma, ...observeWidth(reading) }];
    case 'offset':
      return [{ id, value, sigma, measure: 'offset', ...overBase(reading) }];
    case 'ordinate': {
      const along = { id, part: 'station', value: reading.station, sigma: stationSigma(reading) } as const;
      const place = overBase(reading);
      return [
        { id, value, sigma, measure: 'offset', ...place },
        { ...along, measure: 'station', ...place },
      ];
    }
    case 'tick': {
      const along = { id, part: 'station', value: reading.station, sigma: stationSigma(reading) } as const;
      const place = { terms: [[reading.point, 1]] as const, board: reading.board };
      return [
        { id, value, sigma, measure: 'board-up', ...place },
        { ...along, measure: 'board-along', ...place },
      ];
    }
    case 'angle': {
      const { at, from, to } = reading;
      const rays = { terms: fromTo({ from: at, to }), base: fromTo({ from: at, to: from }) };
      return [{ id, value: value * degree, sigma: sigma * degree, measure: 'angle', ...rays }];
    }
    case 'bow':
      return [{ id, value, sigma, measure: 'bow', terms: [], bows: [[edgeKey(reading), 1]] }];
    case 'twist':
    case 'thickness':
      return [];
    default:
      return unreachable(reading);
  }
}

/** From the start of a base line to a point. */
function overBase(reading: { readonly point: string; readonly from: string; readonly to: string }) {
  return { terms: fromTo({ from: reading.from, to: reading.point }), base: fromTo(reading) };
}

/** True when a reading says something of where points lie. */
export function tellsPoints({ kind }: { readonly kind: Reading['kind'] }): boolean {
  return kind !== 'twist' && kind !== 'thickness';
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

/** True for an observation whose sign tells a shape from its mirror image. */
export function isSided({ measure }: { readonly measure: Measure }): boolean {
  return sided.some((each) => each === measure);
}

const sided: readonly Measure[] = ['offset', 'angle', 'board-up'];

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
    case 'twist':
      return [...reading.first, ...reading.second];
    case 'offset':
    case 'ordinate':
      return [reading.from, reading.to, reading.point];
    case 'angle':
      return [reading.from, reading.at, reading.to];
    case 'tick':
      return [reading.point];
    case 'thickness':
      return [];
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
  const tilt = network.tiltFree ? [{ tilt: true } as const] : [];
  const parts = ['x', 'y', 'turn'] as const;
  const boards = (network.boards ?? []).flatMap((board) => parts.map((part) => ({ board, part })));
  return [...coordinates, ...tilt, ...bows, ...boards];
}
