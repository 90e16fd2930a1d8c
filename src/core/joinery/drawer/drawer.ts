import { hasStop, type Problem } from '#core/problems';
import { describeBuilt } from '../built-piece.ts';
import type { DrawerCorners } from './boards.ts';
import { checkDrawer, checkDrawerPossible } from './checks.ts';
import { chooseDrawer } from './choices.ts';
import { cutCorners } from './corners.ts';
import { drawerFixings } from './fixings.ts';
import { checkDrawerJoints } from './joint-checks.ts';
import { drawerJoints } from './joints.ts';
import { drawerParameters } from './parameters.ts';
import { drawerParts } from './parts.ts';
import { runnerParts } from './runners.ts';
import { workOutDrawer, type DrawerLayout } from './sizes.ts';
import { drawerSteps } from './steps.ts';
import { checkParameters } from '../parameter-checks.ts';
import { envelopeOf, nothing } from '../parts.ts';
import { checkExtent } from '../piece-findings.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';

type Drawer = Extract<Piece, { kind: 'drawer' }>;

/**
 * A drawer with its front and runners (joinery B5). Frame of the piece: origin at the lower left corner of the opening,
 * x right, y up, z to the viewer, z = 0 at the face of the opening; the drawer closed. Of several alike one is placed.
 */
export function buildDrawer(piece: Drawer, context: BuildContext): BuiltPiece {
  const limits = [
    ...checkParameters(piece.parameters, drawerParameters, piece.letter),
    ...checkExtent(piece.parameters, drawerParameters, piece.letter),
    ...checkGiven(piece),
  ];
  const { choices, findings } = chooseDrawer(piece.parameters, context);
  const early = [...limits, ...findings];
  if (hasStop(limits)) return describe(piece, early);
  const layout = workOutDrawer(choices);
  const impossible = checkDrawerPossible(layout);
  if (impossible.length) return describe(piece, [...early, ...impossible], { working: layout.book.steps() });
  return finish(piece, context, layout, early);
}

function finish(
  piece: Drawer,
  context: BuildContext,
  layout: DrawerLayout,
  early: readonly Problem[],
): BuiltPiece {
  const corners: DrawerCorners = { front: cutCorners(layout, 'front'), back: cutCorners(layout, 'back') };
  const parts = [...drawerParts(piece, layout, corners), ...runnerParts(piece, layout)];
  const findings = [
    ...early,
    ...checkDrawer(layout, parts, context.settings),
    ...checkDrawerJoints(layout, corners),
  ];
  return describe(piece, findings, {
    parts,
    joints: drawerJoints(piece, layout, corners),
    fixings: drawerFixings(layout, parts),
    steps: drawerSteps(piece, layout, parts),
    working: layout.book.steps(),
    envelope: envelopeOf(parts) ?? nothing,
  });
}

function describe(piece: Drawer, findings: readonly Problem[], made: Partial<BuiltPiece> = {}): BuiltPiece {
  return describeBuilt(piece, 'standing in front of the drawer', findings, made);
}

/** The opening must be there, and the number of drawers a whole one. */
function checkGiven({ parameters }: Drawer): readonly Problem[] {
  const sizes = ['openingWidth', 'openingHeight', 'clearDepth'] as const;
  const lacking = sizes.filter((key) => !(parameters[key] > 0));
  const { count = 1 } = parameters;
  const opening: readonly Problem[] = lacking.map((key) => ({
    severity: 'stop',
    code: 'opening-not-measured',
    message: `${labelOf(key)} of the drawer has not been entered.`,
    remedy:
      'Measure width and height at three depths and the clear depth at the back; enter the smallest of each.',
    source: 'joinery A10, B5',
  }));
  if (Number.isInteger(count) && count >= 1) return opening;
  return [
    ...opening,
    {
      severity: 'stop',
      code: 'count-not-whole',
      message: `${count} drawers were asked for.`,
      remedy: 'Enter a whole number, 1 or more.',
    },
  ];
}

function labelOf(key: string): string {
  return drawerParameters.find((info) => info.key === key)?.label ?? key;
}

/** A drawer with the trade's defaults for an opening of usual size, to be replaced by the measured one. */
export function newDrawer(start: NewPiece): Piece {
  const solid = start.materials.find((material) => material.kind === 'solid');
  const sheets = start.materials.filter((material) => material.kind === 'sheet');
  const nearest = (thickness: number) =>
    [...sheets].sort(
      (a, b) => Math.abs(thicknessOf(a) - thickness) - Math.abs(thicknessOf(b) - thickness),
    )[0];
  const first = start.materials[0];
  const box = nearest(12) ?? solid ?? first;
  const front = nearest(18) ?? solid ?? first;
  return {
    kind: 'drawer',
    id: start.id,
    letter: start.letter,
    name: start.name,
    ...(start.shape && { shape: start.shape }),
    parameters: {
      openingWidth: 380,
      openingHeight: 142,
      clearDepth: 455,
      materials: {
        box: box?.id ?? '',
        bottom: (nearest(6) ?? box)?.id ?? '',
        ...(front && { front: front.id }),
        ...(solid && { runners: solid.id }),
      },
    },
  };
}

function thicknessOf(material: NewPiece['materials'][number]): number {
  return material.kind === 'sheet' ? material.thickness : Infinity;
}
