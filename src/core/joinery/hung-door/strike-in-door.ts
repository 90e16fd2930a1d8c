import { cutBox } from './cut-box.ts';
import { boxAtEdge, outOfLockEdge } from './lock-edge.ts';
import { hingeSide, isLeaf, valuesOf, valueOf, type MadePiece } from './made-door.ts';
import type { Range } from '../parts.ts';
import type { BuiltPiece, Part } from '../types.ts';

const notes = { strike: 'strike of', hole: 'bolt hole of' } as const;

/** The second of two doors with the strike of the first one's mortise lock in its meeting edge; the very same when nothing changes. */
export function withStrike(door: MadePiece, all: readonly MadePiece[]): BuiltPiece {
  const { built } = door;
  const plain = built.parts.map(withoutStrike);
  const first = isLeaf(door.piece, 'second') ? meetingDoor(door, all) : undefined;
  if (!first && plain.every((part, i) => part === built.parts[i])) return built;
  const parts = first ? struck(plain, door, first) : plain;
  const isSame = JSON.stringify(parts) === JSON.stringify(built.parts);
  return isSame ? built : { ...built, parts };
}

function withoutStrike(part: Part): Part {
  const machining = part.machining.filter(
    ({ note = '' }) => !Object.values(notes).some((start) => note.startsWith(start)),
  );
  return machining.length === part.machining.length ? part : { ...part, machining };
}

/** The other of two doors in the same opening, hinged on the other side; undefined when it is not there. */
export function meetingDoor(door: MadePiece, all: readonly MadePiece[]): MadePiece | undefined {
  const wanted = isLeaf(door.piece, 'second') ? 'first' : isLeaf(door.piece, 'first') ? 'second' : null;
  return wanted === null ? undefined : all.find((other) => isLeaf(other.piece, wanted) && meets(door, other));
}

function meets(door: MadePiece, other: MadePiece): boolean {
  const at = (made: MadePiece) => JSON.stringify(placeOf(made));
  return hingeSide(other.piece) !== hingeSide(door.piece) && placeOf(door) !== null && at(other) === at(door);
}

function placeOf({ piece }: MadePiece): readonly unknown[] | null {
  const given = piece.parameters as unknown as Readonly<Record<string, unknown>>;
  if (given['frame'] !== undefined) return [given['frame']];
  if (given['cabinetFront'] === undefined) return null;
  return [given['cabinetFront'], given['row'] ?? 1, given['column'] ?? 1];
}

function struck(parts: readonly Part[], { piece, built }: MadePiece, first: MadePiece): readonly Part[] {
  const [middle, high, wide, plate] = valuesOf(first.built, 'case_mid', 'forend_H', 'forend_W', 'forend_T');
  const [hole, holeWide, deep] = valuesOf(first.built, 'strike_H', 'strike_W', 'strike_in');
  const T = valueOf(built)('T');
  if ([middle, high, wide, plate, hole, holeWide, deep, T].some((one) => one === null)) return parts;
  const hinged = { hinged: hingeSide(piece) };
  const book = { value: (name: string) => valueOf(built)(name) ?? 0 };
  const about = (size: number | null, at: number | null): Range => [
    (at ?? 0) - (size ?? 0) / 2,
    (at ?? 0) + (size ?? 0) / 2,
  ];
  const cut = (
    all: readonly Part[],
    name: 'housing' | 'mortise',
    size: { readonly up: number | null; readonly width: number | null; readonly into: number | null },
  ) =>
    cutBox(all, {
      name,
      box: boxAtEdge(book, hinged, {
        into: [0, size.into ?? 0],
        up: about(size.up, middle ?? null),
        deep: about(size.width, (T ?? 0) / 2),
      }),
      out: outOfLockEdge(hinged),
      note: `${name === 'housing' ? notes.strike : notes.hole} ${first.built.letter}; size from the lock itself`,
    });
  const bed = cut(parts, 'housing', { up: high ?? null, width: wide ?? null, into: plate ?? null });
  return cut(bed, 'mortise', { up: hole ?? null, width: holeWide ?? null, into: deep ?? null });
}
