import type { FrontCell } from './cells.ts';
import type { FrontLayout } from './sizes.ts';
import type { Piece } from '../piece-types.ts';
import type { MatchedSet } from '../types.ts';

/** Fronts out of one strip: in the order they come from it. */
export interface FrontSet extends MatchedSet {
  readonly cells: readonly FrontCell[];
  /** The fronts stand one above the other, or side by side. */
  readonly run: 'stack' | 'row';
}

const trim = 5; // at each end of a strip, mm (joinery B6, calculated example)

/**
 * The strips of continuous grain (joinery B6): a stack, or a row where the grain runs along it; an open cell ends a run.
 * Works out the length of each strip, tight and true.
 */
export function matchFronts(
  piece: Piece,
  layout: FrontLayout,
  cells: readonly FrontCell[],
): readonly FrontSet[] {
  const { choices, book } = layout;
  if (choices.continuous === 'none') return [];
  const runs = findRuns(layout, cells);
  if (runs.length === 0) return [];
  const source = choices.given.has('kerf') ? 'you' : 'joinery 0.6';
  book.putChoice('kerf', 'kerf', choices.kerf, 'kerf of the saw', source);
  book.put('trim', trim, 'trim at each end of a strip', 'joinery B6');
  return runs.map(({ run, cells: members }, i) => {
    const between = workOutStrip(layout, run, members, i);
    return {
      id: `${piece.letter} set ${i + 1}`,
      parts: members.map((cell) => cell.id),
      direction: follows(run, members) ? 'along' : 'across',
      between: members.slice(1).map(() => between),
      trim,
      cells: members,
      run,
    };
  });
}

type Run = FrontSet['run'];

/** Whether the fronts follow each other along their grain. */
function follows(run: Run, cells: readonly FrontCell[]): boolean {
  return (run === 'row') === (cells[0]?.grain === 'horizontal');
}

function findRuns({ choices }: FrontLayout, cells: readonly FrontCell[]) {
  const { rows, columns } = choices;
  const horizontal = cells[0]?.grain === 'horizontal';
  const run: Run = horizontal ? (columns > 1 ? 'row' : 'stack') : rows > 1 ? 'stack' : 'row';
  const lines = Array.from({ length: run === 'stack' ? columns : rows }, (_, line) =>
    Array.from({ length: run === 'stack' ? rows : columns }, (_, at) => {
      const [row, column] = run === 'stack' ? [at + 1, line] : [line + 1, at];
      return cells.find((cell) => cell.row === row && cell.column === column) ?? null;
    }),
  );
  // upright grain lies with Y to the left: a row of doors follows its strip from the right
  const ordered = run === 'row' && !horizontal ? lines.map((line) => [...line].reverse()) : lines;
  return ordered.flatMap(splitAtOpen).map((members) => ({ run, cells: members }));
}

function splitAtOpen(line: readonly (FrontCell | null)[]): readonly (readonly FrontCell[])[] {
  const runs: FrontCell[][] = [[]];
  for (const cell of line) {
    if (cell) runs.at(-1)?.push(cell);
    else runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

/** Works out one strip; answers what is thrown away between two fronts. */
function workOutStrip(
  { book, choices }: FrontLayout,
  run: Run,
  cells: readonly FrontCell[],
  index: number,
): number {
  const suffix = index === 0 ? '' : `_${index + 1}`;
  const name = (text: string) => `${text}${suffix}`;
  const work = (text: string, formula: string, label: string) =>
    book.work(name(text), formula, `strip ${index + 1}: ${label}`, 'joinery B6');
  const joints = cells.length - 1;
  const apart = run === 'stack' ? 'gap' : 'gap_row';
  const sum = run === 'stack' ? cells.map((cell) => `f${cell.row}`).join(' + ') : `${cells.length}*front_w`;
  work('sum_fronts', sum, 'its fronts together');
  work(
    'strip_true',
    `${name('sum_fronts')} + ${joints}*${apart} + 2*trim`,
    'length, figure truly running through',
  );
  work('strip_tight', `${name('sum_fronts')} + ${joints}*kerf + 2*trim`, 'length, cut close');
  work('slip_per_joint', `${apart} - kerf`, 'slip of the figure at each joint when cut close');
  return choices.continuous === 'true' ? book.value(apart) : book.value('kerf');
}
