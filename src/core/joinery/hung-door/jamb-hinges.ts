import { formatNumber } from '#core/units';
import { makeRecess } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { BuiltPiece, Machining, Part } from '../types.ts';

const show = formatNumber;
const bedNote = 'hinge leaf of';
const listNote = 'Hinge beds for';

/** A piece as asked for and as built. */
export interface MadePiece {
  readonly piece: Piece;
  readonly built: BuiltPiece;
}

/**
 * A door frame with beds for the hinges of the doors that hang in it (joinery B2.6), in the jamb on their hinge side; the
 * very same when nothing changes. Doors are built from their frame, so this comes last. A flat frame keeps its jambs plain.
 */
export function withHingeBeds(frame: MadePiece, doors: readonly MadePiece[]): BuiltPiece {
  const { built } = frame;
  const hung = doors.filter(
    ({ piece }) => 'frame' in piece.parameters && piece.parameters.frame === built.piece,
  );
  const parts = built.parts.map((part) => bedded(part, frame, hung));
  return parts.every((part, i) => part === built.parts[i]) ? built : { ...built, parts };
}

function bedded(part: Part, frame: MadePiece, doors: readonly MadePiece[]): Part {
  const isJamb = part.name.startsWith('Jamb') && part.faceSide.startsWith('face side to the door opening');
  if (!isJamb) return part;
  const here = doors.filter(({ piece }) => hingeSide(piece) === part.hand);
  const beds = here.flatMap((door) => bedsFor(part, frame, door));
  const plain = part.machining.filter((one) => !noteOf(one).startsWith(bedNote));
  const machining = [...plain, ...beds];
  const plainNotes = part.notes.filter((note) => !note.startsWith(listNote));
  const notes = [...plainNotes, ...here.map((door) => listBeds(part, frame, door))];
  const isSame = JSON.stringify([machining, notes]) === JSON.stringify([part.machining, part.notes]);
  return isSame ? part : { ...part, machining, notes };
}

function hingeSide({ parameters }: Piece): 'left' | 'right' {
  return 'hinged' in parameters && parameters.hinged === 'right' ? 'right' : 'left';
}

function noteOf(one: Machining): string {
  return one.note ?? '';
}

/** Middles of the hinges along the jamb, from its start, in the order of the door from the top. */
function middlesOn(
  jamb: Part,
  { piece, built: frame }: MadePiece,
  { built: door }: MadePiece,
): readonly number[] {
  const at = jamb.placements[0];
  const head = frame.parts.find(({ name }) => name === 'Head')?.placements[0];
  const value = valueOf(door);
  const [height, gap] = [value('Hd'), valueOf(frame)('gt')];
  if (!at || !head || height === null || gap === null || Math.abs(at.xAxis.y) < 0.5) return [];
  const under = head.origin.y + ((at.origin.x - head.origin.x) * head.xAxis.y) / head.xAxis.x;
  const top = under + rebateOf(piece, frame) - gap;
  return ['hinge_top', 'hinge_mid', 'hinge_low'].flatMap((name) => {
    const above = value(name);
    return above === null ? [] : [(top - height + above - at.origin.y) / at.xAxis.y];
  });
}

function rebateOf(piece: Piece, frame: BuiltPiece): number {
  return stopOf(piece) === 'rebated' ? (valueOf(frame)('r') ?? 0) : 0;
}

function stopOf({ parameters }: Piece): string {
  return 'stop' in parameters ? (parameters.stop ?? 'planted') : 'planted';
}

/** Beds as deep as those in the door, open to the side of the knuckles; behind a far cover the door lies at the far edge. */
function bedsFor(jamb: Part, frame: MadePiece, door: MadePiece): readonly Machining[] {
  const value = valueOf(door.built);
  const [long, deep, leaf, T] = ['hinge_L', 'hinge_in', 'hinge_leaf', 'T'].map(value);
  if (long == null || deep == null || leaf == null || T == null) return [];
  const near = stopOf(frame.piece) === 'cover' ? Math.max(0, jamb.finished.width - T) : 0;
  const rebate = rebateOf(frame.piece, frame.built);
  return middlesOn(jamb, frame, door)
    .filter((middle) => middle - long / 2 > 0 && middle + long / 2 < jamb.finished.length)
    .map((middle) =>
      makeRecess(
        'housing',
        'face',
        {
          x: [middle - long / 2, middle + long / 2],
          y: [near, Math.min(near + leaf, jamb.finished.width)],
          z: [0, rebate + deep],
        },
        `${bedNote} ${door.built.letter}; width and depth from the hinge itself`,
      ),
    );
}

function listBeds(jamb: Part, frame: MadePiece, door: MadePiece): string {
  const upwards = (jamb.placements[0]?.xAxis.y ?? 1) > 0;
  const from = upwards ? 'foot' : 'top';
  const middles = middlesOn(jamb, frame, door).map((middle) => show(middle));
  return `${listNote} ${door.built.letter} ${door.built.name}: middles ${middles.join(', ')} from the ${from}.`;
}

function valueOf(built: BuiltPiece): (name: string) => number | null {
  return (name) => built.working.find((step) => step.name === name)?.value ?? null;
}
