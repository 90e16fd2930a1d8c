import type { Drawing, Mark } from '#core/drawing';
import { describeFit, wrapLines, type PieceFit } from '#core/pipeline';

/** Lettering and lines of the notes, mm. */
const height = 2.5;
const lineHeight = 4;
/** Letters of this height that go on a line of 100 mm, about. */
const perLine = 62;

/** How surely a piece fits, and what to do with each edge, as lines of text; `room` in mm of paper. */
export function drawFitNotes(fit: PieceFit, room: number): Drawing {
  const width = Math.floor((perLine * room) / 100);
  const lines = ['Fit', ...describeFit(fit).flatMap((sentence) => wrapLines(sentence, width, '   '))];
  const top = lines.length * lineHeight + 1;
  const marks = lines.map((text, at): Mark => ({
    kind: 'text',
    at: { x: 0, y: top - (at + 1) * lineHeight },
    text,
    height,
    align: 'start',
    weight: at === 0 ? 'bold' : 'normal',
  }));
  const bounds = { minX: 0, minY: -1, maxX: room, maxY: top };
  return { title: 'Fit', scale: 1, isUnscaled: true, bounds, marks };
}
