import { arrangePages, drawChecklist, roomOnPage, type Page } from '#core/drawing';
import { viewChecklist, visitChecklist } from '#core/pipeline';

import type { BundleContext } from './bundle-context.ts';
import { drawPhotoPages } from './photo-pages.ts';

/** What to measure in one visit, to be taken along and filled in, and after it the photos that were taken there. */
export function drawChecklistPages({ project }: BundleContext): readonly Page[] {
  const { width } = roomOnPage(project.paper, false);
  const blocks = viewChecklist(visitChecklist(project), project.units);
  const rows = blocks.flatMap((block) => drawChecklist(block, width));
  const lists = arrangePages(rows, project.paper, `${project.name} · to measure`, { units: project.units });
  return [...lists, ...drawPhotoPages(project)];
}
