import { boxOfOutline, offsetOutline, outlineArea, type Outline, type Point } from '#core/geometry';
import { findSpecies, plywoodMovement, unknownDensity, unknownMovement } from '#core/materials';
import { chooseSides, type ChosenSides } from '../flat/choose-sides.ts';
import { angleAt, insetSides } from '../flat/polygon.ts';
import { findCrowdedSide, roundCorners } from '../flat/round-corners.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { scribe } from '../rules.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { straightenLipped } from './straighten.ts';
import { freePanelParameters } from './parameters.ts';
import type { FreePanelParameters } from './types.ts';
import type { JoinerySettings, Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';
import type { Problem } from '#core/problems';

/** Every choice of a free panel with its default filled in. */
export type PanelChoices = Omit<FreePanelParameters, 'materials'> &
  Required<
    Pick<FreePanelParameters, 'gap' | 'radius' | 'cutoutRadius' | 'lipping' | 'grain' | 'match' | 'fixed'>
  > & {
    readonly thickness: number;
    readonly stock: { readonly panel: Material; readonly lipping: Material };
    readonly given: ReadonlySet<string>;
    readonly chosen: ChosenSides | null;
  };

/** A free panel with its sizes worked out; outlines in the frame of the piece, its lower left at the origin. */
export interface PanelLayout {
  readonly choices: PanelChoices;
  readonly book: WorkingBook;
  /** Corners less the gaps; with curved sides also points along them. `side[i]` is the side that begins at point i. */
  readonly points: readonly Point[];
  readonly side: readonly number[];
  /** Within the solid edges; null when these leave nothing. */
  readonly core: readonly Point[] | null;
  readonly outline: Outline;
  /** Numbers from 0 of the sides that are lipped and scribed, the latter with what is left on. */
  readonly lipped: ReadonlySet<number>;
  readonly scribed: ReadonlyMap<number, number>;
  readonly crowded: ReturnType<typeof findCrowdedSide>;
}

const usualThickness = 18;

/** Fills in the defaults of a free panel and finds its outline. */
export function choosePanel(
  parameters: FreePanelParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: PanelChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { values, given } = fillDefaults(parameters, freePanelParameters);
  const panel = findMaterial(context, parameters.materials.panel, { for: 'the panel', kind: 'either' });
  const wanted = parameters.materials.lipping ?? context.materials.find(({ kind }) => kind === 'solid')?.id;
  const needsLips = (parameters.lippedSides ?? []).length > 0;
  const lipping = needsLips
    ? findMaterial(context, wanted ?? '', { for: 'the solid edges', kind: 'solid' })
    : { material: panel.material, findings: [] };
  const { chosen, findings } = chooseSides(parameters, context, name);
  const measured = panel.material.kind === 'sheet' ? panel.material.thickness : usualThickness;
  const choices = {
    ...(values as unknown as PanelChoices),
    thickness: parameters.thickness ?? measured,
    stock: { panel: panel.material, lipping: lipping.material },
    given,
    chosen: chosen && straightenLipped(chosen, parameters.lippedSides ?? []),
  };
  return { choices, findings: [...panel.findings, ...lipping.findings], lacking: findings };
}

/** Works out a free panel whose outline is known; null points when the gaps leave nothing of it. */
export function workOutPanel(choices: PanelChoices, settings: JoinerySettings): PanelLayout {
  const book = openWorkingBook();
  const { chosen } = choices;
  if (!chosen) throw new Error('a panel without an outline is not worked out');
  putIn(choices, book);
  const all = chosen.sides.flatMap(({ from, between }, i) =>
    [from, ...between].map((at) => ({ at, side: i })),
  );
  const side = all.map((one) => one.side);
  const gapOf = (i: number) => book.value(`g_${i + 1}`) + (chosen.sides[i]?.inwards ?? 0);
  const points = insetSides(
    all.map(({ at }) => at),
    side.map(gapOf),
  );
  const lipped = new Set((choices.lippedSides ?? []).map((number) => number - 1));
  const scribed = scribedSides(choices, book);
  const base = { choices, book, side, lipped, scribed };
  if (!points) {
    book.put('panel_W', 0, 'panel, width', chosen.source);
    return { ...base, points: [], core: null, outline: [], crowded: null };
  }
  const { outline, crowded } = roundOutline(choices, points, side);
  sizePanel({ choices, book, outline, settings });
  const core = insetSides(
    points,
    side.map((i) => (lipped.has(i) ? book.value('a') : 0)),
  );
  if (lipped.size > 0 && core) {
    const within = roundBareCorners({ choices, points, side, lipped }, core);
    putExtent(book, 'core', within, 'outline within the solid edges');
  }
  book.put('area', outlineArea(outline), 'area with the corners rounded, mm²', 'outline', 'ratio');
  book.work('mass', 'area*T*rho*1e-6', 'mass, before holes', 'joinery B2', 'kg');
  return { ...base, points, core, outline, crowded };
}

/** The outline with its corners rounded; `crowded` when the arcs find no room. */
function roundOutline(
  choices: PanelChoices,
  points: readonly Point[],
  side: readonly number[],
): Pick<PanelLayout, 'outline' | 'crowded'> {
  const { chosen, radius, radii: own } = choices;
  if (radius > 0 && own === undefined && chosen?.sides.some(({ between }) => between.length > 0)) {
    // arcs between curves: shrunk by the radius and grown again round, every corner is a circle of it
    const shrunk = offsetOutline(points, -radius, 'sharp');
    const [rounded] = shrunk.length === 1 ? offsetOutline(shrunk[0] ?? [], radius, 'round') : [];
    return rounded
      ? { outline: rounded, crowded: null }
      : { outline: points, crowded: { side: 0, need: 2 * radius, have: 0 } };
  }
  const radii = radiiOf(choices, points, side);
  const crowded = findCrowdedSide(points, radii);
  return { outline: crowded ? points : roundCorners(points, radii), crowded };
}

/** Core corners between two bare sides take their radius; a corner with a solid edge is rounded in that edge. */
export function roundBareCorners(
  { choices, points, side, lipped }: Pick<PanelLayout, 'choices' | 'points' | 'side' | 'lipped'>,
  core: readonly Point[],
): Outline {
  const radii = radiiOf(choices, points, side).map((radius, i) => {
    const before = side[(i + side.length - 1) % side.length] ?? 0;
    return lipped.has(side[i] ?? 0) || lipped.has(before) ? 0 : radius;
  });
  return roundCorners(core, radii);
}

/** The radius at each point: at the corners as asked for, along a curve none. */
export function radiiOf(
  { radii, radius }: PanelChoices,
  points: readonly Point[],
  side: readonly number[],
): readonly number[] {
  const count = points.length;
  return points.map((_, i) => {
    const here = side[i] ?? 0;
    const isCorner = side[(i + count - 1) % count] !== here;
    const own = isCorner ? (radii?.[here] ?? radius) : 0;
    return Math.abs(angleAt(points, i) - 180) < 0.5 ? 0 : own;
  });
}

function putIn(choices: PanelChoices, book: WorkingBook): void {
  const { given, chosen, stock } = choices;
  const from = { infos: freePanelParameters, values: choices, given };
  if (chosen?.rectangle) putParameters(book, from, { width: 'W0', height: 'H0' });
  putParameters(book, from, {
    gap: 'g',
    radius: 'r',
    cutoutRadius: 'r_cut',
    ...(choices.lippedSides?.length && { lipping: 'a' }),
  });
  const { panel } = stock;
  const measured = panel.kind === 'sheet' && !given.has('thickness') ? `measured: ${panel.name}` : null;
  const source = measured ?? (given.has('thickness') ? 'you' : 'common practice, no source');
  book.putChoice('thickness', 'T', choices.thickness, 'thickness', source);
  const density = panel.density ?? unknownDensity;
  book.put('rho', density / 1000, 'density, g/cm³', panel.density ? panel.name : 'common practice', 'ratio');
  chosen?.sides.forEach(({ name, inwards = 0 }, i) => {
    if (inwards > 0) book.put(`in_${i + 1}`, inwards, `side ${i + 1} bows in, besides its gap`, 'survey');
    const own = choices.gaps?.[i];
    const label = `gap of side ${i + 1}, ${name}`;
    if (own !== undefined) return void book.putChoice('gaps', `g_${i + 1}`, own, label, 'you');
    book.work(`g_${i + 1}`, 'g', label, 'joinery A11');
  });
}

/** A11: what is left on a scribed side by its deviation from straight and twice its uncertainty. */
function scribedSides(choices: PanelChoices, book: WorkingBook): ReadonlyMap<number, number> {
  const sides = choices.chosen?.sides ?? [];
  const wanted = (choices.scribedSides ?? []).map((number) => number - 1).filter((i) => sides[i]);
  return new Map(
    [...new Set(wanted)].map((i) => {
      const name = `S_${i + 1}`;
      const label = `left on side ${i + 1} to scribe`;
      if (choices.scribe !== undefined) {
        return [i, book.putChoice('scribe', name, choices.scribe, label, 'you')];
      }
      book.put(`dev_${i + 1}`, sides[i]?.deviation ?? 0, `side ${i + 1} from straight`, 'survey');
      book.put(`u_${i + 1}`, sides[i]?.u95 ?? 0, `uncertainty of side ${i + 1}, 95 %`, 'survey');
      const rule = `min(${scribe.most}, max(${scribe.least}, ceil(dev_${i + 1} + 2*u_${i + 1} + ${scribe.margin})))`;
      return [i, book.work(name, rule, label, 'joinery A11')];
    }),
  );
}

function sizePanel(made: {
  readonly choices: PanelChoices;
  readonly book: WorkingBook;
  readonly outline: Outline;
  readonly settings: JoinerySettings;
}): void {
  const { choices, book, outline, settings } = made;
  const { chosen, stock } = choices;
  if (chosen?.rectangle) {
    book.work('panel_W', 'W0 - g_4 - g_2', 'panel, width', 'joinery 0.6');
    book.work('panel_H', 'H0 - g_1 - g_3', 'panel, height', 'joinery 0.6');
  } else putExtent(book, 'panel', outline, `${chosen?.source ?? ''}, less the gaps`);
  const { species } = stock.panel.kind === 'solid' ? stock.panel : {};
  const known = species === undefined ? null : findSpecies(species);
  const usual = stock.panel.kind === 'sheet' ? plywoodMovement : unknownMovement;
  book.put('C', known?.tangential ?? usual, 'movement across the grain, for each %', 'joinery D1', 'ratio');
  book.put(
    'MC_change',
    settings.moistureHigh - settings.moistureNow,
    'moisture gained aboard',
    'setting',
    'percent',
  );
  const across = choices.grain === 'across' ? 'panel_H' : 'panel_W';
  book.work('swell', `${across}*C*MC_change`, 'it swells across the grain', 'joinery D1');
}

function putExtent(book: WorkingBook, what: 'panel' | 'core', outline: Outline, source: string): void {
  const { minX, minY, maxX, maxY } = boxOfOutline(outline);
  const put = (name: string, value: number, label: string) =>
    book.put(`${what}_${name}`, value, `${what}, ${label}`, source);
  put('left', minX, 'left end');
  put('right', maxX, 'right end');
  put('low', minY, 'lower end');
  put('high', maxY, 'upper end');
  book.work(`${what}_W`, `${what}_right - ${what}_left`, `${what}, width`, 'joinery 0.3');
  book.work(`${what}_H`, `${what}_high - ${what}_low`, `${what}, height`, 'joinery 0.3');
}
