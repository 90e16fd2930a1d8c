import type { FrontChoices } from './choices.ts';
import type { WorkingBook } from '../working.ts';

type Joint = FrontChoices['joint'];

/** Which rail an upright meets. */
export type RailPlace = 't' | 'm' | 'b';

/** Joints whose reach is added to the length of the member. */
export const addsLength = (joint: Joint) => joint === 'stub-tenon' || joint === 'half-lap';

const mortises: readonly number[] = [6, 8, 10, 12]; // tenon cutters (joinery C4)
const slots: readonly number[] = [5, 6, 8, 10]; // loose tenons (joinery C3)

/** Works out how far joints reach and how long the members get (joinery B6, C2 to C6). */
export function sizeJoints(book: WorkingBook, choices: FrontChoices): void {
  const { joint, columns, rows } = choices;
  if (joint !== 'butt') sizeReach(book, choices);
  if (joint === 'loose-tenon' || joint === 'stub-tenon') {
    const tools = joint === 'stub-tenon' ? mortises : slots;
    const thickness = nearest(tools, choices.thickness / 3);
    book.put('tenon_T', thickness, 'thickness of the tenon, the tool nearest to a third', 'joinery C3, C4');
  }
  if (joint === 'dowel') {
    const dowel = [6, 8, 10, 12].find((d) => d >= choices.thickness / 3) ?? 12;
    book.put('dowel_D', dowel, 'dowel, from a third to half of the thickness', 'joinery C2');
  }
  const added = addsLength(joint);
  book.work('rail_L', `m*wo + (m - 1)*ws${added ? ' + 2*reach_s' : ''}`, 'rails, length', 'joinery B6');
  if (columns < 2) return;
  for (let i = 1; i <= rows; i++) {
    const ends = added ? ` + reach_${placeAbove(i)} + reach_${placeBelow(i, rows)}` : '';
    book.work(`inner_L${i}`, `h${i}${ends}`, `inner stiles of row ${i}, length`, 'joinery B6');
  }
}

/** The rail above and below a row, counted from 1 at the top. */
export const placeAbove = (row: number): RailPlace => (row === 1 ? 't' : 'm');
export const placeBelow = (row: number, rows: number): RailPlace => (row === rows ? 'b' : 'm');

function sizeReach(book: WorkingBook, { joint, jointLength, columns, rows }: FrontChoices): void {
  const work = (name: string, formula: string, label: string) =>
    book.work(name, formula, label, sources[joint]);
  const inner = columns > 1;
  const middle = inner && rows > 1;
  if (joint === 'half-lap') {
    work('reach_s', 'ws', 'lap on the stiles, their width');
    if (inner) {
      work('reach_t', 'wt', 'lap on the top rail');
      work('reach_b', 'wb', 'lap on the bottom rail');
    }
    if (middle) work('reach_m', 'wm / 2', 'lap on a rail between, half its width from each side');
    return;
  }
  const label = 'joint reaches into the stile';
  if (jointLength !== null) book.putChoice('jointLength', 'reach_s', jointLength, label, 'you');
  else work('reach_s', usualReach[joint], label);
  if (inner) {
    work('reach_t', 'min(reach_s, 0.6*wt)', 'joint reaches into the top rail');
    work('reach_b', 'min(reach_s, 0.6*wb)', 'joint reaches into the bottom rail');
  }
  // two mortises from both edges, each with its glue well of 1.5, must leave 5 between them (joinery C0.2, C4)
  if (middle) work('reach_m', 'min(reach_s, (wm - 5)/2 - 1.5)', 'joint reaches into a rail between');
}

const sources: Readonly<Record<Joint, string>> = {
  'loose-tenon': 'joinery C3',
  'stub-tenon': 'joinery C4',
  'half-lap': 'joinery C6',
  dowel: 'joinery C2',
  butt: 'joinery C1',
};

const usualReach: Readonly<Record<Joint, string>> = {
  'loose-tenon': 'min(0.6*ws, 25)',
  'stub-tenon': '0.6*ws',
  'half-lap': 'ws',
  dowel: 'min(2/3*ws, 20)',
  butt: '0*ws',
};

function nearest(tools: readonly number[], wanted: number): number {
  return tools.reduce((best, tool) => (Math.abs(tool - wanted) < Math.abs(best - wanted) ? tool : best));
}
