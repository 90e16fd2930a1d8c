import { boxOfOutline, rectangleOutline, type Point } from '#core/geometry';
import type { Part } from '#core/joinery';
import type { Problem } from '#core/problems';
import { innerPoint } from '../part-view.ts';
import { formatMm } from '../scales.ts';
import { textWidth } from '../text-width.ts';
import { layerName } from './layers.ts';
import type { Contour, RouterSetup } from './operations.ts';
import { contoursOf, sortForWork } from './router-files.ts';
import { writeRouterModel, type RouterText } from './router-model.ts';

/** Parts laid on one sheet, face side up: turned by degrees counter-clockwise about their own origin, then moved, mm. */
export interface RouterSheet {
  readonly title: string;
  readonly stock: { readonly length: number; readonly width: number };
  readonly placed: readonly {
    readonly part: Part;
    readonly placement: { readonly angle: number; readonly x: number; readonly y: number };
  }[];
}

/** The file of a whole sheet. */
export interface RouterSheetFile {
  readonly dxf: string;
  readonly svg: string;
  readonly layers: readonly string[];
  readonly findings: readonly Problem[];
}

const noteHeight = 8; // mm

/**
 * A sheet for the router at true size: what is cut of every part with its face side up, in closed contours on the same layers
 * as the files of single parts, origin at the lower left corner of the sheet. Work from the back is left to those files.
 */
export function drawRouterSheet(sheet: RouterSheet, router: RouterSetup): RouterSheetFile {
  const laid = sheet.placed.map(({ part, placement }) => {
    const { contours, findings } = contoursOf(part, 'face', router);
    return { part, findings, contours: contours.map((contour) => place(contour, placement)) };
  });
  const edge: Contour = {
    layer: layerName('reference'),
    outline: rectangleOutline(sheet.stock.length, sheet.stock.width),
  };
  const bar: Contour = {
    layer: layerName('scale'),
    outline: rectangleOutline(100, 4, { x: 0, y: -20 }),
  };
  const addresses = laid.map(({ part, contours }) => addressOf(part, contours));
  const { dxf, svg, layers } = writeRouterModel(
    [...sortForWork(laid.flatMap(({ contours }) => contours)), edge, bar],
    [...addresses, ...notesOf(sheet, router)],
    { NOTE_ADDRESS: 12, NOTE_TEXT: noteHeight },
  );
  return { dxf, svg, layers, findings: laid.flatMap(({ findings }) => findings) };
}

function place({ layer, outline, circle }: Contour, at: RouterSheet['placed'][number]['placement']): Contour {
  const turn = (at.angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const move = ({ x, y }: Point): Point => ({ x: x * cos - y * sin + at.x, y: x * sin + y * cos + at.y });
  return {
    layer,
    outline: outline.map((point) => ({ ...point, ...move(point) })),
    ...(circle && { circle: { ...circle, ...move(circle) } }),
  };
}

function addressOf(part: Part, contours: readonly Contour[]): RouterText {
  const own = contours.find(({ layer }) => layer === layerName('outline'))?.outline ?? part.outline;
  const box = boxOfOutline(own);
  const middle = innerPoint(own, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
  return { layer: 'NOTE_ADDRESS', text: part.id, ...middle };
}

function notesOf({ title, stock, placed }: RouterSheet, router: RouterSetup): readonly RouterText[] {
  const thickness = Math.max(...placed.map(({ part }) => part.finished.thickness));
  const passes = Math.ceil(thickness / router.passDepth - 1e-9);
  const rows = [
    'UNITS MM - the bar is 100 mm long',
    `${title}: ${formatMm(stock.length)} x ${formatMm(stock.width)}, origin at the lower left corner`,
    `FACE SIDES UP. Cutter ${formatMm(router.cutter)} mm, outlines in ${passes} passes of ${formatMm(router.passDepth)} mm at most; hold small parts with tabs or a thin skin`,
    'Draft: check in your own machine and cut in air first',
  ];
  return rows.map((text, i) => ({
    layer: layerName('note'),
    text,
    x: textWidth(text, noteHeight) / 2,
    y: -35 - i * noteHeight * 1.8,
  }));
}
