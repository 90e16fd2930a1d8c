import type { Rectangle } from '#core/cutting';
import type { LengthSystem } from '#core/units';
import { drawCuts } from './layout-cuts.ts';
import { drawLayoutParts } from './layout-parts.ts';
import type { KeyEntry } from './layout-parts.ts';
import { drawDimension } from './dimension.ts';
import { scaled } from './layout-view.ts';
import type { LayoutView } from './layout-view.ts';
import { boxOfMark, drawRectangle, drawText, growBox, joinBoxes, lettering, makeDrawing } from './marks.ts';
import { chooseScale, formatScale, formatSize, nextScale, unitNote } from './scales.ts';
import { textWidth, wrapText } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

const besideSheet = 22; // mm of paper, room for labels and dimensions left and right together
const aboveSheet = 34; // mm of paper, title, dimensions and labels above and below together

/** A cutting diagram true to scale: trim hatched, kerfs at their true width, addresses, grain, cuts in order, leftovers. */
export function drawLayout(view: LayoutView): Drawing {
  let scale = firstScale(view);
  let drawing = drawAtScale(view, scale);
  // labels in the margin may need more room than was left for them
  for (let i = 0; i < mostTries && !fits(drawing, view); i++) {
    scale = nextScale(scale);
    const smaller = drawAtScale(view, scale);
    // a title wider than the paper stays as wide at any scale
    if (isHeldUp(drawing, smaller, view)) break;
    drawing = smaller;
  }
  return drawing;
}

const mostTries = 4;

/** Whether a drawing that is too wide does not become narrower with the scale. */
function isHeldUp({ bounds }: Drawing, smaller: Drawing, { height = Infinity }: LayoutView): boolean {
  const isLow = bounds.maxY - bounds.minY <= height;
  return isLow && smaller.bounds.maxX - smaller.bounds.minX >= bounds.maxX - bounds.minX - 0.01;
}

function fits({ bounds }: Drawing, { width, height = Infinity }: LayoutView): boolean {
  return bounds.maxX - bounds.minX <= width && bounds.maxY - bounds.minY <= height;
}

function firstScale(view: LayoutView): number {
  const room = Math.max(view.width - besideSheet, 20);
  const byWidth = chooseScale(view.stock.length, room);
  const byHeight =
    view.height === undefined
      ? byWidth
      : chooseScale(view.stock.width, Math.max(view.height - aboveSheet, 10));
  return Math.min(byWidth, byHeight);
}

function drawAtScale(view: LayoutView, scale: number): Drawing {
  const room = Math.max(view.width - besideSheet, 20);
  const stock = { minX: 0, minY: 0, maxX: view.stock.length * scale, maxY: view.stock.width * scale };
  const cuts = drawCuts(view, scale);
  const parts = drawLayoutParts(view, scale, cuts.labelled);
  const highest = Math.max(...cuts.labelled.map((box) => box.maxY), stock.maxY);
  const marks: Mark[] = [
    drawRectangle(stock, 'none', 'waste'),
    ...drawUsable(view, scale),
    ...view.leftovers.flatMap((rectangle) => drawLeftover(rectangle, scale, view.units)),
    ...parts.areas,
    ...cuts.bars,
    ...view.keepOut.map((r) => drawRectangle(scaled(r, scale), 'thin', 'keep-out')),
    drawRectangle(stock, 'outline'),
    ...parts.texts,
    ...cuts.labels,
    ...drawSizes(view, scale),
    ...drawTitle(view, scale, highest),
  ];
  const key = drawKey(parts.key, { x: 0, y: Math.min(...marks.map((m) => boxOfMark(m).minY)) - 5 }, room);
  const drawing = makeDrawing(view.title, scale, [...marks, ...key]);
  const frame = growBox(joinBoxes([stock]), 2);
  return { ...drawing, bounds: joinBoxes([drawing.bounds, frame]) };
}

function drawUsable(view: LayoutView, scale: number): readonly Mark[] {
  return [drawRectangle(scaled(view.usable, scale), 'thin')];
}

function drawLeftover(rectangle: Rectangle, scale: number, units?: LengthSystem): readonly Mark[] {
  const box = scaled(rectangle, scale);
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  const area = drawRectangle(box, 'hidden', 'leftover');
  const size = `${formatSize(rectangle.length, units)} × ${formatSize(rectangle.width, units)}`;
  const upright = textWidth(size, lettering.small) > w - 3;
  const [along, across] = upright ? [h, w] : [w, h];
  const written = leftoverTexts(size).find(
    ({ text, height, clear }) => textWidth(text, height) + clear <= along && height + 1.6 <= across,
  );
  if (!written) return [area];
  const { text, height } = written;
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const half = { w: textWidth(text, height) / 2 + 1, h: height / 2 + 0.7 };
  const plate = upright
    ? { minX: centre.x - half.h, maxX: centre.x + half.h, minY: centre.y - half.w, maxY: centre.y + half.w }
    : { minX: centre.x - half.w, maxX: centre.x + half.w, minY: centre.y - half.h, maxY: centre.y + half.h };
  const at = upright ? { x: centre.x + height / 2, y: centre.y } : { x: centre.x, y: centre.y - height / 2 };
  return [
    area,
    drawRectangle(plate, 'none', 'paper'),
    drawText(at, text, { height, align: 'middle', ...(upright && { turn: Math.PI / 2 }) }),
  ];
}

/** What may be written in a leftover, best first, each with the room it wants at its ends, where cuts have their labels, mm. */
function leftoverTexts(
  size: string,
): readonly { readonly text: string; readonly height: number; readonly clear: number }[] {
  const { usual, small, fine } = lettering;
  return [
    { text: `keep ${size}`, height: usual, clear: 12 },
    { text: `keep ${size}`, height: small, clear: 8 },
    { text: size, height: small, clear: 3 },
    { text: size, height: fine, clear: 3 },
  ];
}

function drawSizes(view: LayoutView, scale: number): readonly Mark[] {
  const [length, width] = [view.stock.length * scale, view.stock.width * scale];
  const below = drawDimension(
    { x: 0, y: 0 },
    { x: length, y: 0 },
    formatSize(view.stock.length, view.units),
    {
      offset: -9,
    },
  );
  if (view.form === 'batten') return below;
  return [
    ...below,
    ...drawDimension({ x: length, y: 0 }, { x: length, y: width }, formatSize(view.stock.width, view.units), {
      offset: -9,
    }),
  ];
}

/** Title and detail, clear of the labels of the cuts. */
function drawTitle(view: LayoutView, scale: number, highest: number): readonly Mark[] {
  const top = Math.max(view.stock.width * scale + (view.form === 'batten' ? 7 : 11), highest + 2.5);
  const side = view.form === 'sheet' ? ' · good face up, as it lies on the saw' : '';
  const detail = `${formatScale(scale)} · kerf ${formatSize(view.kerf, view.units)}${side}${unitNote(view.units)}`;
  return [
    drawText({ x: 0, y: top + 5 }, view.title, { height: lettering.usual, weight: 'bold' }),
    drawText({ x: 0, y: top }, detail, { height: lettering.small, tone: 'soft' }),
    ...(view.remark === undefined
      ? []
      : [
          drawText({ x: textWidth(detail, lettering.small) + 4, y: top }, view.remark, {
            ...{ height: lettering.small, weight: 'bold' },
          }),
        ]),
  ];
}

function drawKey(
  entries: readonly KeyEntry[],
  from: { readonly x: number; readonly y: number },
  room: number,
): readonly Mark[] {
  const height = lettering.small;
  let y = from.y;
  return entries.flatMap(({ number, text, link }) =>
    wrapText(number === null ? text : `${number}  ${text}`, height, room).map((row) => {
      const mark = drawText({ x: from.x, y }, row, { height, link });
      y -= height * 1.7;
      return mark;
    }),
  );
}
