import { boxOfOutline } from '#core/geometry';
import type { Box, Outline, Point } from '#core/geometry';
import type { Part, PartEdge } from '#core/joinery';
import { drawArea, drawText, growBox, lettering } from '../marks.ts';
import { innerPoint, seenOnFace } from '../part-view.ts';
import { formatMm } from '../scales.ts';
import { drawArrow, drawCross, drawFaceMark, drawGrainArrow, drawWave } from '../symbols.ts';
import { textWidth } from '../text-width.ts';
import type { Drawing, Mark } from '../types.ts';
import { upDirection } from './template-info.ts';
import type { TemplateInfo } from './template-info.ts';

const roundPart = 8; // mm of paper round the part, for edge lines and marks

/** The part at full size seen from its face side, with machining, grain, UP and two pairs of crosses to check the print by. */
export function drawTemplateSheet(part: Part, info: TemplateInfo): Drawing {
  const box = boxOfOutline(part.outline);
  const marks: Mark[] = [
    drawArea(part.outline, 'cut', 'none', part.id),
    ...part.holes.map((hole) => drawArea(hole, 'cut', 'none', part.id)),
    ...part.machining.flatMap((machining) => {
      const seen = seenOnFace(machining, part);
      return seen ? [drawArea(seen.outline, seen.near ? 'thin' : 'hidden')] : [];
    }),
    ...part.edges.flatMap((edge) => drawScribe(edge, box)),
    ...drawCheckCrosses(box, part.outline),
    ...drawLettering(part, box, info),
  ];
  return {
    title: `${part.id}  ${part.name}`,
    bounds: growBox(box, roundPart + mostScribe(part)),
    scale: 1,
    marks,
  };
}

function mostScribe(part: Part): number {
  return part.edges.reduce(
    (most, e) => (e.treatment === 'scribed' ? Math.max(most, e.amount ?? 0) : most),
    0,
  );
}

function drawScribe(edge: PartEdge, box: Box): readonly Mark[] {
  if (edge.treatment !== 'scribed') return [];
  const by = edge.amount ?? 0;
  const { minX, minY, maxX, maxY } = box;
  const lines: Record<PartEdge['edge'], readonly [Point, Point]> = {
    'face-edge': [
      { x: minX, y: minY - by },
      { x: maxX, y: minY - by },
    ],
    'far-edge': [
      { x: minX, y: maxY + by },
      { x: maxX, y: maxY + by },
    ],
    start: [
      { x: minX - by, y: minY },
      { x: minX - by, y: maxY },
    ],
    end: [
      { x: maxX + by, y: minY },
      { x: maxX + by, y: maxY },
    ],
  };
  const [a, b] = lines[edge.edge];
  const along = edge.edge === 'face-edge' || edge.edge === 'far-edge';
  const text = drawText(
    along ? { x: a.x + 15, y: a.y + 1.5 } : { x: a.x + 4, y: a.y + 15 },
    `cut here, scribe ${formatMm(by)}`,
    {
      height: lettering.small,
      ...(!along && { turn: Math.PI / 2 }),
    },
  );
  return [drawWave(a, b, 'outline', 6), text];
}

/** Two crosses near each end, 80 % and more of the size apart, with their true distance (joinery A9). */
function drawCheckCrosses(box: Box, outline: Outline): readonly Mark[] {
  const [wide, tall] = [box.maxX - box.minX, box.maxY - box.minY];
  const middle = innerPoint(outline, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
  const inX = Math.min(10, wide * 0.08);
  const inY = Math.min(10, tall * 0.08);
  const across = [box.minX + inX, box.maxX - inX];
  const up = [box.minY + inY, box.maxY - inY];
  const note = (at: Point, length: number, turn: number) =>
    drawText(at, `crosses ${formatMm(length)} apart`, { height: lettering.fine, turn, tone: 'soft' });
  const level = across.flatMap((x) => drawCross({ x, y: middle.y }, 3, 'thin'));
  const first = { x: (across[0] ?? 0) + 5, y: middle.y + 1 };
  const marks = [...level, note(first, wide - 2 * inX, 0)];
  if (tall < 60) return marks;
  const upright = up.flatMap((y) => drawCross({ x: middle.x, y }, 3, 'thin'));
  return [...marks, ...upright, note({ x: middle.x - 1, y: (up[0] ?? 0) + 5 }, tall - 2 * inY, Math.PI / 2)];
}

/** Address, names and arrows, as large as the part lets them be, repeated every 200 mm so that each sheet carries them. */
function drawLettering(part: Part, box: Box, info: TemplateInfo): readonly Mark[] {
  const [wide, tall] = [box.maxX - box.minX, box.maxY - box.minY];
  const height = Math.max(lettering.usual, Math.min(14, tall * 0.25));
  const up = upDirection(part);
  const count = Math.max(1, Math.round(wide / 240));
  const small = Math.max(lettering.fine, Math.min(lettering.usual, tall * 0.09));
  return Array.from({ length: count }, (_, i) => {
    const wanted = { x: box.minX + (wide * (i + 0.5)) / count, y: (box.minY + box.maxY) / 2 };
    const at = innerPoint(part.outline, wanted);
    const half = textWidth(part.id, height, 'bold') / 2;
    const detail = `${part.name} · ${info.piece} · face side up: ${part.faceSide}`;
    const shown = textWidth(detail, small) < wide / count - 10 ? detail : part.name;
    const arrow = Math.min(14, tall * 0.5);
    return [
      drawText({ x: at.x, y: at.y + small * 0.4 }, part.id, {
        height,
        align: 'middle',
        weight: 'bold',
        link: part.id,
      }),
      drawText({ x: at.x, y: at.y - small * 1.8 }, shown, { height: small, align: 'middle' }),
      ...drawFaceMark({ x: at.x + half + 8, y: at.y }, Math.min(12, tall * 0.35)),
      ...(part.grain === 'any'
        ? []
        : drawGrainArrow(
            { x: at.x - half - 26, y: at.y + height / 2 },
            Math.min(30, tall * (part.grain === 'along-width' ? 0.6 : 9)),
            part.grain === 'along-width' ? Math.PI / 2 : 0,
          )),
      ...(up === null ? [] : drawUp({ x: at.x + half + 22, y: at.y + height * 0.3 }, up, arrow)),
    ];
  }).flat();
}

function drawUp(centre: Point, angle: number, length: number): readonly Mark[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const from = { x: centre.x - (c * length) / 2, y: centre.y - (s * length) / 2 };
  const to = { x: centre.x + (c * length) / 2, y: centre.y + (s * length) / 2 };
  const height = lettering.small;
  const label = {
    x: to.x + c * 2 + (Math.abs(c) < 0.5 ? 0 : c > 0 ? 2.5 : -2.5),
    y: to.y + s * 2 - (s > 0.5 ? 0 : height / 2 + (s < -0.5 ? height / 2 : 0)),
  };
  return [
    ...drawArrow(from, to, 'outline', 3),
    drawText(label, 'UP', { height, align: 'middle', weight: 'bold' }),
  ];
}
