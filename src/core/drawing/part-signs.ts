import { flattenOutline } from '#core/geometry';
import type { Box, Outline, Point } from '#core/geometry';
import type { Part } from '#core/joinery';
import type { LengthSystem } from '#core/units';
import type { BrokenLength } from './broken-length.ts';
import { boxAround, findRoom } from './find-room.ts';
import { drawText, lettering } from './marks.ts';
import { drawEdgeMark, drawFaceMark, drawGrainArrow } from './symbols.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

/** A part on its way to paper. */
export interface PartSheet {
  readonly part: Part;
  readonly along: BrokenLength;
  /** mm of paper for one mm across. */
  readonly scale: number;
  readonly units: LengthSystem;
}

/** Address, grain arrow and face mark where no machining is in the way (left out when there is no room), edge mark on the face edge. */
export function drawFaceSigns(
  { part, along, scale }: PartSheet,
  outline: Outline,
  machined: readonly Box[],
): readonly Mark[] {
  const tall = part.finished.width * scale;
  const right = along.place(part.finished.length);
  const breaks = along.breaks.map((x) => ({ minX: x - 4, maxX: x + 4, minY: -2, maxY: tall + 2 }));
  const taken: Box[] = [...machined, ...breaks, ...slantingSides(outline)];
  const place = (width: number, height: number, wanted: Point): Point | null => {
    const at = findRoom(
      { width: width + 2, height: height + 1, inside: outline },
      { minX: 0, maxX: right, minY: 0, maxY: tall },
      taken,
      wanted,
    );
    if (at) taken.push(boxAround(at, width + 2, height + 1));
    return at;
  };
  const middle = tall / 2;
  const { usual } = lettering;
  const address = place(textWidth(part.id, usual, 'bold'), usual, { x: right * 0.62, y: middle });
  const across = part.grain === 'along-width';
  const grain = part.grain === 'any' ? null : findGrainRoom(across ? tall : right, across, place, middle);
  const size = Math.min(7, Math.max(3, tall * 0.3));
  const face = place(size * 0.5, size, { x: right * 0.48, y: tall - size * 0.5 - 0.6 });
  return [
    ...(address
      ? [
          drawText({ x: address.x, y: address.y - usual / 2 }, part.id, {
            weight: 'bold',
            align: 'middle',
            link: part.id,
          }),
        ]
      : []),
    ...(grain ? drawGrainArrow(grain.at, grain.run, across ? Math.PI / 2 : 0) : []),
    ...(face ? drawFaceMark({ x: face.x + size * 0.2, y: face.y + size / 2 }, -size) : []),
    ...drawEdgeMark({ x: clearOfStations(right * 0.48, machined), y: tall + 0.4 }, 3),
  ];
}

/** Room for the grain arrow, as long as there is place for. */
function findGrainRoom(
  side: number,
  across: boolean,
  place: (width: number, height: number, wanted: Point) => Point | null,
  middle: number,
): { readonly at: Point; readonly run: number } | null {
  for (const longest of [20, 13, 8, 5]) {
    const run = Math.min(longest, side * 0.5);
    const wanted = { x: across ? run : side * 0.3, y: middle };
    const at = place(across ? 3 : run, across ? run : 3, wanted);
    if (at) return { at, run };
  }
  return null;
}

const sidePieces = 12;

/** Small boxes along the sides of an outline that are neither level nor upright, to keep lettering off them. */
function slantingSides(outline: Outline): readonly Box[] {
  const points = flattenOutline(outline, 0.5);
  return points.flatMap((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    if (Math.abs(a.x - b.x) < 0.2 || Math.abs(a.y - b.y) < 0.2) return [];
    const [w, h] = [Math.abs(b.x - a.x) / sidePieces, Math.abs(b.y - a.y) / sidePieces];
    return Array.from({ length: sidePieces }, (_, k) => {
      const t = (k + 0.5) / sidePieces;
      return boxAround({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }, w, h);
    });
  });
}

/** A place along the part at least 3 mm of paper from where any machining begins or ends. */
function clearOfStations(wanted: number, machined: readonly Box[]): number {
  const stations = machined.flatMap((box) => [box.minX, box.maxX]);
  const tries = Array.from({ length: 40 }, (_, i) => wanted + (i % 2 ? -1 : 1) * i);
  return tries.find((x) => stations.every((station) => Math.abs(station - x) > 3)) ?? wanted;
}

/** The number under which a machining is described, in its contour or just beside a small one. */
export function drawNumber(number: number, box: Box): Mark {
  const { fine } = lettering;
  const roomy = box.maxX - box.minX > 3 && box.maxY - box.minY > 3;
  const at = roomy
    ? { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 - fine / 2 }
    : { x: box.maxX + 1.2, y: (box.minY + box.maxY) / 2 - fine / 2 };
  return drawText(at, String(number), { height: fine, align: 'middle' });
}
