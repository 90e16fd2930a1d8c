import {
  arrangePages,
  drawLayout,
  roomOnPage,
  stackDrawings,
  type Drawing,
  type LayoutView,
  type Page,
} from '#core/drawing';
import { viewLayout, type PlannedGroup } from '#core/pipeline';

import { stamp, type BundleContext } from './bundle-context.ts';
import { drawSawOrder, orderHeights, orderTitle } from './draw-saw-order.ts';

/** A diagram of a group with the order of its cuts, beneath it or on drawings of their own. */
interface Sheet {
  readonly index: number;
  readonly drawing: Drawing;
  readonly isBlocked: boolean;
  readonly isApart: boolean;
}

/**
 * The pages of one cutting group, those that must not be used stamped: its diagrams with the order of their cuts beneath them,
 * or, where there is no room, behind them with the number of the page on the diagram.
 */
export function drawGroupPages(context: BundleContext, planned: PlannedGroup): readonly Page[] {
  const sheets = planned.plan.layouts.map((_, index) => drawSheet(context, planned, index));
  const apart = sheets.filter(({ isApart }) => isApart);
  if (apart.length === 0) return arrange(context, planned, sheets);
  const orders = drawOrdersApart(context, planned, apart);
  const pages = arrange(context, planned, [...sheets, ...orders]);
  const pointed = sheets.map((sheet) => {
    const at = pages.findIndex(({ items }) =>
      items.some(({ drawing }) => drawing.title === orderTitle(sheet.index)),
    );
    return sheet.isApart ? drawSheet(context, planned, sheet.index, `order of cuts: page ${at + 1}`) : sheet;
  });
  return arrange(context, planned, [...pointed, ...orders]);
}

type Arranged = Pick<Sheet, 'drawing' | 'isBlocked'>;

function arrange(
  { project }: BundleContext,
  { group }: PlannedGroup,
  sheets: readonly Arranged[],
): readonly Page[] {
  return arrangePages(
    sheets.map(({ drawing }) => drawing),
    project.paper,
    `${project.name} · ${group.title}`,
    {
      ...{ units: project.units, stamp },
      stamped: sheets.flatMap(({ drawing, isBlocked }) => (isBlocked ? [drawing] : [])),
    },
  );
}

/** A diagram with the order of its cuts beneath it in the largest lettering there is room for; alone with the remark where there is none. */
function drawSheet(context: BundleContext, planned: PlannedGroup, index: number, remark?: string): Sheet {
  const { project, understanding, blocked } = context;
  const lying = roomOnPage(project.paper, true);
  const plain = viewLayout(understanding, planned, index, { width: lying.width, units: project.units });
  const view = { ...plain, height: lying.height };
  const isBlocked = view.parts.some((part) => blocked.has(part.address));
  const own = { index, isBlocked };
  const joined = drawJoined(context, planned, { index, view });
  if (joined) return { ...own, drawing: joined, isApart: false };
  const isSawn = drawSawOrder(understanding, planned, index, {
    ...{ room: lying, height: orderHeights[0], units: project.units },
  }).length;
  const drawing = drawLayout({ ...view, ...(remark !== undefined && { remark }) });
  return { ...own, drawing, isApart: isSawn > 0 };
}

/** How much smaller a diagram may be drawn to have the order of its cuts beneath it: a step of the usual scales. */
const leastScale = 0.79;

/** The diagram with its order beneath, on one page; null when there is no order or no room. */
function drawJoined(
  { project: { paper, units }, understanding }: BundleContext,
  planned: PlannedGroup,
  { index, view }: { readonly index: number; readonly view: LayoutView & { readonly height: number } },
): Drawing | null {
  // the list says what is done with shapes that share a blank
  const bare = { ...view, shared: (view.shared ?? []).map((each) => ({ ...each, note: '' })) };
  const full = drawLayout(bare);
  const upright = roomOnPage(paper, false);
  const room = full.bounds.maxX - full.bounds.minX > upright.width ? roomOnPage(paper, true) : upright;
  const orders = orderHeights.flatMap((height) => {
    const drawn = drawSawOrder(understanding, planned, index, { room, height, units });
    return drawn[0] && drawn.length === 1 ? [drawn[0]] : [];
  });
  const beneath = (diagram: Drawing, order: Drawing): Drawing | null => {
    const joined = stackDrawings(diagram, order);
    return tallOf(joined) <= room.height ? joined : null;
  };
  for (const order of orders) {
    const joined = beneath(full, order);
    if (joined) return joined;
  }
  for (const order of orders) {
    const smaller = drawLayout({ ...bare, height: room.height - tallOf(order) });
    const joined = smaller.scale >= leastScale * full.scale ? beneath(smaller, order) : null;
    if (joined) return joined;
  }
  return null;
}

function tallOf({ bounds }: Drawing): number {
  return bounds.maxY - bounds.minY;
}

/** The orders of cuts that stand by themselves, in the largest lettering that takes no more pages than the smallest. */
function drawOrdersApart(
  context: BundleContext,
  planned: PlannedGroup,
  apart: readonly Sheet[],
): readonly Arranged[] {
  const { paper, units } = context.project;
  const room = roomOnPage(paper, false);
  const choices = orderHeights.map((height) => {
    const orders = apart.flatMap(({ index, isBlocked }) =>
      drawSawOrder(context.understanding, planned, index, { room, height, units }).map((drawing) => ({
        ...{ drawing, isBlocked },
      })),
    );
    return { orders, pages: arrange(context, planned, orders).length };
  });
  const fewest = Math.min(...choices.map(({ pages }) => pages));
  return choices.find(({ pages }) => pages === fewest)?.orders ?? [];
}
