import { arrangePages, drawElevation, drawExploded, drawPart, roomOnPage, type Page } from '#core/drawing';
import { viewShape } from '#core/pipeline';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawFitNotes } from './fit-notes.ts';
import { drawNotice } from './notice.ts';

/** The surveys, each piece whole and taken apart, and every part with its joints and sizes. */
export function drawPartSheets({ project, understanding, blocked }: BundleContext): readonly Page[] {
  const { width } = roomOnPage(project.paper, false);
  const { units } = project;
  const surveys = understanding.shapes.flatMap((outcome) =>
    arrangePages(
      viewShape(outcome, { width, units }),
      project.paper,
      `${project.name} · ${outcome.shape.name}`,
    ),
  );
  const pieces = understanding.pieces.flatMap((piece) => {
    const title = `${project.name} · ${piece.letter} ${piece.name}`;
    const isStopped = piece.parts.some((part) => blocked.has(part.id));
    const free = piece.parts.filter((part) => !blocked.has(part.id));
    const stopped = piece.parts.filter((part) => blocked.has(part.id));
    const draw = (parts: typeof free) => parts.map((part) => drawPart(part, { width, units }));
    return [
      ...arrangePages(
        [
          drawElevation(piece, { width, units }),
          ...understanding.fits
            .filter((fit) => fit.piece === piece.piece)
            .map((fit) => drawFitNotes(fit, width)),
          drawExploded(piece, { width }),
        ],
        project.paper,
        title,
        isStopped ? { stamp } : {},
      ),
      ...arrangePages(draw(free), project.paper, title),
      ...arrangePages(draw(stopped), project.paper, title, { stamp }),
    ];
  });
  const pages = [...surveys, ...pieces];
  if (pages.length > 0) return pages;
  return drawNotice(project.paper, `${project.name}: part sheets`, 'There is nothing to draw yet.');
}
