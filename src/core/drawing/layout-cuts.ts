import type { Box, Outline, Point } from '#core/geometry';
import { boxAround } from './find-room.ts';
import { spreadDown } from './leaders.ts';
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
  const sorted = [...view.cuts].sort((one, other) => one.order - other.order);
  const rips = sorted.filter(isAlong);
  const margins = ([-1, 1] as const).flatMap((side) =>
    drawMargin(
      rips.filter((cut) => marginOf(cut, view, scale) === side),
      side < 0 ? 0 : view.stock.length * scale,
      { side, scale, taken },
    ),
  );
  const inside = rips.filter((cut) => marginOf(cut, view, scale) === 0);
  const crosscuts = sorted.filter((cut) => !isAlong(cut));
  const labels = [
    ...margins,
    ...inside.flatMap((cut) => drawInnerRip(cut, view, scale, taken)),
    ...crosscuts.flatMap((cut) => drawCrosscutLabel(cut, view, scale, taken)),
  ];
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
  return drawRectangle(box, 'none', 'kerf', linkOf(cut));
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

const nearMargin = 12; // mm of paper; a saw entering this near the edge of the stock is labelled outside it

/** The margin at which a rip enters: -1 left, 1 right, 0 when it starts inside the stock. */
function marginOf(cut: LayoutCut, view: LayoutView, scale: number): -1 | 0 | 1 {
  const fromLeft = cut.x1 <= cut.x2;
  const gap = fromLeft ? cut.x1 : view.stock.length - cut.x1;
  if (gap * scale >= nearMargin) return 0;
  return fromLeft ? -1 : 1;
}

/** Letters of rips in a column beside the stock, spread so that none touch, each led to its saw line. */
function drawMargin(
  rips: readonly LayoutCut[],
  x: number,
  { side, scale, taken }: { readonly side: -1 | 1; readonly scale: number; readonly taken: Box[] },
): readonly Mark[] {
  const height = lettering.small;
  const sorted = [...rips].sort((a, b) => b.y1 - a.y1);
  const sizes = sorted.map((cut) => patchSize(cut, height));
  const places = spreadDown(
    sorted.map((cut) => cut.y1 * scale),
    height * 1.7 + 0.4,
  );
  const widest = Math.max(0, ...sizes.map((size) => size.w));
  return sorted.flatMap((cut, i) => {
    const half = sizes[i] as Size;
    const at = { x: x + side * (widest + 2.5), y: places[i] ?? cut.y1 * scale };
    taken.push(boxAround(at, half.w * 2, half.h * 2));
    const leader = drawLine(
      [
        { x, y: cut.y1 * scale },
        { x: at.x - side * half.w, y: at.y },
      ],
      'thin',
      linkOf(cut),
    );
    return [leader, ...drawPatch(cut, at, half, height)];
  });
}

/** The letter of a rip that starts inside the stock, on its line; smaller where the strips beside it are low. */
function drawInnerRip(cut: LayoutCut, view: LayoutView, scale: number, taken: Box[]): readonly Mark[] {
  const large = patchSize(cut, lettering.small);
  const height = roomBeside(cut, view) * scale > 2 * large.h + 0.6 ? lettering.small : lettering.fine;
  const half = patchSize(cut, height);
  const towards = cut.x1 <= cut.x2 ? 1 : -1;
  const place = (i: number): Point => ({
    x: cut.x1 * scale + towards * (half.w + 1.2 + i * 2),
    y: cut.y1 * scale,
  });
  return drawPatch(cut, claim(place, half, taken).at, half, height);
}

/** The least that a part beside a saw line measures square to it, mm; Infinity where none lies beside it. */
function roomBeside(cut: LayoutCut, { parts, kerf }: LayoutView): number {
  const along = isAlong(cut);
  const beside = parts.filter((part) => {
    const [low, size] = along ? [part.y, part.width] : [part.x, part.length];
    const [from, long] = along ? [part.x, part.length] : [part.y, part.width];
    const [start, end] = along ? [cut.x1, cut.x2] : [cut.y1, cut.y2];
    const at = along ? cut.y1 : cut.x1;
    const meets = from < Math.max(start, end) && from + long > Math.min(start, end);
    return meets && (Math.abs(low - at) <= kerf || Math.abs(low + size - at) <= kerf);
  });
  return Math.min(Infinity, ...beside.map((part) => (along ? part.width : part.length)));
}

const linkOf = (cut: LayoutCut) => `cut:${cut.label}`;

function patchSize(cut: LayoutCut, height: number): Size {
  const tall = height * 0.85;
  return { w: Math.max(textWidth(cut.label, height, 'bold') / 2 + 0.7, tall), h: tall };
}

function drawPatch(cut: LayoutCut, at: Point, half: Size, height: number): readonly Mark[] {
  const link = linkOf(cut);
  const style = { height, align: 'middle', weight: 'bold', link } as const;
  return [
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

/** A crosscut: a flag above the stock when the saw enters there, else inside at its head, smaller in a narrow strip. */
function drawCrosscutLabel(cut: LayoutCut, view: LayoutView, scale: number, taken: Box[]): readonly Mark[] {
  const link = linkOf(cut);
  const top = Math.max(cut.y1, cut.y2) * scale;
  const long = Math.abs(cut.y2 - cut.y1) * scale;
  const edge = view.stock.width * scale;
  const outside = edge - top < 8;
  const isRoomy =
    long > 4.2 && roomBeside(cut, view) * scale > textWidth(cut.label, lettering.small, 'bold') + 8;
  const height =
    outside || long > 9 || isRoomy ? lettering.small : Math.min(lettering.fine, Math.max(1.2, long * 0.5));
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
