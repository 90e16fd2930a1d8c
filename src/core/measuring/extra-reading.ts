import type { Point, Shape, ShapeEdge } from '#core/geometry';
import { adviseEdge } from './chance.ts';
import type { GapLimits } from './chance.ts';
import { openingCorners } from './datum.ts';
import { methods, sigmaOf } from './methods.ts';
import { observe } from './network.ts';
import { makeOpeningReading, openingChecklist, openingKeyOf } from './opening.ts';
import { predict } from './predict.ts';
import type { Reading } from './types.ts';
import { freeCovariance, freeFromDatum } from './uncertainty.ts';

/** Along every edge the same gap, and what of it can be packed or hidden, mm. */
export interface GapPlan {
  readonly gap: number;
  readonly limits: GapLimits;
  readonly cover?: number;
}

/** The one reading more that raises the chance most that all edges fit as planned. */
export interface ExtraReading {
  /** As it would be taken; its value is what the shape lets one expect. */
  readonly reading: Reading;
  /** That every edge fits, 0 to 1, as the shape is known now and as it then would be; edges taken as independent. */
  readonly chance: number;
  readonly then: number;
  /** The edge that gains most. */
  readonly edge: string;
  readonly words: string;
}

/** A gain smaller than this is not worth climbing aboard for. */
const worthwhile = 0.01;
/** More candidates than this are not tried: those at the edge that fits worst come first. */
const mostTried = 400;

/**
 * Tries distances between the points (of an opening its standard widths too), taken once by tape or once more, on the
 * covariance of the shape; null when none raises the chance by a hundredth. Readings against upright are not tried: they
 * say nothing of how edges fit. Chances as in `adviseEdges`, joinery A11.
 */
export function bestExtraReading(
  shape: Shape,
  taken: readonly Reading[],
  plan: GapPlan,
): ExtraReading | null {
  const state = { shape, plan, free: freeCovariance(shape), project: freeFromDatum(shape) };
  const now = shape.edges.map((edge) => chanceOf(state, edge, null));
  const worst = shape.edges[now.indexOf(Math.min(...now))];
  const tried = candidatesFor(shape, taken, worst)
    .slice(0, mostTried)
    .map((candidate) => {
      const gain = effectOf(state, candidate.reading);
      const chances = shape.edges.map((edge) => chanceOf(state, edge, gain));
      return { ...candidate, chances, then: product(chances) };
    });
  const best = tried.reduce<(typeof tried)[number] | null>((a, b) => (a && a.then >= b.then ? a : b), null);
  const chance = product(now);
  if (!best || best.then - chance < worthwhile) return null;
  const gains = best.chances.map((value, k) => value - (now[k] ?? 0));
  const edge = shape.edges[gains.indexOf(Math.max(...gains))]?.name ?? '';
  const percent = (value: number) => `${Math.floor(100 * value)} %`;
  const words =
    `Measure the ${best.words}: the chance that all edges fit as planned rises from ${percent(chance)} to ${percent(best.then)}, ` +
    `most of it at the ${edge}.`;
  return { reading: best.reading, chance, then: best.then, edge, words };
}

function product(chances: readonly number[]): number {
  return chances.reduce((all, one) => all * one, 1);
}

interface State {
  readonly shape: Shape;
  readonly plan: GapPlan;
  /** Covariance against the shape as a whole. */
  readonly free: readonly (readonly number[])[];
  readonly project: (errors: readonly number[]) => readonly number[];
}

/** What a reading takes off every covariance: the product of two entries of `along`, over `weight`. */
interface Effect {
  readonly along: readonly number[];
  readonly weight: number;
}

/** Of one reading more, by the rule of Sherman and Morrison 1950 (from memory): no new adjustment is needed. */
function effectOf({ shape, project }: State, reading: Reading): Effect {
  const [seen] = observe(reading);
  if (!seen) return { along: [], weight: 1 };
  const { slope } = predict(seen, { points: shape.points, tilt: 0 });
  const factors = new Map<string, number>();
  for (const [name, factor] of seen.terms)
    for (const axis of ['x', 'y'] as const) {
      const key = `${name}.${axis}`;
      factors.set(key, (factors.get(key) ?? 0) + factor * slope[axis]);
    }
  const row = shape.order.flatMap((name, k) => {
    const factor = factors.get(name) ?? 0;
    return factor === 0 ? [] : [[k, factor] as const];
  });
  const spread = shape.covariance.map((line) => row.reduce((sum, [k, f]) => sum + f * (line[k] ?? 0), 0));
  const own = row.reduce((sum, [k, f]) => sum + f * (spread[k] ?? 0), 0);
  return { along: project(spread), weight: seen.sigma ** 2 + own };
}

function chanceOf({ shape, plan, free }: State, edge: ShapeEdge, effect: Effect | null): number {
  const [from, to] = [shape.points[edge.from], shape.points[edge.to]];
  if (!from || !to) throw new Error(`no such edge: ${edge.name}`);
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const across: Point = { x: (from.y - to.y) / length, y: (to.x - from.x) / length };
  const sigmas = [edge.from, edge.to].map((end) => {
    const [i, j] = [shape.order.indexOf(`${end}.x`), shape.order.indexOf(`${end}.y`)];
    const at = (a: number, b: number) => free[a]?.[b] ?? 0;
    const variance = across.x ** 2 * at(i, i) + 2 * across.x * across.y * at(i, j) + across.y ** 2 * at(j, j);
    const gained = across.x * (effect?.along[i] ?? 0) + across.y * (effect?.along[j] ?? 0);
    return Math.sqrt(Math.max(0, variance - gained ** 2 / (effect?.weight ?? 1)));
  });
  // of a straight edge sigma is what its corners leave open, of a curve what its ordinates add: no distance mends that
  const uncertainty = 2 * Math.max(...sigmas, edge.curve ? (edge.sigma ?? 0) : 0);
  const fit = { ...plan, name: edge.name, deviation: Math.abs(edge.bow ?? 0), uncertainty };
  return adviseEdge(fit).chance;
}

interface Candidate {
  readonly reading: Reading;
  readonly words: string;
}

function candidatesFor(
  shape: Shape,
  taken: readonly Reading[],
  worst: ShapeEdge | undefined,
): readonly Candidate[] {
  const names = Object.keys(shape.points);
  const ends = worst ? [worst.from, worst.to] : [];
  const pairs = names.flatMap((from, k) => names.slice(k + 1).map((to) => ({ from, to })));
  const near = (pair: { readonly from: string; readonly to: string }) =>
    Number(ends.includes(pair.from)) + Number(ends.includes(pair.to));
  const distances = [...pairs]
    .sort((a, b) => near(b) - near(a))
    .map(({ from, to }): Reading => {
      const [p, q] = [shape.points[from], shape.points[to]];
      const value = p && q ? Math.hypot(q.x - p.x, q.y - p.y) : 0;
      return { id: `${from}–${to}`, kind: 'distance', from, to, value, sigma: methods.M1.sigma(value) };
    })
    .filter(({ value }) => value > 0);
  return [...widthsOf(shape), ...distances].map((reading) => {
    const before = taken.find((other) => isSamePlace(other, reading));
    const sigma = before ? sigmaOf(before) : reading.sigma;
    const again = before ? `, ${before.id}, once more, from its other end` : '';
    return {
      reading: { ...reading, ...(sigma !== undefined && { sigma }) },
      words: `${placeWords(reading)}${again}`,
    };
  });
}

function widthsOf({ points }: Shape): readonly Reading[] {
  if (!openingCorners.every((corner) => corner in points)) return [];
  return (['w13', 'w23'] as const).map((key) => {
    const reading = makeOpeningReading(key, 1);
    const [seen] = observe(reading);
    const value = seen ? predict(seen, { points, tilt: 0 }).value : 1;
    return { ...reading, value, sigma: methods.M1.sigma(value) };
  });
}

function isSamePlace(a: Reading, b: Reading): boolean {
  const key = openingKeyOf(b);
  if (key !== null) return openingKeyOf(a) === key;
  if (a.kind !== 'distance' || b.kind !== 'distance') return false;
  return [a.from, a.to].sort().join() === [b.from, b.to].sort().join();
}

function placeWords(reading: Reading): string {
  const key = openingKeyOf(reading);
  return openingChecklist.find((line) => line.key === key)?.words ?? `distance ${reading.id}`;
}
