import { formatNumber } from '#core/units';
import type { Problem } from '#core/problems';
import type { KindOfPiece } from '../kind.ts';
import { partAddress } from '../parts.ts';
import { openFindings, type Say } from '../piece-findings.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { dividersParameters } from './parameters.ts';
import { dividerNumbers, dividerParts, hasStrips } from './parts.ts';
import {
  cornerJoint,
  hasWalls,
  housingSettings,
  wallFindings,
  wallFixings,
  wallNumbers,
  wallsOf,
} from './walls.ts';
import { chooseDividers, workOutDividers, type DividersLayout } from './sizes.ts';

const show = formatNumber;
type Dividers = Extract<Piece, { kind: 'dividers' }>;

const leastCell = 15; // mm; a shorter tongue between two slots breaks off (joinery B1.10, C0.3)
const toLift = 40; // above a bin, and
const toPull = 50; // in front of it (joinery B15)

function build(piece: Dividers, context: BuildContext): BuiltPiece {
  const { choices, findings } = chooseDividers(piece.parameters, context);
  return buildFrom<DividersLayout>({
    piece,
    what: 'divider',
    seenFrom: 'standing in front of the locker',
    table: dividersParameters,
    found: findings,
    lacking: [],
    workOut: () => workOutDividers(choices),
    positive: {
      names: ['in_x', 'in_z', 'L_back', 'L_across', 'cell_x', 'cell_z', 'wall_z'],
      source: 'joinery B15',
    },
    refuse,
    parts: (layout) => dividerParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(piece, layout),
      fixings: fixings(layout, parts),
      steps: steps(layout, parts),
      findings: check(layout),
    }),
  });
}

function refuse(layout: DividersLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices, columns, rows, atX, atZ } = layout;
  const v = book.value;
  const stop = (code: string, message: string, remedy: string) =>
    say('stop', code, { message, remedy, source: 'joinery B15' });
  const inside = `${show(v('in_x'))} × ${show(v('in_z'))}`;
  if (columns * rows === 0) {
    stop(
      'bin-does-not-fit',
      `A bin ${show(v('bl'))} × ${show(v('bs'))} with ${show(v('c'))} of room does not go into ${inside}.`,
      'Take smaller bins, or turn them.',
    );
    return all();
  }
  if (atX.length + atZ.length === 0 && !hasStrips(layout) && !hasWalls(layout)) {
    stop('nothing-to-divide', `One cell fills ${inside}: there is nothing to divide.`, 'Ask for more cells.');
  }
  const least = Math.min(v('cell_x'), v('cell_z'));
  if (choices.form === 'cells' && least < leastCell) {
    stop(
      'cell-too-small',
      `Cells of ${show(v('cell_x'))} × ${show(v('cell_z'))} leave too little wood between the slots; ${leastCell} is the least.`,
      'Ask for fewer cells.',
    );
  }
  return all();
}

function check(layout: DividersLayout): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices } = layout;
  if (choices.form === 'bins') checkBins(say, layout);
  if (book.value('t') < 5 || book.value('t') > 9) {
    say('note', 'divider-thickness', {
      message: `Dividers ${show(book.value('t'))} thick; 5 to 9 is usual.`,
      remedy: 'Thinner ones bulge, thicker ones eat room.',
      source: 'joinery B15',
    });
  }
  if (choices.walls === 'rebate' && book.value('t') - book.value('lip') < book.value('t') / 3)
    say('warn', 'rebate-too-shallow', {
      message: `A lip of ${show(book.value('lip'))} leaves a rebate ${show(book.value('t') - book.value('lip'))} deep in walls ${show(book.value('t'))} thick: little to glue.`,
      remedy: 'Take box joints, or a thicker sheet.',
      source: 'joinery C8',
    });
  return [...all(), ...wallFindings(layout)];
}

function checkBins(say: Say, layout: DividersLayout): void {
  const { book, choices, columns, rows } = layout;
  const v = book.value;
  const left = [v('left_x'), v('left_z')].map((each) => show(each));
  say('note', 'bins-and-rest', {
    message: `${columns * rows} bins go in, ${columns} across and ${rows} deep; ${left[0]} are left over across, ${left[1]} front to back.`,
    remedy: 'Try the other modules, or use the rest for long things.',
    source: 'joinery B15',
  });
  if (!choices.given.has('binLength') || !choices.given.has('binWidth')) {
    say('warn', 'bin-not-measured', {
      message: `The bin is reckoned at ${show(v('bl'))} × ${show(v('bs'))}; real rims are up to 3 off their module.`,
      remedy: 'Measure the rim of the bins you have and enter it.',
      source: 'joinery B15',
    });
  }
  if (choices.strips && !hasStrips(layout)) {
    say('warn', 'strip-no-room', {
      message: `Strips of ${show(v('strip'))} find ${show(v('strip_room'))} of room beside the base of a bin; they are left out.`,
      remedy: 'Glue thinner ones in, or leave more room for the bins.',
      source: 'joinery B15',
    });
  }
  const { headroom, frontRoom } = choices;
  const liftable = headroom === undefined || headroom >= v('bh') + toLift;
  const pullable = frontRoom === undefined || frontRoom >= v('bz') + toPull;
  const checked = headroom !== undefined || frontRoom !== undefined;
  if (!checked || (headroom !== undefined && liftable) || (frontRoom !== undefined && pullable)) return;
  say('stop', 'bin-does-not-come-out', {
    message: `A bin does not come out: lifting it wants ${show(v('bh') + toLift)} of height${headroom === undefined ? '' : `, ${show(headroom)} is free`}; pulling it wants ${show(v('bz') + toPull)} in front${frontRoom === undefined ? '' : `, ${show(frontRoom)} is free`}.`,
    remedy: 'Take lower or shorter bins, or a front that drops.',
    source: 'joinery B15',
  });
}

function joints(piece: Piece, layout: DividersLayout): readonly Joint[] {
  const { book, choices, atX, atZ } = layout;
  const address = (number: number) => partAddress(piece, number);
  const joint = (kind: string, [one, other]: readonly [number, number], more: Settled): Joint => ({
    ...{ kind, between: [address(one), address(other)], ...more },
  });
  const { back, across } = dividerNumbers;
  const slots = `Slots ${show(book.value('slot_w'), 2)} wide, ${show(book.value('slot_h'))} deep: upwards in those front to back, downwards in the others. Cut each set in one stack.`;
  const crossings =
    atX.length * atZ.length > 0
      ? [joint('cross-halving', [back, across], { count: atX.length * atZ.length, settings: [slots] })]
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

type Settled = Pick<Joint, 'count' | 'settings'>;

function fixings(layout: DividersLayout, parts: readonly Part[]): readonly Fixing[] {
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

function steps(layout: DividersLayout, parts: readonly Part[]): readonly AssemblyStep[] {
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
    inWorkshop('finish', 60, 'Round the upper edges, finish; drill drain holes of 12 where wet things lie.', {
      parts,
    }),
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
  const house = book.value('let') > 0 ? ` House the walls ${show(book.value('let'))} deep for the dividers.` : '';
  return [
    inWorkshop('walls', 50, `${corners}${house}`, { parts: walls }),
    inWorkshop('tray', 40, 'Glue the walls round the dry grid, diagonals equal; glue the dividers in.', {
      parts: [...walls, ...dividers],
    }),
  ];
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name } = start;
  const off = (material: NewPiece['materials'][number]) =>
    material.kind === 'sheet' ? Math.abs(material.thickness - 9) : Infinity;
  const sheet = [...materials].sort((one, other) => off(one) - off(other))[0];
  return {
    kind: 'dividers',
    ...{ id, letter, name },
    parameters: { insideWidth: 820, insideDepth: 430, materials: { dividers: sheet?.id ?? '' } },
  };
}

export const dividersKind: KindOfPiece<'dividers'> = {
  words: {
    name: 'Dividers',
    purpose: 'A grid in a locker for bins, bottles or equal cells',
    help: [
      'Thin dividers part a locker; the two sets are halved into each other, so the grid lifts out whole.',
      'For bins of a module both ways of laying them are tried, and a divider closes the last one so that it does not slide. Measure the real rims.',
      'A bin must come out again: it wants 40 above it or its own depth and 50 in front.',
      'Walls round the grid make a tray that lifts out whole: box joints hold best in plywood, rebates are quicker, butted corners want thicker sheets. For a deep one with a bottom take the drawer without a front.',
    ],
  },
  parameters: dividersParameters,
  shape: { kinds: [], required: false },
  seen: { across: ['L_across', 'cell_x', 'Wi'], up: ['h'] },
  build,
  make,
};
