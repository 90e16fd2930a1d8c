import type { Outline } from '#core/geometry';
import { formatNumber, markSize } from '#core/units';
import type { Problem } from '#core/problems';
import type { KindOfPiece } from '../kind.ts';
import { makePart, placeAt } from '../parts.ts';
import { checkMoisture, checkSheetThickness, checkWideSolid, openFindings } from '../piece-findings.ts';
import { buildFrom } from '../recipe.ts';
import { scribe } from '../rules.ts';
import { chainSteps } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { JoinerySettings, NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Part } from '../types.ts';
import { infillParameters } from './parameters.ts';
import { chooseInfill, workOutInfill, type InfillLayout } from './sizes.ts';

const show = markSize;
const sliver = 15; // mm, narrowest filler (joinery B12)
const fewest = 5; // gaps (joinery A10, B12)
type Infill = Extract<Piece, { kind: 'infill' }>;

function build(piece: Infill, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseInfill(piece.parameters, context, piece.name);
  return buildFrom<InfillLayout>({
    piece,
    what: 'filler',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the filler',
    table: infillParameters,
    found: findings,
    lacking,
    workOut: () => workOutInfill(choices),
    positive: { names: ['H', 'min_fin', 'T'], source: 'joinery B12' },
    parts: (layout) => [fillerPart(piece, layout)],
    finish: (layout, parts) => ({
      fixings: fixings(layout),
      steps: steps(layout, parts),
      findings: check(layout, parts, context.settings),
    }),
  });
}

/** Fitted outline: the straight edge is the face edge, the scribed one goes through the gaps. */
function outlineOf({ book, choices }: InfillLayout): Outline {
  const H = book.value('H');
  const stations = choices.heights.map((at, i) => ({
    x: at,
    y: book.value(`g_${i + 1}`) - book.value('rv'),
  }));
  const [first, last] = [stations[0], stations.at(-1)];
  // beyond the first and last gap measured the filler goes on as wide as it is there
  const ends = [
    ...(first && first.x > 1e-9 ? [{ x: 0, y: first.y }] : []),
    ...stations,
    ...(last && last.x < H - 1e-9 ? [{ x: H, y: last.y }] : []),
  ];
  return [{ x: 0, y: 0 }, { x: H, y: 0 }, ...ends.reverse()];
}

function fillerPart(piece: Piece, layout: InfillLayout): Part {
  const { book, choices } = layout;
  const v = book.value;
  const finished = { length: v('H'), width: v('fin_W'), thickness: v('T') };
  const onRight = choices.scribed === 'right';
  const upright = outlineOf(layout);
  // turned end for end for a left one, so that the scribed edge stays the far edge
  const turned = upright.map(({ x, y }) => ({ x: v('H') - x, y })).reverse();
  const up = { x: 0, y: 1, z: 0 };
  const right = { x: 1, y: 0, z: 0 };
  return makePart(piece, {
    number: 1,
    name: 'Filler',
    material: choices.material,
    finished,
    cut: { ...finished, width: v('cut_W') },
    working: { length: 'H', width: 'fin_W', thickness: 'T' },
    outline: onRight ? upright : turned,
    edges: [{ edge: 'far-edge', treatment: 'scribed', amount: v('left_on') }],
    machining:
      v('beta') > 0
        ? [{ kind: 'bevel', edge: 'far-edge', degrees: -v('beta'), note: 'back bevel, after scribing' }]
        : [],
    faceSide: 'face side to the viewer, far edge to the boat',
    placements: [
      onRight
        ? placeAt({ x: 0, y: 0, z: 0 }, up, right)
        : placeAt({ x: 0, y: v('H'), z: 0 }, { x: 0, y: -1, z: 0 }, { x: -1, y: 0, z: 0 }),
    ],
    notes: ['Grain upright.'],
  });
}

const screwSpacing = 300;

function fixings({ book }: InfillLayout): readonly Fixing[] {
  return [
    {
      item: 'Screw 4 × 30, pan head, stainless A4, with washer',
      quantity: Math.ceil(book.value('H') / screwSpacing) + 1,
      use: 'filler, from the cabinet side through slotted holes',
      source: 'joinery B12',
    },
  ];
}

function steps({ book, choices }: InfillLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const v = book.value;
  const cut = `Cut the filler ${show(v('H'))} × ${show(v('cut_W'))}, its straight edge true; leave ${show(v('left_on'))} on the ${choices.scribed} edge.`;
  const trace = `Set it up parallel with its straight edge, compass to the largest gap, scribe once in one direction; saw outside the line and plane to it.`;
  const bevel = `Bevel the back of that edge ${formatNumber(v('beta'))}°: the back stands ${show(v('relief'))} off, the show edge touches.`;
  return chainSteps([
    aboard('measure', 20, 'Measure the gap again at five places or more, square to the straight edge.', {
      take: ['rule', 'straightedge', 'bevel gauge'],
    }),
    inWorkshop('cut', 25, cut, { parts }),
    aboard('scribe', 45, trace, { parts, take: ['compass', 'block plane', 'bag', 'clamps'] }),
    ...(v('beta') > 0 ? [aboard('bevel', 15, bevel, { parts, take: ['block plane', 'bag'] })] : []),
    inWorkshop('finish', 60, 'Seal the scribed edge and the back, finish the face.', { parts }),
    aboard('fix', 20, 'Screw it from the cabinet side through slotted holes, washers under the heads.', {
      parts,
      take: ['screws', 'washers', 'screwdriver'],
    }),
  ]);
}

function check(layout: InfillLayout, parts: readonly Part[], settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  const { book, choices } = layout;
  const v = book.value;
  if (choices.gaps.length < fewest) {
    say('warn', 'gaps-at-few-places', {
      message: `The gap was measured at ${choices.gaps.length} places; a line that bows wants ${fewest}.`,
      remedy: 'Measure between them too.',
      source: 'joinery A10, B12',
    });
  }
  if (v('min_fin') < sliver) {
    say('warn', 'filler-sliver', {
      message: `The filler is a sliver: ${show(v('min_fin'))} at its narrowest, ${sliver} is the least.`,
      remedy: 'Make the stile beside it wider and scribe that, or move the cabinet over.',
      source: 'joinery B12',
    });
  }
  const wanted = v('dev') + 4 * v('sigma') + scribe.margin;
  if (wanted > scribe.most) {
    say('stop', 'scribe-too-wide', {
      message: `The gap deviates ${show(v('dev'))} from straight: ${show(wanted)} would have to be left on, ${scribe.most} is the most.`,
      remedy: 'Make a template of the boat’s side and cut the filler to it.',
      source: 'joinery A11, G25',
    });
  }
  if (v('beta') === 0) {
    say('note', 'no-back-bevel', {
      message: 'Without a back bevel the whole edge has to fit.',
      remedy: 'Bevel the back 5 to 10°.',
      source: 'joinery B12',
    });
  }
  checkWideSolid(say, parts);
  checkSheetThickness(say, choices.material, v('T'), 'Filler');
  checkMoisture(say, settings, choices.material.kind === 'solid');
  return all();
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const filler = materials.find(({ kind }) => kind === 'solid') ?? materials[0];
  return {
    kind: 'infill',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: {
      ...(!shape && { height: 800, gaps: [20, 20, 20, 20, 20] }),
      materials: { filler: filler?.id ?? '' },
    },
  };
}

export const infillKind: KindOfPiece<'infill'> = {
  words: {
    name: 'Infill',
    purpose: 'A filler scribed between a cabinet and the boat',
    help: [
      'A strip closes the gap between something straight and the boat’s side. It is cut too wide and scribed aboard in one go.',
      'Measure the gap at five places or more. The deviation from a straight line and the uncertainty say how much is left on; over 25 a template comes first.',
      'Under 15 it is a sliver that splits: make the stile beside it wider instead.',
      'Its back edge is bevelled so that only the show edge touches, and slotted holes let it move.',
    ],
  },
  parameters: infillParameters,
  shape: { kinds: ['opening', 'outline'], required: false },
  unglued: true,
  seen: { across: ['fin_W', 'min_fin'], up: ['H'] },
  build,
  make,
};
