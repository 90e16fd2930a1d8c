import type { BuiltPiece, Part, PartSize } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { MadePart, Project } from '#core/project';
import { formatNumber } from '#core/units';

import { findSameHand, findShoulderLength } from './made-slips.ts';

/** Differences no saw shows, mm. */
const asGood = 0.3;

const sizes = ['length', 'width', 'thickness'] as const;

/** A part as it is now, to be kept as made: its size and a mark of its outline and joints. */
export function asMade(part: Part, count: number): MadePart {
  return { part: part.id, count, finished: part.finished, form: formOf(part) };
}

/** The pieces as far as they are still to be cut: parts that are made leave the cutting jobs, staves as shares of their part. */
export function withoutMade(project: Project, pieces: readonly BuiltPiece[]): readonly BuiltPiece[] {
  const counts = new Map((project.made ?? []).map((made) => [made.part, made]));
  if (counts.size === 0) return pieces;
  const left = (part: Part): number => {
    const { count = 0, staves = 0 } = counts.get(part.id) ?? {};
    return Math.max(0, part.quantity - count - staves / (part.staves?.count ?? Infinity));
  };
  return pieces.map((piece) => ({
    ...piece,
    parts: piece.parts.map((part) => ({
      ...part,
      quantity: left(part),
    })),
  }));
}

/** Where what is cut no longer agrees with what is planned: it can be trimmed, or has to be made anew. */
export function checkMade(project: Project, pieces: readonly BuiltPiece[]): readonly Problem[] {
  const parts = new Map(pieces.flatMap((piece) => piece.parts.map((part) => [part.id, part] as const)));
  const all = project.made ?? [];
  return all.flatMap((made) => {
    const part = parts.get(made.part);
    if (!part) return [noLongerWanted(made)];
    const slip = findShoulderLength(made, part) ?? findSameHand(made, part, [...parts.values()], all);
    return slip ? [slip] : compareMade(made, part);
  });
}

function compareMade(made: MadePart, part: Part): readonly Problem[] {
  const off = sizes
    .map((size) => ({ size, by: made.finished[size] - part.finished[size] }))
    .filter(({ by }) => Math.abs(by) > asGood);
  const short = off.filter(({ by }) => by < 0);
  const about = part.id;
  const were = `${part.id} ${part.name} was cut at ${show(made.finished)} mm; as planned now it would be ${show(part.finished)}`;
  if (short.length > 0)
    return [
      {
        severity: 'stop',
        code: 'made-too-small',
        about,
        message: `${were}: ${words(short)} too small.`,
        remedy:
          'Set the size or reading back that has changed since, or make the part anew and untick it here.',
      },
    ];
  if (off.length > 0)
    return [
      {
        severity: 'warn',
        code: 'made-too-large',
        about,
        message: `${were}: ${words(off)} too large.`,
        remedy: 'Trim it on the side away from its joints before it is fitted, then enter the new size.',
      },
    ];
  if (made.form === formOf(part)) return extraMade(made, part);
  return [
    {
      severity: 'warn',
      code: 'made-differently',
      about,
      message: `${part.id} ${part.name} has its size, but its outline or joints have changed since it was cut.`,
      remedy: 'Compare it with its new part sheet: rework it, make it anew, or set back what has changed.',
    },
  ];
}

function extraMade(made: MadePart, part: Part): readonly Problem[] {
  if (made.count <= part.quantity) return [];
  return [
    {
      severity: 'note',
      code: 'made-too-many',
      about: part.id,
      message: `${made.count} of ${part.id} ${part.name} are cut, ${part.quantity} are wanted.`,
    },
  ];
}

function noLongerWanted(made: MadePart): Problem {
  return {
    severity: 'warn',
    code: 'made-not-wanted',
    about: made.part,
    message: `${made.part} was cut at ${show(made.finished)} mm, and no piece wants such a part any more.`,
    remedy: 'Put it on the rack as an offcut, or set back what has changed.',
  };
}

function words(off: readonly { readonly size: string; readonly by: number }[]): string {
  return off.map(({ size, by }) => `${size} ${formatNumber(Math.abs(by), 1)}`).join(', ');
}

function show({ length, width, thickness }: PartSize): string {
  return [length, width, thickness].map((size) => formatNumber(size, 1)).join(' × ');
}

/** A mark of the outline, holes and machining of a part, the same as long as none moves by a twentieth of a millimetre (FNV-1a). */
function formOf({ outline, holes, machining }: Part): string {
  const text = JSON.stringify([outline, holes, machining], (key, value: unknown) =>
    key === 'note' ? undefined : typeof value === 'number' ? Math.round(value * 20) / 20 : value,
  );
  let mark = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) mark = Math.imul(mark ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return mark.toString(16).padStart(8, '0');
}
