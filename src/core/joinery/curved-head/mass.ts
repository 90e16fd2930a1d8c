import type { HeadSpringing } from './types.ts';
import type { WorkingBook } from '../working.ts';

const rule = 'joinery B17';

/** What half a head takes up, seen from the front, from its middle out to so far: a strip of a ring, by its integral. */
function halfRing(to: string, outer: string): string {
  return `${under(outer, to)} - ${under('R', to)}`;
}

/** What lies under an arc about its centre, from the middle out to so far. */
function under(radius: string, to: string): string {
  return `(${to}*sqrt((${radius})**2 - (${to})**2) + (${radius})**2*radians(asind(${to}/(${radius}))))/2`;
}

/**
 * Works out the mass of the head, of the thickness called `thick`, and of the jambs that are made with it, joints cut; the
 * play of a housing, which is glue, counts as wood.
 */
export function sizeMass(springing: HeadSpringing, book: WorkingBook, thick: 'T' | 'w'): void {
  const outer = `(R + ${thick})`;
  const area = (name: string, formula: string, label: string) =>
    book.work(name, formula, `${label}, seen from the front, mm²`, rule, 'ratio');
  const butt = springing === 'butt';
  const plumb = `2*(${halfRing('(c/2 + e_s)', outer)})`;
  area('head_area', butt ? `radians(a)*(${outer}**2 - R**2)` : plumb, 'head');
  if (!butt) area('in_jamb', `head_area/2 - (${halfRing('(c/2)', outer)})`, 'head beyond a springing');
  const lap = springing === 'halved' ? ' - in_jamb' : '';
  if (!book.has('jamb_L')) {
    book.work('mass', `(head_area${lap})*depth*rho*1e-6`, 'mass', rule, 'kg');
    return;
  }
  const lost = {
    butt: 'tj**2*cotd(a)/2',
    housed: 'in_jamb',
    rebated: `e_s*(jamb_over + R - f) - (${under('R', '(c/2 + e_s)')} - ${under('R', '(c/2)')})`,
    halved: 'tj**2*tand(top_fall)/2 + in_jamb/2',
  }[springing];
  area('jamb_area', `tj*jamb_L - (${lost})`, 'a jamb with its joint cut');
  book.work('mass', `(head_area${lap} + 2*jamb_area)*depth*rho*1e-6`, 'mass, with the jambs', rule, 'kg');
}
