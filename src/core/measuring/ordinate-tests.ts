import { analyseDesign, fitSpline, readSpline, solveLeastSquares, suspectLimit } from '#core/numerics';

interface Ordinates {
  readonly stations: readonly number[];
  readonly ordinates: readonly number[];
  readonly sigma: number;
}

/** The ordinate that stands off most, its slip, and all those that cannot be told from it. */
export interface OrdinateVerdict {
  readonly at: number;
  readonly slip: number;
  readonly group: readonly number[];
}

/** Stations that a cubic near an end is laid through (joinery A6). */
const mostStations = 9;
/** Residuals correlated beyond this belong to slips that look the same (joinery A4). */
const alike = 0.95;

/** Least-squares cubic through the stations at one end, with the largest normalised residual; null when none is suspect. */
export function testByCubic(set: Ordinates, atStart: boolean): OrdinateVerdict | null {
  const count = Math.min(mostStations, set.stations.length);
  const shift = atStart ? 0 : set.stations.length - count;
  const x = set.stations.slice(shift, shift + count);
  const o = set.ordinates.slice(shift, shift + count);
  const [first = 0, last = 1] = [x[0], x[count - 1]];
  const design = x.map((station) => {
    const t = (2 * (station - first)) / (last - first) - 1;
    return [1, t, t * t, t * t * t];
  });
  const fit = solveLeastSquares(design, o);
  if (!fit.ok) return null;
  const { residualCovariance: q } = analyseDesign(design, 4);
  const own = (i: number) => q[i]?.[i] ?? 0;
  const sizes = fit.value.residuals.map(
    (v, i) => Math.abs(v) / (set.sigma * Math.sqrt(Math.max(own(i), 1e-9))),
  );
  const worst = sizes.indexOf(Math.max(...sizes));
  if (!((sizes[worst] ?? 0) > suspectLimit)) return null;
  const rho = (j: number) => Math.abs((q[worst]?.[j] ?? 0) / Math.sqrt(own(worst) * own(j)));
  const group = o.flatMap((_, j) => (j === worst || rho(j) > alike ? [j + shift] : []));
  return { at: worst + shift, slip: (fit.value.residuals[worst] ?? 0) / own(worst), group };
}

/** Each ordinate against the spline through all others; the worst beyond `limit` of its own deviations, null when none is. */
export function testByOthers(set: Ordinates, limit: number): OrdinateVerdict | null {
  const worst = worstByOthers(set);
  return worst.size <= limit ? null : { at: worst.at, slip: worst.miss, group: [worst.at] };
}

/** The inner ordinate that stands off most from the spline through all others, and by how many of its own deviations. */
export function worstByOthers(set: Ordinates): {
  readonly at: number;
  readonly miss: number;
  readonly size: number;
} {
  const inner = set.stations.slice(1, -1).map((_, k) => k + 1);
  const tests = inner.map((at) => {
    const { miss, sigma } = leaveOut(set, at);
    return { at, miss, size: Math.abs(miss) / sigma };
  });
  return tests.reduce((a, b) => (b.size > a.size ? b : a), { at: 0, miss: 0, size: 0 });
}

function leaveOut({ stations, ordinates, sigma }: Ordinates, at: number) {
  const others = <T>(list: readonly T[]): readonly T[] => list.filter((_, k) => k !== at);
  const x = stations[at] ?? 0;
  const knots = others(stations);
  const foretell = (values: readonly number[]) => readSpline(fitSpline(knots, values, 'curved'), x).value;
  // The forecast is linear in the others: the weight of each is what a lone 1 in its place gives.
  const weights = knots.map((_, k) => foretell(knots.map((__, j) => (j === k ? 1 : 0))));
  return {
    miss: (ordinates[at] ?? 0) - foretell(others(ordinates)),
    sigma: sigma * Math.hypot(1, ...weights),
  };
}
