import { formatNumber } from '#core/units';

import { listWords } from '../words.ts';
import type { PieceFit } from '../types.ts';

/** Nothing measured is surer than this, percent. */
const surest = 99;

/** The fit of a piece in sentences: together, then each edge that is not cut to size at once, then the reading that helps most. */
export function describeFit({ doubts, edges, chance, extra }: PieceFit): readonly string[] {
  const later = edges.filter(({ kind }) => kind !== 'cut-now');
  const percent = Math.floor(100 * chance);
  const odds = percent >= surest ? `${surest} % or more` : `${formatNumber(percent, 0)} %`;
  const which = edges.length === 1 ? 'The one edge fits' : `All ${edges.length} edges fit`;
  const now = later.length === 0 ? ['Every edge can be cut to size now.'] : later.map(({ words }) => words);
  return [
    ...(doubts.length > 0
      ? [`Take ${listWords(doubts)} again first: what follows supposes that it is right.`]
      : []),
    `${which} as planned with a chance of ${odds}.`,
    ...now,
    ...(extra ? [extra.words] : []),
  ];
}
