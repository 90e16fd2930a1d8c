import type { Point } from '#core/geometry';
import { drawArea, drawText } from './marks.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

const slope = Math.PI / 7;

/** Large slanting words in a frame, as `DO NOT CUT`, across a page or label; `span` is the width to fill, mm. */
export function drawStamp(words: string, centre: Point, span: number): readonly Mark[] {
  const height = Math.min(24, (10 * span * 0.9) / Math.max(textWidth(words, 10, 'bold'), 1));
  const half = { w: textWidth(words, height, 'bold') / 2 + height * 0.5, h: height * 0.95 };
  const [c, s] = [Math.cos(slope), Math.sin(slope)];
  const at = (x: number, y: number): Point => ({ x: centre.x + x * c - y * s, y: centre.y + x * s + y * c });
  const frame = [at(-half.w, -half.h), at(half.w, -half.h), at(half.w, half.h), at(-half.w, half.h)];
  return [
    drawArea(frame, 'fault', 'none'),
    drawText(at(0, -height / 2), words, {
      height,
      align: 'middle',
      weight: 'bold',
      turn: slope,
      tone: 'fault',
    }),
  ];
}
