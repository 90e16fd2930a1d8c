import { hasStop, type Problem } from '#core/problems';
import { markSize } from '#core/units';
import { describeBuilt } from '../built-piece.ts';
import type { DrawerCorners } from './boards.ts';
import { checkDrawer, checkDrawerPossible } from './checks.ts';
import { chooseDrawer, type DrawerChoices } from './choices.ts';
import { cutCorners } from './corners.ts';
import { checkHullBehind } from './hull-behind.ts';
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
import type { BuildContext, BuiltPiece, Part } from '../types.ts';

type Drawer = Extract<Piece, { kind: 'drawer' }>;

/**
 * A drawer with its front and runners (joinery B5). Frame of the piece: origin at the lower left corner of the opening,
 * x right, y up, z to the viewer, z = 0 at the face of the opening; the drawer closed. Of several alike one is
 * placed, unless a front gives each its opening.
 */
export function buildDrawer(piece: Drawer, context: BuildContext): BuiltPiece {
  const limits = [
    ...checkParameters(piece.parameters, drawerParameters, piece.letter),
    ...checkExtent(piece.parameters, drawerParameters, piece.letter),
    ...checkCount(piece),
  ];
  const { choices, findings } = chooseDrawer(piece.parameters, context);
  const lacking = checkOpening(choices);
  const early = [...limits, ...lacking, ...findings];
  if (hasStop([...limits, ...lacking])) return describe(piece, early);
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
  const one = [...drawerParts(piece, layout, corners), ...runnerParts(piece, layout)];
  const parts = one.map((part) => placeEach(part, layout.choices.cells));
  const findings = [
    ...early,
    ...checkDrawer(layout, parts, context.settings),
    ...checkDrawerJoints(layout, corners),
    ...checkHullBehind(layout, one, context),
  ];
  return describe(piece, findings, {
    parts,
    joints: drawerJoints(piece, layout, corners),
    fixings: drawerFixings(layout, parts),
    steps: drawerSteps(piece, layout, parts),
    working: layout.book.steps(),
    envelope: envelopeOf(parts) ?? nothing,
    ...(layout.choices.cells.length > 1 && {
      loads: [{ name: piece.name, box: envelopeOf(one) ?? nothing }],
    }),
  });
}

function describe(piece: Drawer, findings: readonly Problem[], made: Partial<BuiltPiece> = {}): BuiltPiece {
  return describeBuilt(piece, 'standing in front of the drawer', findings, made);
}

/** A part of several drawers alike, placed in the opening of each. */
function placeEach(part: Part, cells: DrawerChoices['cells']): Part {
  const first = cells[0];
  if (!first || cells.length < 2) return part;
  const placements = cells.flatMap(({ at }) =>
    part.placements.map((placed) => ({
      ...placed,
      origin: {
        ...placed.origin,
        x: placed.origin.x + at.x - first.at.x,
        y: placed.origin.y + at.y - first.at.y,
      },
    })),
  );
  return { ...part, placements };
}

/** The opening must be known, and all of several alike must find one. */
function checkOpening(choices: DrawerChoices): readonly Problem[] {
  const sizes = ['openingWidth', 'openingHeight', 'clearDepth'] as const;
  const lacking = sizes.filter((key) => !(choices[key] > 0));
  const { cells, count } = choices;
  const first = cells[0];
  if (lacking.length === 0 && first && cells.length < count)
    return [
      {
        severity: 'stop',
        code: 'cells-too-few',
        message: `${count} drawers were asked for; from row ${first.row}, column ${first.column} on ${first.built.letter} ${first.built.name} has ${cells.length} openings ${markSize(first.height)} high.`,
        remedy: 'Ask for fewer, and make the others as a piece of their own for their openings.',
        source: 'joinery B6',
      },
    ];
  return lacking.map((key) => ({
    severity: 'stop',
    code: 'opening-not-measured',
    message: `${labelOf(key)} of the drawer has not been entered.`,
    remedy:
      'Measure width and height at three depths and the clear depth at the back; enter the smallest of each.',
    source: 'joinery A10, B5',
  }));
}

function checkCount({ parameters: { count = 1 } }: Drawer): readonly Problem[] {
  if (Number.isInteger(count) && count >= 1) return [];
  return [
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
