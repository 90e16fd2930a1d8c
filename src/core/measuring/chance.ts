import type { Shape } from '#core/geometry';
import { normalTail } from '#core/numerics';
import { unreachable } from '#core/problems';
import { edgeUncertainties } from './uncertainty.ts';
import type { LengthSystem } from '#core/units';
import { showLength, unitWords } from './words.ts';

/** Between these a gap can be packed or hidden, mm. */
export interface GapLimits {
  readonly least: number;
  readonly most: number;
}

/** Probability that a gap known to `sigma` lies within limits, 0 to 1; all of these mm. */
export function chanceOfFit(gap: number, sigma: number, { least, most }: GapLimits): number {
  if (most < least) return 0;
  if (!(sigma > 0)) return gap >= least && gap <= most ? 1 : 0;
  return Math.max(0, tailBeyond((least - gap) / sigma) - tailBeyond((most - gap) / sigma));
}

/** As `normalTail`; either limit may be left open. */
function tailBeyond(z: number): number {
  return Number.isFinite(z) ? normalTail(z) : z > 0 ? 0 : 1;
}

/** Most and least by which a line strays from its best straight line (least squares), mm; 0 for fewer than three points. */
export function edgeDeviation(stations: readonly number[], ordinates: readonly number[]): number {
  if (stations.length < 3) return 0;
  const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [s, o] = [mean(stations), mean(ordinates)];
  const moment = (of: (i: number) => number) => stations.reduce((sum, x, i) => sum + (x - s) * of(i), 0);
  const slope = moment((i) => (ordinates[i] ?? 0) - o) / moment((i) => (stations[i] ?? 0) - s);
  const strays = ordinates.map((value, i) => value - o - slope * ((stations[i] ?? 0) - s));
  return Math.max(...strays) - Math.min(...strays);
}

/** Wood left on an edge to be scribed away, mm (joinery A11): clamped between these; beyond the most a template comes first. */
const scribe = { least: 5, most: 25, margin: 2 } as const;

/**
 * Wood to leave on an edge that strays by `deviation` and is known to `uncertainty` (two sigma), mm; null when it would be
 * more than can be scribed from a straight edge. Source: joinery A11.
 */
export function scribeAllowance(deviation: number, uncertainty: number): number | null {
  const wanted = Math.ceil(deviation + 2 * uncertainty + scribe.margin);
  return wanted > scribe.most ? null : Math.max(scribe.least, wanted);
}

/** More a cover must lap than the widest gap and twice its uncertainty, mm (joinery A11). */
const coverMargin = 3;

/** An edge of a piece against the edge it is fitted to, mm. */
export interface EdgeFit {
  readonly name: string;
  /** The narrowest gap planned. */
  readonly gap: number;
  /** How much wider the gap is elsewhere along the edge, because what it meets is not straight. */
  readonly deviation: number;
  /** Two sigma of the measured edge, square to it. */
  readonly uncertainty: number;
  readonly limits: GapLimits;
  /** What a moulding covers of the gap, where there is one. */
  readonly cover?: number;
}

/** What to do with an edge: cut it to size, leave wood on it, or cut it only when the rest stands in its place. */
export interface EdgeAdvice {
  readonly name: string;
  readonly kind: 'cut-now' | 'scribe' | 'dry-fit';
  /** That the edge fits as planned, 0 to 1. */
  readonly chance: number;
  /** Wood to leave on, mm; 0 when cut now, null when that is not known before the dry fit. */
  readonly allowance: number | null;
  readonly words: string;
}

/** An edge that fits with this chance is cut to size ashore (common practice, no source: one edge in twenty). */
const goodChance = 0.95;

/** Cut now, leave wood to scribe, or wait for the dry fit: whichever is the first that will do. Source: joinery A11. */
export function adviseEdge(edge: EdgeFit, units: LengthSystem = 'mm'): EdgeAdvice {
  const { name, gap, deviation, uncertainty, limits, cover } = edge;
  const most = limits.most - deviation;
  const chance = chanceOfFit(gap, uncertainty / 2, { least: limits.least, most });
  const goesIn = chanceOfFit(gap, uncertainty / 2, { least: limits.least, most: Infinity });
  const hidden = cover !== undefined && cover >= gap + deviation + 2 * uncertainty + coverMargin;
  const wood = scribeAllowance(deviation, uncertainty);
  const kind =
    chance >= goodChance || (hidden && goesIn >= goodChance)
      ? 'cut-now'
      : wood === null
        ? 'dry-fit'
        : 'scribe';
  const allowance = kind === 'cut-now' ? 0 : wood;
  const advice = { name, kind, chance, allowance } as const;
  return { ...advice, words: tellEdge(advice, limits, units) };
}

function tellEdge(
  { name, kind, chance, allowance }: Omit<EdgeAdvice, 'words'>,
  limits: GapLimits,
  units: LengthSystem,
): string {
  const show = (length: number): string => showLength(length, units);
  const unit = unitWords[units];
  const odds = `${Math.floor(100 * chance)} % that its gap lies between ${show(limits.least)} and ${show(limits.most)} ${unit}`;
  switch (kind) {
    case 'cut-now':
      return chance >= goodChance
        ? `Cut the ${name} now: ${odds}.`
        : `Cut the ${name} now: the cover hides the gap, though it is only ${odds}.`;
    case 'scribe':
      return `Leave ${show(allowance ?? 0)} ${unit} on the ${name} to scribe: it is only ${odds}.`;
    case 'dry-fit':
      return `Wait for the dry fit with the ${name}: it is only ${odds}, and more than ${show(scribe.most)} ${unit} would have to be scribed. Make a template first.`;
    default:
      return unreachable(kind);
  }
}

/** Advice for every edge of a measured shape along which a piece is planned with one gap. */
export function adviseEdges(
  shape: Shape,
  plan: {
    readonly gap: number;
    readonly limits: GapLimits;
    readonly cover?: number;
    readonly units?: LengthSystem;
  },
): readonly EdgeAdvice[] {
  const known = edgeUncertainties(shape);
  const { units, ...same } = plan;
  return shape.edges.map((edge, k) =>
    adviseEdge(
      {
        ...same,
        name: edge.name,
        deviation: Math.abs(edge.bow ?? 0),
        uncertainty: Math.max(known[k] ?? 0, 2 * (edge.sigma ?? 0)),
      },
      units,
    ),
  );
}

/** One thing that adds to a gap: how often it counts, and its tolerance (mm, half the range). */
export interface ToleranceTerm {
  readonly factor: number;
  readonly tolerance: number;
}

/** With this many terms and more they will not all go wrong at once (joinery A12). */
const manyTerms = 4;
const inflation = 1.5; // joinery A12, common practice

/** What tolerances come to together, mm: all at their worst up to three terms, else statistically. Source: joinery A12. */
export function stackTolerances(terms: readonly ToleranceTerm[]): number {
  const shares = terms.map(({ factor, tolerance }) => Math.abs(factor) * tolerance);
  if (shares.length < manyTerms) return shares.reduce((sum, share) => sum + share, 0);
  return inflation * Math.hypot(...shares);
}
