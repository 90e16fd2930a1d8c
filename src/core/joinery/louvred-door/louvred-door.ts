import type { Problem } from '#core/problems';
import { checkLouvred } from './checks.ts';
import { louvredDoorFixings, louvredDoorJoints, louvredDoorSteps } from './lists.ts';
import { louvredDoorParameters } from './parameters.ts';
import { louvredDoorParts } from './parts.ts';
import { lockSite } from './rails.ts';
import { weigh, workOutLouvred, type LouvredChoices, type LouvredLayout } from './sizes.ts';
import { chooseHung, placeNewDoor } from '../hung-door/choices.ts';
import { fitLock } from '../hung-door/fit-lock.ts';
import { sizeLock } from '../hung-door/lock.ts';
import { findMaterial } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import type { JoinerySettings, NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type LouvredDoor = Extract<Piece, { kind: 'louvred-door' }>;

/** A louvred door: slanting slats housed in the stiles (joinery B4). Frame of the piece as in `louvredDoorParts`. */
export function buildLouvredDoor(piece: LouvredDoor, context: BuildContext): BuiltPiece {
  const { choices, found, lacking } = choose(piece, context);
  return buildFrom({
    piece,
    what: 'door',
    seenFrom:
      choices.frame?.built.seenFrom ?? 'standing in front of the door, on the side of its hinge knuckles',
    table: louvredDoorParameters,
    found,
    lacking,
    workOut: () => workOut(choices, context.settings),
    positive: { names: mustBePositive, source: 'joinery B4' },
    refuse: refuseCount,
    parts: (layout) => fitLock(louvredDoorParts(piece, layout), layout.book, choices),
    finish: (layout, parts) => ({
      joints: louvredDoorJoints(piece, layout),
      fixings: louvredDoorFixings(layout),
      steps: louvredDoorSteps(piece, layout, parts),
      findings: checkLouvred(layout, context.settings),
    }),
  });
}

function workOut(choices: LouvredChoices, settings: JoinerySettings): LouvredLayout {
  const layout = workOutLouvred(choices, settings);
  sizeLock(layout.book, choices, { infos: louvredDoorParameters, site: lockSite(layout) });
  weigh(layout);
  return layout;
}

const mustBePositive = [
  ...['Wd', 'Hd', 'Ls', 'clear', 'b', 'vert', 'p0', 'room', 'p', 'slat_L', 'section', 'back_W', 'hinge_leaf'],
  ...['tenon_b_top', 'tenon_b_bottom', 'tenon_L', 'loose_W_top', 'loose_W_bottom'],
  ...['tenon_b_mid', 'loose_W_mid'],
];

const mostSlats = 200; // more are a slip of the unit

/** Slats without end, or so near each other that their housings run together. */
function refuseCount({ book: { value: v } }: LouvredLayout): readonly Problem[] {
  if (v('nl_all') <= mostSlats && v('air') > 0.5) return [];
  const about = `${v('nl_all')} slats ${v('p').toFixed(1)} from one to the next`;
  return [
    {
      severity: 'stop',
      code: 'slats-too-near',
      message: `${about} were worked out; ${v('air') > 0.5 ? `${mostSlats} are the most` : 'they would lie on each other'}.`,
      remedy: 'Check the unit of the sizes, or take wider or thinner slats, or less overlap.',
      source: 'joinery B4',
    },
  ];
}

function choose({ parameters }: LouvredDoor, context: BuildContext) {
  const { choices, findings, lacking } = chooseHung<LouvredChoices>(
    parameters,
    louvredDoorParameters,
    context,
  );
  const frame = findMaterial(context, parameters.materials.frame, { for: 'the frame', kind: 'solid' });
  const slats = findMaterial(context, parameters.materials.slats, { for: 'the slats', kind: 'solid' });
  return {
    choices: { ...choices, stock: { frame: frame.material, slats: slats.material } },
    found: [...frame.findings, ...slats.findings, ...findings],
    lacking,
  };
}

/** A louvred door with the trade's defaults: for the first frame without a door, else of a usual size of a locker. */
export function newLouvredDoor(start: NewPiece): Piece {
  const solid = start.materials.find((material) => material.kind === 'solid') ?? start.materials[0];
  const hangsIn = placeNewDoor(start.pieces ?? []);
  return {
    kind: 'louvred-door',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(hangsIn ?? { width: 410, height: 560 }),
      materials: { frame: solid?.id ?? '', slats: solid?.id ?? '' },
    },
  };
}
