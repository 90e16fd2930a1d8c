import { markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { partAddress } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkPanel, refusePanel } from './checks.ts';
import { freePanelParameters } from './parameters.ts';
import { sizeLips } from './lips.ts';
import { panelParts } from './parts.ts';
import { choosePanel, workOutPanel, type PanelLayout } from './sizes.ts';

const show = markSize;
type FreePanel = Extract<Piece, { kind: 'free-panel' }>;

function build(piece: FreePanel, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = choosePanel(piece.parameters, context, piece.name);
  return buildFrom<PanelLayout>({
    piece,
    what: 'panel',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the panel',
    table: freePanelParameters,
    found: findings,
    lacking,
    workOut: () => sizeLips(workOutPanel(choices, context.settings)),
    positive: { names: [], source: 'joinery A10' },
    refuse: refusePanel,
    parts: (layout) => panelParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(piece, layout),
      fixings: fixings(layout, parts),
      steps: steps(layout, parts),
      findings: checkPanel(layout, parts, context.settings),
    }),
  });
}

function joints(piece: Piece, { lipped, book }: PanelLayout): readonly Joint[] {
  return [...lipped]
    .sort((a, b) => a - b)
    .map((_, i) => ({
      kind: 'lipping',
      between: [partAddress(piece, 1), partAddress(piece, i + 2)],
      count: 1,
      settings: [
        `Strip ${show(book.value('a') + 0.5)} × ${show(book.value('T') + 2)}, mitred where two solid edges meet; flushed when the glue is hard.`,
      ],
    }));
}

/** Screws at 250 round the edge, 30 from the corners (joinery C1). */
function fixings({ choices, book, lipped }: PanelLayout, parts: readonly Part[]): readonly Fixing[] {
  const { length = 0, width = 0 } = parts[0]?.finished ?? {};
  const along = (size: number) => Math.max(2, Math.ceil(Math.max(0, size - 60) / 250) + 1);
  const screws = {
    item: `Screw 4 × ${Math.ceil((book.value('T') + 20) / 5) * 5}, countersunk, stainless A4`,
    quantity: 2 * (along(length) + along(width)) - 4,
    use: 'panel',
    source: 'joinery C1',
  };
  const glue = { item: 'Epoxy glue, small pack', quantity: 1, use: 'panel', source: 'joinery C17' };
  return [
    ...(choices.fixed === 'screwed' ? [screws] : []),
    ...(choices.fixed === 'glued' || lipped.size > 0 ? [glue] : []),
  ];
}

function steps(layout: PanelLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { choices, lipped, scribed, book } = layout;
  const panel = { parts: parts.slice(0, 1) };
  const size = `${show(book.value('panel_W'))} × ${show(book.value('panel_H'))}`;
  const scribing = [...scribed].map(([side, left]) => `side ${side + 1} (${show(left)} left on)`).join(', ');
  const fit =
    choices.fixed === 'loose'
      ? `Lay it in; it has ${show(choices.gap)} all round.`
      : `Set it in with equal gaps and ${choices.fixed === 'glued' ? 'glue it' : 'screw it, the corners first'}.`;
  const lips = 'Glue the solid edges on, the longest first, mitres last; flush them when the glue is hard.';
  const scribe = `Offer it up parallel, set the compass to the largest gap and scribe in one direction: ${scribing}.`;
  return chainSteps([
    aboard('template', 20, 'Lay the template into the opening; correct it before anything is cut.', {
      take: ['template', 'pencil', 'scissors'],
    }),
    inWorkshop('cut', 40, `Cut the panel, ${size}, to its outline; holes first while it lies flat.`, panel),
    ...(lipped.size > 0 ? [inWorkshop('edges', 25 * lipped.size, lips, { parts })] : []),
    ...(scribed.size > 0
      ? [aboard('scribe', 40 * scribed.size, scribe, { ...panel, take: ['compass', 'block plane', 'bag'] })]
      : []),
    inWorkshop('finish', 90, 'Break the edges, seal every edge and hole, finish both faces alike.', {
      parts,
    }),
    aboard('fit', 30, fit, { parts }),
  ]);
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const panel = materials.find(({ kind }) => kind === 'sheet') ?? materials[0];
  return {
    kind: 'free-panel',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: { ...(!shape && { width: 600, height: 400 }), materials: { panel: panel?.id ?? '' } },
  };
}

export const freePanelKind: KindOfPiece<'free-panel'> = {
  words: {
    name: 'Free panel',
    purpose: 'Anything flat: any outline, holes, solid or scribed edges',
    help: [
      'One flat part that fills a measured opening or outline less a gap at each side, or a size you enter. Curved sides are followed.',
      'Sides are counted counter-clockwise, the bottom one first. Each may be bare, have a solid edge, or keep wood on for scribing; a solid edge is mitred to its neighbour.',
      'Holes come from the lower left corner of the panel. Where an edge is to touch the boat, give it a gap of 0 and scribe it; over 25 make a template first.',
      'A solid panel swells across its grain: leave it gaps, or take a sheet. Wider than 120, or than the boards at hand, it is glued up of staves, which are what is cut and bought; its figure can be opened like a book, of leaves sawn out of one thicker board.',
    ],
  },
  parameters: freePanelParameters,
  shape: { kinds: ['opening', 'outline'], required: false },
  gapToShape: 'gap',
  seen: { across: ['panel_W', 'core_W'], up: ['panel_H', 'core_H'] },
  build,
  make,
};
