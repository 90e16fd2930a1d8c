import type { FrameLayout } from './layout.ts';
import { footTerm, headInside, lost, workOutLong, workOutSlanted } from './sizes.ts';
import { roughAllowance } from '../rules.ts';
import type { Material } from '../piece-types.ts';

const rule = 'joinery B1';
export type Face = 'near' | 'far';

/** The faces that get a cover moulding. */
export function coveredFaces({ choices }: FrameLayout): readonly Face[] {
  switch (choices.covers) {
    case 'both':
      return ['near', 'far'];
    case 'near':
    case 'far':
      return [choices.covers];
    case 'none':
      return [];
  }
}

/** Names of width and reveal of the cover on a face: a far cover that is the door's stop laps over the opening. */
export function coverNames(
  { choices }: FrameLayout,
  face: Face,
): { readonly width: string; readonly reveal: string } {
  const stops = face === 'far' && choices.stop === 'cover';
  return stops ? { width: 'a_far', reveal: 'rv_far' } : { width: 'a', reveal: 'rv' };
}

/** Covers with their overlap on the bulkhead at each corner, the panel above the head, the blanks. */
export function workOutTrim(
  layout: FrameLayout,
  stock: { readonly frame: Material; readonly infillThickness: number },
): void {
  if (layout.choices.stop === 'cover') {
    layout.book.work('rv_far', '-ts_st', 'reveal on the far face: the cover is the stop', rule);
    layout.book.work('a_far', 'a + rv - rv_far', 'cover width on the far face', rule);
  }
  const faces = coveredFaces(layout);
  if (faces.length) {
    putCoverThickness(layout);
    workOutCovers(layout);
    workOutOverlaps(layout);
  }
  if (layout.choices.infill) workOutInfill(layout, stock.infillThickness);
  if (stock.frame.kind === 'solid') workOutBlanks(layout, stock.frame.state);
}

function putCoverThickness({ book, choices }: FrameLayout): void {
  const source = choices.given.has('coverThickness') ? 'you' : `${rule}, usual`;
  book.putChoice('coverThickness', 'ct', choices.coverThickness, 'cover thickness', source);
}

/** Long points; both faces end on the same outer line. A near cover stands on the nosing of a sill, others pass it. */
function workOutCovers(layout: FrameLayout): void {
  const { book, mode, jamb } = layout;
  const [outJamb, outHead] = [`${jamb} - rv - a`, `${headInside(layout)} - rv - a`];
  const faces = coveredFaces(layout);
  for (const side of ['right', 'left'] as const) {
    for (const name of new Set(faces.map((face) => coverLength(layout, face, side)))) {
      const stands = name.startsWith('cover_near');
      const past = layout.choices.sill && !stands ? ' + ts + p_s' : '';
      const foot = stands ? 'ts' : layout.choices.sill ? '-p_s' : '0';
      const [top, bottom] = side === 'left' ? (['TL', 'BL'] as const) : (['TR', 'BR'] as const);
      const fitted = `out_${side} - ${lost(top, outJamb, outHead)} - ${lost(bottom, outJamb, foot)}`;
      const square = `Hc + rv + a${footTerm(layout, side)}${past}`;
      book.work(name, mode === 'square' ? square : fitted, `${side} cover, long point`, rule);
    }
    for (const face of faces) workOutCoverFoot(layout, face, side);
  }
  const fitted = `out_head - ${lost('TL', outHead, outJamb)} - ${lost('TR', outHead, outJamb)}`;
  book.work(
    'cover_head_long',
    mode === 'square' ? 'Wc + 2*rv + 2*a' : fitted,
    'head cover, long points',
    rule,
  );
}

/** Name of the length of an upright cover at its long point. */
export function coverLength({ choices }: FrameLayout, face: Face, side: 'left' | 'right'): string {
  return face === 'near' && standsOnNosing(choices) ? `cover_near_long_${side}` : `cover_vert_long_${side}`;
}

/** True when the covers of the near face end on the nosing of the sill. */
export function standsOnNosing(choices: FrameLayout['choices']): boolean {
  return choices.sill && !choices.flat && choices.sillNosing > 0;
}

/** What a foot sawn to the sole makes the inner edge of a cover longer than its outer. */
function workOutCoverFoot(layout: FrameLayout, face: Face, side: 'left' | 'right'): void {
  const { width } = coverNames(layout, face);
  const outer = coverLength(layout, face, side);
  const long = `cover_${face}_${side}_all`;
  if (layout.mode === 'square') workOutLong(layout, { outer, long, thickness: width, side });
  else workOutSlanted(layout, { outer, long, thickness: width, corners: [side === 'left' ? 'BL' : 'BR'] });
}

function workOutOverlaps(layout: FrameLayout): void {
  const { book, jamb, head } = layout;
  const points = [
    ['left_foot', jamb],
    ['left_head', jamb],
    ['right_foot', jamb],
    ['right_head', jamb],
    ['head', head],
  ] as const;
  for (const [point, stock] of points) {
    const formula = `a - (${stock} - rv) - gap_${point} - u95_lean`;
    book.work(`overlap_${point}`, formula, `cover on the bulkhead, ${point.replace('_', ' at the ')}`, rule);
  }
  const all = points.map(([point]) => `overlap_${point}`).join(', ');
  book.work('overlap_min', `min(${all})`, 'cover on the bulkhead, least', rule);
}

/** Panel in grooves of jambs and head, its top edge left on for scribing (joinery B1, A11). */
function workOutInfill(layout: FrameLayout, thickness: number): void {
  const { book, choices } = layout;
  const names = choices.infillOrdinates.map((_, i) => `ordinate_${i + 1}`);
  book.put('gd_jamb', 6, 'groove in the jambs', rule);
  book.put('gd_head', 8, 'groove in the head', rule);
  book.put('infill_T', thickness, 'panel thickness', 'material');
  book.put('u_infill', 2, 'uncertainty of an ordinate (95 %)', 'joinery A1 M9');
  book.work('infill_W', 'Wc + 2*gd_jamb - 2', 'panel width', rule);
  book.work('infill_H', `max(${names.join(', ')}) + gd_head - 1`, 'panel height, tallest', rule);
  workOutDeviation(layout, names);
  book.work(
    'S_infill',
    'min(25, max(5, ceil(dev_infill + 2*u_infill + 2)))',
    'scribe allowance',
    'joinery A11',
  );
  book.work('infill_cut_H', 'infill_H + S_infill', 'panel height as cut', rule);
}

/** Largest less smallest distance of the ordinates from their best straight line (joinery A11). */
function workOutDeviation({ book }: FrameLayout, names: readonly string[]): void {
  const count = names.length;
  const middle = (count + 1) / 2;
  const spread = names.reduce((sum, _, i) => sum + (i + 1 - middle) ** 2, 0);
  book.work('ordinate_mean', `(${names.join(' + ')})/${count}`, 'ordinates, mean', 'joinery A11');
  const slope = names.map((name, i) => `(${i + 1} - ${middle})*${name}`).join(' + ');
  book.work(
    'ordinate_slope',
    `(${slope})/${spread}`,
    'ordinates, slope of the best line per station',
    'joinery A11',
  );
  const off = names.map((name, i) => `${name} - ordinate_mean - (${i + 1} - ${middle})*ordinate_slope`);
  book.work(
    'dev_infill',
    `max(${off.join(', ')}) - min(${off.join(', ')})`,
    'ordinates off a straight line',
    'joinery A11',
  );
}

/** Blanks of the lining: one thickness and width for all members, as they come from one setting (joinery D4). */
function workOutBlanks(layout: FrameLayout, state: 'sawn' | 'planed'): void {
  const { book, choices, jamb, head } = layout;
  const source = 'joinery D4';
  const { length, width } = roughAllowance[state];
  const longest = Math.max(
    ...['left', 'right'].map((side) => book.value(lengthName(layout, side as 'left' | 'right'))),
  );
  const { thickness } = roughAllowance;
  const more = state === 'planed' ? 0 : longest > thickness.longFrom ? thickness.long : thickness.usual;
  book.work('head_rough_L', `up(${lengthName(layout, 'head')} + ${length}, 1)`, 'head blank, length', source);
  const jambs = (['left', 'right'] as const).map((side) => lengthName(layout, side)).join(', ');
  book.work('jamb_rough_L', `up(max(${jambs}) + ${length}, 1)`, 'jamb blank, length, the longer', source);
  const inPlane = jamb === 'tj' && head === 'th' ? 'max(tj, th)' : 'max(Tj, Th)';
  const [across, through] = choices.flat ? [inPlane, 'Ld'] : ['Ld', inPlane];
  book.work('lining_rough_W', `up(${across} + ${width}, 1)`, 'frame blanks, width', source);
  book.work('lining_rough_T', `${through} + ${more}`, 'frame blanks, thickness', source);
}

/** Name of the working step behind a member's length over all. */
export function lengthName({ book }: FrameLayout, member: 'left' | 'right' | 'head' | 'sill'): string {
  const stem = member === 'head' || member === 'sill' ? member : `jamb_${member}`;
  return book.has(`${stem}_long`) ? `${stem}_long` : `${stem}_L`;
}
