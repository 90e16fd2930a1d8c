import { suspectLimit, spreadOf } from '#core/numerics';
import type { Problem } from '#core/problems';
import { refit } from './doubt.ts';
import type { Doubt } from './doubt.ts';
import { showMm } from './words.ts';

/** What all readings with the hook of the tape have in common that those by two sticks have not, mm. */
export interface HookError {
  readonly amount: number;
  readonly sigma: number;
  readonly hooked: readonly string[];
  readonly sticks: readonly string[];
}

/** Fewer readings than these of a kind are no group. */
const fewest = { hooked: 3, sticks: 2 } as const;
/** A worn, stuck or bent hook is wrong by this much, mm (joinery A5: 1 to 2, here with the scatter of the estimate). */
const usual = { least: 0.5, most: 3 } as const;

/**
 * The error that all hooked readings of a set share, when it is plain and of the size a hook can have; null otherwise, or
 * where too few readings by either method tell. It is one unknown more in the adjustment: its estimate and its deviation
 * follow from the residuals. Source: joinery A5 E4.
 */
export function findHookError({ fit, readings, datum }: Doubt): HookError | null {
  const ids = (method: string) =>
    readings.flatMap((r) =>
      (r.kind === 'distance' || r.kind === 'width') && r.method === method ? [r.id] : [],
    );
  const [hooked, sticks] = [ids('M1'), ids('M3')];
  if (hooked.length < fewest.hooked || sticks.length < fewest.sticks) return null;
  const { observations } = fit.network;
  const isHooked = observations.map(({ id }) => hooked.includes(id));
  const weights = observations.map(({ sigma }, i) => (isHooked[i] === true ? 1 / sigma : 0));
  // What the hook moves, less what the shape takes up of it: (I - A C Aᵀ) h with h one over sigma where hooked.
  const pulled = new Map<number, number>();
  fit.rows.forEach(({ columns, values }, i) =>
    columns.forEach((k, p) => pulled.set(k, (pulled.get(k) ?? 0) + (values[p] ?? 0) * (weights[i] ?? 0))),
  );
  const spread = spreadOf(fit.analysis, { columns: [...pulled.keys()], values: [...pulled.values()] });
  const left = fit.rows.map(({ columns, values }, i) => {
    const taken = columns.reduce((sum, k, p) => sum + (values[p] ?? 0) * (spread[k] ?? 0), 0);
    return (weights[i] ?? 0) - taken;
  });
  const weight = left.reduce((sum, value, i) => sum + value * (weights[i] ?? 0), 0);
  if (!(weight > 1e-6)) return null; // the set cannot tell the hook from the shape
  const amount =
    left.reduce(
      (sum, value, i) => sum + (value * (fit.residuals[i] ?? 0)) / (observations[i]?.sigma ?? 1),
      0,
    ) / weight;
  const sigma = 1 / Math.sqrt(weight);
  const size = Math.abs(amount);
  if (size <= suspectLimit * sigma || size < usual.least || size > usual.most) return null;
  const without = refit(
    { fit, readings, datum },
    observations.map((seen, i) => (isHooked[i] === true ? { ...seen, value: seen.value - amount } : seen)),
  );
  return without.chi2 < fit.chi2 ? { amount, sigma, hooked, sticks } : null;
}

/** The error of the hook in words. */
export function tellHookError({ amount, sigma, hooked, sticks }: HookError): Problem {
  const side = amount > 0 ? 'larger' : 'smaller';
  return {
    severity: 'warn',
    code: 'hook-error',
    about: hooked[0],
    message:
      `All ${hooked.length} readings with the hook of the tape come out ${showMm(Math.abs(amount))} mm (±${showMm(2 * sigma)}) ${side} than the ${sticks.length} by two sticks say: ` +
      'a hook that is worn, stuck or bent.',
    remedy:
      'Measure one length with the hook and again from the 100 mark; put the hook right, or use the sticks.',
    source: 'joinery A5 E4',
  };
}
