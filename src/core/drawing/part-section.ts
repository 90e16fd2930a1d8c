import { boxOfOutline } from '#core/geometry';
import { slicePart, type Part } from '#core/joinery';
import { drawArea, drawText, lettering } from './marks.ts';
import type { Mark } from './types.ts';

/** A part worked along its whole length, as a quarter-round post: its section says more than any view from the side. */
function hasSection(part: Part): boolean {
  return part.machining.some(
    (one) =>
      one.kind === 'prism' &&
      (one.from === 'start' || one.from === 'end') &&
      one.depth >= part.finished.length - 0.01,
  );
}

/** The section of such a part, the face side below, its top at a height of the paper; nothing for other parts. */
export function drawSection(part: Part, scale: number, top: number): readonly Mark[] {
  const slice = hasSection(part) ? slicePart(part)[0] : undefined;
  if (slice?.axis !== 'x') return [];
  const low = top - part.finished.thickness * scale;
  const areas = slice.outlines.map((outline) =>
    outline.map(({ x, y }) => ({ x: x * scale, y: low + y * scale })),
  );
  const right = Math.max(...areas.map((area) => boxOfOutline(area).maxX));
  return [
    ...areas.map((area) => drawArea(area, 'cut', part.kind, part.id)),
    drawText({ x: right + 3, y: low }, 'section, face side below, seen from the far end', {
      height: lettering.small,
      tone: 'soft',
    }),
  ];
}
