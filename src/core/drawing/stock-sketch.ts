import type { Rectangle } from '#core/cutting';
import { drawDimension } from './dimension.ts';
import { drawPlate } from './leaders.ts';
import { scaled } from './layout-view.ts';
import { drawRectangle, growBox, lettering, makeDrawing } from './marks.ts';
import { formatSize, heightFor } from './scales.ts';
import type { SizedRoom } from './scales.ts';
import { drawGrainArrow } from './symbols.ts';
import type { Drawing, Mark } from './types.ts';

/** A piece of stock with what must not be used of it; x along `length`, y along `width` from the lower left corner. */
export interface StockSketch {
  readonly length: number;
  readonly width: number;
  readonly keepOut: readonly Rectangle[];
}

const besideStock = 14; // mm of paper for the dimensions
const leastTouch = 3; // mm of paper; smaller places get a frame that a finger finds

/** A small sketch of a piece of stock, its keep-out places hatched and numbered, each linked as `keep-out:1`. */
export function drawStockSketch(stock: StockSketch, room: SizedRoom): Drawing {
  const scale = Math.min(
    (room.width - besideStock) / stock.length,
    (heightFor(room) - besideStock) / stock.width,
  );
  const [w, h] = [stock.length * scale, stock.width * scale];
  const corner = { x: w, y: 0 };
  const show = (value: number) => formatSize(value, room.units);
  const marks: Mark[] = [
    drawRectangle({ minX: 0, minY: 0, maxX: w, maxY: h }, 'outline', 'paper'),
    ...drawGrainArrow({ x: w / 2, y: h / 2 }, Math.min(18, w / 3), 0),
    ...stock.keepOut.flatMap((area, i) => drawPlace(area, scale, i + 1)),
    ...drawDimension({ x: 0, y: 0 }, corner, show(stock.length), { offset: -6, height: lettering.small }),
    ...drawDimension(corner, { x: w, y: h }, show(stock.width), { offset: -6, height: lettering.small }),
  ];
  return makeDrawing('Stock with its keep-out places', scale, marks);
}

function drawPlace(area: Rectangle, scale: number, number: number): readonly Mark[] {
  const box = scaled(area, scale);
  const link = `keep-out:${number}`;
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const beside = w > 6 && h > 5 ? centre : { x: box.maxX + 3, y: box.maxY + 2.5 };
  const touch = growBox(box, Math.max(0, (leastTouch - Math.min(w, h)) / 2));
  return [
    drawRectangle(touch, 'none', 'none', link),
    drawRectangle(box, 'outline', 'keep-out', link),
    ...drawPlate(beside, String(number), { height: lettering.small, link }),
  ];
}
