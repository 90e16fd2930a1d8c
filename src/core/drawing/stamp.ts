import type { Box, Point } from '#core/geometry';
import { drawArea, drawText } from './marks.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

const tallest = 24; // mm

/** Large slanting words in a frame, as `DO NOT CUT`, across a page or label, as large as the box lets them be. */
export function drawStamp(words: string, box: Box): readonly Mark[] {
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const slope = Math.min(Math.PI / 7, Math.atan2(high, wide) * 0.6);
  const [c, s] = [Math.cos(slope), Math.sin(slope)];
  // half width and half height of the frame for letters 1 mm high
  const unit = { w: textWidth(words, 1, 'bold') / 2 + 0.5, h: 0.95 };
  const fit = Math.min(wide / 2 / (unit.w * c + unit.h * s), high / 2 / (unit.w * s + unit.h * c));
  const height = Math.min(tallest, fit * 0.95);
  const half = { w: unit.w * height, h: unit.h * height };
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
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
