import { arrangePages, drawLayout, drawNest, roomOnPage, type Drawing, type Page } from '#core/drawing';
import { viewLayout, viewNest, type OutputFile, type PlannedGroup } from '#core/pipeline';
import { writeSvg } from '#formats/svg';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawSettings } from './draw-settings.ts';
import { uniqueNames } from './file-name.ts';
import { drawGroupPages } from './group-pages.ts';
import { drawNotice } from './notice.ts';
import { stampDrawing } from './stamp-drawing.ts';

/** A cutting diagram and whether it must not be used as it stands. */
interface Diagram {
  readonly planned: PlannedGroup;
  readonly index: number;
  readonly drawing: Drawing;
  readonly isBlocked: boolean;
}

/** Width of the diagrams kept as files, mm: a lying A4 page. */
const fileWidth = 270;

function drawDiagrams(context: BundleContext, width: number): readonly Diagram[] {
  const { project, understanding, planned, blocked } = context;
  return planned.flatMap((each) =>
    each.plan.layouts.map((_, index) => {
      const view = viewLayout(understanding, each, index, { width, units: project.units });
      return {
        planned: each,
        index,
        drawing: drawLayout(view),
        isBlocked: view.parts.some((part) => blocked.has(part.address)),
      };
    }),
  );
}

/** One SVG for each way to cut a piece of stock. */
export function writeCuttingSvgs(context: BundleContext): readonly OutputFile[] {
  const names = uniqueNames(context.planned.map(({ group }) => group.id));
  const nestNames = uniqueNames(context.routed.map(({ group }) => group.id));
  return [
    ...drawDiagrams(context, fileWidth).map(({ planned, index, drawing, isBlocked }) => ({
      path: `cutting/${names.get(planned.group.id)}-${index + 1}.svg`,
      content: writeSvg(isBlocked ? stampDrawing(drawing) : drawing),
    })),
    ...drawNests(context, fileWidth).map(({ group, index, drawing, isBlocked }) => ({
      path: `cutting/${nestNames.get(group)}-${index + 1}.svg`,
      content: writeSvg(isBlocked ? stampDrawing(drawing) : drawing),
    })),
  ];
}

/** A sheet of the router as a drawing, and whether it must not be used as it stands. */
interface NestDiagram {
  readonly group: string;
  readonly title: string;
  readonly index: number;
  readonly drawing: Drawing;
  readonly isBlocked: boolean;
}

function drawNests(context: BundleContext, width: number, height?: number): readonly NestDiagram[] {
  const { project, understanding, routed, blocked } = context;
  return routed.flatMap((planned) =>
    planned.plan.sheets.map((_, index) => {
      const paper = { width, units: project.units };
      const view = viewNest(understanding, planned, index, paper);
      return {
        group: planned.group.id,
        title: planned.group.title,
        index,
        drawing: drawNest(height === undefined ? view : { ...view, height }),
        isBlocked: view.parts.some((part) => blocked.has(part.address)),
      };
    }),
  );
}

/** The same diagrams on pages with the order of their cuts, those that must not be used stamped; one page with a sentence when there is none. */
export function drawCuttingPages(context: BundleContext): readonly Page[] {
  const { project } = context;
  const room = roomOnPage(project.paper, true);
  const nests = drawNests(context, room.width, room.height);
  const isEmpty = context.planned.every(({ plan }) => plan.layouts.length === 0) && nests.length === 0;
  if (isEmpty) return drawNotice(project.paper, `${project.name}: cutting`, 'There is nothing to cut yet.');
  const settings = context.planned.flatMap((each) =>
    drawSettings(each, { room: roomOnPage(project.paper, false).width, units: project.units }),
  );
  return [
    ...context.planned.flatMap((planned) => drawGroupPages(context, planned)),
    ...arrangePages(
      nests.map(({ drawing }) => drawing),
      project.paper,
      `${project.name} · router`,
      {
        ...{ units: project.units, stamp },
        stamped: nests.flatMap((each) => (each.isBlocked ? [each.drawing] : [])),
      },
    ),
    ...arrangePages(settings, project.paper, `${project.name} · saw settings`, { units: project.units }),
  ];
}
