import type { Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import { readSides, type Side } from '../flat/shape-sides.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { scribe } from '../rules.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { infillParameters } from './parameters.ts';
import type { InfillParameters } from './types.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';

/** Every choice of an infill with its default filled in; gaps and heights of the same number, from the foot up. */
export type InfillChoices = Required<Omit<InfillParameters, 'materials'>> & {
  readonly material: Material;
  readonly given: ReadonlySet<string>;
  /** Where the gaps come from: `you`, or `shape Gap`. */
  readonly source: string;
};

export interface InfillLayout {
  readonly choices: InfillChoices;
  readonly book: WorkingBook;
}

const rule = 'joinery B12';
const stationsOfShape = 7;

/** Fills in the defaults of an infill and finds its gaps; what is missing for them is in `lacking`. */
export function chooseInfill(
  parameters: InfillParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: InfillChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { values, given } = fillDefaults(parameters, infillParameters);
  const { material, findings } = findMaterial(context, parameters.materials.filler, {
    for: 'the filler',
    kind: 'either',
  });
  const thickness =
    parameters.thickness ?? (material.kind === 'sheet' ? material.thickness : Number(values['thickness']));
  const read = context.shape ? readGaps(context) : enteredGaps(parameters, name);
  const choices = { ...values, thickness, material, given, ...read.gaps } as unknown as InfillChoices;
  return { choices, findings, lacking: read.problems };
}

interface Gaps {
  readonly height: number;
  readonly gaps: readonly number[];
  readonly heights: readonly number[];
  readonly source: string;
}

const noGaps: Gaps = { height: 0, gaps: [], heights: [], source: 'you' };

function enteredGaps(entered: InfillParameters, name: string): { gaps: Gaps; problems: readonly Problem[] } {
  const { height = 0, gaps = [] } = entered;
  const refuse = (code: string, message: string, remedy: string) => ({
    gaps: noGaps,
    problems: [{ severity: 'stop' as const, code, message, remedy, source: rule }],
  });
  if (!(height > 0) || gaps.length < 2) {
    const lacks = height > 0 ? `${gaps.length} gaps have been entered` : 'its height has not been entered';
    return refuse(
      'gaps-missing',
      `${name}: ${lacks}.`,
      'Enter its height and the gap at five places or more, or fit it to a shape.',
    );
  }
  const even = gaps.map((_, i) => (height * i) / (gaps.length - 1));
  const heights = entered.heights && entered.heights.length > 0 ? entered.heights : even;
  const last = heights.at(-1) ?? 0;
  const rises = heights.every((at, i) => i === 0 || at > (heights[i - 1] ?? 0)) && last <= height + 1e-9;
  if (heights.length !== gaps.length || !rises) {
    return refuse(
      'heights-unfit',
      `${name}: ${heights.length} heights for ${gaps.length} gaps${rises ? '' : '; they do not rise, or go beyond its height'}.`,
      `Enter one height for each gap, rising from the foot, up to the height of the filler.`,
    );
  }
  return { gaps: { height, gaps, heights, source: 'you' }, problems: [] };
}

/** The gap between the left and right side of a four-sided shape at even heights. */
function readGaps({ shape, shapeName = 'the shape' }: BuildContext): {
  gaps: Gaps;
  problems: readonly Problem[];
} {
  if (!shape) return { gaps: noGaps, problems: [] };
  const read = readSides(shape, shapeName);
  if (!read.ok) return { gaps: noGaps, problems: read.problems };
  const [sill, right, head, left] = read.value;
  if (read.value.length !== 4 || !sill || !right || !head || !left) {
    const message = `${shapeName} has ${read.value.length} sides; an infill is read from one with four.`;
    const remedy = 'Take a free panel for it.';
    const code = 'gap-not-four-sided';
    return { gaps: noGaps, problems: [{ severity: 'stop', code, message, remedy, source: rule }] };
  }
  const low = Math.max(sill.from.y, sill.to.y);
  const height = Math.min(head.from.y, head.to.y) - low;
  const heights = Array.from({ length: stationsOfShape }, (_, i) => (height * i) / (stationsOfShape - 1));
  const gaps = heights.map((at) => across(right, low + at) - across(left, low + at));
  return { gaps: { height, gaps, heights, source: `shape ${shapeName}` }, problems: [] };
}

/** Where a side that runs up or down is at a height. */
function across({ from, to, between }: Side, height: number): number {
  const points = [from, ...between, to].sort((a, b) => a.y - b.y);
  const first: Point = points[0] ?? from;
  const i = points.findIndex(({ y }, at) => at > 0 && y >= height);
  const [a, b] = [points[i - 1] ?? first, points[i] ?? points.at(-1) ?? to];
  return a.y === b.y ? b.x : a.x + ((b.x - a.x) * (height - a.y)) / (b.y - a.y);
}

/** Works out an infill (joinery B12): the straight line of best fit, what deviates from it, what is left on to scribe. */
export function workOutInfill(choices: InfillChoices): InfillLayout {
  const book = openWorkingBook();
  const { gaps, heights, source, given } = choices;
  book.putChoice('height', 'H', choices.height, 'height', source);
  gaps.forEach((gap, i) => {
    const at = choices.given.has('heights') ? 'you' : source === 'you' ? 'spread evenly' : source;
    book.put(`y_${i + 1}`, heights[i] ?? 0, `height ${i + 1}`, at === 'you' ? 'entered' : at);
    book.putChoice('gaps', `g_${i + 1}`, gap, `gap at height ${i + 1}`, source);
  });
  const table = { infos: infillParameters, values: choices, given };
  putParameters(book, table, { sigma: 'sigma', reveal: 'rv' });
  putParameters(book, table, { bevelDegrees: 'beta' }, 'degrees');
  const measured = choices.material.kind === 'sheet' && !given.has('thickness');
  const origin = measured ? `measured: ${choices.material.name}` : given.has('thickness') ? 'you' : rule;
  book.putChoice('thickness', 'T', choices.thickness, 'thickness', origin);
  fitLine(book, gaps.length);
  const all = (name: string) => gaps.map((_, i) => `${name}_${i + 1}`).join(', ');
  book.work('dev', `max(${all('r')}) - min(${all('r')})`, 'deviation from straight', 'joinery A11');
  const S = `min(${scribe.most}, max(${scribe.least}, ceil(dev + 2*2*sigma + ${scribe.margin})))`;
  book.work('S', S, 'left on to scribe', 'joinery A11');
  book.work('cut_W', `max(${all('g')}) + S`, 'filler, width as cut', rule);
  book.work('fin_W', `max(${all('g')}) - rv`, 'filler, greatest width when fitted', rule);
  book.work('min_fin', `min(${all('g')}) - rv`, 'filler, least width when fitted', rule);
  book.work('left_on', 'cut_W - fin_W', 'left on the scribed edge', rule);
  book.work('relief', 'T*tand(beta)', 'back of the scribed edge stands back by', rule);
  return { choices, book };
}

function fitLine(book: WorkingBook, count: number): void {
  const each = (term: (i: number) => string) =>
    Array.from({ length: count }, (_, i) => term(i + 1)).join(' + ');
  book.work('mean', `(${each((i) => `g_${i}`)})/${count}`, 'gap, mean', rule);
  book.work('y_mean', `(${each((i) => `y_${i}`)})/${count}`, 'height, mean', rule);
  const top = each((i) => `(y_${i} - y_mean)*g_${i}`);
  const below = each((i) => `(y_${i} - y_mean)**2`);
  book.work('b', `(${top})/(${below})`, 'gap grows with the height by', rule, 'ratio');
  for (let i = 1; i <= count; i++) {
    const formula = `g_${i} - (mean + (y_${i} - y_mean)*b)`;
    book.work(`r_${i}`, formula, `gap ${i} beyond the straight line`, rule);
  }
}
