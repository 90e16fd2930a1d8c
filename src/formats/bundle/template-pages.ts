import { drawTemplate, type Page } from '#core/drawing';
import type { Part } from '#core/joinery';

import { stamp, type BundleContext } from './bundle-context.ts';
import { isRectangle } from './is-rectangle.ts';
import { drawNotice } from './notice.ts';

/** Longest part with square ends that gets a full-size page for its joints alone, mm; a longer one is marked with a square. */
const longestForJoints = 600;

/** Full-size templates of the parts that need one, pages of what is stopped stamped; a sentence when none does. */
export function drawTemplatePages({ project, understanding, blocked }: BundleContext): readonly Page[] {
  const pages = understanding.pieces.flatMap((piece) =>
    piece.parts.filter(needsTemplate).flatMap((part) =>
      drawTemplate(part, project.paper, {
        job: project.name,
        piece: `${piece.letter} ${piece.name}`,
        seenFrom: piece.seenFrom,
        ...(blocked.has(part.id) && { stamp }),
      }),
    ),
  );
  if (pages.length > 0) return pages;
  return drawNotice(
    project.paper,
    `${project.name}: templates`,
    'No part of this project needs a full-size template: all are plain rectangles.',
  );
}

/** Parts that are not plain rectangles, and short ones with joints to be marked on their faces. */
function needsTemplate(part: Part): boolean {
  if (!isRectangle(part) || part.holes.length > 0) return true;
  const hasJoint = part.machining.some(
    (each) => each.kind === 'prism' || (each.kind === 'recess' && !runsThrough(each.box, part)),
  );
  return hasJoint && part.finished.length <= longestForJoints;
}

/** A groove or rebate along the whole part is set on the machine, not marked from paper. */
function runsThrough(
  box: {
    readonly min: { readonly x: number; readonly y: number };
    readonly max: { readonly x: number; readonly y: number };
  },
  part: Part,
): boolean {
  const { length, width } = part.finished;
  return (box.min.x <= 0 && box.max.x >= length) || (box.min.y <= 0 && box.max.y >= width);
}
