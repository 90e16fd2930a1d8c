import { boxOfOutline, rectangleOutline } from '#core/geometry';
import { innerPoint } from '../part-view.ts';
import { formatMm } from '../scales.ts';
import type { SharedBlank } from '../template/shared-blank.ts';
import { partingWords } from '../template/shared-blank.ts';
import { textWidth } from '../text-width.ts';
import { layerName } from './layers.ts';
import type { Contour, RouterSetup } from './operations.ts';
import { sortForWork } from './router-files.ts';
import { writeRouterModel, type RouterText } from './router-model.ts';

const noteHeight = 5; // mm

/**
 * A blank that two shapes share, at true size from its lower left corner: both outlines to be cut, the blank
 * and the line between the two to look at. Joints and openings are in the files of the parts.
 */
export function drawPairFile(
  pair: SharedBlank,
  router: RouterSetup,
): { readonly dxf: string; readonly svg: string; readonly layers: readonly string[] } {
  const contours: readonly Contour[] = [
    ...pair.laid.map(({ outline }) => ({ layer: layerName('outline'), outline })),
    { layer: layerName('reference'), outline: rectangleOutline(pair.length, pair.width) },
  ];
  const bar: Contour = { layer: layerName('scale'), outline: rectangleOutline(100, 4, { x: 0, y: -19 }) };
  const line: readonly Contour[] = pair.between
    ? [{ layer: layerName('between'), outline: pair.between.points, isOpen: true }]
    : [];
  return writeRouterModel(
    [...sortForWork(contours), ...line, bar],
    [...addressesOf(pair), ...notesOf(pair, router)],
    {
      NOTE_ADDRESS: 12,
      NOTE_TEXT: noteHeight,
    },
  );
}

function addressesOf({ laid }: SharedBlank): readonly RouterText[] {
  return laid.map(({ part, outline }) => {
    const box = boxOfOutline(outline);
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    return { layer: 'NOTE_ADDRESS', text: part.id, ...innerPoint(outline, middle) };
  });
}

function notesOf(pair: SharedBlank, router: RouterSetup): readonly RouterText[] {
  const thickness = Math.max(...pair.laid.map(({ part }) => part.finished.thickness));
  const passes = Math.ceil(thickness / router.passDepth - 1e-9);
  const rows = [
    'UNITS MM - the bar is 100 mm long',
    `${pair.id} head to tail in a blank ${formatMm(pair.length)} x ${formatMm(pair.width)}, make ${pair.count}; origin at its lower left corner`,
    `FACE SIDES UP. On the saw: ${partingWords(pair)}. On the router: cutter ${formatMm(router.cutter)} mm, outside the outlines, in ${passes} passes of ${formatMm(router.passDepth)} mm at most, held by tabs or a thin skin`,
    'Joints and openings: in the files of the parts. Draft: check in your own machine and cut in air first',
  ];
  return rows.map((text, i) => ({
    layer: layerName('note'),
    text,
    x: textWidth(text, noteHeight) / 2,
    y: -34 - i * noteHeight * 1.8,
  }));
}
