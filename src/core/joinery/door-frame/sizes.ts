import { isPlugged } from './plugged.ts';
import type { FrameLayout } from './layout.ts';
import { sawable } from '../rules.ts';
import type { CornerName } from '../survey-fit.ts';

const rule = 'joinery B1';
type Side = 'left' | 'right';
const topCorner: Readonly<Record<Side, CornerName>> = { left: 'TL', right: 'TR' };
const footCorner: Readonly<Record<Side, CornerName>> = { left: 'BL', right: 'BR' };

/** Lengths lost along a side when it moves in by `own` and its neighbour at `corner` by `other` (joinery B1, fitted mode). */
export function lost(corner: CornerName, own: string, other: string): string {
  const turned = own === '0' ? `(${other})` : `(${other} + (${own})*cosd(alpha_${corner}))`;
  return `${turned}/sind(alpha_${corner})`;
}

/** Height taken above the head by jambs that run past it. */
export function headStart(layout: FrameLayout): string {
  return layout.choices.corner === 'housing-between' && !layout.choices.infill ? 'horn' : '0';
}

/** Distance of the head's lower face from the top of the frame, as formula. */
export function headInside(layout: FrameLayout): string {
  return headStart(layout) === '0' ? layout.head : `horn + ${layout.head}`;
}

/** Everything from the outside of the frame inwards: clear size, members, stops, door. */
export function workOutSizes(layout: FrameLayout): void {
  const { book, choices } = layout;
  if (choices.stop === 'rebated') {
    book.work('Tj', 'tj + r', 'jamb stock with the rebate', rule);
    book.work('Th', 'th + r', 'head stock with the rebate', rule);
  }
  book.work('Ld', 'bulkhead_max + 2*e', 'lining depth, front to back', rule);
  if (choices.sill)
    book.put('gt_sill', choices.sillJoint === 'tongue' ? 7 : 0, 'tongue into the sill', 'joinery C7');
  workOutFeet(layout);
  workOutClear(layout);
  workOutHead(layout);
  workOutJamb(layout, 'right');
  workOutJamb(layout, 'left');
  if (choices.sill) workOutSill(layout);
  if (choices.corner === 'mitre') workOutMitres(layout);
  workOutSight(layout);
  workOutDoor(layout);
}

/** Square frames on a bare sill: what each jamb stands lower than the highest point, and the angle of its foot. */
function workOutFeet({ book, choices, mode }: FrameLayout): void {
  if (choices.sill || mode === 'fitted') return;
  book.work(
    'sill_tilt',
    'atan2d(yBR - yBL, xBR - xBL)',
    'slope of the sill, rising to the right',
    rule,
    'degrees',
  );
  const sillAt = (x: string) => `yS - (yBL + (yBR - yBL)*(${x} - xBL)/(xBR - xBL))`;
  book.work('foot_left', sillAt('xF'), 'foot addition, left jamb', rule);
  book.work('foot_right', sillAt('xF + Fw'), 'foot addition, right jamb', rule);
}

/** The foot addition as a term of a formula; nothing where it is too small to saw. */
export function footTerm({ book }: FrameLayout, side: Side): string {
  const name = `foot_${side}`;
  return book.has(name) && book.value(name) >= sawable ? ` + ${name}` : '';
}

function workOutClear(layout: FrameLayout): void {
  const { book, choices, mode, jamb } = layout;
  const inside = headInside(layout);
  const sill = choices.sill ? 'ts' : '0';
  if (mode === 'square') {
    book.work('Wc', `Fw - 2*${jamb}`, 'clear width', rule);
    book.work(
      'Hc',
      `Fh - ${inside.replace(' + ', ' - ')}${choices.sill ? ' - ts' : ''}`,
      'clear height',
      rule,
    );
    return;
  }
  const head = `out_head - ${lost('TL', inside, jamb)} - ${lost('TR', inside, jamb)}`;
  const foot = `out_sill - ${lost('BL', sill, jamb)} - ${lost('BR', sill, jamb)}`;
  book.work('Wc_head', head, 'clear width at the head', rule);
  book.work('Wc_foot', foot, 'clear width at the foot', rule);
  for (const side of ['left', 'right'] as const) {
    const formula = `out_${side} - ${lost(topCorner[side], jamb, inside)} - ${lost(footCorner[side], jamb, sill)}`;
    book.work(`Hc_${side}`, formula, `clear height, ${side}`, rule);
  }
  book.work('Wc', 'min(Wc_head, Wc_foot)', 'clear width, the smaller', rule);
  book.work('Hc', 'min(Hc_left, Hc_right)', 'clear height, the smaller', rule);
}

function workOutHead(layout: FrameLayout): void {
  const { book, mode, choices, jamb, head } = layout;
  const square = { 'housing-over': 'Fw + 2*horn', 'housing-between': 'Wc + 2*gh', butt: 'Wc' };
  const start = headStart(layout);
  const fitted = {
    'housing-over': 'out_head + horn/sind(alpha_TL) + horn/sind(alpha_TR)',
    'housing-between': `out_head - ${lost('TL', start, `${jamb} - gh`)} - ${lost('TR', start, `${jamb} - gh`)}`,
    butt: `out_head - ${lost('TL', start, jamb)} - ${lost('TR', start, jamb)}`,
  };
  const corner = isPlugged(choices.corner) ? 'butt' : choices.corner;
  const special =
    corner === 'housing-over' || corner === 'housing-between' || corner === 'butt' ? corner : null;
  const formulas = mode === 'square' ? square : fitted;
  const usual = mode === 'square' ? 'Fw' : 'out_head';
  book.work('head_L', special ? formulas[special] : usual, 'head length, upper edge', rule);
  if (mode === 'fitted' && corner !== 'mitre') {
    workOutSlanted(layout, { outer: 'head_L', long: 'head_long', thickness: head, corners: ['TL', 'TR'] });
  }
}

function workOutJamb(layout: FrameLayout, side: Side): void {
  const { book, mode, choices, jamb, head } = layout;
  const boxSill = choices.sill && !choices.flat;
  const top = choices.over ? `${head} - gh` : '0';
  const foot = boxSill ? 'ts - gt_sill' : '0';
  const run = choices.infill ? ` + run_${side}` : '';
  if (choices.infill)
    book.work(`run_${side}`, `${ordinateAt(layout, side)} - p_h`, `${side} jamb above the head`, rule);
  const square = ['Fh', top, foot].filter((term) => term !== '0').map((term) => term.replace(' - ', ' + '));
  const fitted = [
    `out_${side}`,
    ...(top === '0' ? [] : [lost(topCorner[side], '0', top)]),
    ...(foot === '0' ? [] : [lost(footCorner[side], '0', foot)]),
  ];
  const formula = mode === 'square' ? square.join(' - ') + footTerm(layout, side) : fitted.join(' - ');
  book.work(`jamb_${side}_L`, formula + run, `${side} jamb length, outer edge`, rule);
  if (mode === 'square') {
    workOutLong(layout, { outer: `jamb_${side}_L`, long: `jamb_${side}_long`, thickness: jamb, side });
  } else {
    const mitred = choices.corner === 'mitre';
    const corners = [
      ...(mitred ? [] : [topCorner[side]]),
      ...(mitred && choices.sill ? [] : [footCorner[side]]),
    ];
    workOutSlanted(layout, { outer: `jamb_${side}_L`, long: `jamb_${side}_long`, thickness: jamb, corners });
  }
}

function ordinateAt({ choices }: FrameLayout, side: Side): string {
  return side === 'left' ? 'ordinate_1' : `ordinate_${choices.infillOrdinates.length}`;
}

interface LongEdge {
  /** Name of the length along the outer edge, and the name to give the length over all. */
  readonly outer: string;
  readonly long: string;
  readonly thickness: string;
  readonly side: Side;
}

/** Adds what a foot sawn to a sloping sill makes the inner edge longer than the outer; nothing when too small to saw. */
export function workOutLong({ book }: FrameLayout, { outer, long, thickness, side }: LongEdge): void {
  if (!book.has('sill_tilt')) return;
  const sign = side === 'left' ? '-' : '';
  const more = Math.tan((book.value('sill_tilt') * Math.PI) / 180) * book.value(thickness);
  if (Math.abs(more) < sawable) return;
  const formula = `${outer} + max(0, ${sign}${thickness}*tand(sill_tilt))`;
  book.work(long, formula, 'the same over all, foot on the slope', rule);
}

interface SlantedEnds {
  readonly outer: string;
  readonly long: string;
  readonly thickness: string;
  readonly corners: readonly CornerName[];
}

/** Adds what ends cut along the neighbours make the inner edge longer than the outer, in a fitted frame. */
export function workOutSlanted(
  { book }: FrameLayout,
  { outer, long, thickness, corners }: SlantedEnds,
): void {
  if (corners.length === 0) return;
  const more = corners.map((at) => `max(0, -${thickness}*cotd(alpha_${at}))`).join(' + ');
  book.work(long, `${outer} + ${more}`, 'the same over all, ends on the slant', rule);
}

function workOutSill(layout: FrameLayout): void {
  const { book, mode, choices } = layout;
  book.work('sill_L', mode === 'square' ? 'Fw' : 'out_sill', 'sill length, lower edge', rule);
  if (mode === 'fitted' && choices.corner !== 'mitre') {
    workOutSlanted(layout, { outer: 'sill_L', long: 'sill_long', thickness: 'ts', corners: ['BL', 'BR'] });
  }
  if (choices.flat) return;
  book.putChoice(
    'sillNosing',
    'nosing',
    choices.sillNosing,
    'sill nosing',
    choices.given.has('sillNosing') ? 'you' : `${rule}, usual`,
  );
  book.work('sill_W', 'Ld + nosing', 'sill width', rule);
}

/** Mitre angles of members of unequal width (joinery B1): between the outer edge and the cut. */
function workOutMitres({ book, mode, choices }: FrameLayout): void {
  const at = (corner: CornerName) => (mode === 'square' ? '90' : `alpha_${corner}`);
  const corners: readonly CornerName[] = choices.sill ? ['TL', 'TR', 'BL', 'BR'] : ['TL', 'TR'];
  for (const corner of corners) {
    const other = corner.startsWith('T') ? 'th' : 'ts';
    const name = corner.startsWith('T') ? 'head' : 'sill';
    const angle = at(corner);
    const jamb = `atan2d(tj*sind(${angle}), ${other} + tj*cosd(${angle}))`;
    book.work(`phi_jamb_${corner}`, jamb, `mitre on the jamb at ${corner}`, rule, 'degrees');
    book.work(
      `phi_${name}_${corner}`,
      `${angle} - phi_jamb_${corner}`,
      `mitre on the ${name} at ${corner}`,
      rule,
      'degrees',
    );
  }
}

function workOutSight(layout: FrameLayout): void {
  const { book, mode, choices } = layout;
  for (const side of ['left', 'right'] as const) {
    const formula = mode === 'square' ? `Hc${footTerm(layout, side)}` : `Hc_${side}`;
    book.work(`sight_height_${side}`, formula, `clear height at the ${side} jamb`, rule);
  }
  if (choices.stop === 'planted') workOutStops(layout);
}

function workOutStops(layout: FrameLayout): void {
  const { book, mode, jamb } = layout;
  book.work('stop_W', 'Ld - e - td - 1', 'stop width, front to back', rule);
  for (const side of ['right', 'left'] as const) {
    const outer = `stop_side_L_${side}`;
    book.work(outer, `sight_height_${side}`, `${side} stop length, at the jamb`, rule);
    const long = `stop_side_long_${side}`;
    if (mode === 'square') workOutLong(layout, { outer, long, thickness: 'ts_st', side });
    else
      workOutSlanted(layout, {
        outer,
        long,
        thickness: 'ts_st',
        corners: [topCorner[side], footCorner[side]],
      });
  }
  const inside = headInside(layout);
  const fitted = `out_head - ${lost('TL', inside, `${jamb} + ts_st`)} - ${lost('TR', inside, `${jamb} + ts_st`)}`;
  book.work('stop_head_L', mode === 'square' ? 'Wc - 2*ts_st' : fitted, 'head stop length', rule);
  if (mode === 'square') return;
  workOutSlanted(layout, {
    outer: 'stop_head_L',
    long: 'stop_head_long',
    thickness: 'ts_st',
    corners: ['TL', 'TR'],
  });
}

function workOutDoor({ book, choices }: FrameLayout): void {
  const [width, height] = choices.stop === 'rebated' ? ['Wc + 2*r', 'Hc + r'] : ['Wc', 'Hc'];
  book.work('Wd', `${width} - 2*gs`, 'door width', rule);
  book.work('Hd', `${height} - gt - gb`, 'door height', rule);
  book.work(
    'swing',
    'sqrt(Wd**2 + td**2) - Wd',
    'gap the back corner of a square-edged door needs',
    'joinery B2',
  );
}
