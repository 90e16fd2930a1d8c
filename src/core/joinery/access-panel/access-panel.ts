import type { Problem } from '#core/problems';
import { checkPanel } from './checks.ts';
import { enteredHole, measureHole } from './hole.ts';
import { accessPanelFixings, accessPanelJoints, accessPanelSteps } from './lists.ts';
import { accessPanelParameters } from './parameters.ts';
import { accessPanelParts } from './parts.ts';
import { workOutPanel, type PanelChoices } from './sizes.ts';
import { fillDefaults } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { buildFrom } from '../recipe.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type AccessPanel = Extract<Piece, { kind: 'access-panel' }>;

/** A removable panel held by turn buttons (joinery B14). Frame of the piece as in `accessPanelParts`. */
export function buildAccessPanel(piece: AccessPanel, context: BuildContext): BuiltPiece {
  const { choices, found, lacking } = choose(piece, context);
  return buildFrom({
    piece,
    what: 'panel',
    seenFrom: context.shape?.seenFrom ?? 'standing in front of the panel',
    table: accessPanelParameters,
    found,
    lacking,
    workOut: () => workOutPanel(choices, context.settings),
    positive: {
      names: ['panel_W', 'panel_H', 'button_L', 'bearing', 'cleat_L', 'cleat_side_L'],
      source: 'joinery B14',
    },
    parts: (layout) => accessPanelParts(piece, layout),
    finish: (layout, parts) => ({
      joints: accessPanelJoints(piece, layout),
      fixings: accessPanelFixings(layout, parts),
      steps: accessPanelSteps(layout, parts),
      findings: checkPanel(layout, parts),
    }),
  });
}

function choose(piece: AccessPanel, context: BuildContext) {
  const { parameters } = piece;
  const { values, given } = fillDefaults(parameters, accessPanelParameters);
  const panel = findMaterial(context, parameters.materials.panel, { for: 'the panel', kind: 'either' });
  const solid = findMaterial(context, parameters.materials.solid, {
    for: 'buttons and cleats',
    kind: 'solid',
  });
  const entered = parameters.width !== undefined && parameters.height !== undefined;
  const { shape, shapeName = 'The shape' } = context;
  const measured = entered || !shape ? null : measureHole(shape, shapeName, parameters.mount ?? 'lap');
  const hole = measured?.hole ?? null;
  const size = hole ?? { width: parameters.width ?? 0, height: parameters.height ?? 0, skew: 0 };
  const choices = {
    ...values,
    width: size.width,
    height: size.height,
    skew: size.skew,
    corners: hole && parameters.mount === 'inset' ? hole.corners : enteredHole(size.width, size.height),
    measured: hole ? `shape ${context.shapeName ?? ''}` : null,
    given,
    stock: { panel: panel.material, solid: solid.material },
  } as unknown as PanelChoices;
  const known = choices.width > 0 && choices.height > 0;
  return {
    choices,
    found: [...panel.findings, ...solid.findings],
    lacking: known ? [] : (measured?.problems ?? lackSize(piece)),
  };
}

function lackSize({ name }: AccessPanel): readonly Problem[] {
  return [
    {
      severity: 'stop',
      code: 'hole-missing',
      message: `${name}: the hole it covers is neither measured nor entered.`,
      remedy: 'Choose a measured opening, or enter the width and height of the hole.',
      source: 'joinery B14',
    },
  ];
}

/** An access panel with the trade's defaults, for a hole of a usual size unless it is fitted to a shape. */
export function newAccessPanel(start: NewPiece): Piece {
  const sheets = start.materials.flatMap((material) => (material.kind === 'sheet' ? [material] : []));
  const off = ({ thickness }: (typeof sheets)[number]) => Math.abs(thickness - 9);
  const sheet = [...sheets].sort((one, other) => off(one) - off(other))[0] ?? start.materials[0];
  const solid = start.materials.find((material) => material.kind === 'solid') ?? start.materials[0];
  return {
    kind: 'access-panel',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      ...(start.shape ? {} : { width: 360, height: 280 }),
      materials: { panel: sheet?.id ?? '', solid: solid?.id ?? '' },
    },
  };
}
