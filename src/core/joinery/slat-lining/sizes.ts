import { putMovement, putDensity } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { slatLiningParameters } from './parameters.ts';
import { freeAtEnds } from '../rules.ts';
import type { SlatLiningParameters } from './types.ts';
import type { JoinerySettings, Material } from '../piece-types.ts';

/** Every parameter of a slatted lining with its default filled in; `measured` says where its size comes from. */
export interface LiningChoices extends Required<Omit<SlatLiningParameters, 'materials'>> {
  readonly given: ReadonlySet<string>;
  readonly measured: string | null;
  /** Whether the slats go in between two measured sides. */
  readonly isBetweenSides: boolean;
  readonly curved: boolean;
  readonly stock: { readonly slats: Material; readonly cleats: Material };
}

/** A slatted lining with its sizes worked out. */
export interface LiningLayout {
  readonly choices: LiningChoices;
  readonly book: WorkingBook;
}

const rule = 'joinery B4';

/** Works out the sizes of a slatted lining (joinery B4). */
export function workOutLining(choices: LiningChoices, settings: JoinerySettings): LiningLayout {
  const book = openWorkingBook();
  const layout = { choices, book };
  const from = { infos: slatLiningParameters, values: choices, given: choices.given };
  putRun(layout);
  if (isMeasured(choices, 'span')) book.put('O', choices.span, 'across the slats, clear', choices.measured);
  else putParameters(book, from, { span: 'O' });
  putParameters(book, from, { slatWidth: 's0', gap: 'g0', slatThickness: 't' });
  putParameters(book, from, { cleatWidth: 'cw', cleatThickness: 'ct', cleatSpacing: 'spacing' });
  spaceSlats(layout);
  sizeCleats(layout);
  sizeMovement(layout, settings);
  putDensity(book, 'rho', choices.stock.slats, 'the slats');
  putDensity(book, 'rho_cleat', choices.stock.cleats, 'the cleats');
  book.work('mass', '(n*run*s*t*rho + nc*O*cw*ct*rho_cleat)*1e-6', 'mass', rule, 'kg');
  return layout;
}

/** How long the slats are: between two measured sides free of both, so that they go in. */
function putRun({ choices, book }: LiningLayout): void {
  const from = { infos: slatLiningParameters, values: choices, given: choices.given };
  if (!isMeasured(choices, 'run')) return putParameters(book, from, { run: 'run' });
  if (!choices.isBetweenSides) return void book.put('run', choices.run, 'along the slats', choices.measured);
  book.put('clear', choices.run, 'along the slats, clear at the narrowest place', choices.measured);
  book.put('free', freeAtEnds, 'slats clear of the sides, each end', 'common practice');
  book.work('run', 'clear - 2*free', 'along the slats', 'common practice');
}

function isMeasured(
  choices: LiningChoices,
  key: 'run' | 'span',
): choices is LiningChoices & { readonly measured: string } {
  return !choices.given.has(key) && choices.measured !== null;
}

function spaceSlats({ choices, book }: LiningLayout): void {
  const work = (name: string, formula: string, label: string, unit: 'mm' | 'count' = 'mm') =>
    book.work(name, formula, label, rule, unit);
  const ends = choices.endGaps;
  const count = ends ? 'max(1, round((O - g0)/(s0 + g0)))' : 'max(2, round((O + g0)/(s0 + g0)))';
  // where the gap gives way, no more slats than there is room for
  work('n', choices.adjust === 'gap' ? `max(1, min(${count}, ceil(O/s0) - 1))` : count, 'slats', 'count');
  if (ends) work('gaps', 'n + 1', 'gaps', 'count');
  else work('gaps', 'n - 1', 'gaps', 'count');
  work('s_for_gap', '(O - gaps*g0)/n', 'slat, width that keeps the gap asked for');
  if (choices.adjust === 'gap') {
    work('s', 's0', 'slat, width');
    work('g', '(O - n*s)/gaps', 'gap');
  } else {
    work('s', 's_for_gap', 'slat, width');
    work('g', 'g0', 'gap');
  }
  if (ends) work('first', 'g', 'from the side to the first slat');
  else book.put('first', 0, 'from the side to the first slat', rule);
  work('step', 's + g', 'slat to slat');
}

function sizeCleats({ book }: LiningLayout): void {
  const work = (name: string, formula: string, label: string, unit: 'mm' | 'count' = 'mm') =>
    book.work(name, formula, label, rule, unit);
  work('cleat_in', 'min(50, run/4)', 'first cleat, its middle from the ends of the slats');
  work('nc', 'max(2, ceil((run - 2*cleat_in)/spacing) + 1)', 'cleats', 'count');
  work('cleat_pitch', '(run - 2*cleat_in)/(nc - 1)', 'cleats, middle to middle');
  work('screw_L', 'down(ct + t - 3, 5)', 'screw through the cleat, at most');
}

function sizeMovement({ choices, book }: LiningLayout, settings: JoinerySettings): void {
  putMovement(book, 'C', choices.stock.slats, 'the slats');
  book.put('mc_now', settings.moistureNow, 'moisture in the workshop', 'setting', 'percent');
  book.put('mc_high', settings.moistureHigh, 'moisture aboard at the most', 'setting', 'percent');
  book.work('swell', 's*C*(mc_high - mc_now)', 'slat, swells by', rule);
  book.work('g_least', 'max(0, swell) + 2', 'gap at least', rule);
}
