import { boxOfOutline, outlineArea, type Outline, type Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import { chooseSides } from '../flat/choose-sides.ts';
import { angleAt, insetSides } from '../flat/polygon.ts';
import { findCrowdedSide, roundCorners } from '../flat/round-corners.ts';
import { putDensity } from '../material-facts.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import type { BuildContext } from '../types.ts';
import { putCutouts, type Cutout } from './cutouts.ts';
import { planEdges, planFiddles, type EdgeStrip, type FiddleRun } from './edges.ts';
import { countertopParameters } from './parameters.ts';
import type { TopChoices } from './top-choices.ts';
import type { CountertopParameters } from './types.ts';

/** A countertop with its sizes worked out; outlines seen from above, y away from the front, its lower left at the origin. */
export interface TopLayout {
  readonly choices: TopChoices;
  readonly book: WorkingBook;
  /** Corners of its outer edge, and the side that begins at each; empty when gaps leave nothing. */
  readonly points: readonly Point[];
  readonly side: readonly number[];
  readonly outline: Outline;
  /** Within the solid edges. */
  readonly core: Outline;
  readonly crowded: ReturnType<typeof findCrowdedSide>;
  readonly cutouts: readonly Cutout[];
  readonly strips: readonly EdgeStrip[];
  readonly fiddles: readonly FiddleRun[];
  /** Corners whose radius the solid edge cannot follow, by number from 0. */
  readonly awkward: readonly number[];
}

export const rule = 'joinery B9';

/** Fills in the defaults of a countertop and finds what it covers; `lacking` when there is nothing. */
export function chooseTop(
  parameters: CountertopParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: TopChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { materials } = parameters;
  const { values, given } = fillDefaults(parameters, countertopParameters);
  const top = findMaterial(context, materials.top, { for: 'the top', kind: 'either' });
  const solid = context.materials.find(({ kind }) => kind === 'solid')?.id ?? materials.top;
  const lipping = findMaterial(context, materials.lipping ?? solid, {
    for: 'edges and fiddles',
    kind: 'solid',
  });
  const doubler = findMaterial(context, materials.doubler ?? materials.top, {
    for: 'the doublers',
    kind: 'either',
  });
  const { width, depth, corners } = parameters;
  const entered = {
    ...(width !== undefined && { width }),
    ...(depth !== undefined && { height: depth }),
    ...(corners && { corners }),
  };
  const { chosen, findings } = chooseSides(entered, context, name);
  const numbers = (list: readonly number[] | undefined) => new Set((list ?? [1]).map((number) => number - 1));
  const choices = {
    ...{ supports: null, radii: null, cutouts: [] },
    ...values,
    openSides: numbers(parameters.openSides),
    fiddleSides: numbers(parameters.fiddleSides),
    thickness: parameters.thickness ?? (top.material.kind === 'sheet' ? top.material.thickness : 20),
    stock: { top: top.material, lipping: lipping.material, doubler: doubler.material },
    given,
    chosen,
  } as unknown as TopChoices;
  const needsSolid = choices.lipping > 0 || choices.fiddleSides.size > 0;
  return {
    choices,
    findings: [
      ...top.findings,
      ...(needsSolid ? lipping.findings : []),
      ...(materials.doubler ? doubler.findings : []),
    ],
    lacking: findings,
  };
}

/** Works out a countertop over a known outline (joinery B9). */
export function workOutTop(choices: TopChoices): TopLayout {
  const book = openWorkingBook();
  const { chosen } = choices;
  if (!chosen) throw new Error('a countertop without an outline is not worked out');
  putIn(book, choices);
  const all = chosen.sides.flatMap(({ from, between }, i) =>
    [from, ...between].map((at) => ({ at, side: i })),
  );
  const side = all.map((one) => one.side);
  const raw = insetSides(
    all.map(({ at }) => at),
    side.map((i) => (choices.openSides.has(i) ? -choices.overhang : choices.wallGap)),
  );
  const none = {
    choices,
    book,
    side,
    outline: [],
    core: [],
    crowded: null,
    cutouts: [],
    strips: [],
    fiddles: [],
    awkward: [],
  };
  if (!raw) return { ...none, points: [] };
  const box = boxOfOutline(raw);
  const points = raw.map(({ x, y }) => ({ x: x - box.minX, y: y - box.minY }));
  book.put('top_W', box.maxX - box.minX, 'top, width', `${chosen.source}, overhang and gaps counted`);
  book.put('top_D', box.maxY - box.minY, 'top, depth', `${chosen.source}, overhang and gaps counted`);
  const radii = radiiOf(choices, points, side);
  const crowded = findCrowdedSide(points, radii);
  if (crowded) return { ...none, points, crowded };
  const outline = roundCorners(points, radii);
  sizeCorners(book, points, radii);
  const plan = { choices, points, side, radii };
  const { core, strips, awkward } = planEdges(book, plan);
  const fiddles = planFiddles(book, plan);
  const cutouts = core.length > 0 ? putCutouts(book, choices, core) : [];
  const layout = { choices, book, points, side, outline, core, crowded, cutouts, strips, fiddles, awkward };
  finishSizes(layout);
  return layout;
}

function putIn(book: WorkingBook, choices: TopChoices): void {
  const { given, stock } = choices;
  const from = { infos: countertopParameters, values: choices, given };
  const measured = stock.top.kind === 'sheet' ? `measured: ${stock.top.name}` : rule;
  book.putChoice(
    'thickness',
    'T',
    choices.thickness,
    'thickness of the top',
    given.has('thickness') ? 'you' : measured,
  );
  putParameters(book, from, { overhang: 'over', wallGap: 'gap', radius: 'R', lipping: 'a' });
  if (choices.fiddleSides.size > 0)
    putParameters(book, from, { fiddleHeight: 'f', fiddleThickness: 'tf', cornerOpen: 'open' });
}

/** The radius at each point: at corners between two open sides, or as entered; along a curve none. */
function radiiOf(choices: TopChoices, points: readonly Point[], side: readonly number[]): readonly number[] {
  return points.map((_, i) => {
    const here = side[i] ?? 0;
    const before = side[(i + side.length - 1) % side.length] ?? 0;
    if (before === here || Math.abs(angleAt(points, i) - 180) < 0.5) return 0;
    const open = choices.openSides.has(here) && choices.openSides.has(before);
    return choices.radii?.[here] ?? (open ? choices.radius : 0);
  });
}

/** B9: tangent length, how far the corner is cut back, and the length of the arc, at any angle. */
function sizeCorners(book: WorkingBook, points: readonly Point[], radii: readonly number[]): void {
  radii.forEach((radius, i) => {
    if (radius <= 0) return;
    const n = i + 1;
    book.put(`alpha_${n}`, angleAt(points, i), `corner ${n}, inside angle`, 'outline', 'degrees');
    book.put(`R_${n}`, radius, `corner ${n}, radius`, 'you or the usual one');
    book.work(`tangent_${n}`, `R_${n}/tand(alpha_${n}/2)`, `corner ${n} to where the arc begins`, rule);
    book.work(`cut_back_${n}`, `R_${n}*(1/sind(alpha_${n}/2) - 1)`, `corner ${n} is cut back by`, rule);
    book.work(`arc_${n}`, `R_${n}*(180 - alpha_${n})*pi/180`, `corner ${n}, length of the arc`, rule);
    book.work(`strip_max_${n}`, `R_${n}/60`, `corner ${n}, thickest strip that bends round it dry`, rule);
  });
}

function finishSizes({ book, choices, core, outline }: TopLayout): void {
  if (core.length === 0) return;
  const box = boxOfOutline(core);
  book.put('core_W', box.maxX - box.minX, 'top without its solid edges, width', 'outline');
  book.put('core_D', box.maxY - box.minY, 'top without its solid edges, depth', 'outline');
  const { doubler } = choices.stock;
  if (choices.cutouts.length > 0)
    book.put(
      'Td',
      doubler.kind === 'sheet' ? doubler.thickness : 18,
      'doublers, thickness',
      `measured: ${doubler.name}`,
    );
  putDensity(book, 'rho', choices.stock.top, 'the top');
  book.put('area', outlineArea(outline), 'area with the corners rounded, mm²', 'outline', 'ratio');
  book.work('mass', 'area*T*rho*1e-6', 'mass, before cut-outs', 'joinery B2', 'kg');
}
