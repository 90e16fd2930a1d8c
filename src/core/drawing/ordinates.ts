import { boxOfOutline } from '#core/geometry';
import type { Part } from '#core/joinery';
import type { LengthSystem } from '#core/units';
import type { BrokenLength } from './broken-length.ts';
import { spreadDown } from './leaders.ts';
import { drawLine, drawText, lettering } from './marks.ts';
import { seenOnFace } from './part-view.ts';
import { formatSize } from './scales.ts';
import type { Mark } from './types.ts';

const apart = 4; // mm of paper between two numbers
const most = 24; // numbers; a part with more is marked out from its list

/** Running dimensions from the start end above the face view, one for each place where machining begins or ends. */
export function drawOrdinates(
  part: Part,
  along: BrokenLength,
  { top, units }: { readonly top: number; readonly units: LengthSystem },
): readonly Mark[] {
  const { length } = part.finished;
  const inside = part.machining
    .flatMap((machining) => {
      if (machining.kind === 'hole' && (machining.from === 'face' || machining.from === 'back'))
        return [machining.x];
      const outline = seenOnFace(machining, part)?.outline;
      return outline ? [boxOfOutline(outline).minX, boxOfOutline(outline).maxX] : [];
    })
    .filter((x) => x > 0.05 && x < length - 0.05)
    .map((x) => Math.round(x * 10) / 10);
  const stations = [...new Set(inside)].sort((a, b) => a - b);
  if (stations.length === 0 || stations.length > most) return [];
  const all = [0, ...stations];
  const wanted = all.map((x) => along.place(x));
  // spreadDown works from the top; turned round it serves from left to right
  const places = spreadDown(
    wanted.map((x) => -x),
    apart,
  ).map((x) => -x);
  return all.flatMap((x, i) => {
    const [from, to] = [wanted[i] ?? 0, places[i] ?? 0];
    return [
      drawLine(
        [
          { x: from, y: top + 1 },
          { x: from, y: top + 3 },
          { x: to, y: top + 6 },
          { x: to, y: top + 8 },
        ],
        'thin',
      ),
      drawText({ x: to + lettering.small / 2, y: top + 9 }, formatSize(x, units), {
        height: lettering.small,
        turn: Math.PI / 2,
      }),
    ];
  });
}
