import { markSize } from '#core/units';
import type { FrameChoices } from './choices.ts';
import { cornerNames } from '../survey-fit.ts';
import type { Opening, OpeningSide } from '../survey-fit.ts';
import { openWorkingBook } from '../working.ts';
import type { WorkingBook } from '../working.ts';

/** A frame laid out in its opening: the outside worked out, everything else still to come. */
export interface FrameLayout {
  readonly book: WorkingBook;
  readonly choices: FrameChoices;
  readonly opening: Opening;
  readonly mode: 'square' | 'fitted';
  /** Names of the stock thicknesses of jamb and head, with the door's rebate where there is one. */
  readonly jamb: 'tj' | 'Tj';
  readonly head: 'th' | 'Th';
}

const rule = 'joinery B1';

/** Lays the frame out square or fitted as chosen; `auto` takes square as long as the covers hide the largest gap. */
export function layOutFrame(choices: FrameChoices, opening: Opening, shapeName: string): FrameLayout {
  const start = () => {
    const book = openWorkingBook();
    putChoices(book, choices);
    putOpening(book, opening, shapeName);
    turnOpening(book, choices);
    return book;
  };
  const trial = start();
  fitSquare(trial, choices, opening);
  const holds = trial.value('G_max') <= trial.value('capacity');
  const mode = choices.mode === 'auto' ? (holds ? 'square' : 'fitted') : choices.mode;
  const names = {
    jamb: choices.stop === 'rebated' ? 'Tj' : 'tj',
    head: choices.stop === 'rebated' ? 'Th' : 'th',
  } as const;
  if (mode === 'square') return { book: trial, choices, opening, mode, ...names };
  const book = start();
  fitSquare(book, choices, opening, '_square');
  fitToOpening(book, choices, opening);
  return { book, choices, opening, mode, ...names };
}

function putChoices(book: WorkingBook, choices: FrameChoices): void {
  const put = (name: string, key: keyof FrameChoices & string, label: string, unless = false) => {
    const value = choices[key];
    if (unless || typeof value !== 'number') return;
    book.putChoice(key, name, value, label, choices.given.has(key) ? 'you' : `${rule}, usual`);
  };
  put('p', 'packingSides', 'packing each side');
  put('p_h', 'packingHead', 'packing above the head');
  put('p_s', 'packingSill', 'packing under the sill');
  put('tj', 'jambThickness', 'jamb thickness');
  put('th', 'headThickness', 'head thickness');
  put('ts', 'sillThickness', 'sill thickness', !choices.sill);
  put('bulkhead_max', 'bulkheadMax', 'bulkhead, thickest');
  put('bulkhead_min', 'bulkheadMin', 'bulkhead, thinnest');
  book.put('e', 1, 'lining proud of the bulkhead, each face', rule);
  put('gh', 'jointDepth', 'depth of the corner joint');
  put('tt', 'tongueThickness', 'tongue thickness');
  put('horn', 'horn', 'wood beyond the housing');
  put('r', 'stopRebate', 'rebate for the door', choices.stop !== 'rebated');
  put('ts_st', 'stopThickness', 'how far the stop stands in');
  put('td', 'doorThickness', 'door thickness');
  put('a', 'coverWidth', 'cover width');
  put('rv', 'reveal', 'reveal');
  put('gs', 'doorGapSide', 'door gap, each side');
  put('gt', 'doorGapTop', 'door gap, top');
  put('gb', 'doorGapBottom', 'door gap, bottom');
  if (!choices.infill) return;
  choices.infillOrdinates.forEach((height, i) => {
    const label = `height above the head, station ${i + 1}`;
    book.putChoice('infillOrdinates', `ordinate_${i + 1}`, height, label, 'you');
  });
}

function putOpening(book: WorkingBook, opening: Opening, shapeName: string): void {
  for (const corner of cornerNames) {
    for (const axis of ['x', 'y'] as const) {
      const u95 = markSize(opening.u95[corner][axis]);
      book.put(
        `${corner}_${axis}`,
        opening.corners[corner][axis],
        `corner ${corner}, ${axis}, from the survey ±${u95}`,
        `shape ${shapeName}`,
      );
    }
  }
  book.put('tilt', (opening.tilt * 180) / Math.PI, "the boat's upright", `shape ${shapeName}`, 'degrees');
  book.put(
    'u95_lean',
    opening.u95Lean,
    'how far a top may lean beyond what was found (95 %)',
    `shape ${shapeName}`,
  );
  for (const side of ['left', 'right', 'head', 'sill'] as const) {
    const bow = opening.bow[side];
    if (bow) book.put(`bow_${side}`, bow, `bow of the ${side}, outwards`, `shape ${shapeName}`);
  }
}

const lean = {
  left: 'atan2d(TL_x - BL_x, TL_y - BL_y)',
  right: 'atan2d(TR_x - BR_x, TR_y - BR_y)',
} as const;
const turnFormula: Readonly<Record<FrameChoices['datum'], string>> = {
  mean: `(${lean.left} + ${lean.right})/2`,
  left: lean.left,
  right: lean.right,
  boat: '-tilt',
};

/** Corners with the datum upright and BL at the origin; the mid points of bowed sides. */
function turnOpening(book: WorkingBook, choices: FrameChoices): void {
  book.work(
    'phi',
    turnFormula[choices.datum],
    `turn that brings the datum (${choices.datum}) upright`,
    rule,
    'degrees',
  );
  book.put('xBL', 0, 'corner BL, the origin, x', rule);
  book.put('yBL', 0, 'corner BL, the origin, y', rule);
  for (const corner of ['BR', 'TR', 'TL']) {
    const [x, y] = [`(${corner}_x - BL_x)`, `(${corner}_y - BL_y)`];
    book.work(`x${corner}`, `${x}*cosd(phi) - ${y}*sind(phi)`, `corner ${corner} turned, x`, rule);
    book.work(`y${corner}`, `${x}*sind(phi) + ${y}*cosd(phi)`, `corner ${corner} turned, y`, rule);
  }
  book.work(
    'leanmm_per_m',
    '1000*tand(phi + tilt)',
    "lean of the frame to the boat's vertical, mm per m",
    rule,
    'ratio',
  );
}

/** Largest rectangle between the corners, less packing; gaps left at the corners; what the covers can hide. */
function fitSquare(book: WorkingBook, choices: FrameChoices, opening: Opening, suffix = ''): void {
  const work = (name: string, formula: string, label: string) =>
    book.work(name + suffix, formula.replaceAll('~', suffix), label, rule);
  const bowed = (side: OpeningSide, formula: string) => (opening.bow[side] ? `, ${formula}` : '');
  work('xL', `max(xBL, xTL${bowed('left', '(xBL + xTL)/2 - bow_left')})`, 'tightest on the left');
  work('xR', `min(xBR, xTR${bowed('right', '(xBR + xTR)/2 + bow_right')})`, 'tightest on the right');
  work('yS', `max(yBL, yBR${bowed('sill', '(yBL + yBR)/2 - bow_sill')})`, 'highest of the sill');
  work('yH', `min(yTL, yTR${bowed('head', '(yTL + yTR)/2 + bow_head')})`, 'lowest of the head');
  work('Fw', 'down(xR~ - xL~ - 2*p, 0.5)', 'frame width outside');
  work('Fh', 'down(yH~ - yS~ - p_h - p_s, 0.5)', 'frame height outside');
  work('xF', 'xL~ + p', 'left of the frame');
  work('yF', 'yS~ + p_s', 'foot of the frame');
  work('gap_left_foot', 'xF~ - xBL', 'gap, left at the foot');
  work('gap_left_head', 'xF~ - xTL', 'gap, left at the head');
  work('gap_right_foot', 'xBR - xF~ - Fw~', 'gap, right at the foot');
  work('gap_right_head', 'xTR - xF~ - Fw~', 'gap, right at the head');
  work('gap_head', 'max(yTL, yTR) - yF~ - Fh~', 'gap above the head, the larger end');
  if (choices.sill) work('gap_sill', 'yF~ - min(yBL, yBR)', 'gap under the sill, the larger end');
  const gaps = [
    'left_foot',
    'left_head',
    'right_foot',
    'right_head',
    'head',
    ...(choices.sill ? ['sill'] : []),
  ];
  const all = gaps.map((gap) => `gap_${gap}~`).join(', ');
  work('G_max', `max(${all})`, 'largest gap round a square frame');
  const stock = choices.stop === 'rebated' ? 'tj + r' : 'tj';
  book.work('capacity', `a - (${stock} - rv) - 12`, 'gap that the covers can hide', rule);
}

/** Outside lengths of a frame that follows the opening: each side moved in by its packing. */
function fitToOpening(book: WorkingBook, choices: FrameChoices, opening: Opening): void {
  const inwards = (side: OpeningSide) => (opening.bow[side] ? ` + max(0, -bow_${side})` : '');
  book.work('o_left', `p${inwards('left')}`, 'left moved in by', rule);
  book.work('o_right', `p${inwards('right')}`, 'right moved in by', rule);
  book.work('o_head', `p_h${inwards('head')}`, 'head moved in by', rule);
  book.work('o_sill', `p_s${inwards('sill')}`, 'sill moved in by', rule);
  const sides = [
    ['left', 'BL', 'TL'],
    ['right', 'BR', 'TR'],
    ['head', 'TL', 'TR'],
    ['sill', 'BL', 'BR'],
  ] as const;
  for (const [side, from, to] of sides) {
    const length = `sqrt((x${to} - x${from})**2 + (y${to} - y${from})**2)`;
    book.work(`side_${side}`, length, `opening, ${side}`, rule);
  }
  const corners = [
    ['BL', 'BR', 'TL'],
    ['BR', 'BL', 'TR'],
    ['TR', 'TL', 'BR'],
    ['TL', 'TR', 'BL'],
  ] as const;
  for (const [at, to, upTo] of corners) {
    const dot = `(x${to} - x${at})*(x${upTo} - x${at}) + (y${to} - y${at})*(y${upTo} - y${at})`;
    const cross = `(x${to} - x${at})*(y${upTo} - y${at}) - (y${to} - y${at})*(x${upTo} - x${at})`;
    book.work(`alpha_${at}`, `atan2d(abs(${cross}), ${dot})`, `corner angle ${at}`, rule, 'degrees');
  }
  for (const [side, from, to] of sides) {
    const next = side === 'left' || side === 'right' ? ['sill', 'head'] : ['left', 'right'];
    const lost = [from, to].map(
      (corner, i) => `(o_${next[i]} + o_${side}*cosd(alpha_${corner}))/sind(alpha_${corner})`,
    );
    book.work(`out_${side}`, `side_${side} - ${lost.join(' - ')}`, `frame outside, ${side}`, rule);
  }
  book.work('Fw', 'max(out_head, out_sill)', 'frame width outside', rule);
  book.work('Fh', 'max(out_left, out_right)', 'frame height outside', rule);
  for (const gap of ['left_foot', 'left_head', 'right_foot', 'right_head']) {
    book.work(`gap_${gap}`, 'p', `gap, ${gap.replace('_', ' at the ')}`, rule);
  }
  book.work('gap_head', 'p_h', 'gap above the head', rule);
  if (choices.sill) book.work('gap_sill', 'p_s', 'gap under the sill', rule);
}
