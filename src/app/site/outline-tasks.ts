import type { Reading } from '#core/measuring';
import { ordinateId, type ShapeOutcome } from '#core/pipeline';
import type { MeasuredCurve, MeasuredOutline } from '#core/project';
import { formatNumber } from '#core/units';
import { placeTask, placeWords, type SiteTask } from './task.ts';

/** Every edge, the diagonals from its first two corners, then the ordinates of its curves. A traced outline wants checks only. */
export function outlineTasks(outcome: ShapeOutcome, shape: MeasuredOutline): readonly SiteTask[] {
  const pairs = wantedPairs(shape.corners);
  const wanted = shape.traced
    ? [...pairs.edges.slice(0, 1), ...pairs.diagonals.slice(0, 1)]
    : [...pairs.edges, ...pairs.diagonals];
  return [
    ...wanted.map((pair) => pairTask(outcome, pair, pairs.edges.includes(pair))),
    ...(shape.curves ?? []).flatMap((curve) => curveTasks(outcome, curve)),
  ];
}

type Pair = readonly [string, string];

/** Edges round the outline, and the diagonals from the first two corners: these fix it and check it. */
function wantedPairs(corners: readonly string[]): {
  readonly edges: readonly Pair[];
  readonly diagonals: readonly Pair[];
} {
  const count = corners.length;
  const name = (at: number): string => corners[at % count] ?? '';
  if (count < 2) return { edges: [], diagonals: [] };
  const edges = corners.slice(0, count === 2 ? 1 : count).map((from, at): Pair => [from, name(at + 1)]);
  const fan = (from: number): readonly Pair[] =>
    Array.from({ length: Math.max(0, count - 3) }, (_, at): Pair => [name(from), name(from + 2 + at)]);
  return { edges, diagonals: [...fan(0), ...fan(1)] };
}

function pairTask(outcome: ShapeOutcome, [from, to]: Pair, isEdge: boolean): SiteTask {
  const place = { kind: 'distance', from, to } as const;
  const reading = outcome.shape.readings.find((each) => isBetween(each, from, to)) ?? null;
  const words = `${isEdge ? 'edge' : 'diagonal'} ${from}–${to}`;
  return placeTask(outcome, { id: `${from}-${to}`, place, reading, words, where: placeWords(place) });
}

function isBetween(reading: Reading, from: string, to: string): boolean {
  if (reading.kind !== 'distance') return false;
  const ends = [reading.from, reading.to];
  return ends.includes(from) && ends.includes(to);
}

/** Stations apart unless the user began otherwise, mm (joinery A6). */
const usualStep = 100;

/** The ordinates taken and, as long as the batten goes on, the next one. */
export function curveTasks(
  { shape, adjusted, ordinateSlips = [] }: ShapeOutcome,
  curve: MeasuredCurve,
): readonly SiteTask[] {
  const chord = shape.readings.find((reading) => isBetween(reading, curve.from, curve.to))?.value;
  const [a, b] = [adjusted?.points[curve.from], adjusted?.points[curve.to]];
  const length = chord ?? (a && b ? Math.hypot(b.x - a.x, b.y - a.y) : Infinity);
  const slips = ordinateSlips.filter(({ item }) => item === curve.id).flatMap(({ at }) => at);
  const taken = curve.ordinates.map(({ at, value }, place) =>
    ordinateTask(curve, at, { values: [value], isOff: slips.includes(place) }),
  );
  return [
    ...taken,
    ...missingStations(curve, length).map((at) => ordinateTask(curve, at, { values: [], isOff: false })),
  ];
}

/** Stations still to be taken up to the end of the batten; only the next one where that is not known. */
function missingStations({ ordinates }: MeasuredCurve, length: number): readonly number[] {
  const [first, second] = ordinates;
  const step = (first && second ? second.at - first.at : first?.at) ?? usualStep;
  const from = ordinates.at(-1)?.at ?? 0;
  if (!(step > 0)) return [];
  if (!Number.isFinite(length)) return [from + step];
  const count = Math.max(0, Math.ceil((length - from) / step) - 1);
  return Array.from({ length: Math.min(count, mostStations) }, (_, at) => from + (at + 1) * step);
}

const mostStations = 60;

/** An ordinate of a curve at a station. */
export function ordinateTask(
  curve: MeasuredCurve,
  at: number,
  state: Pick<SiteTask, 'values' | 'isOff'>,
): SiteTask {
  const station = formatNumber(at, 1);
  return {
    id: ordinateId(curve.id, at),
    words: `ordinate at ${station} of ${curve.from}–${curve.to}`,
    where: `${station} mm along the straight line from ${curve.from}, square to it: out to the edge is plus, in is minus.`,
    unit: 'mm',
    isSigned: true,
    place: { kind: 'bow', from: curve.from, to: curve.to },
    goal: { kind: 'ordinate', curve: curve.id, at },
    ...{ reading: null, adjusted: null, suspect: null },
    ...state,
  };
}
