import { boxOfOutline } from '#core/geometry';
import { drawable, drawPairTemplate, drawTemplate, isRectangle, type Page } from '#core/drawing';
import type { Part } from '#core/joinery';
import { viewPairs } from '#core/pipeline';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawNotice } from './notice.ts';

/** Longest stick that gets a full-size page for its joints or sloping ends alone, mm; a longer one is marked with square and bevel. */
const longestStick = 900;

/** Full-size templates of the parts that need one, pages of what is stopped stamped; a sentence when none does. */
export function drawTemplatePages({ project, understanding, blocked }: BundleContext): readonly Page[] {
  const pages = understanding.pieces.flatMap((piece) =>
    piece.parts.filter(needsTemplate).flatMap((part) =>
      drawTemplate(part, project.paper, {
        job: project.name,
        piece: `${piece.letter} ${piece.name}`,
        seenFrom: piece.seenFrom,
        units: project.units,
        ...(blocked.has(part.id) && { stamp }),
      }),
    ),
  );
  const pairs = viewPairs(understanding).flatMap((pair) =>
    drawPairTemplate(pair, project.paper, {
      job: project.name,
      units: project.units,
      ...(pair.laid.some(({ part }) => blocked.has(part.id)) && { stamp }),
    }),
  );
  // a pair has shaped parts, so that there are pages whenever there are pairs
  if (pages.length > 0) return [...pages, ...pairs];
  return drawNotice(
    project.paper,
    `${project.name}: templates`,
    'No part of this project needs a full-size template: all are plain rectangles.',
  );
}

/** Recesses whose shape is followed from paper; the others are set out with square and gauge. */
const followed: readonly string[] = ['finger', 'notch', 'pocket'];

/**
 * Shaped parts, and sticks with sloping ends or joints to be followed that are short enough to be marked from paper. What is
 * sawn flat and bent is drawn as bent, which is no template of the flat strip.
 */
function needsTemplate(part: Part): boolean {
  if (part.bent) return false;
  if (isShaped(part) || part.holes.length > 0) return true;
  const hasJoint = part.machining.some(
    (each) => each.kind === 'prism' || (each.kind === 'recess' && followed.includes(each.name)),
  );
  return (hasJoint || !isRectangle(part)) && part.finished.length <= longestStick;
}

/** Curved, with more than four corners, or with a long edge that does not run with the part. */
function isShaped(part: Part): boolean {
  const corners = part.outline.length;
  const hasCurve = part.outline.some((point) => Math.abs(point.bulge ?? 0) > 1e-6);
  const { minY, maxY } = boxOfOutline(part.outline);
  const offEdge = (y: number): number => Math.min(Math.abs(y - minY), Math.abs(y - maxY));
  return hasCurve || corners > 4 || part.outline.some((point) => offEdge(point.y) > drawable);
}
