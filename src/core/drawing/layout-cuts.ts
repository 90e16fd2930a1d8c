import type { Box, Outline, Point } from '#core/geometry';
import { boxAround } from './find-room.ts';
import { boxesOverlap, drawArea, drawLine, drawRectangle, drawText, lettering } from './marks.ts';
import type { LayoutCut, LayoutView } from './layout-view.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

const leastKerf = 0.2; // mm on paper; a kerf drawn thinner than this would not print

/** Saw lines as dark bars as wide as the kerf; labels where the saw enters, and the boxes that these take up. */
export function drawCuts(
  view: LayoutView,
  scale: number,
): { readonly bars: readonly Mark[]; readonly labels: readonly Mark[]; readonly labelled: readonly Box[] } {
  const taken: Box[] = [];
  const bars = view.cuts.map((cut) => drawKerf(cut, view.kerf * scale, scale));
  const labels = [...view.cuts]
    .sort((a, b) => a.order - b.order)
    .flatMap((cut) =>
      isAlong(cut) ? drawRipLabel(cut, view, scale, taken) : drawCrosscutLabel(cut, view, scale, taken),
    );
  return { bars, labels, labelled: taken };
}

function isAlong(cut: LayoutCut): boolean {
  return Math.abs(cut.x2 - cut.x1) >= Math.abs(cut.y2 - cut.y1);
}

function drawKerf(cut: LayoutCut, kerf: number, scale: number): Mark {
  const half = Math.max(kerf, leastKerf) / 2;
  const along = isAlong(cut);
  const box = {
    minX: Math.min(cut.x1, cut.x2) * scale - (along ? 0 : half),
    maxX: Math.max(cut.x1, cut.x2) * scale + (along ? 0 : half),
    minY: Math.min(cut.y1, cut.y2) * scale - (along ? half : 0),
    maxY: Math.max(cut.y1, cut.y2) * scale + (along ? half : 0),
  };
  return drawRectangle(box, 'none', 'kerf', `cut:${cut.label}`);
}

const tries = 40;

/** The first of some places where a patch of this half size covers no other label; the first of all when there is none. */
function claim(places: (step: number) => Point, half: Size, taken: Box[]): { at: Point; step: number } {
  for (let step = 0; step < tries; step++) {
    const at = places(step);
    const patch = boxAround(at, half.w * 2, half.h * 2);
    if (taken.some((box) => boxesOverlap(box, patch))) continue;
    taken.push(patch);
    return { at, step };
  }
  return { at: places(0), step: 0 };
}

interface Size {
  readonly w: number;
  readonly h: number;
}

/** A rip: its letter in a rounded patch, at the margin when the saw enters there, else where it starts. */
function drawRipLabel(cut: LayoutCut, view: LayoutView, scale: number, taken: Box[]): readonly Mark[] {
  const link = `cut:${cut.label}`;
  const entry = { x: cut.x1 * scale, y: cut.y1 * scale };
  const right = view.stock.length * scale;
  const side = cut.x1 <= cut.x2 ? -1 : 1;
  const margin = side < 0 ? 0 : right;
  const atMargin = Math.abs(entry.x - margin) < nearMargin;
  const height = atMargin ? lettering.small : lettering.fine;
  const tall = height * 0.85;
  const half = { w: Math.max(textWidth(cut.label, height, 'bold') / 2 + 0.7, tall), h: tall };
  const from = atMargin ? margin : entry.x;
  const inwards = atMargin ? side : -side;
  const place = (i: number): Point => ({ x: from + inwards * (half.w + 1.2 + i * 2), y: entry.y });
  const { at, step } = claim(place, half, taken);
  const leader = step > 0 ? [drawLine([{ x: from, y: entry.y }, at], 'thin', link)] : [];
  const style = { height, align: 'middle', weight: 'bold', link } as const;
  return [
    ...leader,
    drawArea(roundedPatch(at, half), 'thin', 'paper', link),
    drawText({ x: at.x, y: at.y - height / 2 }, cut.label, style),
  ];
}

/** A rectangle with half circles for its left and right sides; a circle when it is as wide as high. */
function roundedPatch(at: Point, { w, h }: Size): Outline {
  const straight = w - h;
  return [
    { x: at.x - straight, y: at.y - h },
    { x: at.x + straight, y: at.y - h, bulge: 1 },
    { x: at.x + straight, y: at.y + h },
    { x: at.x - straight, y: at.y + h, bulge: 1 },
  ];
}

const nearMargin = 12; // mm of paper; a saw entering this near the edge of the stock is labelled outside it

/** A crosscut: a flag above the stock when the saw enters there, else inside at its head, smaller in a narrow strip. */
function drawCrosscutLabel(cut: LayoutCut, view: LayoutView, scale: number, taken: Box[]): readonly Mark[] {
  const link = `cut:${cut.label}`;
  const top = Math.max(cut.y1, cut.y2) * scale;
  const long = Math.abs(cut.y2 - cut.y1) * scale;
  const edge = view.stock.width * scale;
  const outside = edge - top < 8;
  const height = outside || long > 9 ? lettering.small : Math.min(lettering.fine, Math.max(1.2, long * 0.5));
  const half = { w: textWidth(cut.label, height, 'bold') / 2 + 0.5, h: height / 2 + 0.6 };
  const x = cut.x1 * scale;
  const place = (i: number): Point =>
    outside
      ? { x, y: edge + half.h + 1 + i * 2 }
      : { x: x + (i % 2 ? -1 : 1) * Math.ceil(i / 2) * 0.5, y: top - Math.min(half.h + 0.4, long / 2) };
  const { at, step } = claim(place, half, taken);
  const leader = outside && step > 0 ? [drawLine([{ x, y: edge }, at], 'thin', link)] : [];
  const text = drawText({ x: at.x, y: at.y - height / 2 }, cut.label, {
    height,
    align: 'middle',
    weight: 'bold',
    link,
  });
  return [...leader, drawRectangle(boxAround(at, half.w * 2, half.h * 2), 'thin', 'paper', link), text];
}
