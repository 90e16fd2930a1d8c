import { formatNumber, markSize } from '#core/units';
import type { FrameLayout } from './layout.ts';
import { partNumbers } from './parts.ts';
import { pluggedJoint } from './plugged.ts';
import { housingRoom } from '../joints/standing-joints.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { partAddress } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { CornerName } from '../survey-fit.ts';
import type { Joint } from '../types.ts';

const show = markSize;

/** The corner joints with the saw settings for them (joinery C20). Fence settings are to the near side of the blade less its kerf. */
export function frameJoints(piece: Piece, layout: FrameLayout): readonly Joint[] {
  const { choices } = layout;
  const between = (one: number, other: number) =>
    [partAddress(piece, one), partAddress(piece, other)] as const;
  const joint = (jamb: number, other: number, kind: string, settings: readonly string[]): Joint => ({
    kind,
    between: between(jamb, other),
    count: 1,
    settings,
  });
  const jambs = [partNumbers.left, partNumbers.right];
  const top = (jamb: number) => settingsOf(layout, jamb === partNumbers.left ? 'TL' : 'TR');
  const sill = (jamb: number) =>
    choices.flat ? settingsOf(layout, jamb === partNumbers.left ? 'BL' : 'BR') : sillSettings(layout);
  const sillKind = choices.flat ? choices.corner : `sill ${choices.sillJoint}`;
  return [
    ...jambs.map((jamb) => joint(jamb, partNumbers.head, choices.corner, top(jamb))),
    ...(choices.sill ? jambs.map((jamb) => joint(jamb, partNumbers.sill, sillKind, sill(jamb))) : []),
  ];
}

const onHeadLine = 'with its upper edge on the line of the head';

function settingsOf(layout: FrameLayout, at: CornerName): readonly string[] {
  const { book, choices } = layout;
  const [jamb, head] = [book.value(layout.jamb), book.value(layout.head)];
  const depth = book.value('Ld');
  const joint = choices.jointDepth;
  const gap = choices.glue ? gluedGap(choices.glue) : 0;
  const room = show(choices.glue ? housingRoom(choices.glue) : 0.1, 2); // 0.1 to 0.2 (joinery C7)
  switch (choices.corner) {
    case 'rebate':
      return [
        `Head, inner face down: blade ${show(joint)} high, fence ${show(jamb)} less the kerf to the near side of the blade.`,
        `Head on end against a tall fence: blade ${show(jamb)} high, fence ${show(head - joint)}; the waste falls on the free side.`,
        'One setting serves both ends; try it on an offcut with the jamb itself.',
      ];
    case 'tongue':
      return [
        `Head, inner face down: trench ${show(choices.tongueThickness)} wide, ${show(joint)} deep, its near edge ${show(jamb - choices.tongueThickness)} from the end.`,
        `Jamb, face up: shoulder ${show(joint)} from the top (stop to the far side of the blade), blade ${show(jamb - choices.tongueThickness)} high from the back.`,
      ];
    case 'housing-over':
      return [
        `Head, inner face down: trench ${show(jamb)} wide plus ${room}, ${show(joint)} deep, its near edge ${show(choices.horn)} from the end.`,
      ];
    case 'housing-between': {
      const from = choices.infill ? onHeadLine : `${show(choices.horn)} from the top`;
      return [
        `Jambs paired, inner faces together: trench ${show(head)} wide plus ${room}, ${show(joint)} deep, ${from}.`,
      ];
    }
    case 'half-lap':
      return [
        `Blade ${show(depth / 2)} high: jamb cheek from the face over ${show(choices.headThickness)}, head cheek from the back over ${show(jamb)}.`,
        `Both cheeks together ${show(depth)}, within ${show(0.1)}: try on an offcut.`,
      ];
    case 'bridle':
      return [
        `Slot in the jamb: ${show(depth / 3 + 2 * gap, gap > 0 ? 2 : 1)} wide, ${show(choices.headThickness)} deep, in the middle of ${show(depth)}.`,
        `Head cheeks: blade ${show(depth / 3)} high from both faces, shoulder ${show(jamb)} from the end.`,
      ];
    case 'mitre':
      return mitreSettings(layout, at);
    case 'dowel':
    case 'loose-tenon':
    case 'butt':
      return [
        `Head between the jambs: ${show(book.value('head_L'))} long, ends square to the jambs.`,
        ...(pluggedJoint(layout)?.settings ?? []),
      ];
  }
}

function mitreSettings({ book }: FrameLayout, at: CornerName): readonly string[] {
  const other = at.startsWith('T') ? 'head' : 'sill';
  const angle = (member: string) => formatNumber(book.value(`phi_${member}_${at}`), 2);
  return [
    `Mitre ${at}: jamb ${angle('jamb')}, ${other} ${angle(other)} degrees between outer edge and cut.`,
    `Spline slot ${show(book.value('Ld') / 4)} wide in the middle of both mitres, clear of the outer corner, ending 15 % before the inner one.`,
  ];
}

function sillSettings({ book, choices, jamb }: FrameLayout): readonly string[] {
  if (choices.sillJoint === 'butt') return ['Jamb on the sill, two screws from below.'];
  const tongue = choices.tongueThickness;
  const stock = book.value(jamb);
  const nosing = choices.sillNosing ? `, stopped ${show(choices.sillNosing)} from the near edge` : '';
  return [
    `Sill: trench ${show(tongue)} wide, ${show(book.value('gt_sill'))} deep, its near edge ${show(stock - tongue)} from the end${nosing}.`,
    `Jamb foot: shoulder ${show(book.value('gt_sill'))} from the end, blade ${show(stock - tongue)} high from the back.`,
  ];
}
