import { drawLabels, type Page } from '#core/drawing';
import { labelTexts } from '#core/pipeline';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawNotice } from './notice.ts';

/** Labels for all copies of all parts; those of stopped parts on sheets of their own, stamped. */
export function drawLabelPages(context: BundleContext): readonly Page[] {
  const { project, understanding, planned, routed, blocked } = context;
  const labels = labelTexts(project, understanding, planned, routed);
  const free = labels.filter((label) => !blocked.has(label.address));
  const stopped = labels.filter((label) => blocked.has(label.address));
  const pages = [...drawLabels(free, project.paper), ...drawLabels(stopped, project.paper, { stamp })];
  if (pages.length > 0) return pages;
  return drawNotice(project.paper, `${project.name}: labels`, 'There are no parts to label yet.');
}
