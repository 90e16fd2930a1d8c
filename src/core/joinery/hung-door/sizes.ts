import type { WorkingBook } from '../working.ts';

const rule = 'joinery B2';
const cp = 'common practice, no source';

/** What the leading edge needs to pass the jamb: pivot e beyond the hinge edge and k proud of the face (joinery B2). */
export function sizeSwing(book: WorkingBook): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('g_flush', 'sqrt(Wd**2 + T**2) - Wd', 'gap that a square edge needs, pivot in the face');
  const front = 'sqrt((Wd + e)**2 + k**2)';
  const edge = book.has('T_lead') ? 'T_lead' : 'T'; // what is left where it laps over the other
  const passes = (width: string) => `max(${front}, sqrt((${width} + e)**2 + (${edge} + k)**2)) - e - Wd`;
  work('g_proud', passes('Wd'), 'gap that a square edge needs, pivot as it is');
  work('g_min', passes('back_W'), 'gap that the bevelled edge needs');
  work('need', 'g_min + 2*f_v + 0.8', 'gap wanted: with the films and 0.8 to spare');
}

/** Number and heights of the hinges, and their beds (joinery B2.6), from mass, Hd and T. */
export function sizeHinges(book: WorkingBook, [length, origin]: readonly [number, string]): void {
  // one more than two when the mass is over 8 kg or the door over 1200 high (B2.6)
  const three = '2 + min(1, ceil(max(mass/8 - 1, Hd/1200 - 1, 0)))';
  const hinges = book.work('hinges', three, 'hinges', 'joinery B2.6', 'count');
  book.work('hinge_top', 'Hd - min(150, Hd/5)', 'upper hinge, its middle above the lower edge', rule);
  book.work('hinge_low', 'min(200, Hd/4)', 'lower hinge, its middle above the lower edge', rule);
  if (hinges > 2) {
    book.work('hinge_mid', '(hinge_top + hinge_low)/2', 'third hinge, its middle above the lower edge', rule);
  }
  book.putChoice('hingeLength', 'hinge_L', length, 'hinge length', origin);
  book.put('hinge_in', 2, 'hinge leaf let into the edge', cp);
  book.work('hinge_leaf', 'T - 4', 'hinge leaf over the thickness of the door, at most', cp);
}
