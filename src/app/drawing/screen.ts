import type { Drawing, Mark } from '#core/drawing';
import type { Box3 } from '#core/geometry';

/** Marks that follow each other and lead to the same place. */
export interface MarkGroup {
  readonly link: string | undefined;
  readonly marks: readonly Mark[];
}

/** The view box of a drawing whose y points up, shown by a writer whose y points down. */
export function viewBoxOf(drawing: Drawing): string {
  const { minX, minY, maxX, maxY } = drawing.bounds;
  return [minX, -maxY, maxX - minX, maxY - minY].map(shorten).join(' ');
}

/** Runs of neighbours with one link; the order of drawing is kept, so that nothing changes its cover. */
export function groupByLink(marks: readonly Mark[]): readonly MarkGroup[] {
  const groups: { link: string | undefined; marks: Mark[] }[] = [];
  for (const mark of marks) {
    const last = groups.at(-1);
    if (last && last.link === mark.link) last.marks.push(mark);
    else groups.push({ link: mark.link, marks: [mark] });
  }
  return groups;
}

/** For each group whether its link has come before: what is drawn in two places is one stop of the keyboard. */
export function repeatsOf(groups: readonly MarkGroup[]): readonly boolean[] {
  const seen = new Set<string | undefined>();
  return groups.map(({ link }) => {
    const isRepeat = seen.has(link);
    seen.add(link);
    return isRepeat;
  });
}

function shorten(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** Puts a text at its place and turn, where y points down. */
export function textTransform(mark: Extract<Mark, { kind: 'text' }>): string {
  const place = `translate(${shorten(mark.at.x)} ${shorten(-mark.at.y)})`;
  const turn = mark.turn ?? 0;
  return turn === 0 ? place : `${place} rotate(${shorten((-turn * 180) / Math.PI)})`;
}

/** Whether something is wider than high, as seen from the front. */
export function isLying(envelope: Box3): boolean {
  const { min, max } = envelope;
  return max.x - min.x > max.y - min.y;
}
