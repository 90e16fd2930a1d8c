import { boxOfOutline, offsetOutline, outlineArea, subtractOutlines, type Outline } from '#core/geometry';

import type { Blank } from '../types.ts';

/** What rounding may come to, mm and mm². */
const slack = { reach: 0.02, area: 0.5 } as const;

/**
 * What is wrong with outlines that share one blank: one that reaches out of it, two nearer than the gap. Empty when nothing
 * is. Knows nothing of how they were laid.
 */
export function checkInterlock(
  blank: Blank,
  size: { readonly length: number; readonly width: number },
  gap: number,
): readonly string[] {
  const laid = blank.parts.flatMap(({ part, outline }) => (outline ? [{ part, outline }] : []));
  const out = laid.flatMap(({ part, outline }) => {
    const { minX, minY, maxX, maxY } = boxOfOutline(outline);
    const reach = Math.max(-minX, -minY, maxX - size.length, maxY - size.width);
    return reach > slack.reach ? [`${part} reaches ${reach.toFixed(2)} mm out of blank ${blank.id}`] : [];
  });
  const near = laid.flatMap((one, i) =>
    laid.slice(i + 1).flatMap((two) => {
      const shared = overlapOf(offsetOutline(one.outline, gap - slack.reach), two.outline);
      return shared > slack.area
        ? [`${one.part} and ${two.part} lie nearer than ${gap} mm in ${blank.id}`]
        : [];
    }),
  );
  return [...out, ...near];
}

/** The area that an outline has in common with others, mm². */
function overlapOf(others: readonly Outline[], outline: Outline): number {
  const areaOf = (outlines: readonly Outline[]) =>
    Math.abs(outlines.reduce((sum, each) => sum + outlineArea(each), 0));
  // the whole goes through the clipper too, so that arcs are counted by the same chords
  return areaOf(subtractOutlines([outline], [])) - areaOf(subtractOutlines([outline], others));
}
