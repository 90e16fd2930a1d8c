import type { KindOfPiece } from '../kind.ts';
import { buildFrom } from '../recipe.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';
import { checkDividers, refuseDividers } from './checks.ts';
import { dividersFixings, dividersJoints, dividersSteps } from './lists.ts';
import { dividersParameters } from './parameters.ts';
import { dividerParts } from './parts.ts';
import { chooseDividers, workOutDividers, type DividersLayout } from './sizes.ts';

type Dividers = Extract<Piece, { kind: 'dividers' }>;

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
    refuse: refuseDividers,
    parts: (layout) => dividerParts(piece, layout),
    finish: (layout, parts) => ({
      joints: dividersJoints(piece, layout),
      fixings: dividersFixings(layout, parts),
      steps: dividersSteps(layout, parts),
      findings: checkDividers(layout),
    }),
  });
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
