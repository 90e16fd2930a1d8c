import { markSize } from '#core/units';
import type { FrontCell } from './cells.ts';
import type { FrontSet } from './sets.ts';
import type { FrontLayout } from './sizes.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { AssemblyStep, Part } from '../types.ts';

const show = markSize;

interface Made {
  readonly parts: readonly Part[];
  readonly cells: readonly FrontCell[];
  readonly sets: readonly FrontSet[];
}

/** Order of work of a cabinet front (joinery B6, B-H); minutes are common practice, no source. */
export function frontSteps(layout: FrontLayout, made: Made): readonly AssemblyStep[] {
  const fronts = made.parts.filter((part) => made.cells.some((cell) => cell.id === part.id));
  const frame = made.parts.filter((part) => !fronts.includes(part));
  return chainSteps([
    ...makeFrame(layout, frame),
    ...fitFrame(layout, frame),
    ...fitFronts(layout, fronts, made),
  ]);
}

function makeFrame({ book, choices }: FrontLayout, frame: readonly Part[]): readonly StepDraft[] {
  const v = book.value;
  const joints = 2 * (choices.rows + 1) + 2 * choices.rows * (choices.columns - 1);
  return [
    {
      id: 'check-aboard',
      text: `Measure the opening again in width and height at three places, both diagonals and both sides for plumb; the frame is ${show(v('W'))} × ${show(v('H'))}. Check that it passes every gate on its way.`,
      place: 'boat',
      minutes: 20,
      take: ['tape', 'two sliding sticks', 'level'],
    },
    {
      id: 'mill',
      text: 'Plane all members to one thickness in one setting; crosscut rails against one stop, inner stiles against one stop for each row; mark face sides and face edges.',
      place: 'workshop',
      minutes: 60,
      parts: frame,
    },
    {
      id: 'joints',
      text: 'Cut the joints, trying each setting on an offcut first; all from the face side.',
      place: 'workshop',
      minutes: 10 + 6 * joints,
      parts: frame,
    },
    {
      id: 'dry-fit',
      text: `Put the frame together dry on a flat bench: inner stiles between rails first, outer stiles last. Diagonals agree within ${show(1)}, faces flush within ${show(0.2)}.`,
      place: 'workshop',
      minutes: 20,
      parts: frame,
    },
    {
      id: 'glue',
      text: `Glue it flat on a level bench in the same order; diagonals within ${show(1)}, not in wind; sand flush when hard.`,
      place: 'workshop',
      minutes: 60,
      parts: frame,
    },
  ];
}

function fitFrame({ choices }: FrontLayout, frame: readonly Part[]): readonly StepDraft[] {
  const scribed = choices.scribe > 0;
  return [
    {
      id: 'fit-frame',
      text: `Set the frame plumb to the boat's datum${scribed ? ', scribe the outer stiles to the sides, the last one last,' : ' with its gap even,'} and screw it to the carcase.`,
      place: 'boat',
      minutes: scribed ? 75 : 40,
      parts: frame,
      take: [
        'level',
        'screwdriver',
        'small drill',
        ...(scribed ? ['scribing gauge', 'block plane'] : ['wedges']),
      ],
    },
    {
      id: 'measure-openings',
      text: `Measure width, height and both diagonals of every opening of the fixed frame. Where diagonals differ by more than ${show(1)}, draw that front as its own four-sided figure; enter what differs.`,
      place: 'boat',
      minutes: 20,
      take: ['tape', 'two sliding sticks'],
    },
  ];
}

function fitFronts({ choices }: FrontLayout, fronts: readonly Part[], made: Made): readonly StepDraft[] {
  if (fronts.length === 0) return [];
  const doors = made.cells.filter((cell) => cell.cell === 'door').length;
  const strip = made.sets.length
    ? ` Cut ${made.sets.length === 1 ? 'the strip' : `the ${made.sets.length} strips`} first, number the fronts on the back in order, then part them${choices.continuous === 'true' ? ', throwing away what the gaps hide' : ''}; turn or flip none.`
    : '';
  return [
    {
      id: 'cut-fronts',
      text: `Cut the fronts to the measured openings.${strip}`,
      place: 'workshop',
      minutes: 20 + 6 * fronts.length,
      parts: fronts,
    },
    {
      id: 'hang-fronts',
      text: `Fit the fronts with spacers of the gap${doors ? '; hinges first, then latches' : ''}; screw drawer fronts from inside through oversize holes.`,
      place: 'boat',
      minutes: 15 * fronts.length + 15 * doors,
      parts: fronts,
      take: ['spacers', 'screwdriver', 'small drill', 'double-sided tape'],
    },
  ];
}
