import { arrangePages, type Drawing, type Page } from '#core/drawing';

/** One page that says a sentence, for a file with nothing else in it. */
export function drawNotice(paper: 'A4' | 'Letter', title: string, sentence: string): readonly Page[] {
  const drawing: Drawing = {
    title,
    scale: 1,
    bounds: { minX: 0, minY: 0, maxX: 160, maxY: 20 },
    marks: [{ kind: 'text', at: { x: 0, y: 8 }, text: sentence, height: 3.5, align: 'start' }],
  };
  return arrangePages([drawing], paper, title, { isUnscaled: true });
}
