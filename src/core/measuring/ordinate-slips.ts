import type { Problem } from '#core/problems';
import { isEven } from './ordinate-spacing.ts';
import { testByCubic, testByOthers, worstByOthers } from './ordinate-tests.ts';
import { joinWords, showMm } from './words.ts';

/** Ordinates that may hold a slip. */
export interface OrdinateDoubt {
  /** `one`: this ordinate. `group`: one of these. `station`: from the second of these on, a station skipped or repeated. */
  readonly kind: 'one' | 'group' | 'station';
  /** Counted from 0. */
  readonly at: readonly number[];
  /** Measured less what the others say, mm: of the one, or of the likeliest. */
  readonly slip: number;
  readonly problem: Problem;
}

export interface Ordinates {
  readonly stations: readonly number[];
  readonly ordinates: readonly number[];
  readonly sigma: number;
}

/** A fourth difference over 6 beyond this many sigma is a slip (joinery A6). */
const limit = 4.2;
/** Fewer ordinates than this only tell that something is wrong (joinery A6). */
const enoughToName = 8;
const enoughToFind = 5;

/** Ordinates that stand off the curve of the others; the worst place only. Nothing is corrected. Source: joinery A6. */
export function findOrdinateSlips(set: Ordinates): readonly OrdinateDoubt[] {
  if (set.ordinates.length < enoughToFind) return [];
  const doubt = isEven(set.stations) ? doubtByDifferences(set) : doubtByOthers(set);
  return doubt ? [doubt] : [];
}

/** (o[i-2] - 4 o[i-1] + 6 o[i] - 4 o[i+1] + o[i+2]) / 6 for i from 2 to n - 3. */
function fourthDifferences(o: readonly number[]): readonly number[] {
  const at = (i: number) => o[i] ?? 0;
  return o.slice(4).map((_, k) => (at(k) - 4 * at(k + 1) + 6 * at(k + 2) - 4 * at(k + 3) + at(k + 4)) / 6);
}

function doubtByDifferences(set: Ordinates): OrdinateDoubt | null {
  const q = fourthDifferences(set.ordinates);
  const sizes = q.map(Math.abs);
  const worst = sizes.indexOf(Math.max(...sizes));
  const count = set.ordinates.length;
  if ((sizes[worst] ?? 0) <= limit * set.sigma) return null;
  if (count < enoughToName) return tellGroup(set, allOf(count), q[worst] ?? 0);
  const skipped = findSkipped(set, q);
  if (skipped) return skipped;
  const i = worst + 2;
  if (i > 2 && i < count - 3) return tellOne(set, i, q[worst] ?? 0);
  const end = i === 2 ? [0, 1, 2] : [count - 3, count - 2, count - 1];
  return settleEnd(set, end, q[worst] ?? 0);
}

/** At an end the fourth difference cannot tell three ordinates apart: a cubic through the nearest can, sometimes. */
function settleEnd(set: Ordinates, end: readonly number[], guess: number): OrdinateDoubt {
  const verdict = testByCubic(set, end[0] === 0);
  if (verdict && verdict.group.length === 1 && end.includes(verdict.at))
    return tellOne(set, verdict.at, verdict.slip);
  const named = verdict?.group.filter((i) => end.includes(i)) ?? [];
  return tellGroup(set, named.length > 1 ? named : end, verdict?.slip ?? guess);
}

function doubtByOthers(set: Ordinates): OrdinateDoubt | null {
  const verdict = testByOthers(set, sharpness);
  if (!verdict) return null;
  const count = set.ordinates.length;
  if (count < enoughToName) return tellGroup(set, allOf(count), verdict.slip);
  const shifted = findShifted(set, verdict.at);
  if (shifted) return shifted;
  if (verdict.at > 2 && verdict.at < count - 3) return tellOne(set, verdict.at, verdict.slip);
  const end = verdict.at <= 2 ? [0, 1, 2] : [count - 3, count - 2, count - 1];
  return settleEnd(set, end, verdict.slip);
}

/**
 * Unevenly spaced: a station skipped or repeated, when no single ordinate left out brings the others into agreement, and
 * setting all later ones a station on, or back, does. Source: joinery A5 E15.
 */
function findShifted(set: Ordinates, worst: number): OrdinateDoubt | null {
  if (worstByOthers(without(set, worst)).size <= sharpness) return null;
  const tries = Array.from({ length: set.ordinates.length - 3 }, (_, i) => i + 2).flatMap((k) =>
    [false, true].map((repeated) => {
      const shifted = shiftFrom(set, k, repeated);
      return { k, repeated, size: worstByOthers(shifted).size };
    }),
  );
  // Of two looks at one station either may be left out: the second is the one too many.
  const best = tries.reduce((a, b) => (b.size < a.size + 1e-9 ? b : a));
  if (best.size > sharpness) return null;
  const { k, repeated } = best;
  const step = (set.ordinates[k] ?? 0) - (set.ordinates[k - 1] ?? 0);
  // Of two looks at one station the step lies before the place.
  const shown = repeated ? (set.ordinates[k - 1] ?? 0) - (set.ordinates[k - 2] ?? 0) : step;
  return tellStation(set, [k - 1, k], { step: shown, repeated });
}

/** As the limit of the fourth difference, for the deviation of each ordinate from the spline of the others. */
const sharpness = limit / Math.hypot(1 / 6, 4 / 6, 1, 4 / 6, 1 / 6);

function without({ stations, ordinates, sigma }: Ordinates, at: number): Ordinates {
  const others = (list: readonly number[]) => list.filter((_, k) => k !== at);
  return { stations: others(stations), ordinates: others(ordinates), sigma };
}

/** The ordinates as they belong, had station `k` been skipped when it was their turn, or the one before been measured twice. */
function shiftFrom({ stations, ordinates, sigma }: Ordinates, k: number, repeated: boolean): Ordinates {
  if (repeated)
    return {
      stations: stations.slice(0, -1),
      ordinates: ordinates.filter((_, i) => i !== k),
      sigma,
    };
  return { stations: stations.filter((_, i) => i !== k), ordinates: ordinates.slice(0, -1), sigma };
}

/** A step in the ordinates, and a slip in one, as they show in the fourth differences (joinery A5, E15). */
const stepPattern = [1, -3, 3, -1] as const;
const slipPattern = [1, -4, 6, -4, 1] as const;
/** How nearly the differences must follow the step, as a cosine; one slip follows it to 0.94 at most. */
const alike = 0.95;

/** A station skipped or repeated: a step that fits better than any one slip, and is as high as the curve steps there. */
function findSkipped(set: Ordinates, q: readonly number[]): OrdinateDoubt | null {
  const { ordinates: o, sigma } = set;
  const places = q.slice(3).map((_, k) => ({ k, likeness: likenessOf(q, stepPattern, k) }));
  const best = places.reduce((a, b) => (b.likeness > a.likeness ? b : a), { k: 0, likeness: 0 });
  const slips = q.map((_, k) => likenessOf(q, slipPattern, k - 2));
  if (best.likeness < Math.max(alike, ...slips)) return null;
  const { k } = best;
  const step = (6 * sumAlong(q, stepPattern, k)) / 20; // 20 is the square of the pattern's length
  const [a, b, c, d] = [o[k + 2] ?? 0, o[k + 3] ?? 0, o[k + 4] ?? 0, o[k + 5] ?? 0];
  const usual = (b - a + (d - c)) / 2;
  const spare = Math.max(limit * sigma, Math.abs(usual) / 4);
  if (Math.abs(Math.abs(step) - Math.abs(usual)) > spare) return null;
  return tellStation(set, [k + 3, k + 4], { step, repeated: step * usual < 0 });
}

function sumAlong(q: readonly number[], pattern: readonly number[], start: number): number {
  return pattern.reduce((sum, weight, j) => sum + weight * (q[start + j] ?? 0), 0);
}

/** Cosine between the differences and a pattern laid over them, as far as it lies within. */
function likenessOf(q: readonly number[], pattern: readonly number[], start: number): number {
  const inside = pattern.filter((_, j) => q[start + j] !== undefined);
  return Math.abs(sumAlong(q, pattern, start)) / (Math.hypot(...inside) * Math.hypot(...q) || 1);
}

function allOf(count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => i);
}

function placeOf({ stations }: Ordinates, i: number): string {
  return `ordinate ${i + 1} (station ${showMm(stations[i] ?? 0)})`;
}

function problemOf(code: string, message: string, remedy: string): Problem {
  return { severity: 'warn', code, message, remedy, source: 'joinery A6' };
}

function tellOne(set: Ordinates, i: number, slip: number): OrdinateDoubt {
  const side = slip > 0 ? 'too large' : 'too small';
  const read = `${showMm(set.ordinates[i] ?? 0)} read, about ${showMm((set.ordinates[i] ?? 0) - slip)} expected`;
  const message = `O${placeOf(set, i).slice(1)} looks wrong by about ${showMm(Math.abs(slip))} mm ${side}: ${read}.`;
  const remedy = 'Measure it again. If it stands, is there a frame or a stringer?';
  return { kind: 'one', at: [i], slip, problem: problemOf('ordinate-slip', message, remedy) };
}

function tellGroup(set: Ordinates, at: readonly number[], slip: number): OrdinateDoubt {
  const all = at.length === set.ordinates.length;
  const which = all ? 'these ordinates' : joinWords(at.map((i) => placeOf(set, i)));
  const message = `One of ${which} looks wrong by some ${showMm(Math.abs(slip))} mm; they are too few or too near the end to tell which.`;
  const remedy = all
    ? 'Measure all of them again, and more: eight at least.'
    : 'Measure these again; take one more beyond the end if there is room.';
  return { kind: 'group', at, slip, problem: problemOf('ordinate-slip', message, remedy) };
}

function tellStation(
  set: Ordinates,
  at: readonly [number, number],
  { step, repeated }: { readonly step: number; readonly repeated: boolean },
): OrdinateDoubt {
  const from = placeOf(set, at[1]);
  const message = `From ${from} on all ordinates stand off by about ${showMm(Math.abs(step))} mm, one step of the curve: a station was ${repeated ? 'measured twice' : 'skipped'} there.`;
  const remedy = `Measure again from ${placeOf(set, at[0])} on, counting the marks on the batten.`;
  return { kind: 'station', at, slip: step, problem: problemOf('station-skipped', message, remedy) };
}
