import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { makePart } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { boxDrafts } from './box-parts.ts';
import { checkStep, refuseStep } from './checks.ts';
import { flightDrafts, sizeStrings } from './flight-parts.ts';
import { endTakes, jointOf, standJoint, throughScrew } from './joints.ts';
import { stepParameters } from './parameters.ts';
import { chooseStep, workOutStep, type StepLayout } from './sizes.ts';
import { standsOf } from './stands.ts';

const show = markSize;
type StepPiece = Extract<Piece, { kind: 'step' }>;

function build(piece: StepPiece, context: BuildContext): BuiltPiece {
  const { choices, findings } = chooseStep(piece.parameters, context);
  return buildFrom<StepLayout>({
    piece,
    what: 'step',
    seenFrom: 'standing in front of the step, facing it',
    table: stepParameters,
    found: findings,
    lacking: [],
    workOut: () => sizeStrings(workOutStep(choices)),
    positive: {
      names: ['riser', 'side_h', 'top_d', 'inner_W', 'riser_board_L', 'tread_L'],
      source: 'joinery B13',
    },
    refuse: refuseStep,
    parts: (layout) =>
      (choices.form === 'box' ? boxDrafts(layout) : flightDrafts(layout)).map((draft, i) =>
        makePart(piece, { ...draft, number: i + 1 }),
      ),
    finish: (layout, parts) => ({
      joints: joints(layout, parts),
      fixings: fixings(layout, parts),
      steps: steps(layout, parts),
      findings: checkStep(layout, parts, context.settings),
    }),
  });
}

const isUpright = ({ name }: Part) => name.startsWith('Side') || name.startsWith('String');

function joints(layout: StepLayout, parts: readonly Part[]): readonly Joint[] {
  const { book, choices } = layout;
  const boards = parts.filter((part) => !isUpright(part) && part.name !== 'Top tread');
  const top = parts.find(({ name }) => name === 'Top tread');
  const turned =
    choices.form === 'flight' ? [`At ${formatNumber(book.value('slope'), 2)}° to the string.`] : [];
  const stands = standsOf(layout);
  return parts.filter(isUpright).flatMap((side) => [
    ...boards.map((part): Joint => {
      const stand = stands.find(({ name }) => name === part.name.toLowerCase()) ?? stands[0];
      const what = /tread/i.test(part.name) ? 'tread' : 'riser';
      return {
        kind: jointOf(layout, what),
        between: [part.id, side.id],
        count: part.quantity,
        settings: [...(stand ? standJoint(layout, stand).settings : []), ...turned],
        ...(what === 'tread' && { load: 'heavy' as const }),
      };
    }),
    ...(top
      ? [
          {
            kind: 'butt',
            between: [top.id, side.id] as const,
            count: 1,
            settings: ['Glued and screwed from above, plugged.'],
          },
        ]
      : []),
  ]);
}

function fixings(layout: StepLayout, parts: readonly Part[]): readonly Fixing[] {
  const { book, choices } = layout;
  const v = book.value;
  const treads = parts
    .filter(({ name }) => /tread/i.test(name))
    .reduce((sum, { quantity }) => sum + quantity, 0);
  const isBox = choices.form === 'box';
  const base = 'joinery B13';
  return [
    ...endTakes(layout, standsOf(layout)),
    ...(isBox ? [{ ...throughScrew(layout), quantity: 4, use: 'top tread, from above' }] : []),
    {
      item: 'Non-slip strip, metre',
      quantity: Math.ceil((treads * v('inner_W')) / 1000),
      use: 'treads',
      source: base,
    },
    { item: 'Rubber pad', quantity: 4, use: 'under the feet', source: base },
    isBox
      ? { item: 'Latch or turn-button', quantity: 2, use: 'so that the box cannot lift', source: base }
      : { item: 'Bracket with screws', quantity: 2, use: 'strings to the bulkhead', source: base },
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'joints', source: base },
  ];
}

/** How the sides or strings are made ready for what stands on them. */
function readyText({ book, choices }: StepLayout, word: string): string {
  const marked = 'laid inside to inside and marked across';
  const house = `House the inside of both ${word} ${book.value('house')} deep, ${marked}.`;
  return {
    housing: house,
    rebate: `${choices.form === 'box' ? `Rebate the front edges of both ${word} ${show(book.value('house_r'))} deep for risers and kick. ` : ''}${house}`,
    butt: `Mark where the boards end on both ${word}, ${marked}; bore for the screws.`,
    dowel: `Bore both ${word} and the ends of the boards for the dowels with one jig, ${marked}.`,
    'loose-tenon': `Slot both ${word} and the ends of the boards for the loose tenons, ${marked}.`,
  }[choices.joint];
}

function steps(layout: StepLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { book, choices } = layout;
  const v = book.value;
  const uprights = { parts: parts.filter(isUpright) };
  const word = choices.form === 'box' ? 'sides' : 'strings';
  const pinned = choices.joint === 'dowel' || choices.joint === 'loose-tenon';
  const fall = v('foot_diff') > 0 ? ` The ${choices.fallsTo} foot is longer by ${show(v('foot_diff'))}.` : '';
  return chainSteps([
    aboard(
      'measure',
      20,
      'Measure the rise at both sides again, the fall and the camber of the sole, and the room in front.',
      { take: ['tape', 'level', 'bevel gauge'] },
    ),
    inWorkshop(
      'cut',
      60,
      `Cut all parts; the ${word} as a mirrored pair, ${show(v('S'))} left on each foot.${fall}`,
      { parts },
    ),
    inWorkshop('house', 60, readyText(layout, word), uprights),
    inWorkshop('dry', 20, 'Dry fit on a flat bench; treads level, diagonals equal.', { parts }),
    aboard('scribe', 45, 'Stand it in place, treads level, and scribe the feet to the sole.', {
      parts,
      take: ['level', 'compass', 'wedges', 'saw', 'bag'],
    }),
    inWorkshop(
      'glue',
      60,
      `${pinned ? 'Glue all boards to one of the sides, then the other on to them, and clamp' : 'Glue and screw'} on a flat bench; round the nosings ${show(6)}, seal the feet.`,
      { parts },
    ),
    inWorkshop('finish', 120, 'Finish, non-slip strips last; rubber pads under the feet.', { parts }),
    aboard(
      'fit',
      40,
      choices.form === 'box'
        ? 'Set it in, mark and fit the latches: it must not lift at sea and must lift out by hand.'
        : 'Fix the strings to the bulkhead and the sole; hang your weight on every tread.',
      { parts, take: ['latches', 'screws', 'drill'] },
    ),
  ]);
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name } = start;
  const off = (material: NewPiece['materials'][number]) =>
    material.kind === 'sheet' ? Math.abs(material.thickness - 18) : Infinity;
  const sheet = [...materials].sort((one, other) => off(one) - off(other))[0];
  return {
    kind: 'step',
    ...{ id, letter, name },
    parameters: { totalRise: 1180, materials: { sides: sheet?.id ?? '', treads: sheet?.id ?? '' } },
  };
}

export const stepKind: KindOfPiece<'step'> = {
  words: {
    name: 'Companion or box step',
    purpose: 'A box that lifts out, or a flight between strings',
    help: [
      'All risers between sole and landing are alike; the tool finds how many from the highest you allow. 50 to 70° is usual, under 150 of tread a foot slips.',
      'A box has sides on the sole, treads and risers between them and the top tread over all; a kick space keeps the toe free. A flight has treads between two sloping strings.',
      'Housings carry treads best. They can also be screwed through, doweled or set on loose tenons, and the risers of a box laid in rebates; what the material does not hold is said.',
      'The sole is rarely level: enter how it falls and the feet come out at different lengths, with wood left on to scribe.',
      'It must not lift at sea and yet lift out for the engine: latches, and 10 kg at most.',
    ],
  },
  parameters: stepParameters,
  shape: { kinds: [], required: false },
  seen: { across: ['W', 'inner_W'], up: ['riser', 'side_h', 'Ht'] },
  build,
  make,
};
