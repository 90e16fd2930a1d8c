import { formatNumber, markSize } from '#core/units';
import { flatDoorNumbers } from './parts.ts';
import type { DoorLayout } from './sizes.ts';
import { hangInOrder, inFrame, measureDoor, wordHanging } from '../hung-door/lists.ts';
import { latchKit, lockSteps, wordLatch } from '../hung-door/lock-steps.ts';
import { hingeHeights } from '../hung-door/hinges.ts';
import { partAddress } from '../parts.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { JoinerySettings, Piece } from '../piece-types.ts';
import type { AssemblyStep, Part } from '../types.ts';

const show = markSize;
type PickParts = (...keys: readonly (keyof typeof flatDoorNumbers)[]) => readonly Part[];

/** Order of work of a flat door (joinery B2); minutes are common practice, no source. */
export function flatDoorSteps(
  piece: Piece,
  layout: DoorLayout,
  made: { readonly parts: readonly Part[]; readonly settings: JoinerySettings },
): readonly AssemblyStep[] {
  const pick: PickParts = (...keys) =>
    made.parts.filter((part) => keys.some((key) => part.id === partAddress(piece, flatDoorNumbers[key])));
  return chainSteps([
    ...measureAndCut(layout, pick),
    ...lip(layout, pick),
    ...shape(layout, pick, made.settings),
    ...fitHardware(layout, pick),
    ...finishAndHang(layout, pick),
  ]);
}

function measureAndCut({ book, choices }: DoorLayout, pick: PickParts): readonly StepDraft[] {
  const v = book.value;
  return [
    ...measureDoor(book, choices.frame),
    {
      id: 'core',
      text: `Cut the core ${show(v('core_W'))} × ${show(v('core_H'))}, face grain upright, from a trued edge of the sheet; mark face side and top.`,
      place: 'workshop',
      minutes: 20,
      parts: pick('core'),
    },
    {
      id: 'strips',
      text: `Rip the lippings ${show(v('lip_rough_W'))} thick, ${show(0.5)} over their width and ${show(20)} over their length, and one spare.`,
      place: 'workshop',
      minutes: 20,
      parts: pick('hinge', 'lock', 'top', 'bottom'),
    },
    ...(choices.blocks
      ? [
          {
            id: 'blocks',
            text: `Notch the corners of the core ${show(v('notch_v'))} up and ${show(v('notch_hinge'))} and ${show(v('notch_lock'))} across; saw the blocks ${show(v('block'))} square with the grain across the corner and glue them in, ${show(1)} proud of each face.`,
            place: 'workshop' as const,
            minutes: 60,
            parts: pick('core', 'blocksHinge', 'blockLockTop', 'blockLockFoot'),
          },
        ]
      : []),
  ];
}

function lip({ choices }: DoorLayout, pick: PickParts): readonly StepDraft[] {
  const mitred = choices.lipJoint === 'mitre' && !choices.blocks;
  const ends = choices.blocks
    ? 'between the blocks, cut to fit without a gap'
    : mitred
      ? 'mitred to the corners of the core'
      : 'a little over at both ends';
  return [
    {
      id: 'level-lippings',
      text: `Glue the top and bottom lippings, ${ends}, ${show(1)} proud of each face.${choices.blocks || mitred ? '' : ' When hard, trim their ends level with the core.'} Flush both faces.`,
      place: 'workshop',
      minutes: 45,
      parts: pick('core', 'top', 'bottom'),
    },
    {
      id: 'upright-lippings',
      text: `Glue the upright lippings, ${choices.blocks ? 'between the blocks' : mitred ? 'mitres closed' : 'over the ends of the others'}; when hard trim and flush them.`,
      place: 'workshop',
      minutes: 45,
      parts: pick('hinge', 'lock'),
    },
  ];
}

function shape(
  { book, choices }: DoorLayout,
  pick: PickParts,
  settings: JoinerySettings,
): readonly StepDraft[] {
  const v = book.value;
  const drafts: readonly (StepDraft | null)[] = [
    v('r') > 0
      ? {
          id: 'corners',
          text: `Round the corners, radius ${show(v('r'))}, with a template and the router; saw most of it off first.`,
          place: 'workshop',
          minutes: 25,
          parts: choices.blocks
            ? pick('blocksHinge', 'blockLockTop', 'blockLockFoot')
            : pick('hinge', 'lock'),
        }
      : null,
    choices.slots > 0
      ? {
          id: 'slots',
          text: `Rout the slots of both bands with a template, ${show(v('s'))} wide, in passes, from the face side with a board under the back.`,
          place: 'workshop',
          minutes: 50,
          parts: pick('core'),
        }
      : null,
    {
      id: 'arris',
      text: `Break every edge ${show(settings.arris)}, those of the slots too.`,
      place: 'workshop',
      minutes: 20,
    },
    v('beta') > 0
      ? {
          id: 'bevel',
          text: `Plane the lock edge ${formatNumber(v('beta'))}° off square: the face stays ${show(v('Wd'))} wide, the back becomes ${show(v('back_W'))}.`,
          place: 'workshop',
          minutes: 15,
          parts: pick('lock'),
        }
      : null,
  ];
  return drafts.flatMap((draft) => draft ?? []);
}

function fitHardware(layout: DoorLayout, pick: PickParts): readonly StepDraft[] {
  const { book, battens } = layout;
  const v = book.value;
  const heights = hingeHeights(layout.book).map((height) => show(height));
  return [
    ...lockSteps(book, layout.choices, pick('lock', 'core')),
    {
      id: 'hinges',
      text: `Let in ${v('hinges')} hinges with their middles ${heights.join(', ')} above the lower edge, ${show(v('hinge_in'))} deep or as the leaf is thick; try the screws, take the hinges off.`,
      place: 'workshop',
      minutes: 20 * v('hinges'),
      parts: pick('hinge'),
      take: ['hinges'],
    },
    ...(battens
      ? [
          {
            id: 'battens',
            text: `Glue and screw the battens across the back, their middles ${show(v('batten_low'))} and ${show(v('batten_high'))} above the lower edge, ${show(v('batten_in'))} short of both edges.`,
            place: 'workshop' as const,
            minutes: 30,
            parts: pick('core', 'battens'),
          },
        ]
      : []),
  ];
}

function finishAndHang(layout: DoorLayout, pick: PickParts): readonly StepDraft[] {
  const { book, choices } = layout;
  const { frame } = choices;
  return [
    {
      id: 'finish',
      text: 'Finish both faces and all edges with the same number of coats, else it cups; do not forget the upper and lower edge and the slots.',
      place: 'workshop',
      minutes: 150,
    },
    {
      id: 'hang',
      text: `${wordHanging(book, choices)} Then all screws.`,
      place: 'boat',
      minutes: 45,
      parts: pick(...(Object.keys(flatDoorNumbers) as (keyof typeof flatDoorNumbers)[])),
      take: ['hinges', 'packers', 'screwdriver', 'small drill', 'block plane'],
      ...hangInOrder(choices),
    },
    {
      id: 'latch',
      text: `${wordLatch(choices).replace(' and the rubber stop', ', the hook-back and the rubber stop')} Pull and push hard: it must not open at heel, nor swing when hooked back.`,
      place: 'boat',
      minutes: 45,
      take: [...latchKit(choices), 'hook-back', 'rubber stop', 'small drill'],
      ...inFrame(frame, { after: ['fix-latch-jamb'], before: [] }),
    },
  ];
}
