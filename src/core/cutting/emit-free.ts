import { toMm } from './emit-layout.ts';
import { takeSpace } from './free-sheet.ts';
import type { FreeSheet, Space } from './free-sheet.ts';
import type { Model } from './model.ts';
import type { Layout, Rectangle } from './types.ts';

/** Writes one sheet without a tree of cuts as a layout in mm; `nameOf` tells each part's kind in the job. */
export function emitFreeLayout(model: Model, sheet: FreeSheet, nameOf: (kind: number) => number): Layout {
  const inOrder = [...sheet.placings].sort((a, b) => a.x - b.x || a.y - b.y);
  return {
    stock: sheet.bin.id,
    times: 1,
    placed: inOrder.map((placing) => ({
      id: model.kinds[nameOf(placing.kind)]?.id ?? '',
      ...rectangleOf(model, sheet, placing),
      turned: placing.turned,
    })),
    cuts: null,
    leftovers: keepSpaces(model, sheet.spaces).map((space) => rectangleOf(model, sheet, space)),
  };
}

/** The largest free rectangle worth keeping, then the largest beside it, and so on. */
function keepSpaces(model: Model, spaces: readonly Space[]): readonly Space[] {
  const kept: Space[] = [];
  let rest = spaces;
  for (;;) {
    const worth = rest.filter(
      ({ length, width }) =>
        length - model.kerfX >= Math.max(model.keepLength, 1) &&
        width - model.kerfY >= Math.max(model.keepWidth, 1),
    );
    const [largest] = worth.sort((a, b) => b.length * b.width - a.length * a.width);
    if (!largest) return kept;
    kept.push(largest);
    rest = takeSpace(rest, largest);
  }
}

function rectangleOf(model: Model, { bin }: FreeSheet, space: Space): Rectangle {
  return {
    x: toMm(model, bin.x + space.x),
    y: toMm(model, bin.y + space.y),
    length: toMm(model, space.length - model.kerfX),
    width: toMm(model, space.width - model.kerfY),
  };
}
