import type { GlueKind } from '#core/materials';
import { putDensity } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { sizeMass } from './mass.ts';
import { curvedHeadParameters } from './parameters.ts';
import type { CurvedHeadParameters } from './types.ts';
import type { Material } from '../piece-types.ts';

type LeftOut = 'jambLength' | 'jointDepth';

/** Every parameter of a curved head with its default filled in; `measured` says where span and rise come from. */
export interface HeadChoices extends Required<Omit<CurvedHeadParameters, 'materials' | LeftOut>> {
  readonly jambLength?: number;
  readonly jointDepth?: number;
  readonly measured: string | null;
  readonly glue: GlueKind | undefined;
  readonly given: ReadonlySet<string>;
  readonly stock: { readonly head: Material; readonly mould: Material };
}

/** A curved head with its sizes worked out. */
export interface HeadLayout {
  readonly choices: HeadChoices;
  readonly book: WorkingBook;
  /** Of a sawn head: boards it is sawn from. */
  readonly segments: 1 | 2;
}

const rule = 'joinery B17';
const cp = 'common practice, no source';

/** Widest angle of one sawn segment before its ends are short grain, degrees (joinery B17). */
export const widestSegment = 45;

/** Works out the sizes of a curved head (joinery B17). */
export function workOutHead(choices: HeadChoices): HeadLayout {
  const book = openWorkingBook();
  const work = (name: string, formula: string, label: string, unit: 'mm' | 'degrees' = 'mm') =>
    book.work(name, formula, label, rule, unit);
  const from = { infos: curvedHeadParameters, values: choices, given: choices.given };
  for (const [key, name, label] of [
    ['span', 'c', 'span'],
    ['rise', 'f', 'rise'],
  ] as const) {
    if (choices.measured === null || choices.given.has(key)) putParameters(book, from, { [key]: name });
    else book.put(name, choices[key], label, choices.measured);
  }
  putParameters(book, from, { depth: 'depth' });
  work('R', 'c**2/(8*f) + f/2', 'radius of the inner face');
  work('a', 'asind(min(1, c/(2*R)))', 'half the angle of the arc', 'degrees');
  work('S', '2*R*radians(a)', 'inner face, length along the curve');
  putDensity(book, 'rho', choices.stock.head, 'the head');
  sizeEnds(choices, book);
  if (choices.method === 'laminated') {
    sizeLaminate(choices, book);
    sizeJambs(choices, book, 'T');
    sizeMass(choices.springing, book, 'T');
    return { choices, book, segments: 1 };
  }
  const two = choices.segments === 'auto' ? 2 * book.value('a') > widestSegment : choices.segments === 'two';
  sizeSawn(choices, book, two ? 2 : 1);
  sizeJambs(choices, book, 'w');
  sizeMass(choices.springing, book, 'w');
  return { choices, book, segments: two ? 2 : 1 };
}

/** Whether it runs on beyond the springings into the jambs. */
const runsOn = ({ springing }: HeadChoices): boolean => springing !== 'butt';

/** How far the head runs on into the jambs beyond the springings. */
function sizeEnds(choices: HeadChoices, book: WorkingBook): void {
  const jambs = choices.jambLength !== undefined;
  if (!runsOn(choices) && !jambs) return;
  putParameters(
    book,
    { infos: curvedHeadParameters, values: choices, given: choices.given },
    { jambThickness: 'tj' },
  );
  if (!runsOn(choices)) return;
  const label = 'head, beyond each springing';
  const { springing, jointDepth } = choices;
  if (springing === 'halved') book.work('e_s', 'tj', label, 'joinery B17, C6');
  else if (jointDepth !== undefined) book.putChoice('jointDepth', 'e_s', jointDepth, label, 'you');
  else if (springing === 'housed') book.put('e_s', 7, label, 'joinery B17, C7');
  else book.work('e_s', 'tj/2', label, 'joinery B17, C8');
  book.work('a_i', 'asind(min(1, (c/2 + e_s)/R))', 'inner face, half its angle to the end', rule, 'degrees');
}

/** The jambs, of the thickness of head called `thick`, from their foot to their top. */
function sizeJambs(choices: HeadChoices, book: WorkingBook, thick: 'T' | 'w'): void {
  if (choices.jambLength === undefined) return;
  const { springing } = choices;
  book.putChoice(
    'jambLength',
    'jamb_below',
    choices.jambLength,
    'jambs, from the springings to the foot',
    'you',
  );
  const over = (out: string) => `(R + ${thick})*cosd(asind((c/2 + ${out})/(R + ${thick}))) - R + f`;
  if (springing === 'housed') {
    putParameters(
      book,
      { infos: curvedHeadParameters, values: choices, given: choices.given },
      { horn: 'horn' },
    );
  }
  const top = {
    butt: 'tj*cotd(a)',
    housed: `${over('0')} + horn`,
    rebated: over('e_s'),
    halved: over('0'),
  }[springing];
  book.work('jamb_over', top, 'jambs, over the springings', rule);
  book.work('jamb_L', 'jamb_below + jamb_over', 'jambs, length', rule);
  if (springing !== 'halved') return;
  book.work(
    'top_fall',
    `atand((jamb_over - (${over('tj')}))/tj)`,
    'top of the jambs, its fall outwards',
    rule,
    'degrees',
  );
}

function sizeLaminate(choices: HeadChoices, book: WorkingBook): void {
  const work = (
    name: string,
    formula: string,
    label: string,
    unit: 'mm' | 'degrees' | 'count' | 'percent' = 'mm',
  ) => book.work(name, formula, label, rule, unit);
  const from = { infos: curvedHeadParameters, values: choices, given: choices.given };
  putParameters(book, from, { plies: 'n', plyThickness: 't' });
  work('t_max', 'R/125', 'ply, thickness at most');
  work('strain', '100*t/(2*R)', 'stretch of a ply at its faces', 'percent');
  work('T', 'n*t', 'head, thickness along the radius');
  work('S_out', '2*(R + T)*radians(a)', 'outer face, length along the curve');
  const longest = runsOn(choices) ? ', 2*(R + T)*radians(a_i) + 20' : '';
  work('ply_L', `max(S + 50, S_out + 20${longest})`, 'plies as cut, length');
  work('ply_W', 'depth + 8', 'plies as cut, width');
  for (let ply = 1; ply <= choices.plies; ply++) {
    const inner = `(R + ${ply - 1}*t)`;
    const [width, end] = runsOn(choices)
      ? ['c + 2*e_s', `asind(min(1, (c/2 + e_s)/${inner}))`]
      : [`2*(R + ${ply}*t)*sind(a)`, 'a'];
    work(`ply${ply}_W`, width, `ply ${ply} bent, from end to end`);
    work(`ply${ply}_H`, `(R + ${ply}*t) - ${inner}*cosd(${end})`, `ply ${ply} bent, height`);
  }
  work('Rm', 'R*(1 - 1/n**2)', 'mould, radius: tighter, as the head springs back');
  work('mould_rise', 'Rm*(1 - cosd(degrees(S/(2*Rm))))', 'mould, rise under the finished length');
  work('mould_rise_rule', 'f/(1 - 1/n**2)', 'mould, rise by the rule of thumb, to compare');
  work('mould_chord', '2*Rm*sind(degrees(S/(2*Rm)))', 'mould, chord under the finished length');
  sizeMould(choices, book);
}

/** The mould as a thing to make: layers of sheet, wider than the plies, with room below for clamps. */
function sizeMould({ stock }: HeadChoices, book: WorkingBook): void {
  const thick = stock.mould.kind === 'sheet' ? stock.mould.thickness : 18;
  book.put(
    'mould_T',
    thick,
    'mould, thickness of a layer',
    stock.mould.kind === 'sheet' ? `measured: ${stock.mould.name}` : cp,
  );
  book.work('layers', 'ceil(ply_W/mould_T)', 'mould, layers', cp, 'count');
  book.work('mould_a', 'min(degrees(ply_L/(2*Rm)), 85)', 'mould, half the angle of its curve', cp, 'degrees');
  book.put('foot', 80, 'mould, from the ends of its curve to its foot', cp);
  book.work('mould_L', '2*Rm*sind(mould_a)', 'mould, length', cp);
  book.work('mould_W', 'Rm*(1 - cosd(mould_a)) + foot', 'mould, height', cp);
}

function sizeSawn(choices: HeadChoices, book: WorkingBook, segments: 1 | 2): void {
  const work = (name: string, formula: string, label: string, unit: 'mm' | 'degrees' = 'mm') =>
    book.work(name, formula, label, rule, unit);
  const from = { infos: curvedHeadParameters, values: choices, given: choices.given };
  putParameters(book, from, { faceWidth: 'w' });
  const whole = runsOn(choices) ? 'asind(min(1, (c/2 + e_s)/(R + w)))' : 'a';
  work('h', segments === 2 ? `${whole}/2` : whole, 'half the angle of one segment', 'degrees');
  if (runsOn(choices)) {
    work(
      'h_i',
      segments === 2 ? 'a_i - h' : 'a_i',
      'its inner face, from its middle to its plumb end',
      'degrees',
    );
    work('seg_L', 'max((R + w)*sind(h), R*sind(h_i)) + (R + w)*sind(h)', 'segment, from end to end');
    work('seg_W', '(R + w) - R*cosd(max(h, h_i))', 'segment, height');
  } else {
    work('seg_L', '2*(R + w)*sind(h)', 'segment, from end to end');
    work('seg_W', '(R + w) - R*cosd(h)', 'segment, height');
  }
  work('seg_rise', 'R*(1 - cosd(h))', 'segment, rise of its inner face');
  work('board_W', 'seg_rise + w + 10', 'board to saw a segment from, width');
  if (segments === 1) return;
  const joint = (name: string, formula: string, label: string) =>
    book.work(name, formula, label, 'joinery B17, C3');
  joint('tenon_t', 'max(6, min(12, 2*round(depth/6)))', 'loose tenon at the crown, thickness');
  joint('pocket', 'min(25, 0.3*seg_L)', 'pocket for it in each segment, depth');
  joint('tenon_b', 'w - 2*10', 'pocket for it, width');
  joint('tenon_W', 'tenon_b - 1', 'loose tenon, width');
  joint('tenon_L', '2*pocket - 2', 'loose tenon, length');
}
