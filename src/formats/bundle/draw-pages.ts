import type { Page } from '#core/drawing';
import { findBlocked } from '#core/pipeline';

import type { BundleContext, BundleSource } from './bundle-context.ts';
import { drawChecklistPages } from './checklist-pages.ts';
import { drawCuttingPages } from './cutting-files.ts';
import { drawLabelPages } from './label-pages.ts';
import { drawPartSheets } from './part-sheets.ts';
import { drawTemplatePages } from './template-pages.ts';

/** The pages of the printed sets, by the name of their PDF. */
export type PageSets = Readonly<
  Record<'checklists' | 'cutting' | 'templates' | 'labels' | 'part-sheets', readonly Page[]>
>;

/** The same pages that `makeBundle` writes as PDF, to be looked at and printed. */
export function drawPages(source: BundleSource): PageSets {
  const blocked = findBlocked(source.project, source.understanding, source.planned);
  const context: BundleContext = { ...source, blocked };
  return {
    checklists: drawChecklistPages(context),
    cutting: drawCuttingPages(context),
    templates: drawTemplatePages(context),
    labels: drawLabelPages(context),
    'part-sheets': drawPartSheets(context),
  };
}
