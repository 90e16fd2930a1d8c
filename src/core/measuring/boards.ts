import type { Problem } from '#core/problems';
import type { Reading } from './types.ts';
import { joinWords, showMm } from './words.ts';

/** A tip may lie this many times its traced edge beyond it (joinery A7). */
const longestReach = 3;
const source = 'joinery A7';

/** What to mind of points brought over by stick: tips that reach too far, boards that carry too few. Source: joinery A7. */
export function findBoards(readings: readonly Reading[]): readonly Problem[] {
  const ticks = readings.flatMap((reading) => (reading.kind === 'tick' ? [reading] : []));
  const far = ticks.filter(({ reach = 0 }) => reach > longestReach);
  const [first] = far;
  const findings: Problem[] = [];
  if (first)
    findings.push({
      ...{ severity: 'warn', code: 'stick-reach', about: first.id, source },
      message: `The stick of ${joinWords(far.map(({ id }) => id))} reaches up to ${showMm(Math.max(...far.map(({ reach = 0 }) => reach)))} times the traced edge beyond it; more than ${longestReach} turns a small error of the edge into a large one at the tip.`,
      remedy: 'Trace a longer edge, 200 mm at least, or bring the board nearer.',
    });
  for (const board of new Set(ticks.map((tick) => tick.board))) {
    const points = new Set(ticks.filter((tick) => tick.board === board).map(({ point }) => point));
    if (points.size > 2) continue;
    const all = [...points];
    findings.push({
      ...{ severity: 'note', code: 'board-bare', source },
      message:
        points.size === 1
          ? `Board ${board} carries ${joinWords(all)} alone, and where it lay is not known: the tick says nothing.`
          : `Board ${board} carries ${joinWords(all)} alone: it tells how far apart they are, and nothing checks it.`,
      remedy: 'Strike at least three points on every board, two of them that are known otherwise.',
    });
  }
  return findings;
}
