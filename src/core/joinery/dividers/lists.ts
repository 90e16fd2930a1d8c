import { markSize } from '#core/units';
import { partAddress } from '../parts.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';
import { dividerNumbers, hasStrips } from './parts.ts';
import type { DividersLayout } from './sizes.ts';
import { cornerJoint, hasWalls, housingSettings, wallFixings, wallNumbers, wallsOf } from './walls.ts';

const show = markSize;

/** The joints of dividers with each other and with the walls of a tray. */
export function dividersJoints(piece: Piece, layout: DividersLayout): readonly Joint[] {
  const { book, choices, atX, atZ } = layout;
  const address = (number: number) => partAddress(piece, number);
  const joint = (kind: string, [one, other]: readonly [number, number], more: Settled): Joint => ({
    ...{ kind, between: [address(one), address(other)], ...more },
  });
  const { back, across } = dividerNumbers;

  const crossings =
    atX.length * atZ.length > 0
      ? [
          joint('cross-halving', [back, across], {
            count: atX.length * atZ.length,
            settings: [slotSetting(layout)],
          }),
        ]
      : [];
  if (!hasWalls(layout)) return crossings;
  const { front, back: behind, left, right } = wallNumbers;
  const corner = { count: 1, settings: cornerJoint(layout).settings };
  const corners = [left, right].flatMap((side) =>
    [front, behind].map((end) => joint(choices.walls, [side, end], corner)),
  );
  const kind = book.value('let') > 0 ? 'housing' : 'butt';
  const housed = (divider: number, walls: readonly number[], count: number) =>
    count === 0
      ? []
      : walls.map((wall) => joint(kind, [divider, wall], { count, settings: housingSettings(layout) }));
  return [
    ...crossings,
    ...corners,
    ...housed(back, [front, behind], atX.length),
    ...housed(across, [left, right], atZ.length),
  ];
}

function slotSetting({ book }: DividersLayout): string {
  return `Slots ${show(book.value('slot_w'), 2)} wide, ${show(book.value('slot_h'))} deep: upwards in those front to back, downwards in the others. Cut each set in one stack.`;
}

type Settled = Pick<Joint, 'count' | 'settings'>;

/** What to buy for them. */
export function dividersFixings(layout: DividersLayout, parts: readonly Part[]): readonly Fixing[] {
  const walls = wallFixings(layout);
  if (!hasStrips(layout)) return walls;
  const strips = parts.filter(({ name }) => name.startsWith('Strip'));
  const quantity = strips.reduce((sum, part) => sum + 2 * part.quantity, 0);
  return [
    ...walls,
    {
      item: 'Screw 3 × 20, countersunk, stainless A4',
      quantity,
      use: 'strips, to the floor',
      source: 'joinery C1',
    },
  ];
}

/** How they are made and fitted. */
export function dividersSteps(layout: DividersLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const dividers = { parts: parts.filter(({ name }) => name.startsWith('Divider')) };
  const strips = { parts: parts.filter(({ name }) => name.startsWith('Strip')) };
  const { atX, atZ } = layout;
  const crossed = atX.length > 0 && atZ.length > 0;
  const walls = wallsOf(parts);
  return chainSteps([
    aboard('load', 20, 'Set the real bins or things into the locker; check the cells with them.', {
      take: ['bins', 'rule'],
    }),
    ...(dividers.parts.length > 0
      ? [inWorkshop('cut', 30, 'Cut the dividers of each set to one length, edges square.', dividers)]
      : []),
    ...(crossed
      ? [inWorkshop('slots', 40, 'Cut the slots of a set in one stack; try the first crossing.', dividers)]
      : []),
    inWorkshop(
      'finish',
      60,
      `Round the upper edges, finish; drill drain holes of ${show(12)} where wet things lie.`,
      {
        parts,
      },
    ),
    ...(walls.length > 0 ? traySteps(layout, walls, dividers.parts) : []),
    ...(strips.parts.length > 0
      ? [
          aboard('strips', 40, 'Screw the strips down round the bases, 1 of room all round.', {
            ...strips,
            take: ['screws', 'screwdriver', 'bins'],
          }),
        ]
      : []),
    walls.length > 0
      ? aboard('fit', 15, 'Set the tray in and load it.', { parts: [...dividers.parts, ...walls] })
      : aboard('fit', 15, 'Slide the grid in dry and load it.', dividers),
  ]);
}

function traySteps(
  { choices, book }: DividersLayout,
  walls: readonly Part[],
  dividers: readonly Part[],
): readonly StepDraft[] {
  const corners = {
    box: 'Cut the fingers of the walls, the sides in one stack, front and back in another; try one corner.',
    rebate: `Rebate both ends of the front and the back wall from inside, a lip of ${show(choices.walls === 'rebate' ? book.value('lip') : 0)} left.`,
    butt: 'Cut the side walls to fit between front and back; bore for the screws.',
    none: '',
  }[choices.walls];
  const house =
    book.value('let') > 0 ? ` House the walls ${show(book.value('let'))} deep for the dividers.` : '';
  return [
    inWorkshop('walls', 50, `${corners}${house}`, { parts: walls }),
    inWorkshop('tray', 40, 'Glue the walls round the dry grid, diagonals equal; glue the dividers in.', {
      parts: [...walls, ...dividers],
    }),
  ];
}
