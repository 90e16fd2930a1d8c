import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkShelf, refuseShelf } from './checks.ts';
import { fiddleRebate } from './fiddle.ts';
import { shelfParameters } from './parameters.ts';
import { shelfParts } from './parts.ts';
import { chooseShelf, workOutShelf, type ShelfLayout } from './sizes.ts';

const show = markSize;
type Shelf = Extract<Piece, { kind: 'shelf' }>;

function build(piece: Shelf, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseShelf(piece.parameters, context, piece.name);
  return buildFrom<ShelfLayout>({
    piece,
    what: 'shelf',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the shelf',
    table: shelfParameters,
    found: findings,
    lacking,
    workOut: () => workOutShelf(choices),
    positive: {
      names: [
        'L',
        'D',
        'T',
        'Ds',
        'D_end',
        'tf',
        'f',
        'k',
        'fiddle_L',
        'end_fiddle_L',
        'back_cleat_L',
        'end_cleat_L',
      ],
      source: 'joinery B8',
    },
    refuse: refuseShelf,
    parts: (layout) => shelfParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(layout, parts),
      fixings: fixings(layout, parts),
      steps: steps(layout, parts),
      findings: checkShelf(layout, parts, context.settings),
    }),
  });
}

function joints(layout: ShelfLayout, parts: readonly Part[]): readonly Joint[] {
  const { choices, book } = layout;
  const shelf = parts[0];
  if (!shelf) return [];
  const onTop = [`Glued on top, screwed from below every ${show(150)}.`];
  const settings = {
    edge: [`Glued to the front edge, ${show(book.value('T'))} on; its lower edge flush with the underside.`],
    rebate: [
      ...(fiddleRebate(layout)?.settings ?? []),
      'Glued over the front edge, flush with the underside.',
    ],
    top: onTop,
    none: [],
  }[choices.fiddle];
  return parts
    .filter(({ name }) => name.includes('iddle'))
    .map((fiddle) => {
      const front = fiddle.name === 'Fiddle';
      return {
        kind: front && choices.fiddle === 'rebate' ? 'rebate' : 'butt',
        between: [fiddle.id, shelf.id],
        count: fiddle.quantity,
        settings: front ? settings : onTop,
      };
    });
}

function fixings({ choices, book }: ShelfLayout, parts: readonly Part[]): readonly Fixing[] {
  const cleats = parts
    .filter(({ name }) => name.includes('leat'))
    .reduce((sum, { quantity }) => sum + quantity, 0);
  const onTop = choices.fiddle === 'top' ? Math.ceil(book.value('front_L') / 150) : 0;
  const ends = book.has('end_fiddle_L') ? 2 * Math.ceil(book.value('end_fiddle_L') / 150) : 0;
  const list: readonly Fixing[] = [
    {
      item: `Screw 4 × ${formatNumber(Math.ceil((2.5 * book.value('k')) / 5) * 5)}, countersunk, stainless A4`,
      quantity: 4 * cleats,
      use: 'cleats, spacing 250 at the most',
      source: 'joinery C1',
    },
    {
      item: 'Screw 3.5 × 25, countersunk, stainless A4',
      quantity: 2 * cleats,
      use: 'shelf from below, 2 for each cleat',
      source: 'joinery B-H',
    },
    {
      item: 'Screw 3.5 × 30, countersunk, stainless A4',
      quantity: onTop + ends,
      use: 'fiddles from below',
      source: 'joinery C1',
    },
    {
      item: 'Bonded tab to the hull',
      quantity:
        choices.plan.kind === 'hull' || choices.backHeld === 'tabs'
          ? Math.max(2, Math.ceil(book.value('shelf_L') / 300))
          : 0,
      use: 'back of the shelf',
      source: 'joinery B-H',
    },
    {
      item: 'Epoxy glue, small pack',
      quantity: choices.fiddle === 'none' ? 0 : 1,
      use: 'fiddle',
      source: 'joinery B8',
    },
  ];
  return list.filter(({ quantity }) => quantity > 0);
}

function steps({ choices }: ShelfLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const shelf = { parts: parts.slice(0, 1) };
  const fiddles = parts.filter(({ name }) => name.includes('iddle'));
  const cleats = parts.filter(({ name }) => name.includes('leat'));
  const shaped = choices.plan.kind !== 'size';
  return chainSteps([
    inWorkshop('cut', 30, 'Cut the shelf, grain along the span, and its strips.', { parts }),
    ...(shaped
      ? [
          aboard('try', 20, 'Offer it up level with the datum; ease its back where it touches.', {
            ...shelf,
            take: ['block plane', 'bag', 'level batten'],
          }),
        ]
      : []),
    ...(fiddles.length > 0
      ? [
          inWorkshop(
            'fiddle',
            45,
            `${choices.fiddle === 'rebate' ? 'Rebate the back of the fiddle and try it on the shelf. ' : ''}Finish the shelf where the fiddle will stand, round the fiddle, then glue it on straight.`,
            { parts: [...shelf.parts, ...fiddles] },
          ),
        ]
      : []),
    inWorkshop('finish', 90, 'Seal every edge; finish both faces alike.', { parts }),
    ...(cleats.length > 0
      ? [
          aboard('cleats', 40, 'Screw the cleats on, levelled to the datum of the boat, back first.', {
            parts: cleats,
            take: ['screwdriver', 'level batten', 'pilot drill'],
          }),
        ]
      : []),
    aboard(
      'fit',
      20,
      'Slide the shelf in from the front; two screws from below into each cleat, so that it comes out again.',
      shelf,
    ),
  ]);
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const sheets = materials.filter((material) => material.kind === 'sheet');
  const near = [...sheets].sort((a, b) => Math.abs(a.thickness - 12) - Math.abs(b.thickness - 12))[0];
  return {
    kind: 'shelf',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: {
      ...(!shape && { length: 760, depth: 192 }),
      materials: { shelf: (near ?? materials[0])?.id ?? '' },
    },
  };
}

export const shelfKind: KindOfPiece<'shelf'> = {
  words: {
    name: 'Shelf with fiddle',
    purpose: 'A shelf that holds what stands on it at sea; its back may follow the hull',
    help: [
      'A board on cleats with a fiddle along the front. Glued to the front edge, butted or over it in a rebate, the fiddle also carries half the load, so that a thin shelf does not sag.',
      'Enter length and depth, or fit it to sections of the hull at a height, or to an outline in plan whose first side is the front.',
      'How high the fiddle must be follows from what stands on the shelf: enter the narrowest item and its centre of gravity, and the worst angle the boat takes.',
      'Leave the corners open so that it wipes clean. Two screws from below let it come out again.',
    ],
  },
  parameters: shelfParameters,
  shape: { kinds: ['sections', 'outline'], required: false },
  gapToShape: 'clearance',
  seen: { across: ['shelf_L', 'fiddle_L'], up: ['fiddle_W', 'T', 'f'] },
  build,
  make,
};
