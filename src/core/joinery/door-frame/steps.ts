import { markSize } from '#core/units';
import type { FrameLayout } from './layout.ts';
import { partNumbers } from './parts.ts';
import { partAddress } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Part } from '../types.ts';

const show = markSize;

interface StepDraft {
  readonly id: string;
  readonly text: string;
  readonly place: AssemblyStep['place'];
  readonly minutes: number;
  readonly parts?: readonly Part[];
  readonly take?: readonly string[];
}

/** Order of work of a door frame (joinery B1); minutes are common practice, no source. Each follows the one before. */
export function frameSteps(
  piece: Piece,
  layout: FrameLayout,
  parts: readonly Part[],
): readonly AssemblyStep[] {
  const drafts = [
    ...prepare(layout, parts, piece),
    ...(layout.choices.infill ? fitPanel(piece, parts) : []),
    ...assemble(layout, parts, piece),
    ...fix(layout, parts, piece),
  ];
  return drafts.map((draft, i) => ({
    id: draft.id,
    text: draft.text,
    place: draft.place,
    minutes: draft.minutes,
    parts: (draft.parts ?? []).map((part) => part.id),
    after: i === 0 ? [] : [drafts[i - 1]?.id ?? ''],
    ...(draft.take && { take: draft.take }),
  }));
}

const membersOf = (piece: Piece, parts: readonly Part[]) =>
  parts.filter((part) => numbersOf(piece, [1, 2, 3, 4]).includes(part.id));
const numbersOf = (piece: Piece, numbers: readonly number[]) => numbers.map((n) => partAddress(piece, n));
/** What goes in as one: the members and the panel between them. */
const unitOf = (piece: Piece, parts: readonly Part[]) => {
  const panel = partAddress(piece, partNumbers.infill);
  return [...membersOf(piece, parts), ...parts.filter((part) => part.id === panel)];
};
const coversOf = (parts: readonly Part[]) => parts.filter((part) => part.name.startsWith('Cover'));
const stopsOf = (parts: readonly Part[]) => parts.filter((part) => part.name.startsWith('Stop'));

function prepare({ book }: FrameLayout, parts: readonly Part[], piece: Piece): readonly StepDraft[] {
  const members = membersOf(piece, parts);
  const size = `${show(book.value('Fw'))} × ${show(book.value('Fh'))} × ${show(book.value('Ld'))}`;
  const jambs = members.filter((part) => part.hand !== 'none');
  return [
    {
      id: 'check-aboard',
      text: `Measure again what the survey doubts. Check that the frame (${size}) passes the companionway and every turn, and that ${show(book.value('Ld') + 20)} is clear on one side of the opening to slide it in; else it goes in knocked down.`,
      place: 'boat',
      minutes: 30,
      take: ['tape', 'two sliding sticks', 'plumb bob'],
    },
    {
      id: 'mill',
      text: `Plane and cut jambs, head${members.length > 3 ? ', sill' : ''} and trim from one setting each; mark face side, face edge and UP. ${jambs.map((part) => part.id).join(' and ')} are a pair: mark them face to face.`,
      place: 'workshop',
      minutes: 90,
      parts,
    },
    {
      id: 'joints',
      text: 'Cut the corner joints, trying each setting on an offcut first; drill for the screws.',
      place: 'workshop',
      minutes: 60,
      parts: members,
    },
    {
      id: 'dry-fit',
      text: `Put the frame together dry on a flat bench. Joints close with hand pressure; the diagonals agree ${diagonals(book.has('alpha_TL'))}; not in wind by more than ${show(1)}; faces flush within ${show(0.2)}.`,
      place: 'workshop',
      minutes: 30,
      parts: members,
    },
  ];
}

function diagonals(fitted: boolean): string {
  return fitted ? `with the full-size drawing within ${show(1)}` : `within ${show(1)}`;
}

function fitPanel(piece: Piece, parts: readonly Part[]): readonly StepDraft[] {
  const panel = parts.filter((part) => part.id === partAddress(piece, partNumbers.infill));
  return [
    {
      id: 'scribe-panel',
      text: 'Stand the dry frame in the opening, offer up the panel behind it and scribe its top edge to the deckhead in one direction.',
      place: 'boat',
      minutes: 40,
      parts: panel,
      take: ['compass', 'pencil', 'clamps', 'the dry frame'],
    },
    {
      id: 'cut-panel',
      text: 'Cut the panel to the scribed line and seal its edges. It goes in before the second jamb.',
      place: 'workshop',
      minutes: 30,
      parts: panel,
    },
  ];
}

function assemble({ choices }: FrameLayout, parts: readonly Part[], piece: Piece): readonly StepDraft[] {
  const screwed = ['rebate', 'housing-over', 'housing-between', 'butt'].includes(choices.corner);
  return [
    {
      id: 'finish-hidden',
      text: 'Take it apart; finish backs, hidden faces and end grain, two or three coats. Keep glue faces bare.',
      place: 'workshop',
      minutes: 60,
      parts,
    },
    {
      id: 'glue-up',
      text: `Glue${screwed ? ' and screw' : ''} the frame on the bench${choices.infill ? ', the panel in before the second jamb' : ''}, with a brace across the corner and a spreader at the foot; diagonals again.`,
      place: 'workshop',
      minutes: 45,
      parts: unitOf(piece, parts),
    },
    {
      id: 'finish-seen',
      text: 'Coat the faces that show, all but the last coat; trim as well.',
      place: 'workshop',
      minutes: 60,
      parts,
    },
  ];
}

function fix({ book, choices }: FrameLayout, parts: readonly Part[], piece: Piece): readonly StepDraft[] {
  const members = membersOf(piece, parts);
  const jambs = members.filter((part) => part.hand !== 'none');
  const upright = choices.datum === 'boat' ? "the boat's vertical" : 'the line chosen as upright';
  return [
    {
      id: 'slide-in',
      text: 'Slide the frame in and wedge the two head corners first.',
      place: 'boat',
      minutes: 20,
      parts: unitOf(piece, parts),
      take: ['folding wedges', 'screws', 'driver', 'plumb bob', 'block plane', 'touch-up finish'],
    },
    {
      id: 'fix-hinge-jamb',
      text: `Set the jamb the door hangs on to ${upright}, wedge behind every screw (${show(450)} apart at most, within ${show(150)} of the ends) and screw.`,
      place: 'boat',
      minutes: 30,
      parts: jambs,
    },
    {
      id: 'fix-latch-jamb',
      text: `Hang the door (${show(book.value('Wd'))} × ${show(book.value('Hd'))}) and set the other jamb to it: equal gap of ${show(choices.doorGapSide)} all the way down; wedge and screw.`,
      place: 'boat',
      minutes: 45,
      parts: jambs,
      take: ['the door with its hinges', 'spacers as thick as the gap'],
    },
    {
      id: 'fix-head',
      text: 'Wedge the head at its middle; do not lift it.',
      place: 'boat',
      minutes: 10,
      parts: members.filter((part) => part.name === 'Head'),
    },
    ...fixTrim(parts),
    {
      id: 'last-coat',
      text: 'Last coat on the faces that show.',
      place: 'boat',
      minutes: 30,
      parts,
      take: ['finish', 'brush'],
    },
  ];
}

function fixTrim(parts: readonly Part[]): readonly StepDraft[] {
  const stops = stopsOf(parts);
  const covers = coversOf(parts);
  return [
    ...(stops.length
      ? [
          {
            id: 'stops',
            text: 'Close the door and fix the stops to it.',
            place: 'boat' as const,
            minutes: 25,
            parts: stops,
          },
        ]
      : []),
    ...(covers.length
      ? [
          {
            id: 'covers',
            text: 'Fix the covers: verticals first, then the heads; mitres trimmed to the frame as it stands.',
            place: 'boat' as const,
            minutes: 45,
            parts: covers,
          },
        ]
      : []),
  ];
}
