import type { FrontChoices } from './choices.ts';
import type { FrontOpening } from './fit.ts';
import { fitOpening } from './fit.ts';
import { sizeJoints } from './joint-sizes.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';

/** A cabinet front with its sizes worked out. */
export interface FrontLayout {
  readonly choices: FrontChoices;
  readonly book: WorkingBook;
  readonly opening: FrontOpening | null;
}

const rule = 'joinery B6';

/** Works out the sizes of a cabinet front (joinery B6). */
export function workOutFront(choices: FrontChoices, opening: FrontOpening | null): FrontLayout {
  const book = openWorkingBook();
  const layout = { choices, book, opening };
  const put = (key: keyof FrontChoices, name: string, label: string, unit: 'mm' | 'count' | 'ratio' = 'mm') =>
    book.putChoice(key, name, choices[key] as number, label, sourceOf(choices, key), unit);
  if (opening) fitOpening(book, opening, choices);
  else {
    put('width', 'W', 'width overall');
    put('height', 'H', 'height overall');
  }
  put('stileWidth', 'ws', 'width of the stiles');
  put('topRail', 'wt', 'width of the top rail');
  if (choices.rows > 1) put('midRail', 'wm', 'width of the rails between');
  put('bottomRail', 'wb', 'width of the bottom rail');
  put('thickness', 'T', 'thickness of the frame');
  put('columns', 'm', 'openings side by side', 'count');
  put('rows', 'n', 'openings one above the other', 'count');
  book.work('wo', '(W - (m + 1)*ws) / m', 'width of each opening', rule);
  book.work(
    'total',
    choices.rows > 1 ? 'H - wt - wb - (n - 1)*wm' : 'H - wt - wb',
    'height of all openings together',
    rule,
  );
  sizeHeights(layout);
  sizeJoints(book, choices);
  sizeFronts(layout, (key, name, label) => put(key, name, label));
  return layout;
}

/** Heights from the top; rounded down to 0.5, the bottom one takes the remainder. */
function sizeHeights({ choices, book }: FrontLayout): void {
  const { rows, grading } = choices;
  const ratio = grading === 'geometric' && choices.ratio !== 1;
  if (grading === 'arithmetic')
    book.putChoice('step', 'step', choices.step, 'step of the heights', sourceOf(choices, 'step'));
  if (ratio) putRatio(book, choices);
  for (let i = 1; i < rows; i++) {
    const label = `height of opening ${i} from the top`;
    const given = choices.heights[i - 1];
    if (grading === 'given' && given !== undefined) book.putChoice('heights', `h${i}`, given, label, 'you');
    else if (grading === 'arithmetic') {
      book.work(
        `h${i}`,
        `down((total - step*n*(n - 1)/2)/n${i > 1 ? ` + ${i - 1}*step` : ''}, 0.5)`,
        label,
        rule,
      );
    } else if (ratio) book.work(`h${i}`, `down(g${i}, 0.5)`, label, rule);
    else book.work(`h${i}`, 'down(total / n, 0.5)', label, rule);
  }
  const above = Array.from({ length: rows - 1 }, (_, i) => ` - h${i + 1}`).join('');
  book.work(`h${rows}`, `total${above}`, 'height of the bottom opening: what is left', rule);
}

function putRatio(book: WorkingBook, choices: FrontChoices): void {
  book.putChoice('ratio', 'q', choices.ratio, 'ratio of the heights', sourceOf(choices, 'ratio'), 'ratio');
  for (let i = 1; i <= choices.rows; i++) {
    const formula = i === 1 ? 'total*(q - 1)/(q**n - 1)' : `g1*q**${i - 1}`;
    book.work(`g${i}`, formula, `height ${i} by the ratio, before rounding`, rule);
  }
}

function sourceOf(choices: FrontChoices, key: string): string {
  if (choices.given.has(key)) return 'you';
  const { fronted } = choices;
  return key === 'frontThickness' && fronted.kind === 'sheet' ? `measured: ${fronted.name}` : rule;
}

type Put = (key: keyof FrontChoices, name: string, label: string) => void;

function sizeFronts({ choices, book }: FrontLayout, put: Put): void {
  const { rows, columns } = choices;
  const overlay = choices.fronts === 'overlay';
  put('frontThickness', 'tff', 'thickness of the fronts');
  if (overlay) put('overlay', 'o', 'overlay each side');
  else put('gap', 'g', 'gap round each front');
  const more = overlay ? '+ 2*o' : '- 2*g';
  const less = overlay ? '- 2*o' : '+ 2*g';
  book.work('front_w', `wo ${more}`, 'width of the fronts', rule);
  for (let i = 1; i <= rows; i++)
    book.work(`f${i}`, `h${i} ${more}`, `height of the fronts in row ${i}`, rule);
  if (overlay) {
    book.work('seen_stile', 'ws - o', 'stile left to be seen beside the fronts', rule);
    book.work('seen_top', 'wt - o', 'top rail left to be seen above the fronts', rule);
    book.work('seen_bottom', 'wb - o', 'bottom rail left to be seen below the fronts', rule);
  }
  if (rows > 1) book.work('gap', `wm ${less}`, 'distance between fronts one above the other', rule);
  if (columns > 1) book.work('gap_row', `ws ${less}`, 'distance between fronts side by side', rule);
  book.putChoice('notch', 'notch', choices.notch, 'lift of the drawers', sourceOf(choices, 'notch'));
  book.work(
    'clear_above_needed',
    'notch + 2',
    'clear height a lifted drawer needs above its front',
    'joinery B5',
  );
}
