import { boxOfOutline, rectangleOutline } from '#core/geometry';
import type { Outline } from '#core/geometry';
import type { Part } from '#core/joinery';
import type { Problem } from '#core/problems';
import { asSeen, innerPoint } from '../part-view.ts';
import { formatMm } from '../scales.ts';
import { cutOutline } from '../scribe-edge.ts';
import { textWidth } from '../text-width.ts';
import { layerName } from './layers.ts';
import { hasStoppedGroove, listUnreachable, workFromSide } from './operations.ts';
import type { Contour, RouterSetup, RouterSide } from './operations.ts';
import { turnFaceUp, writeRouterModel } from './router-model.ts';
import type { RouterText } from './router-model.ts';

/** One set-up on the router: the part lying with that side up. */
export interface RouterFile {
  readonly side: RouterSide;
  /** File name without its ending, as `C4-face`. */
  readonly name: string;
  readonly dxf: string;
  readonly svg: string;
  /** In order of work. */
  readonly layers: readonly string[];
  readonly findings: readonly Problem[];
}

/**
 * Router files of a part at true size, one for each side that is worked: contours in closed polylines, one layer for each
 * operation and depth (`routerLayers`). The start end lies at the left in both; the file of the back is mirrored, for the part
 * turned over its long side.
 */
export function drawRouterFiles(part: Part, router: RouterSetup): readonly RouterFile[] {
  const face = drawSide(part, 'face', router);
  const back = drawSide(part, 'back', router);
  return back.worked ? [face.file, back.file] : [face.file];
}

function drawSide(part: Part, side: RouterSide, router: RouterSetup): { file: RouterFile; worked: boolean } {
  const outline = cutOutline(part);
  const { contours: turned, findings: found, worked } = contoursOf(part, side, router);
  const { texts, bar, lettering } = annotate(part, side, {
    router,
    outline: side === 'face' ? asSeen(outline, part) : outline,
  });
  const { dxf, svg, layers } = writeRouterModel([...turned, bar], texts, lettering);
  return {
    file: { side, name: `${part.id}-${side}`, dxf, svg, layers, findings: found },
    worked,
  };
}

/** What is cut from a side, as it lies with that side up, in order of work. */
export function contoursOf(
  part: Part,
  side: RouterSide,
  router: RouterSetup,
): {
  readonly contours: readonly Contour[];
  readonly findings: readonly Problem[];
  readonly worked: boolean;
} {
  const outline = cutOutline(part);
  const work = part.machining.flatMap((machining) => workFromSide(machining, part, side, router) ?? []);
  const contours = sortForWork([...work.flatMap((w) => w.contours), ...outlinesOf(part, side, outline)]);
  return {
    contours: side === 'face' ? contours.map((contour) => turnFaceUp(contour, part)) : contours,
    findings: [
      ...work.flatMap((w) => w.findings),
      ...(side === 'face' ? listUnreachable(part, router.units) : []),
    ],
    worked: work.length > 0,
  };
}

/** The part's own contours: cut from the face, only shown when the back is worked. */
function outlinesOf(part: Part, side: RouterSide, outline: Outline): readonly Contour[] {
  const finished = { layer: layerName('reference'), outline: part.outline };
  if (side === 'back') return [{ layer: layerName('reference'), outline }];
  return [
    ...part.holes.map((hole) => ({ layer: layerName('inner'), outline: hole })),
    { layer: layerName('outline'), outline },
    ...(outline === part.outline ? [] : [finished]),
  ];
}

const workOrder = ['DRILL', 'SINK', 'POCKET', 'INNER', 'OUTLINE', 'REFERENCE'];

/** In order of work: small things first, outlines last, so that parts lie fast as long as they can (joinery E7). */
export function sortForWork(contours: readonly Contour[]): readonly Contour[] {
  const rank = ({ layer }: Contour) => workOrder.findIndex((start) => layer.startsWith(start));
  return [...contours].sort(
    (a, b) => rank(a) - rank(b) || (a.layer < b.layer ? -1 : a.layer > b.layer ? 1 : 0),
  );
}

const noteHeight = 5; // mm

/** Address inside the part; units, side, passes and the 100 mm bar below it. */
function annotate(
  part: Part,
  side: RouterSide,
  { router, outline }: { readonly router: RouterSetup; readonly outline: Outline },
): { texts: readonly RouterText[]; bar: Contour; lettering: Record<string, number> } {
  const box = boxOfOutline(outline);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const at = innerPoint(outline, middle);
  const { thickness, length, width } = part.finished;
  const passes = Math.ceil(thickness / router.passDepth - 1e-9);
  const rows = [
    'UNITS MM - the bar is 100 mm long',
    `${part.id} ${part.name}, ${formatMm(length)} x ${formatMm(width)} x ${formatMm(thickness)}, make ${part.quantity}`,
    side === 'face'
      ? `FACE SIDE UP (${part.faceSide}), face edge away from you`
      : 'BACK UP, MIRRORED: part turned over its long side, start end still left, face edge towards you',
    `Cutter ${formatMm(router.cutter)} mm, ${formatMm(router.passDepth)} mm per pass${side === 'face' ? `, outline in ${passes} passes` : ''}; depths from the side that lies up`,
    ...(hasStoppedGroove(part, side)
      ? [
          `Stopped grooves end round, radius ${formatMm(router.cutter / 2)} mm: square their ends with a chisel for the panel`,
        ]
      : []),
    'Draft: check in your own machine and cut in air first',
  ];
  const barTop = box.minY - 15;
  // texts are set by their middle
  const texts = rows.map((text, i) => ({
    layer: layerName('note'),
    text,
    x: box.minX + textWidth(text, noteHeight) / 2,
    y: barTop - 15 - i * noteHeight * 1.8,
  }));
  const address = Math.max(4, Math.min(20, Math.min(width, length) * 0.4));
  return {
    texts: [{ layer: 'NOTE_ADDRESS', text: part.id, ...at }, ...texts],
    bar: { layer: layerName('scale'), outline: rectangleOutline(100, 4, { x: box.minX, y: barTop - 4 }) },
    lettering: { NOTE_ADDRESS: address, NOTE_TEXT: noteHeight },
  };
}
