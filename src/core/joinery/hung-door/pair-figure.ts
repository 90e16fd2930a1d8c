import { markSize } from '#core/units';
import { hingeSide, isLeaf, valueOf, type MadePiece } from './made-door.ts';
import { meetingDoor } from './strike-in-door.ts';
import { sawnApart } from '../rules.ts';
import type { BuiltPiece, MatchedSet, Part } from '../types.ts';

const trim = 5; // at each end of a strip, mm (joinery B6, calculated example)
const noteStart = 'Figure runs on';

/**
 * A flat door whose sheet and that of the door it meets come out of one strip, neighbours in order, so that the figure runs
 * on from one to the other (joinery D3, B6), where the one that opens first asks for it; the set stands with the left one.
 * The very same when nothing changes.
 */
export function withPairFigure(door: MadePiece, all: readonly MadePiece[]): BuiltPiece {
  const { built, piece } = door;
  if (piece.kind !== 'flat-door') return built;
  const set = setOf(door, all);
  const isLeft = hingeSide(piece) === 'left';
  const done: BuiltPiece = {
    ...built,
    matchedSets: set && isLeft ? [set] : [],
    parts: built.parts.map((part) => markPart(part, set)),
  };
  return JSON.stringify(done) === JSON.stringify(built) ? built : done;
}

function markPart(part: Part, set: MatchedSet | null): Part {
  const { matched, ...plain } = part;
  const notes = part.notes.filter((note) => !note.startsWith(noteStart));
  const index = set?.parts.indexOf(part.id) ?? -1;
  if (!set || index < 0) return matched || notes.length < part.notes.length ? { ...plain, notes } : part;
  const between = markSize(set.between[0] ?? 0);
  const note = `${noteStart} over both doors: ${set.parts.join(' and ')} out of one strip in this order, neither turned nor flipped, ${between} thrown away between them.`;
  return { ...plain, notes: [...notes, note], matched: { set: set.id, index } };
}

function setOf(door: MadePiece, all: readonly MadePiece[]): MatchedSet | null {
  const other = meetingDoor(door, all);
  if (!other) return null;
  const first = isLeaf(door.piece, 'first') ? door : other;
  if (first.piece.kind !== 'flat-door' || first.piece.parameters.figure !== 'through') return null;
  const [left, right] = hingeSide(door.piece) === 'left' ? [door, other] : [other, door];
  const [one, next] = [coreOf(left), coreOf(right)];
  if (!one || !next || one.material !== next.material) return null;
  const value = (made: MadePiece, name: string) => valueOf(made.built)(name) ?? 0;
  const lips = value(left, 'a_lock') + value(right, 'a_lock');
  // what covers or hides the figure between the two sheets is thrown away, so that it runs on truly
  const hidden = lips + value(first, 'gm') - value(first, 'lap');
  return {
    id: `${left.built.letter} and ${right.built.letter}`,
    parts: [one.id, next.id],
    direction: 'across',
    between: [Math.max(sawnApart, hidden)],
    trim,
  };
}

function coreOf({ piece, built }: MadePiece): Part | undefined {
  return piece.kind === 'flat-door' ? built.parts.find(({ name }) => name === 'Core') : undefined;
}
