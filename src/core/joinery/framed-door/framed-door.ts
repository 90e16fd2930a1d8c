import { checkFramed } from './checks.ts';
import { framedDoorFixings, framedDoorJoints, framedDoorSteps } from './lists.ts';
import { framedDoorParameters } from './parameters.ts';
import { framedDoorParts } from './parts.ts';
import { lockSite } from './lock-site.ts';
import { weigh, workOutFramed, type FramedChoices, type FramedLayout } from './sizes.ts';
import type { FramedDoorParameters } from './types.ts';
import { chooseHung, placeNewDoor } from '../hung-door/choices.ts';
import { fitLock } from '../hung-door/fit-lock.ts';
import { sizeLock } from '../hung-door/lock.ts';
import { leafWidth } from '../hung-door/pair.ts';
import { findMaterial } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import type { JoinerySettings, NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type FramedDoor = Extract<Piece, { kind: 'framed-door' }>;

const largeDoor = 0.25; // m²; above it mortise and tenon (joinery B3)

/** A framed door: stiles, rails and loose panels (joinery B3). Frame of the piece as in `framedDoorParts`. */
export function buildFramedDoor(piece: FramedDoor, context: BuildContext): BuiltPiece {
  const { choices, found, lacking } = choose(piece.parameters, context);
  return buildFrom({
    piece,
    what: 'door',
    seenFrom:
      choices.frame?.built.seenFrom ?? 'standing in front of the door, on the side of its hinge knuckles',
    table: framedDoorParameters,
    found,
    lacking,
    workOut: () => workOut(choices, context.settings),
    positive: { names: mustBePositive, source: 'joinery B3' },
    parts: (layout) => fitLock(framedDoorParts(piece, layout), layout.book, choices),
    finish: (layout, parts) => ({
      joints: framedDoorJoints(piece, layout),
      fixings: framedDoorFixings(layout),
      steps: framedDoorSteps(piece, layout, parts),
      findings: checkFramed(layout, parts, context.settings),
    }),
  });
}

function workOut(choices: FramedChoices, settings: JoinerySettings): FramedLayout {
  const layout = workOutFramed(choices, settings);
  sizeLock(layout.book, choices, { infos: framedDoorParameters, site: lockSite(layout) });
  weigh(layout);
  return layout;
}

const mustBePositive = [
  ...['Wd', 'Hd', 'Ls', 'hs', 'wc', 'te', 'gz', 'Wp', 'Hp', 'back_W', 'hinge_leaf', 'reach_mid', 'step'],
  ...['tenon_b_top', 'tenon_b_bottom', 'tenon_b_mid', 'tenon_b_stile', 'tenon_L', 'tenon_L_stile'],
  ...['loose_W_top', 'loose_W_bottom', 'loose_W_mid', 'loose_W_stile'],
];

function choose(parameters: FramedDoorParameters, context: BuildContext) {
  const { choices, findings, lacking } = chooseHung<FramedChoices>(parameters, framedDoorParameters, context);
  const frame = findMaterial(context, parameters.materials.frame, { for: 'the frame', kind: 'solid' });
  const panel = findMaterial(context, parameters.materials.panel, { for: 'the panel', kind: 'either' });
  const area = (leafWidth(choices) * choices.height) / 1e6;
  const stock = { frame: frame.material, panel: panel.material };
  const usual = area > largeDoor ? ('haunched-tenon' as const) : ('groove-tongue' as const);
  return {
    choices: { ...choices, joint: parameters.joint ?? usual, stock },
    found: [...frame.findings, ...panel.findings, ...findings],
    lacking,
  };
}

/** A framed door with the trade's defaults: for the first frame without a door, else of a usual size of a locker. */
export function newFramedDoor(start: NewPiece): Piece {
  const { materials } = start;
  const frame = materials.find((material) => material.kind === 'solid') ?? materials[0];
  const sheets = materials.flatMap((material) => (material.kind === 'sheet' ? [material] : []));
  const off = ({ thickness }: (typeof sheets)[number]) => Math.abs(thickness - 6);
  const panel =
    [...sheets].filter(({ thickness }) => thickness <= 9).sort((one, other) => off(one) - off(other))[0] ??
    frame;
  const hangsIn = placeNewDoor(start.pieces ?? []);
  return {
    kind: 'framed-door',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(hangsIn === null ? { width: 399, height: 679 } : { ...hangsIn, thickness: 20 }),
      materials: { frame: frame?.id ?? '', panel: panel?.id ?? '' },
    },
  };
}
