import { formatNumber } from '#core/units';
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
import { stepParameters } from './parameters.ts';
import { chooseStep, workOutStep, type StepLayout } from './sizes.ts';

const show = formatNumber;
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

function joints({ book, choices }: StepLayout, parts: readonly Part[]): readonly Joint[] {
  const housed = parts.filter((part) => !isUpright(part) && part.name !== 'Top tread');
  const top = parts.find(({ name }) => name === 'Top tread');
  const how = choices.form === 'flight' ? ` at ${show(book.value('slope'), 2)}° to the string` : '';
  return parts.filter(isUpright).flatMap((side) => [
    ...housed.map((part) => ({
      kind: 'housing',
      between: [part.id, side.id] as const,
      count: part.quantity,
      settings: [
        `${show(part.finished.thickness + 0.1)} wide, ${book.value('house')} deep${how}; glued, two screws from outside.`,
      ],
    })),
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

function fixings({ book, choices }: StepLayout, parts: readonly Part[]): readonly Fixing[] {
  const v = book.value;
  const ends = parts.filter((part) => !isUpright(part)).reduce((sum, { quantity }) => sum + 4 * quantity, 0);
  const treads = parts
    .filter(({ name }) => /tread/i.test(name))
    .reduce((sum, { quantity }) => sum + quantity, 0);
  return [
    {
      item: `Screw 4 × ${Math.ceil((v('T') + 28) / 5) * 5}, countersunk, stainless A4`,
      quantity: ends,
      use: 'treads and risers',
      source: 'joinery C1',
    },
    {
      item: 'Non-slip strip, metre',
      quantity: Math.ceil((treads * v('inner_W')) / 1000),
      use: 'treads',
      source: 'joinery B13',
    },
    { item: 'Rubber pad', quantity: 4, use: 'under the feet', source: 'joinery B13' },
    ...(choices.form === 'box'
      ? [
          {
            item: 'Latch or turn-button',
            quantity: 2,
            use: 'so that the box cannot lift',
            source: 'joinery B13',
          },
        ]
      : [
          { item: 'Bracket with screws', quantity: 2, use: 'strings to the bulkhead', source: 'joinery B13' },
        ]),
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'housings', source: 'joinery B13' },
  ];
}

function steps({ book, choices }: StepLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const v = book.value;
  const uprights = { parts: parts.filter(isUpright) };
  const word = choices.form === 'box' ? 'sides' : 'strings';
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
    inWorkshop(
      'house',
      60,
      `House the inside of both ${word} ${v('house')} deep, laid inside to inside and marked across.`,
      uprights,
    ),
    inWorkshop('dry', 20, 'Dry fit on a flat bench; treads level, diagonals equal.', { parts }),
    aboard('scribe', 45, 'Stand it in place, treads level, and scribe the feet to the sole.', {
      parts,
      take: ['level', 'compass', 'wedges', 'saw', 'bag'],
    }),
    inWorkshop('glue', 60, 'Glue and screw on a flat bench; round the nosings 6, seal the feet.', { parts }),
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
      'A box has sides on the sole, treads and risers housed between them and the top tread over all; a kick space keeps the toe free. A flight has treads housed between two sloping strings.',
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
