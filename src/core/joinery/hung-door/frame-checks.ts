import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { InnerFace } from './frame-members.ts';
import { hingeSide, leafOf, valueOf, type MadePiece } from './made-door.ts';
import type { Piece } from '../piece-types.ts';
import type { BuiltPiece } from '../types.ts';

const show = markSize;
const cp = 'common practice, no source';

/** Codes of what is found about a frame and its doors together. */
export const frameFindings: readonly string[] = ['doors-in-frame', 'doors-differ', 'strike-wall'];

/** Findings on the doors that hang in a frame: one, or two that meet. */
export function checkDoorsOf(frame: BuiltPiece, doors: readonly MadePiece[]): readonly Problem[] {
  if (doors.length < 2) return doors.flatMap((door) => checkAlone(frame, door));
  const [one, other] = doors;
  const names = doors.map(({ built }) => `${built.letter} ${built.name}`).join(' and ');
  if (!one || !other) return [];
  const leaves = doors.map(({ piece }) => leafOf(piece));
  const isPair = doors.length === 2 && leaves.includes('first') && leaves.includes('second');
  if (!isPair || hingeSide(one.piece) === hingeSide(other.piece)) {
    return [
      {
        severity: 'stop',
        code: 'doors-in-frame',
        message: `${names} hang in one frame, ${doors.length} doors: ${isPair ? `both have their hinges on the ${hingeSide(one.piece)}` : 'together they fill it more than once'}.`,
        remedy: isPair
          ? 'Hinge one on the left and the other on the right.'
          : 'Of two doors make one the first and the other the bolted one; a third needs a frame of its own.',
        source: 'joinery B1, B2',
      },
    ];
  }
  const differ = meetingKeys.filter((key) => said(one.piece, key) !== said(other.piece, key));
  if (differ.length === 0) return [];
  return [
    {
      severity: 'stop',
      code: 'doors-differ',
      message: `${names}, 2 doors that meet, say differently ${differ.length > 1 ? 'how' : 'with what'} they meet: ${differ.map((key) => `${meetingWords[key]} ${said(one.piece, key)} and ${said(other.piece, key)}`).join(', ')}.`,
      remedy: 'Choose the same for both.',
      source: cp,
    },
  ];
}

const meetingKeys = ['meeting', 'meetingGap', 'meetingRebate'] as const;
const meetingWords = { meeting: 'edge', meetingGap: 'gap', meetingRebate: 'lap' } as const;
const usual = { meeting: 'gap', meetingGap: 3, meetingRebate: 10 } as const;

function said({ parameters }: Piece, key: (typeof meetingKeys)[number]): string {
  const given = (parameters as unknown as Readonly<Record<string, unknown>>)[key] ?? usual[key];
  return typeof given === 'number' ? show(given) : String(given);
}

/** One of two doors whose other half is not there. */
function checkAlone({ letter, name }: BuiltPiece, { piece, built }: MadePiece): readonly Problem[] {
  const leaf = leafOf(piece);
  if (leaf === 'whole') return [];
  return [
    {
      severity: 'warn',
      code: 'doors-in-frame',
      message: `${built.letter} ${built.name} is one of 2 doors, and alone in ${letter} ${name}.`,
      remedy: `Make the other one, ${leaf === 'first' ? 'bolted' : 'that opens first'}, with its hinges on the ${hingeSide(piece) === 'left' ? 'right' : 'left'}; or make this one alone.`,
      source: cp,
    },
  ];
}

const leastBehind = 3; // mm of wood behind a bolt hole, common practice, no source

/** A bolt hole that comes through a jamb. */
export function checkStrike(
  { name }: BuiltPiece,
  { part, depth, flat }: InnerFace,
  doors: readonly MadePiece[],
): readonly Problem[] {
  return doors.flatMap(({ built }) => {
    const value = valueOf(built);
    const deep = value('strike_in') ?? 0;
    if (flat || depth - deep >= leastBehind) return [];
    return [
      {
        severity: 'warn',
        code: 'strike-wall',
        about: part.id,
        message: `The bolt of ${built.letter} ${built.name} wants a hole ${show(deep)} deep in the jamb of ${name}, which is ${show(depth)} thick: ${show(Math.max(0, depth - deep))} is left.`,
        remedy: `Make the jambs ${show(deep + leastBehind)} thick, or back the hole with a block in the packing.`,
        source: cp,
      },
    ];
  });
}
