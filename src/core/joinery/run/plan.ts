import type { Point3, Shape } from '#core/geometry';
import { evaluateFormula, namesInFormula, parseFormula } from '#core/numerics';
import { cabinetFrontKind } from '../cabinet-front/kind.ts';
import type { CabinetFrontParameters } from '../cabinet-front/types.ts';
import { leastDepth } from '../hull/back-edge.ts';
import { depthOf, heightRange, type Hull } from '../hull/hull.ts';
import { fillDefaults } from '../parameter-book.ts';
import type { Piece } from '../piece-types.ts';
import type { BuildContext, WorkingStep } from '../types.ts';
import { makeMember, type Member } from './members.ts';
import { runParameters } from './parameters.ts';
import type { RunParameters } from './types.ts';

type Cell = 'drawer' | 'door' | 'open';
export type Run = Extract<Piece, { kind: 'run' }>;

/** Every choice of a run with its default filled in. */
export type RunChoices = Required<Omit<RunParameters, 'step' | 'ratio' | 'heights' | 'continuous'>> &
  Pick<RunParameters, 'step' | 'ratio' | 'heights' | 'continuous'>;

/** What the members of a run are made from: its front as built, the hull, and where the bays and openings are. */
export interface RunPlan {
  readonly piece: Run;
  readonly context: BuildContext;
  readonly choices: RunChoices;
  readonly hull: Hull;
  readonly hullShape: Shape;
  readonly front: Member;
  readonly cells: readonly (readonly Cell[])[];
  /** A number of the front's working. */
  readonly of: (name: string) => number;
  /** The run's own working. */
  readonly steps: WorkingStep[];
}

/** Clear of the hull behind a drawer, mm (joinery B5). */
const behindDrawer = 10;

export const frontKeys = [
  ...['columns', 'rows', 'topRail', 'midRail', 'bottomRail', 'stileWidth', 'thickness', 'joint'],
  ...['grading', 'step', 'ratio', 'heights', 'fronts', 'gap', 'overlay', 'notch', 'continuous'],
  ...['width', 'height'],
] as const;

/** Fills in the defaults of a run; width and height are those of the hull measured unless entered. */
export function chooseRun({ parameters }: Run, hull: Hull): RunChoices {
  const { values } = fillDefaults(parameters, runParameters);
  const last = hull.stations[hull.stations.length - 1]?.at ?? 0;
  const [low, high] = heightRange(hull);
  const foot = parameters.foot ?? 0;
  const runner = parameters.runner ?? (parameters.fronts === 'inset' ? 'bottom' : 'bottom-notch');
  return {
    width: last - (parameters.start ?? 0),
    height: high - Math.max(low, foot),
    ...{ notch: 10, obstacles: [], cutouts: [], hullHeights: [], hullLeft: [], hullRight: [], cells: [] },
    ...values,
    runner,
    ...(runner !== 'bottom-notch' && { notch: 0 }),
  } as unknown as RunChoices;
}

/** What closes each opening, rows from the top; cells not said are drawers. */
export function cellsOf({ rows, columns, cells }: RunChoices): RunPlan['cells'] {
  const count = (value: number) => (Number.isInteger(value) && value > 0 && value <= 100 ? value : 0);
  return Array.from({ length: count(rows) }, (_, r) =>
    Array.from({ length: count(columns) }, (_, c): Cell => cells[r]?.[c] ?? 'drawer'),
  );
}

/** How far the boxes of drawers hang below their openings: by the lift of a notch; a box on plain runners stands 2 above. */
export function liftOf({ runner, notch }: RunChoices): number {
  return runner === 'bottom-notch' ? notch : runner === 'bottom' ? -2 : 0;
}

/** Whether drawers run on strips behind the rails, kept down by others above them. */
export const hasStrips = ({ runner }: RunChoices): boolean =>
  runner === 'bottom-notch' || runner === 'bottom';

/** How far fronts stand before the openings (or, below nothing, into them), and how far beyond their edges. */
export function frontPlace({ choices, of }: Pick<RunPlan, 'choices' | 'of'>): {
  readonly out: number;
  readonly beyond: number;
} {
  return choices.fronts === 'inset' ? { out: 0, beyond: -of('g') } : { out: of('tff'), beyond: of('o') };
}

/** The front of a run over all its bays, at the plane of the fronts; lipped doors are members of their own. */
export function makeFront(
  piece: Run,
  context: BuildContext,
  choices: RunChoices,
  cells: RunPlan['cells'],
): Member {
  const asked = Object.fromEntries(
    frontKeys.flatMap((key) =>
      choices[key as keyof RunChoices] === undefined ? [] : [[key, choices[key as keyof RunChoices]]],
    ),
  );
  const lipped = choices.doors === 'lipped';
  const parameters = {
    ...asked,
    cells: cells.map((row) => row.map((cell) => (lipped && cell === 'door' ? 'open' : cell))),
    materials: { frame: choices.materials.frame, fronts: choices.materials.fronts },
  } as CabinetFrontParameters;
  const at = { x: 0, y: choices.foot, z: 0 };
  const common = { group: 'front', title: '', prefix: 'front_', at, own: frontKeys };
  return makeMember(
    { piece, context },
    { kind: 'cabinet-front', of: cabinetFrontKind, parameters, ...common },
  );
}

/** A size of the run's own, worked out from numbers of its members and its own; the value comes back. */
export function addWork(
  { steps, front }: Pick<RunPlan, 'steps' | 'front'>,
  name: string,
  formula: string,
  [label, source, unit = 'mm']: readonly [string, string, WorkingStep['unit']?],
): number {
  const tree = parseFormula(formula);
  const known = [...steps, ...front.built.working];
  const inputs = namesInFormula(tree).map((input) => ({
    name: input,
    value: known.find((step) => step.name === input)?.value ?? NaN,
  }));
  const value = evaluateFormula(tree, Object.fromEntries(inputs.map((one) => [one.name, one.value])));
  steps.push({ name, label, formula, inputs, value, unit, source });
  return value;
}

/** A number put into the run's own working. */
export function addPut(
  { steps }: Pick<RunPlan, 'steps'>,
  name: string,
  value: number,
  [label, source]: readonly [string, string],
): number {
  steps.push({ name, label, inputs: [], value, unit: 'mm', source });
  return value;
}

/** Left edge and width of the carcase behind a bay: to the middle of the stiles between bays, to the outside of the outer ones. */
export function sizeBay(plan: RunPlan, c: number): { readonly left: number; readonly width: number } {
  const { columns } = plan.choices;
  const n = c + 1;
  const edge = (i: number) =>
    i === 0 ? '0' : i === columns ? 'front_W' : `${i}*(front_wo + front_ws) + front_ws/2`;
  const words = (what: string) => [`bay ${n}, ${what}`, 'joinery B6, B7'] as const;
  const left = addWork(plan, `bay_x_${n}`, edge(c), words('left end of its carcase'));
  const right = addWork(plan, `bay_end_${n}`, edge(c + 1), words('right end of its carcase'));
  addWork(plan, `bay_W_${n}`, `bay_end_${n} - bay_x_${n}`, words('width of its carcase'));
  return { left, width: right - left };
}

/** Lower left corner and size of an opening of the front, in the frame of the run; row from 0 at the top. */
export function openingAt(
  { of, choices }: RunPlan,
  r: number,
  c: number,
): { readonly at: Point3; readonly width: number; readonly height: number } {
  const above = Array.from({ length: r + 1 }, (_, i) => of(`h${i + 1}`)).reduce((sum, h) => sum + h, 0);
  const rails = r === 0 ? of('wt') : of('wt') + r * of('wm');
  const y = choices.foot + of('H') - rails - above;
  const x = of('ws') + c * (of('wo') + of('ws'));
  return { at: { x, y, z: 0 }, width: of('wo'), height: of(`h${r + 1}`) };
}

/** Depth free behind an opening from the face of the front, the hull at its nearest, mm (joinery B5). */
export function freeBehind(
  { hull, choices }: RunPlan,
  left: number,
  width: number,
  level: readonly [number, number],
): number {
  const reach = { hull, clearance: behindDrawer, before: 0 };
  const places = [0, 1, 2, 3, 4].map((i) => choices.start + left + (i * width) / 4);
  return Math.min(...places.map((at) => leastDepth(reach, at, level)));
}

/** A hull as a shape of sections, for members that are fitted to it. */
export function shapeOfHull({ stations, u95, obstacles }: Hull, seenFrom: string): Shape {
  return {
    kind: 'sections',
    seenFrom,
    ...{ points: {}, edges: [], order: [], covariance: [], tilt: 0 },
    sections: stations.map((station, i) => ({
      name: `station ${i + 1}`,
      at: station.at,
      line: station.heights.map((y) => ({ x: depthOf(station, y), y })),
      bevels: [],
      sigma: u95 / 2,
    })),
    obstructions: obstacles.map(({ name, box }) => ({ name, box })),
  };
}
