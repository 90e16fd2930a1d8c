import type { WorkingBook } from '../working.ts';

const cp = 'common practice, no source';

/** The wood that a lock let in takes: its case and the bed of its forend, which lie in one another. */
const lockFormula =
  'forend_in*(forend_H*forend_W + case_H*case_T - min(forend_H, case_H)*min(forend_W, case_T)) + (case_D - forend_in)*case_H*case_T';

/**
 * What the pockets of lock and bolts take off the mass of a door, as a term; nothing without pockets. Puts their volume into
 * the book, so it comes after them. The density of what they are cut from by its name.
 */
export function pocketTerm(book: WorkingBook, density: string): string {
  const all = [
    ...(book.has('forend_in') ? [lockFormula] : []),
    ...(book.has('bolt_L') ? ['2*bolt_L*bolt_W*bolt_in'] : []),
  ];
  if (all.length === 0) return '';
  book.work('pockets', all.join(' + '), 'taken out for lock and bolts, mm³', cp, 'ratio');
  return ` - pockets*${density}*1e-6`;
}
