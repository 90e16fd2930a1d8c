import { observe } from './network.ts';
import { openingKeyOf } from './opening.ts';
import type { OpeningKey } from './opening.ts';
import type { Reading } from './types.ts';

/** Lean of the jambs to the right over their height, mm: from distances, and from plumb and level. */
export interface Leans {
  readonly byTape: number;
  /** As `byTape`, had the diagonals changed places. */
  readonly byTapeExchanged: number;
  readonly byPlumb: number;
  /** 3.3 sigma of their difference. */
  readonly limit: number;
}

/** Both leans of an opening (joinery A2, mean of both jambs); null when a reading they need is missing. */
export function compareLeans(readings: readonly Reading[]): Leans | null {
  const seen = (key: OpeningKey) => {
    const reading = readings.find((candidate) => openingKeyOf(candidate) === key);
    return reading ? observe(reading, readings)[0] : undefined;
  };
  const [wb, hl, hr, d1, d2, ls] = [seen('wb'), seen('hl'), seen('hr'), seen('d1'), seen('d2'), seen('ls')];
  const plumbs = [seen('pl'), seen('pr')].flatMap((plumb) => (plumb ? [plumb] : []));
  if (!wb || !hl || !hr || !d1 || !d2 || !ls || plumbs.length === 0) return null;
  const height = (hl.value + hr.value) / 2;
  const skew = d1.value ** 2 - d2.value ** 2;
  const step = hl.value ** 2 - hr.value ** 2;
  const mean = plumbs.reduce((sum, plumb) => sum + plumb.value, 0) / plumbs.length;
  const tape = [d1, d2, hl, hr].map(({ value, sigma }) => (value * sigma) / (2 * wb.value));
  const level = [...plumbs.map(({ sigma }) => sigma / plumbs.length), (height * ls.sigma) / wb.value];
  return {
    byTape: (skew + step) / (4 * wb.value),
    byTapeExchanged: (step - skew) / (4 * wb.value),
    byPlumb: mean + (height * ls.value) / wb.value,
    limit: 3.3 * Math.hypot(...tape, ...level),
  };
}
