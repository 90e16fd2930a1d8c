import { frontPlane, layFlat } from '../flat/lay-flat.ts';
import { ringPieces } from './ring.ts';
import type { SurroundLayout } from './sizes.ts';

/** The sizes of the segments of a corner, which are not alike where they lie over each other. */
export function sizeLaps(layout: SurroundLayout): SurroundLayout {
  const { book, choices } = layout;
  if (choices.form !== 'segments' || choices.joint !== 'half-lap') return layout;
  const source = 'outline, its laps with it';
  for (const { place, outline, along } of ringPieces(layout).slice(0, choices.segments)) {
    const { length, width } = layFlat(outline, along, frontPlane());
    book.put(`seg_L_${place + 1}`, length, `segment ${place + 1}, length`, source);
    book.put(`seg_W_${place + 1}`, width, `segment ${place + 1}, width of its board`, source);
  }
  return layout;
}
