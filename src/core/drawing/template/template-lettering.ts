import { boxOfOutline } from '#core/geometry';
import type { Box, Point } from '#core/geometry';
import type { Part } from '#core/joinery';
import { findRoom } from '../find-room.ts';
import { drawText, growBox, lettering } from '../marks.ts';
import { asSeen, innerPoint, seenOnFace } from '../part-view.ts';
import { drawArrow, drawEdgeMark, drawFaceMark, drawGrainArrow } from '../symbols.ts';
import { textWidth } from '../text-width.ts';
import type { Mark } from '../types.ts';
import { crossPairs } from './template-drawing.ts';
import { upDirection } from './template-info.ts';
import type { TemplateInfo } from './template-info.ts';

const clearOfJoin = 14; // mm inside the edge of a page, past the overlap

/** Address, names, face mark, UP and grain for one page, inside the part and clear of its machining where there is room. */
export function drawTemplateLettering(part: Part, shows: Box, info: TemplateInfo): readonly Mark[] {
  const outline = asSeen(part.outline, part);
  const seen = overlapOf(boxOfOutline(outline), growBox(shows, -clearOfJoin));
  if (!seen) return [];
  const wanted = innerPoint(outline, { x: (seen.minX + seen.maxX) / 2, y: (seen.minY + seen.maxY) / 2 });
  const tall = seen.maxY - seen.minY;
  const taken = [
    ...part.machining.flatMap((m) => {
      const contour = seenOnFace(m, part);
      return contour ? [boxOfOutline(contour.outline)] : [];
    }),
    ...crossPairs(outline).flatMap(({ at, turn }) => at.map((p) => crossBox(p, turn))),
  ];
  for (const height of [14, 10, 7, 5, 3.5].filter((h) => h < tall * 0.5)) {
    const block = lettersOf(part, info, height);
    const at = findRoom({ ...block, inside: outline }, seen, taken, wanted);
    if (at) return drawBlock(part, block, at);
  }
  return [drawText(wanted, part.id, { height: Math.min(3.5, tall * 0.6), weight: 'bold', align: 'middle' })];
}

function crossBox(p: Point, turn: number): Box {
  // the note beside a cross runs to the right, or upwards
  const [right, up] = turn === 0 ? [36, 4] : [4, 36];
  return { minX: p.x - 4, maxX: p.x + right, minY: p.y - 4, maxY: p.y + up };
}

/** What two boxes share; null where that is nothing. */
export function overlapOf(a: Box, b: Box): Box | null {
  const box = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  return box.maxX > box.minX && box.maxY > box.minY ? box : null;
}

interface Block {
  readonly width: number;
  readonly height: number;
  /** Height of the address; the line below is a third of it, but never smaller than 1.8. */
  readonly figures: number;
  readonly detail: string;
  readonly small: number;
}

function lettersOf(part: Part, info: TemplateInfo, figures: number): Block {
  const small = Math.max(lettering.fine, Math.min(lettering.usual, figures / 3));
  const detail = `${part.name} · ${info.piece}`;
  const row = textWidth(part.id, figures, 'bold') + figures * 5.6;
  return {
    width: Math.max(row, textWidth(detail, small)) + 4,
    height: figures + small * 2.2 + 2,
    figures,
    detail,
    small,
  };
}

/** Grain arrow, address, face mark and UP in a row, the name below. */
function drawBlock(part: Part, block: Block, centre: Point): readonly Mark[] {
  const { figures, small } = block;
  const base = centre.y - block.height / 2 + small * 2.2;
  const half = textWidth(part.id, figures, 'bold') / 2;
  const middle = base + figures / 2;
  const up = upDirection(part);
  const across = part.grain === 'along-width';
  const grainAt = { x: centre.x - half - figures * 1.5, y: middle };
  const grain =
    part.grain === 'any' ? [] : drawGrainArrow(grainAt, figures * (across ? 1 : 2), across ? Math.PI / 2 : 0);
  return [
    drawText({ x: centre.x, y: base }, part.id, {
      height: figures,
      align: 'middle',
      weight: 'bold',
      link: part.id,
    }),
    drawText({ x: centre.x, y: base - small * 1.8 }, block.detail, { height: small, align: 'middle' }),
    ...drawFaceMark({ x: centre.x + half + figures * 0.7, y: base + figures }, -figures),
    ...drawEdgeMark({ x: centre.x + half + figures * 1.05, y: base + figures }, -figures * 0.5),
    ...grain,
    ...(up === null ? [] : drawUp({ x: centre.x + half + figures * 2.1, y: middle }, up, figures)),
  ];
}

function drawUp(centre: Point, angle: number, length: number): readonly Mark[] {
  const [c, s] = [(Math.cos(angle) * length) / 2, (Math.sin(angle) * length) / 2];
  const height = Math.max(lettering.fine, length * 0.25);
  const upright = Math.abs(s) > Math.abs(c);
  const label = upright
    ? { x: centre.x + height * 0.5, y: centre.y - height / 2 }
    : { x: centre.x, y: centre.y + height * 0.5 };
  return [
    ...drawArrow(
      { x: centre.x - c, y: centre.y - s },
      { x: centre.x + c, y: centre.y + s },
      'outline',
      length * 0.28,
    ),
    drawText(label, 'UP', { height, align: upright ? 'start' : 'middle', weight: 'bold' }),
  ];
}
