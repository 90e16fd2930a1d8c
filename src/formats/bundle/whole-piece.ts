import { drawElevation, drawExploded, drawMembers, type Drawing } from '#core/drawing';
import type { BuiltPiece } from '#core/joinery';
import { describeThings, type PieceFit } from '#core/pipeline';
import type { LengthSystem } from '#core/units';

import { drawFitNotes } from './fit-notes.ts';

/** What the drawings of a whole piece are made for; mm of paper. */
interface WholePaper {
  readonly width: number;
  readonly units: LengthSystem;
  readonly fits: readonly PieceFit[];
}

/** Lettering and room of the heading over a member, and what is left free beside it, mm. */
const heading = { height: 3, room: 6 } as const;
const beside = 5;

/** A piece assembled, how surely it fits, and pulled apart; one made of several pieces by these and then each of them by its parts. */
export function drawWhole(piece: BuiltPiece, { width, units, fits }: WholePaper): readonly Drawing[] {
  const notes = fits.filter((fit) => fit.piece === piece.piece).map((fit) => drawFitNotes(fit, width));
  const members = drawMembers(piece, { width });
  return [
    drawElevation(piece, { width, units }),
    ...notes,
    ...(members ? [members, ...drawEach(piece, (width - beside) / 2)] : [drawExploded(piece, { width })]),
  ];
}

/** Each member by itself, half as wide as the page, under its name and addresses. */
function drawEach(piece: BuiltPiece, width: number): readonly Drawing[] {
  return (piece.members ?? []).flatMap(({ name, parts }) => {
    const own = piece.parts.filter(({ id }) => parts.includes(id));
    if (own.length < 2) return [];
    const drawing = drawExploded({ ...piece, name, parts: own }, { width: width - 4, height: width });
    const { minX, maxX, minY, maxY } = drawing.bounds;
    const text = `${name}: ${describeThings(parts)}`;
    return [
      {
        ...drawing,
        title: `${piece.letter}  ${name}`,
        bounds: {
          minX: (minX + maxX - width) / 2,
          maxX: (minX + maxX + width) / 2,
          minY,
          maxY: maxY + heading.room,
        },
        marks: [
          ...drawing.marks,
          {
            ...{ kind: 'text', text, height: heading.height, align: 'start', weight: 'bold' },
            at: { x: (minX + maxX - width) / 2, y: maxY + 1.5 },
          } as const,
        ],
      },
    ];
  });
}
