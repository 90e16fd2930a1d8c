import { formatNumber, markSize } from '#core/units';
import type { KindOfPiece } from '../kind.ts';
import { partAddress } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import { aboard, inWorkshop } from '../step-drafts.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { AssemblyStep, BuildContext, BuiltPiece, Fixing, Joint, Part } from '../types.ts';
import { checkCarcase, refuseCarcase } from './checks.ts';
import { chooseCarcase } from './choices.ts';
import { carcaseParameters } from './parameters.ts';
import { carcaseNumbers, carcaseParts, shelfNumber } from './parts.ts';
import { jointTakes, railJoint, shelfJoint } from './joints.ts';
import { sides } from './sides.ts';
import { workOutCarcase, type CarcaseLayout } from './sizes.ts';

const show = markSize;
type Carcase = Extract<Piece, { kind: 'carcase' }>;

function build(piece: Carcase, context: BuildContext): BuiltPiece {
  const { choices, findings, lacking } = chooseCarcase(piece.parameters, context);
  const cleats = choices.cleats
    ? choices.shelves.flatMap((_, i) => sides.map((side) => `cleat_${side}_${i + 1}`))
    : [];
  const depths = choices.shelves.flatMap((_, i) => sides.map((side) => `depth_${side}_${i + 1}`));
  return buildFrom<CarcaseLayout>({
    piece,
    what: 'carcase',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the cabinet, looking to the hull',
    table: carcaseParameters,
    found: findings,
    lacking,
    workOut: () => workOutCarcase(choices),
    positive: {
      names: ['W', 'H', 'Wi', 'end_l_least', 'end_r_least', 'shelf_L', 'T', 'Ts', ...depths, ...cleats],
      source: 'joinery B7',
    },
    refuse: refuseCarcase,
    parts: (layout) => carcaseParts(piece, layout),
    finish: (layout, parts) => ({
      joints: joints(piece, layout),
      fixings: fixings(layout),
      steps: steps(layout, parts),
      findings: checkCarcase(layout, context.settings),
    }),
  });
}

function joints(piece: Piece, layout: CarcaseLayout): readonly Joint[] {
  const { choices } = layout;
  const address = (number: number) => partAddress(piece, number);
  const rails: readonly Joint[] = sides.map((side) => ({
    kind: choices.railJoint,
    between: [address(carcaseNumbers.rails), address(carcaseNumbers[side])],
    count: layout.backRail ? 2 : 1,
    settings: railJoint(layout, side).settings,
  }));
  const shelves = choices.shelves.flatMap((_, i) =>
    sides.map((side): Joint => {
      const joint = shelfJoint(layout, side, i + 1);
      return {
        kind: joint ? choices.joint : 'butt',
        between: [address(shelfNumber(layout, i)), address(carcaseNumbers[side])],
        count: 1,
        settings: joint?.settings ?? ['The shelf lies on its cleats.'],
        // without a front the shelves alone keep it square
        ...(joint && choices.frontThickness === 0 && { load: 'heavy' as const }),
      };
    }),
  );
  return [...rails, ...shelves];
}

function fixings(layout: CarcaseLayout): readonly Fixing[] {
  const { book, choices, vents } = layout;
  const shelves = choices.shelves.length;
  const perCleat = choices.shelves.map((_, i) =>
    Math.max(2, Math.ceil(book.value(`depth_l_${i + 1}`) / 200) + 1),
  );
  const screws = 2 * perCleat.reduce((sum, count) => sum + count, 0);
  const list: readonly Fixing[] = [
    ...jointTakes(layout),
    {
      item: `Screw 3.5 × ${Math.floor((book.value('T') + choices.cleat - 3) / 5) * 5}, countersunk, stainless A4`,
      quantity: choices.cleats ? screws : 0,
      use: 'cleats to the ends, glued; spacing 200',
      source: 'joinery C1',
    },
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'carcase', source: 'joinery C' },
    { item: 'Bonded tab to the hull', quantity: 4, use: 'ends, 2 each', source: 'joinery B7, B-H' },
    {
      item: `Vent grommet ${formatNumber(choices.ventDiameter)}`,
      quantity: vents.l.length + vents.r.length,
      use: 'ends',
      source: 'joinery B-H',
    },
    {
      item: 'Screw 3.5 × 25, countersunk, stainless A4',
      quantity: choices.joint === 'housing' && book.value('g') === 0 ? 4 * shelves : 0,
      use: 'shelves from below',
      source: 'joinery B-H',
    },
  ];
  return list.filter(({ quantity }) => quantity > 0);
}

function steps(layout: CarcaseLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { book, choices } = layout;
  const ends = parts.slice(0, 2);
  const shelves = parts.filter(({ name }) => name.startsWith('Shelf'));
  const cleats = parts.filter(({ name }) => name.startsWith('Cleat'));
  const frame = choices.frontThickness > 0;
  return chainSteps([
    inWorkshop(
      'ends',
      60,
      'Cut both ends to their own curves; mark inside faces, front edges and heights as a pair. Cut rails, shelves and cleats.',
      { parts },
    ),
    aboard(
      'trace',
      45,
      `Stand the ends in place, plumb to the boat, and look for ${show(book.value('c'))} to the hull all along; trace where it is less and correct.`,
      {
        parts: ends,
        take: ['ends', 'compass', 'block plane', 'bag'],
      },
    ),
    ...jointSteps(layout, ends, shelves),
    ...(cleats.length > 0
      ? [
          inWorkshop('cleats', 8 * cleats.length, 'Glue and screw the cleats where the shelves will lie.', {
            parts: cleats,
          }),
        ]
      : []),
    inWorkshop(
      'finish',
      120,
      'Seal every edge, end and face but those to be glued; twice where the hull sweats.',
      { parts },
    ),
    aboard(
      'assemble',
      90,
      `${isPinned(layout) ? 'One end down, rails and shelves on to it, the other end on to all of them' : 'Ends in, rails between them'}, diagonals of the front equal within ${show(1)}; then bond the tabs to the hull.`,
      {
        parts,
        take: ['clamps', 'screwdriver', 'glue', 'epoxy for the tabs', 'gloves', 'square'],
      },
    ),
    ...shelfSteps(layout, shelves),
    ...(frame ? [aboard('front', 10, 'Face frame last.')] : []),
  ]);
}

/** Shelves on dowels or tenons go together with the ends; others are pushed in between them. */
const isPinned = ({ choices }: CarcaseLayout) =>
  choices.joint === 'dowel' || choices.joint === 'loose-tenon' || choices.railJoint === 'loose-tenon';

function jointSteps(
  { choices }: CarcaseLayout,
  ends: readonly Part[],
  shelves: readonly Part[],
): readonly StepDraft[] {
  if (shelves.length === 0) return [];
  const text = {
    housing: 'Cut the housings, both ends in one setting; try each shelf by hand.',
    butt: 'Mark the middle of each shelf on both ends and bore for the screws from outside.',
    dowel: 'Bore ends and shelves for the dowels with one jig, face sides to it; try each shelf dry.',
    'loose-tenon': 'Slot ends and shelves for the loose tenons, face sides to the fence; try each shelf dry.',
  }[choices.joint];
  return [inWorkshop('housings', 15 * shelves.length, text, { parts: [...ends, ...shelves] })];
}

function shelfSteps(layout: CarcaseLayout, shelves: readonly Part[]): readonly StepDraft[] {
  const { choices, book } = layout;
  if (shelves.length === 0 || choices.joint === 'dowel' || choices.joint === 'loose-tenon') return [];
  const frame = choices.frontThickness > 0;
  const how =
    choices.joint === 'butt'
      ? 'Set the shelves in from the front, glue them and screw them through the ends'
      : `Push the shelves in from the front ${book.value('g') > 0 ? 'into their housings' : 'on to their cleats'}`;
  const before = frame ? ', before the face frame goes on: they are longer than its openings' : '';
  return [aboard('shelves', 20 * shelves.length, `${how}${before}.`, { parts: shelves })];
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const sheets = materials.filter((material) => material.kind === 'sheet');
  const near = [...sheets].sort((a, b) => Math.abs(a.thickness - 12) - Math.abs(b.thickness - 12))[0];
  const entered = { heights: [0, 150, 300, 450, 600, 750], left: [182, 236, 281, 318, 347, 369] };
  return {
    kind: 'carcase',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: {
      ...(!shape && { width: 800, height: 700, ...entered }),
      shelves: [150, 400],
      materials: { panel: (near ?? materials[0])?.id ?? '' },
    },
  };
}

export const carcaseKind: KindOfPiece<'carcase'> = {
  words: {
    name: 'Carcase against the hull',
    purpose:
      'Two ends shaped to the hull or a leaning wall, with shelves, cleats and top rails; with or without a front',
    help: [
      'Two ends have a straight front edge and a back edge that follows the hull, each its own; shelves shorten with it. It has no back: the hull or its lining is the back.',
      'A bookcase on a wall that leans is the same: measure the wall as a shape of hull sections, and give the front a thickness of 0.',
      'Measure the hull at both ends from the plane of the front, every 100 of height, as a shape of hull sections; a third section in the middle when it is wider than 900. Stringers and pipes belong to the shape.',
      'Shelves are housed in the ends, screwed through them, or set on dowels or loose tenons; top rails are butted, rebated or tenoned. In plywood a housing holds best; the others want thicker sheets, as the findings say.',
      'A bevel read with the gauge at a section beside an end is taken for its back edge, and stands on its part sheet; where the gauge and the sections differ, or one bevel does not do, a finding says so.',
      'Nothing is screwed to the skin of the hull: the ends stand clear of it and are held by bonded tabs. Shelves go in from the front before the face frame.',
      'Where the hull falls away, the lower face of a shelf decides its depth; a square edge leaves a little more gap above, which nobody sees.',
    ],
  },
  parameters: carcaseParameters,
  shape: { kinds: ['sections'], required: false },
  gapToShape: 'clearance',
  seen: { across: ['W', 'Wi', 'shelf_L'], up: ['H', 'y_1', 'y_2', 'y_3', 'y_4', 'y_5', 'y_6'] },
  build,
  make,
};
