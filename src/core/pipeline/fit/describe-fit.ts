import { formatNumber } from '#core/units';

import type { PieceFit } from './fit-pieces.ts';

/** The fit of a piece in sentences: together, then each edge that is not cut to size at once, then the reading that helps most. */
export function describeFit({ edges, chance, extra }: PieceFit): readonly string[] {
  const later = edges.filter(({ kind }) => kind !== 'cut-now');
  const percent = formatNumber(Math.floor(100 * chance), 0);
  const together = `All ${edges.length === 1 ? 'of it' : `${edges.length} edges`} as planned with ${percent} % chance.`;
  const now = later.length === 0 ? ['Every edge can be cut to size now.'] : later.map(({ words }) => words);
  return [together, ...now, ...(extra ? [extra.words] : [])];
}
