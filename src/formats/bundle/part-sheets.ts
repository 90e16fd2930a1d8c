import { arrangePages, arrangePartPages, roomOnPage, type Page } from '#core/drawing';
import { viewShape } from '#core/pipeline';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawNotice } from './notice.ts';
import { drawWhole } from './whole-piece.ts';

/** The surveys, each piece whole and taken apart, and every part with its joints and sizes. */
export function drawPartSheets({ project, understanding, blocked }: BundleContext): readonly Page[] {
  const { width } = roomOnPage(project.paper, false);
  const { units } = project;
  const nameMaterial = (id: string): string =>
    project.materials.find((material) => material.id === id)?.name ?? id;
  const surveys = understanding.shapes.flatMap((outcome) =>
    arrangePages(
      viewShape(outcome, { width, units }),
      project.paper,
      `${project.name} · ${outcome.shape.name}`,
      { units },
    ),
  );
  const pieces = understanding.pieces.flatMap((piece) => {
    const title = `${project.name} · ${piece.letter} ${piece.name}`;
    const isStopped = piece.parts.some((part) => blocked.has(part.id));
    const free = piece.parts.filter((part) => !blocked.has(part.id));
    const stopped = piece.parts.filter((part) => blocked.has(part.id));
    const options = { paper: project.paper, title, units, nameMaterial };
    const whole = drawWhole(piece, { width, units, fits: understanding.fits });
    return [
      ...(isStopped ? arrangePages(whole, project.paper, title, { units, stamp }) : []),
      ...arrangePartPages(free, { ...options, first: isStopped ? [] : whole }),
      ...arrangePartPages(stopped, { ...options, stamp }),
    ];
  });
  const pages = [...surveys, ...pieces];
  if (pages.length > 0) return pages;
  return drawNotice(project.paper, `${project.name}: part sheets`, 'There is nothing to draw yet.');
}
