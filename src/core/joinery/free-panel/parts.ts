import { markSize } from '#core/units';
import {
  boxOfOutline,
  circleOutline,
  moveOutline,
  rectangleOutline,
  type Outline,
  type Point,
} from '#core/geometry';
import { frontPlane, layFlat, rightwards, upwards, type LaidFlat } from '../flat/lay-flat.ts';
import { wayTo } from '../flat/polygon.ts';
import { roundCorners } from '../flat/round-corners.ts';
import { makePart, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part, PartEdge } from '../types.ts';
import { layLip } from './lips.ts';
import { roundBareCorners, type PanelLayout } from './sizes.ts';

/** Holes and cut-outs in the frame of the piece. */
export function panelHoles({ choices, outline }: PanelLayout): readonly Outline[] {
  const { minX, minY } = boxOfOutline(outline);
  const round = groupsOf(choices.holes ?? [], 3).map(([x = 0, y = 0, d = 0]) =>
    circleOutline({ x: minX + x, y: minY + y }, d / 2),
  );
  const square = groupsOf(choices.cutouts ?? [], 4).map(([x = 0, y = 0, w = 0, h = 0]) => {
    const r = Math.min(choices.cutoutRadius, w / 2, h / 2);
    const flat = moveOutline(rectangleOutline(w, h), minX + x, minY + y);
    return roundCorners(flat, [r, r, r, r]);
  });
  return [...round, ...square];
}

/** Numbers in groups of so many; an incomplete last one is left out. */
export function groupsOf(numbers: readonly number[], size: number): readonly (readonly number[])[] {
  return Array.from({ length: Math.floor(numbers.length / size) }, (_, i) =>
    numbers.slice(i * size, (i + 1) * size),
  );
}

/** Along the grain of the panel: upwards, or to the right when it runs level. */
const grainWay = ({ choices }: PanelLayout): Point => (choices.grain === 'across' ? rightwards : upwards);

/** The panel and its solid edges. Frame of the piece: origin at the lower left of what it fills, z = 0 on the face. */
export function panelParts(piece: Piece, layout: PanelLayout): readonly Part[] {
  const lips = [...layout.lipped].sort((a, b) => a - b);
  return [panelDraft(layout), ...lips.map((side, i) => lipDraft(layout, side, i + 2))].map((draft) =>
    makePart(piece, draft),
  );
}

function panelDraft(layout: PanelLayout): PartDraft {
  const { book, choices, lipped, core } = layout;
  const isLipped = lipped.size > 0 && core !== null;
  const outline = isLipped ? roundBareCorners(layout, core) : layout.outline;
  const laid = layFlat(outline, grainWay(layout), frontPlane());
  const what = isLipped ? 'core' : 'panel';
  const names =
    choices.grain === 'across'
      ? { length: `${what}_W`, width: `${what}_H` }
      : { length: `${what}_H`, width: `${what}_W` };
  const edges = edgesOf(layout, laid);
  const left = (edge: PartEdge['edge']) =>
    edges.find((one) => one.edge === edge && one.treatment === 'scribed')?.amount ?? 0;
  const finished = {
    length: book.value(names.length),
    width: book.value(names.width),
    thickness: book.value('T'),
  };
  return {
    number: 1,
    name: isLipped ? 'Panel, core' : 'Panel',
    material: choices.stock.panel,
    flat: true,
    bookMatched: choices.match === 'book',
    finished,
    cut: {
      length: finished.length + left('start') + left('end'),
      width: finished.width + left('face-edge') + left('far-edge'),
      thickness: finished.thickness,
    },
    working: { ...names, thickness: 'T' },
    outline: laid.outline,
    holes: panelHoles(layout).map(laid.toPart),
    grain: choices.grain === 'any' ? 'any' : 'along-length',
    turn: choices.grain === 'any',
    edges,
    faceSide: 'face side to the viewer',
    placements: [laid.placement],
    notes: choices.grain === 'any' ? [] : [`Grain ${choices.grain === 'up' ? 'upright' : 'level'}.`],
  };
}

/** The treatment of each edge of the part, by the sides that face its way. */
function edgesOf(layout: PanelLayout, laid: LaidFlat): readonly PartEdge[] {
  const { points, side, lipped, scribed, book } = layout;
  const found = new Map<PartEdge['edge'], PartEdge>();
  points.forEach((from, i) => {
    const at = side[i] ?? 0;
    const edge = facingOf(from, points[(i + 1) % points.length] ?? from, laid);
    const left = scribed.get(at);
    const known = found.get(edge);
    if (left !== undefined && left > (known?.treatment === 'scribed' ? (known.amount ?? 0) : 0)) {
      found.set(edge, { edge, treatment: 'scribed', amount: left });
    } else if (lipped.has(at) && !known) {
      found.set(edge, { edge, treatment: 'lipped', amount: book.value('a') });
    }
  });
  return [...found.values()];
}

/** The edge of the part that a side lies nearest to by its direction. */
function facingOf(from: Point, to: Point, laid: LaidFlat): PartEdge['edge'] {
  const way = wayTo(from, to);
  const { xAxis, yAxis } = laid.placement;
  const out = { x: way.y, y: -way.x };
  const [x, y] = [out.x * xAxis.x + out.y * xAxis.y, out.x * yAxis.x + out.y * yAxis.y];
  if (Math.abs(x) >= Math.abs(y)) return x > 0 ? 'end' : 'start';
  return y > 0 ? 'far-edge' : 'face-edge';
}

function lipDraft(layout: PanelLayout, at: number, number: number): PartDraft {
  const { book, choices } = layout;
  const laid = layLip(layout, at);
  const name = `lip_${at + 1}`;
  const [length, width] = [book.value(`${name}_L`), book.value(`${name}_W`)];
  const finished = { length, width, thickness: book.value('T') };
  const blank = { length: length + 20, width: width + 0.5, thickness: finished.thickness + 2 };
  return {
    number,
    name: `Solid edge, side ${at + 1}`,
    material: choices.stock.lipping,
    finished,
    cut: blank,
    rough: blank,
    working: { length: `${name}_L`, width: `${name}_W`, thickness: 'T' },
    outline: laid.outline,
    placements: [laid.placement],
    faceSide: 'face edge outwards, face side to the viewer',
    notes: [
      `${markSize(20)} long, ${markSize(0.5)} wide and ${markSize(1)} proud of each face: trimmed and flushed when the glue is hard.`,
    ],
  };
}
