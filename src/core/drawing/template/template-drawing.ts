import { boxOfOutline } from '#core/geometry';
import type { Outline } from '#core/geometry';
import type { Part, PartEdge } from '#core/joinery';
import type { LengthSystem } from '#core/units';
import { drawArea, drawLine, drawText, joinBoxes, lettering } from '../marks.ts';
import { asSeen, innerPoint, seenOnFace } from '../part-view.ts';
import { formatSize } from '../scales.ts';
import { cutOutline, seenEdgeLines } from '../scribe-edge.ts';
import { drawCross, drawWave } from '../symbols.ts';
import type { Drawing, Mark } from '../types.ts';

const roundPart = 3; // mm of paper round the part, so that its line is never cut off

/** The part at full size seen from its face side, with machining, scribe lines and crosses to check the print by. */
export function drawTemplateSheet(part: Part, units?: LengthSystem): Drawing {
  const outline = asSeen(part.outline, part);
  const marks: Mark[] = [
    drawArea(outline, 'cut', 'none', part.id),
    ...part.holes.map((hole) => drawArea(asSeen(hole, part), 'cut', 'none', part.id)),
    ...part.machining.flatMap((machining) => {
      const seen = seenOnFace(machining, part);
      return seen ? [drawArea(seen.outline, seen.near ? 'thin' : 'hidden')] : [];
    }),
    ...part.edges.flatMap((edge) => drawLeftOn(edge, part, units)),
    ...drawCrosses(outline, units),
  ];
  const whole = joinBoxes([outline, asSeen(cutOutline(part), part)].map(boxOfOutline));
  const bounds = {
    minX: whole.minX - roundPart,
    minY: whole.minY - roundPart,
    maxX: whole.maxX + roundPart,
    maxY: whole.maxY + roundPart,
  };
  return { title: `${part.id}  ${part.name}`, bounds, scale: 1, marks };
}

/** Two crosses each way over an outline, with how far they are apart: to check a print and to lay pages together by. */
export function drawCrosses(outline: Outline, units?: LengthSystem): readonly Mark[] {
  return crossPairs(outline).flatMap(({ at, turn, apart }) => [
    ...at.flatMap((point) => drawCross(point, 3, 'thin')),
    ...at.slice(0, 1).map((point) => {
      const note = turn === 0 ? { x: point.x + 5, y: point.y + 1 } : { x: point.x - 1, y: point.y + 5 };
      return drawText(note, `crosses ${formatSize(apart, units)} apart`, {
        height: lettering.fine,
        turn,
        tone: 'soft',
      });
    }),
  ]);
}

function drawLeftOn(edge: PartEdge, part: Part, units?: LengthSystem): readonly Mark[] {
  if (edge.treatment !== 'scribed' && edge.treatment !== 'flushed') return [];
  const isScribed = edge.treatment === 'scribed';
  const by = edge.amount ?? 0;
  const along = edge.edge === 'face-edge' || edge.edge === 'far-edge';
  return seenEdgeLines(part, edge.edge, by).flatMap((line) => {
    const start = line.reduce((low, p) => ((along ? p.x < low.x : p.y < low.y) ? p : low));
    const at = along ? { x: start.x + 15, y: start.y - 5 } : { x: start.x + 6, y: start.y + 15 };
    const words = isScribed ? 'cut at the wave, scribe' : 'cut at the outer line, flush';
    const text = drawText(at, `${words} ${formatSize(by, units)}`, {
      height: lettering.small,
      ...(!along && { turn: Math.PI / 2 }),
    });
    return [isScribed ? drawWave(line, 'outline', 6) : drawLine(line, 'thin'), text];
  });
}

interface CrossPair {
  readonly at: readonly [{ x: number; y: number }, { x: number; y: number }];
  readonly turn: number;
  readonly apart: number;
}

/** Two crosses each way, 80 % and more of the size apart (joinery A9); one pair only on a narrow part. */
export function crossPairs(outline: Outline): readonly CrossPair[] {
  const box = boxOfOutline(outline);
  const [wide, tall] = [box.maxX - box.minX, box.maxY - box.minY];
  // off the middle, where joins of pages tend to lie
  const middle = innerPoint(outline, { x: box.minX + wide * 0.44, y: box.minY + tall * 0.44 });
  const inset = (size: number) => Math.min(10, size * 0.08);
  const level: CrossPair = {
    at: [
      { x: box.minX + inset(wide), y: middle.y },
      { x: box.maxX - inset(wide), y: middle.y },
    ],
    turn: 0,
    apart: wide - 2 * inset(wide),
  };
  if (tall < 60) return [level];
  const upright: CrossPair = {
    at: [
      { x: middle.x, y: box.minY + inset(tall) },
      { x: middle.x, y: box.maxY - inset(tall) },
    ],
    turn: Math.PI / 2,
    apart: tall - 2 * inset(tall),
  };
  return [level, upright];
}
