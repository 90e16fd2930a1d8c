import { hasStop, type Problem } from '#core/problems';
import type { Shape } from '#core/geometry';
import { describeBuilt } from '../built-piece.ts';
import { readHull, type EnteredHull, type Hull } from '../hull/hull.ts';
import { checkParameters } from '../parameter-checks.ts';
import { checkExtent } from '../piece-findings.ts';
import { checkSmallParts } from '../small-parts.ts';
import type { KindOfPiece } from '../kind.ts';
import type { NewPiece, Piece } from '../piece-types.ts';
import type { BuildContext, BuiltPiece } from '../types.ts';
import { makeCarcases, makeDoors, makeDrawers, makeTop } from './cabinets.ts';
import { checkRun } from './checks.ts';
import type { Member } from './members.ts';
import { mergeMembers } from './merge.ts';
import { runParameters } from './parameters.ts';
import { cellsOf, chooseRun, makeFront, shapeOfHull, type Run, type RunPlan } from './plan.ts';

const most = { columns: 8, rows: 10 } as const;

/**
 * A run: front, carcases, drawers, doors and top as one piece. Frame of the piece: x from the left end of the front, y from
 * the level that the hull was measured from, z to the viewer, z = 0 at the face of the front.
 */
function build(piece: Run, context: BuildContext): BuiltPiece {
  const seenFrom = context.shape?.seenFrom ?? 'standing in front of the run, looking to the hull';
  const limits = [
    ...checkParameters(piece.parameters, runParameters, piece.letter),
    ...checkExtent(piece.parameters, runParameters, piece.letter),
  ];
  const { hullHeights, hullLeft, hullRight, width } = piece.parameters;
  const entered: EnteredHull = {
    ...(hullHeights && { heights: hullHeights }),
    ...(hullLeft && { left: hullLeft }),
    ...(hullRight && { right: hullRight }),
    ...(width !== undefined && { width }),
  };
  const read = readHull(context.shape, context.shapeName ?? 'the hull', entered);
  const early = [...limits, ...(read.ok ? [] : read.problems)];
  if (!read.ok || hasStop(limits)) return describeBuilt(piece, seenFrom, early);
  const choices = chooseRun(piece, read.value);
  const grid = checkGrid(choices.rows, choices.columns, [choices.width, choices.height]);
  if (grid.length > 0) return describeBuilt(piece, seenFrom, [...early, ...grid]);
  const cells = cellsOf(choices);
  const front = makeFront(piece, context, choices, cells);
  if (front.built.parts.length === 0)
    return describeBuilt(piece, seenFrom, [...early, ...mergeMembers(piece, [front], []).findings]);
  const values = new Map(front.built.working.map((step) => [step.name, step.value]));
  const of = (name: string) => values.get(`front_${name}`) ?? NaN;
  const hullShape = context.shape ?? enteredShape(read.value, entered, seenFrom);
  return assemble(
    { piece, context, choices, hull: read.value, hullShape, front, cells, of, steps: [] },
    early,
    seenFrom,
  );
}

function assemble(plan: RunPlan, early: readonly Problem[], seenFrom: string): BuiltPiece {
  const carcases = makeCarcases(plan);
  const members = [
    ...carcases,
    plan.front,
    ...makeDrawers(plan),
    ...makeDoors(plan),
    ...makeTop(plan, carcases),
  ];
  const merged = mergeMembers(plan.piece, members, plan.steps);
  const findings = [
    ...early,
    ...merged.findings,
    ...checkRun(plan, members, merged.parts),
    ...checkSmallParts(merged.parts),
  ];
  return describeBuilt(plan.piece, seenFrom, findings, { ...merged, findings, loads: loadsOf(members) });
}

/** Each member is carried by itself; of drawers and doors, which are small, none is listed. */
function loadsOf(members: readonly Member[]): NonNullable<BuiltPiece['loads']> {
  const names: Readonly<Record<string, string>> = { front: 'face frame', carcase: 'carcase', top: '' };
  const size = ({
    built: {
      envelope: { min, max },
    },
  }: Member) => (max.x - min.x) * (max.y - min.y) * (max.z - min.z);
  return members
    .filter(({ group, built }) => group in names && built.parts.length > 0)
    .toSorted((one, other) => size(other) - size(one))
    .map(({ group, title, built }) => ({
      name: `${title} ${names[group] ?? ''}`.trim(),
      box: built.envelope,
    }));
}

/** Shapes made of ordinates, so that the same ordinates give the very same shape and nothing is built again for it. */
const madeShapes = new Map<string, Shape>();
const mostShapes = 20;

function enteredShape(hull: Hull, entered: EnteredHull, seenFrom: string): Shape {
  const key = JSON.stringify([entered, seenFrom]);
  const known = madeShapes.get(key);
  if (known) return known;
  if (madeShapes.size >= mostShapes) madeShapes.clear();
  const shape = shapeOfHull(hull, seenFrom);
  madeShapes.set(key, shape);
  return shape;
}

function checkGrid(rows: number, columns: number, sizes: readonly number[]): readonly Problem[] {
  const whole = (value: number, limit: number) => Number.isInteger(value) && value >= 1 && value <= limit;
  const say = (code: string, message: string, remedy: string): Problem => ({
    severity: 'stop',
    code,
    message,
    remedy,
    source: 'joinery B6',
  });
  if (!whole(rows, most.rows) || !whole(columns, most.columns))
    return [
      say(
        'grid-not-whole',
        `${columns} bays of ${rows} openings were asked for.`,
        `Enter whole numbers, ${most.columns} bays and ${most.rows} rows at most.`,
      ),
    ];
  if (sizes.every((size) => size > 0 && Number.isFinite(size))) return [];
  return [
    say(
      'size-missing',
      'The run has no width or no height yet.',
      'Enter both, or fit it to sections of the hull at both its ends.',
    ),
  ];
}

function make(start: NewPiece): Piece {
  const { materials, id, letter, name, shape } = start;
  const sheets = materials.filter((material) => material.kind === 'sheet');
  const near = (thickness: number) =>
    [...sheets].sort((a, b) => Math.abs(a.thickness - thickness) - Math.abs(b.thickness - thickness))[0] ??
    materials[0];
  const solid = materials.find(({ kind }) => kind === 'solid') ?? materials[0];
  const ordinates = {
    hullHeights: [0, 150, 300, 450, 600, 750, 900],
    hullLeft: [430, 480, 520, 550, 572, 588, 600],
  };
  return {
    kind: 'run',
    ...{ id, letter, name, ...(shape && { shape }) },
    parameters: {
      ...(!shape && { width: 1600, height: 850, ...ordinates }),
      columns: 3,
      rows: 3,
      cells: [
        ['drawer', 'drawer', 'drawer'],
        ['door', 'drawer', 'door'],
        ['door', 'drawer', 'door'],
      ],
      materials: {
        frame: solid?.id ?? '',
        fronts: near(18)?.id ?? '',
        panel: near(12)?.id ?? '',
        box: near(12)?.id ?? '',
        bottom: near(6)?.id ?? '',
      },
    },
  };
}

const nine = Array.from({ length: 9 }, (_, i) => i + 1);

export const runKind: KindOfPiece<'run'> = {
  words: {
    name: 'Run of cabinets',
    purpose: 'Front, carcases, drawers, doors, shelves and top in one, sharing their sizes',
    help: [
      'One face frame over several bays; behind each bay a carcase shaped to the hull; drawers, doors and shelves in its openings; a top over all. A change of one size carries through.',
      'Fit it to sections of the hull at both ends, or enter ordinates. Then choose bays, rows and what closes each opening.',
      'The runners of a drawer also keep down the drawer below: rails between are as high as lift and runner together, 30 as a rule. Stiles of 50 hide the ends of two carcases and the guides.',
      'Fronts lie over the frame or stand in its openings; there drawers have no room to be lifted and run plainly, on side rails or on metal runners, for which packers bring the ends of the carcases level with the openings.',
      'Carcases first, standing on one line; then the frame; fronts, drawers and doors to the openings as they came out; the top last.',
    ],
  },
  parameters: runParameters,
  shape: { kinds: ['sections'], required: false },
  gapToShape: 'clearance',
  seen: {
    across: ['front_W', 'front_wo', ...nine.map((n) => `bay_W_${n}`), 'front_ws'],
    up: ['front_H', ...nine.map((n) => `front_h${n}`), 'front_wt', 'front_wb'],
  },
  build,
  make,
};
