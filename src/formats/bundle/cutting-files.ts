import {
  arrangePages,
  drawLayout,
  drawNest,
  roomOnPage,
  stackDrawings,
  type Drawing,
  type Page,
} from '#core/drawing';
import { viewLayout, viewNest, type OutputFile, type PlannedGroup } from '#core/pipeline';
import { writeSvg } from '#formats/svg';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawSawOrder } from './draw-saw-order.ts';
import { drawSettings } from './draw-settings.ts';
import { uniqueNames } from './file-name.ts';
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

function drawDiagrams(context: BundleContext, width: number, height?: number): readonly Diagram[] {
  const { project, understanding, planned, blocked } = context;
  return planned.flatMap((each) =>
    each.plan.layouts.map((_, index) => {
      const view = viewLayout(understanding, each, index, { width, units: project.units });
      return {
        planned: each,
        index,
        drawing: drawLayout(height === undefined ? view : { ...view, height }),
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

/** A drawing of the cutting pages, and whether it must not be used as it stands. */
type Sheet = Pick<Diagram, 'drawing' | 'isBlocked'>;

/** A diagram with the order of its cuts beneath it, or with an order to be printed elsewhere where there is no room. */
function withSawOrder(
  { project: { paper, units } }: BundleContext,
  { planned, index, drawing, isBlocked }: Diagram,
): { readonly sheet: Sheet; readonly apart: Sheet | null } {
  const upright = roomOnPage(paper, false);
  const isWide = drawing.bounds.maxX - drawing.bounds.minX > upright.width;
  const room = isWide ? roomOnPage(paper, true) : upright;
  const order = drawSawOrder(planned, index, { room: room.width, units });
  const joined = order && stackDrawings(drawing, order);
  if (joined && joined.bounds.maxY - joined.bounds.minY <= room.height)
    return { sheet: { drawing: joined, isBlocked }, apart: null };
  const apart = order && drawSawOrder(planned, index, { room: upright.width, units });
  return { sheet: { drawing, isBlocked }, apart: apart && { drawing: apart, isBlocked } };
}

/** The same diagrams on pages with the order of their cuts, those that must not be used stamped; one page with a sentence when there is none. */
export function drawCuttingPages(context: BundleContext): readonly Page[] {
  const { project } = context;
  const room = roomOnPage(project.paper, true);
  const diagrams = drawDiagrams(context, room.width, room.height);
  const nests = drawNests(context, room.width, room.height);
  if (diagrams.length + nests.length === 0)
    return drawNotice(project.paper, `${project.name}: cutting`, 'There is nothing to cut yet.');
  const settings = context.planned.flatMap((each) =>
    drawSettings(each, { room: roomOnPage(project.paper, false).width, units: project.units }),
  );
  const arrange = (own: readonly Sheet[], title: string): readonly Page[] =>
    arrangePages(
      own.map(({ drawing }) => drawing),
      project.paper,
      `${project.name} · ${title}`,
      { units: project.units, stamp, stamped: own.flatMap((each) => (each.isBlocked ? [each.drawing] : [])) },
    );
  const ordered = diagrams.map((diagram) => ({
    ...withSawOrder(context, diagram),
    planned: diagram.planned,
  }));
  const pages = context.planned.flatMap((planned) =>
    arrange(
      ordered.filter((each) => each.planned === planned).map(({ sheet }) => sheet),
      planned.group.title,
    ),
  );
  const orders = arrange(
    ordered.flatMap(({ apart }) => apart ?? []),
    'order of cuts',
  );
  const nestPages = arrange(nests, 'router');
  return [
    ...pages,
    ...orders,
    ...nestPages,
    ...arrangePages(settings, project.paper, `${project.name} · saw settings`, { units: project.units }),
  ];
}
