import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkTop, refuseTop } from './checks.ts';
import { countertopParameters } from './parameters.ts';
import { topParts } from './parts.ts';
import { chooseTop, workOutTop, type TopLayout } from './sizes.ts';

const show = markSize;
type Countertop = Extract<Piece, { kind: 'countertop' }>;

function build(piece: Countertop, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseTop(piece.parameters, context, piece.name);
  return buildFrom<TopLayout>({
    piece,
    what: 'countertop',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the counter',
    table: countertopParameters,
    found: findings,
    lacking,
    workOut: () => workOutTop(choices),
    positive: {
      names: [
        'T',
        'top_W',
        'top_D',
        'core_W',
        'core_D',
        'f',
        'tf',
        ...[...choices.fiddleSides].map((i) => `fiddle_${i + 1}_L`),
        ...[...choices.openSides].map((i) => `edge_${i + 1}_L`),
      ],
      source: 'joinery B9',
    },
    refuse: refuseTop,
    parts: (layout) => topParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(layout, parts),
      fixings: fixings(layout, parts),
      steps: steps(layout, parts),
      findings: checkTop(layout, parts, context.settings),
    }),
  });
}

function joints({ book, choices }: TopLayout, parts: readonly Part[]): readonly Joint[] {
  const top = parts[0];
  if (!top) return [];
  return parts.slice(1).flatMap((part): readonly Joint[] => {
    const joint = { between: [top.id, part.id] as const, count: part.quantity };
    if (part.name.startsWith('Solid edge'))
      return [
        {
          ...joint,
          kind: 'lipping',
          settings: [
            `Strip ${show(choices.lipping + 0.5)} × ${show(book.value('T') + 2)}, corner blocks first, then the sides between them; flushed when the glue is hard.`,
          ],
        },
      ];
    if (part.name.startsWith('Fiddle'))
      return [
        {
          ...joint,
          kind: 'butt',
          settings: [`Glued on top, screwed from below every ${show(150)}, clear of the laminate joint.`],
        },
      ];
    return [{ ...joint, kind: 'butt', settings: ['Glued under the top before the opening is cut.'] }];
  });
}

function fixings({ book, choices, cutouts, fiddles }: TopLayout, parts: readonly Part[]): readonly Fixing[] {
  const screws = fiddles.reduce((sum, { name }) => sum + Math.ceil(book.value(`${name}_L`) / 150) + 1, 0);
  const sheet = book.value('area') / 1e6;
  const list: readonly Fixing[] = [
    {
      item: `Laminate, ${formatNumber(Math.ceil(sheet * 12) / 10)} m²`,
      quantity: choices.laminate ? 1 : 0,
      use: 'top face',
      source: 'joinery B9',
    },
    {
      item: `Balancer, ${formatNumber(Math.ceil(sheet * 12) / 10)} m²`,
      quantity: choices.laminate ? 1 : 0,
      use: 'under face: both faces alike, or it cups',
      source: 'joinery B9',
    },
    {
      item: `Screw 4 × ${formatNumber(Math.ceil((book.value('T') + 20) / 5) * 5)}, countersunk, stainless A4`,
      quantity: screws,
      use: 'fiddles, from below',
      source: 'joinery C1',
    },
    {
      item: 'Angle bracket with screws',
      quantity: Math.max(4, 2 * (choices.supports?.length ?? 0)),
      use: 'top, from below',
      source: 'joinery B-H',
    },
    {
      item: 'Bedding tape, roll',
      quantity: cutouts.length > 0 ? 1 : 0,
      use: 'flanges',
      source: 'joinery B-H',
    },
    {
      item: 'Epoxy glue, small pack',
      quantity: parts.length > 1 || cutouts.length > 0 ? 1 : 0,
      use: 'edges, doublers, sealing',
      source: 'joinery B9',
    },
  ];
  return list.filter(({ quantity }) => quantity > 0);
}

function steps({ choices, cutouts, book }: TopLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const top = { parts: parts.slice(0, 1) };
  const fiddles = parts.filter(({ name }) => name.startsWith('Fiddle'));
  const appliances = cutouts.length > 0;
  return chainSteps([
    aboard(
      'template',
      30,
      'Lay the template on the carcase; check overhang, walls and where the appliances go.',
      { take: ['template', 'pencil', 'appliance templates'] },
    ),
    inWorkshop(
      'outline',
      45,
      `Cut the top, ${show(book.value('core_W'))} × ${show(book.value('core_D'))}, to its outline.`,
      top,
    ),
    ...edgeSteps(top.parts, parts),
    ...(choices.laminate
      ? [inWorkshop('laminate', 90, 'Laminate the top face, balancer below; trim flush.', top)]
      : []),
    ...(appliances
      ? [
          inWorkshop(
            'cutouts',
            30 * cutouts.length,
            'Drill the corners of the cut-outs, saw between them, seal the edges with epoxy twice.',
            top,
          ),
        ]
      : []),
    ...fiddleSteps(fiddles),
    inWorkshop('finish', 90, 'Seal every edge; finish solid edges and fiddles.', { parts }),
    aboard(
      'fit',
      60,
      `Set the top on dry${appliances ? ' with its appliances' : ''}, then bed it and fix it from below.`,
      { parts, take: ['screwdriver', 'bedding tape', 'brackets'] },
    ),
  ]);
}

function edgeSteps(top: readonly Part[], parts: readonly Part[]): readonly StepDraft[] {
  const of = (word: string) => parts.filter(({ name }) => name.startsWith(word));
  const [edges, doublers] = [of('Solid edge'), of('Doubler')];
  const double = 'Glue the doublers under the edges of the cut-outs.';
  const edge = 'Glue the solid edges on, corner blocks first; flush them when the glue is hard.';
  return [
    ...(doublers.length > 0 ? [inWorkshop('doublers', 30, double, { parts: [...top, ...doublers] })] : []),
    ...(edges.length > 0
      ? [inWorkshop('edges', 25 * edges.length, edge, { parts: [...top, ...edges] })]
      : []),
  ];
}

function fiddleSteps(fiddles: readonly Part[]): readonly StepDraft[] {
  if (fiddles.length === 0) return [];
  const text = `Round the fiddles ${show(4)} and screw them on from below.`;
  return [inWorkshop('fiddles', 30, text, { parts: fiddles })];
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const sheets = materials.filter((material) => material.kind === 'sheet');
  const near = [...sheets].sort((a, b) => Math.abs(a.thickness - 18) - Math.abs(b.thickness - 18))[0];
  return {
    kind: 'countertop',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: {
      ...(!shape && { width: 1000, depth: 540 }),
      materials: { top: (near ?? materials[0])?.id ?? '' },
    },
  };
}

export const countertopKind: KindOfPiece<'countertop'> = {
  words: {
    name: 'Countertop',
    purpose: 'A top with solid edges, rounded corners, cut-outs and a fiddle',
    help: [
      'A sheet over the carcase, usually laminated on both faces, with solid edges where it is open, doublers under its cut-outs and a fiddle along the front.',
      'Fit it to an outline in plan whose first side is the front, or enter corners or a rectangle. Open sides overhang; the others stand against walls with a gap.',
      'A cut-out is the body of the appliance and a clearance all round; its flange must lie on 6 of wood, and 50 or more stay to the edge. Take the template of the appliance, not its leaflet.',
      'Order: outline, doublers, solid edges, laminate, cut-outs, sealing, dry fit with everything in it, bedding.',
    ],
  },
  parameters: countertopParameters,
  shape: { kinds: ['outline', 'opening'], required: false },
  seen: { across: ['top_W', 'core_W', 'fiddle_1_L'], up: ['T', 'f'] },
  build,
  make,
};
