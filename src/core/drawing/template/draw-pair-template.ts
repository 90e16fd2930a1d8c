import { boxOfOutline, rectangleOutline, type Box, type Outline, type Point } from '#core/geometry';
import type { LengthSystem } from '#core/units';
import { findRoom } from '../find-room.ts';
import { boxOfMark, drawArea, drawLine, drawRectangle, drawText, growBox, lettering } from '../marks.ts';
import type { Paper } from '../paper.ts';
import { innerPoint } from '../part-view.ts';
import { formatSize } from '../scales.ts';
import { drawGrainArrow } from '../symbols.ts';
import { textWidth } from '../text-width.ts';
import type { Drawing, Mark, Page } from '../types.ts';
import { drawFullSize } from './full-size.ts';
import { partingWords, type SharedBlank } from './shared-blank.ts';
import { drawCrosses } from './template-drawing.ts';
import { printNote, type TemplateInfo } from './template-info.ts';
import { overlapOf } from './template-lettering.ts';

const roundBlank = 3; // mm of paper round the blank, so that its edges are never cut off

/** Full-size template of a blank that two shapes share: its edges, both outlines as sawn, and the line they are parted along. */
export function drawPairTemplate(
  pair: SharedBlank,
  paper: Paper,
  info: Pick<TemplateInfo, 'job' | 'stamp' | 'units'>,
): readonly Page[] {
  const { units = 'mm' } = info;
  const size = [pair.length, pair.width].map((value) => formatSize(value, units)).join(' × ');
  const make = pair.count === 1 ? 'one blank' : `${pair.count} blanks`;
  return drawFullSize(
    {
      of: pair.id,
      drawing: drawPair(pair, units),
      letter: (shows) => letterPair(pair, shows),
      rows: [
        `${pair.id}  head to tail`,
        `${make} ${size}${units === 'mm' ? '' : ' in'} · ${info.job} · face sides up · lay it to the edges of the blank, mark both, ${partingWords(pair)}, then shape each`,
        printNote(units),
      ],
      ...(info.stamp !== undefined && { stamp: info.stamp }),
    },
    paper,
  );
}

function drawPair(pair: SharedBlank, units: LengthSystem): Drawing {
  const blank = { minX: 0, minY: 0, maxX: pair.length, maxY: pair.width };
  return {
    title: `${pair.id}, head to tail`,
    bounds: growBox(blank, roundBlank),
    scale: 1,
    marks: [
      drawRectangle(blank, 'outline'),
      ...pair.laid.map(({ part, outline }) => drawArea(outline, 'cut', 'none', part.id)),
      ...(pair.between ? [drawLine(pair.between.points, 'hidden')] : []),
      ...drawCrosses(rectangleOutline(pair.length, pair.width), units),
    ],
  };
}

const clearOfJoin = 14; // mm inside the edge of a page, past the overlap

/** On one page: what each shape is and how its grain lies, and what the line between them is. */
function letterPair(pair: SharedBlank, shows: Box): readonly Mark[] {
  const window = growBox(shows, -clearOfJoin);
  const parting = pair.between ? nameLine(pair, pair.between.points, window) : [];
  const taken = parting.map(boxOfMark);
  return [...pair.laid.flatMap((laid) => letterShape(laid, window, taken)), ...parting];
}

function letterShape(
  { part, outline }: SharedBlank['laid'][number],
  window: Box,
  taken: readonly Box[],
): readonly Mark[] {
  const seen = overlapOf(boxOfOutline(outline), window);
  if (!seen) return [];
  const wanted = innerPoint(outline, { x: (seen.minX + seen.maxX) / 2, y: (seen.minY + seen.maxY) / 2 });
  const detail = `${part.name} · face side up`;
  for (const figures of [14, 10, 7, 5, 3.5]) {
    const small = Math.max(lettering.fine, figures / 3);
    const width = Math.max(textWidth(part.id, figures, 'bold') + figures * 2.6, textWidth(detail, small)) + 4;
    const height = figures + small * 2.2 + 2;
    const at = findRoom({ width, height, inside: outline }, seen, taken, wanted);
    if (!at || !isWithin(outline, at, width, height)) continue;
    const base = at.y - height / 2 + small * 2.2;
    const half = textWidth(part.id, figures, 'bold') / 2;
    const shift = part.grain === 'any' ? 0 : figures * 1.2;
    return [
      drawText({ x: at.x + shift, y: base }, part.id, {
        height: figures,
        align: 'middle',
        weight: 'bold',
        link: part.id,
      }),
      drawText({ x: at.x, y: base - small * 1.8 }, detail, { height: small, align: 'middle' }),
      // the blank lies with its length along the grain
      ...(part.grain === 'any'
        ? []
        : drawGrainArrow({ x: at.x - half - figures * 0.2, y: base + figures / 2 }, figures * 1.8)),
    ];
  }
  return [drawText(wanted, part.id, { height: lettering.usual, weight: 'bold', align: 'middle' })];
}

/** Whether the corners of a block lie in the shape as well as its middle. */
function isWithin(outline: Outline, at: Point, width: number, height: number): boolean {
  const [w, h] = [width / 2, height / 2];
  return [
    { x: at.x - w, y: at.y - h },
    { x: at.x + w, y: at.y - h },
    { x: at.x - w, y: at.y + h },
    { x: at.x + w, y: at.y + h },
  ].every((corner) => {
    const inner = innerPoint(outline, corner);
    return inner.x === corner.x && inner.y === corner.y;
  });
}

/** What the line is, beside its longest straight run that shows. */
function nameLine(pair: SharedBlank, points: readonly Point[], window: Box): readonly Mark[] {
  const runs = points.slice(1).flatMap((to, i) => {
    const from = points[i];
    return from ? [{ from, to, long: Math.hypot(to.x - from.x, to.y - from.y) }] : [];
  });
  const spots = runs.flatMap(({ from, to, long }) =>
    [0.5, 0.25, 0.75, 0.1, 0.9].map((share) => ({
      at: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
      turn: Math.atan((to.y - from.y) / (to.x - from.x || 1e-9)),
      long,
    })),
  );
  const inside = ({ at }: { readonly at: Point }) =>
    at.x > window.minX && at.x < window.maxX && at.y > window.minY && at.y < window.maxY;
  const best = spots
    .filter(inside)
    .reduce<(typeof spots)[number] | null>(
      (longest, spot) => (!longest || spot.long > longest.long ? spot : longest),
      null,
    );
  if (!best) return [];
  const { at, turn } = best;
  return [
    drawText({ x: at.x - Math.sin(turn) * 0.8, y: at.y + Math.cos(turn) * 0.8 }, partingWords(pair), {
      height: lettering.small,
      align: 'middle',
      turn,
      weight: 'bold',
    }),
  ];
}
