import { markSize } from '#core/units';
import type { DrawerChoices } from './choices.ts';
import { fingersProud } from '../joints/fingers.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';

/** A drawer with its sizes worked out. */
export interface DrawerLayout {
  readonly choices: DrawerChoices;
  readonly book: WorkingBook;
  readonly notched: boolean;
}

type Put = (key: keyof DrawerChoices, name: string, label: string) => void;
type Work = (name: string, formula: string, label: string, unit?: 'mm' | 'degrees') => number;

/** Works out the sizes of a drawer (joinery B5). */
export function workOutDrawer(choices: DrawerChoices): DrawerLayout {
  const book = openWorkingBook();
  const layout = { choices, book, notched: choices.runner === 'bottom-notch' };
  const put: Put = (key, name, label) => {
    const own = choices.given.has(key) || choices.cells.length === 0 || !fromCell.has(key);
    book.putChoice(own ? key : 'cabinetFront', name, choices[key] as number, label, originOf(choices, key));
  };
  const work: Work = (name, formula, label, unit) => book.work(name, formula, label, 'joinery B5', unit);
  putIn(layout, put);
  sizeBox(layout, put, work);
  sizeBottom(layout, put, work);
  sizeBoards(layout, work);
  sizeFront(layout, put, work);
  if (layout.notched) sizeLift(layout, work);
  if (choices.runner !== 'metal') sizeRunners(layout, work);
  return layout;
}

const fromCell: ReadonlySet<string> = new Set([
  'openingWidth',
  'openingHeight',
  'railDepth',
  'notch',
  'setback',
]);

/** Where a number put in comes from: the user, the front, the sheet measured, or the rule. */
function originOf({ given, stock, cells }: DrawerChoices, key: keyof DrawerChoices): string {
  if (given.has(key)) return 'you';
  const front = cells[0]?.built;
  if (front && fromCell.has(key)) return `front ${front.letter}, ${front.name}`;
  const material =
    key === 'bottomThickness'
      ? stock.bottom
      : key === 'falseFrontThickness'
        ? stock.front
        : key === 'sideThickness' || key === 'frontThickness' || key === 'backThickness'
          ? stock.box
          : null;
  return material?.kind === 'sheet' ? `measured: ${material.name}` : 'joinery B5';
}

function putIn({ notched, choices }: DrawerLayout, put: Put): void {
  put('openingWidth', 'Wo', 'opening width, smallest');
  put('openingHeight', 'Ho', 'opening height, smallest');
  put('clearDepth', 'Do', 'clear depth, smallest');
  put('sideThickness', 'ts', 'thickness of the sides');
  put('frontThickness', 'tf', 'thickness of the box front');
  put('backThickness', 'tback', 'thickness of the back');
  put('bottomThickness', 'tbt', 'thickness of the bottom');
  put('grooveDepth', 'gdr', 'depth of the groove for the bottom');
  if (choices.runner !== 'metal' && choices.runner !== 'side-rail') {
    put('railDepth', 'tr', 'rail under the drawer, front to back');
  }
  if (notched) put('notch', 'n', 'lift of the notch');
}

function sizeBox({ choices, book, notched }: DrawerLayout, put: Put, work: Work): void {
  const solid = choices.stock.box.kind === 'solid';
  const metal = choices.runner === 'metal';
  const clear = metal ? 13.05 : choices.runner === 'side-rail' ? 1.5 : solid ? 2 : 1.5;
  const why = metal ? 'room for a 12.7 runner' : 'clearance of the box';
  book.put(
    'c_side',
    clear,
    `${why}, each side`,
    metal ? 'joinery B5, 12.9 to 13.2 by the runner makers' : 'joinery B5',
  );
  work('Wb', 'Wo - 2*c_side', 'box width outside');
  if (notched) work('h', 'Ho - 3', 'box height, lower edge level with the rail while it slides');
  else {
    book.put('c_top', 5, 'clearance above the box', 'joinery B5');
    book.put('c_bot', 2, 'clearance under the box', 'joinery B5');
    work('h', 'Ho - c_top - c_bot', 'box height');
  }
  if (choices.front === 'inset')
    book.putChoice(
      'falseFrontThickness',
      'setback',
      choices.falseFrontThickness,
      'false front inside the opening',
      'joinery B5',
    );
  else put('setback', 'setback', 'box set back behind a front in the opening');
  if (choices.runnerLength === null)
    work('Lr', 'max(50, down(Do - setback - 5, 50))', 'runner length, a multiple of 50');
  else book.putChoice('runnerLength', 'Lr', choices.runnerLength, 'runner length', 'you');
  work('Lb', 'min(Do - setback - 10, Lr)', 'box length outside');
  work('Wi', 'Wb - 2*ts', 'box width inside');
  const behind = choices.corner === 'housed-back' ? 15 : 0;
  book.put('behind', behind, 'side beyond the back', 'joinery G21, C7');
  work('Li', 'Lb - tf - tback - behind', 'box length inside');
}

function sizeBottom({ choices, book, notched }: DrawerLayout, put: Put, work: Work): void {
  if (choices.grooveUp !== null) put('grooveUp', 'yg', 'groove above the lower edge');
  else if (notched) work('yg', 'max(12, n + 1 + 8)', 'groove above the lower edge, clear of the notch');
  else book.put('yg', 12, 'groove above the lower edge', 'joinery B5');
  book.work('groove_W', 'tbt + 0.2', 'groove width', 'joinery C9');
  work('bottom_W', 'Wi + 2*gdr - 1', 'bottom, across the drawer');
  const captured = choices.bottomStyle === 'captured';
  work(
    'bottom_D',
    captured ? 'Li + 2*gdr - 1' : 'Li + gdr + tback - 1',
    captured ? 'bottom, front to back, in grooves' : 'bottom, front to back, under the back',
  );
}

function sizeBoards({ choices, book, notched }: DrawerLayout, work: Work): void {
  const { corner } = choices;
  if (corner === 'lapped-dovetail') {
    book.work('lap', 'min(5, 0.3*tf)', 'lap left in front of the tails', 'joinery C13');
    work('side_L', 'Lb - lap', 'side, length');
  } else if (corner === 'rebate' || corner === 'housed-back') {
    book.work('lip_f', 'max(5, 0.4*tf)', 'lip left on the front', 'joinery C8');
    if (corner === 'rebate') book.work('lip_b', 'max(5, 0.4*tback)', 'lip left on the back', 'joinery C8');
    work('side_L', corner === 'rebate' ? 'Lb - lip_f - lip_b' : 'Lb - lip_f', 'side, length');
  } else work('side_L', 'Lb', 'side, length');
  if (corner === 'housed-back')
    book.work('housing', 'min(max(5, ts/3), ts/2)', 'housing in the side', 'joinery C7');
  if (corner === 'lock-rebate') {
    book.work('tongue', 'tf / 3', 'tongue thickness', 'joinery C8');
    book.work('tongue_b', 'tback / 3', 'tongue thickness at the back', 'joinery C8');
    book.work('trench', 'ts / 2', 'trench in the side', 'joinery C8');
  }
  const between = { 'lock-rebate': 'Wb - 2*ts + 2*trench', butt: 'Wb - 2*ts' } as const;
  const front = corner === 'lock-rebate' || corner === 'butt' ? between[corner] : 'Wb';
  work('front_L', front, 'box front, length');
  work('back_L', corner === 'housed-back' ? 'Wb - 2*ts + 2*housing' : front, 'back, length');
  if (corner === 'box') {
    for (const name of ['side', 'front', 'back'] as const) {
      book.work(
        `${name}_L_cut`,
        `${name}_L + ${2 * fingersProud}`,
        `${name}, length as cut: fingers ${markSize(fingersProud)} proud`,
        'joinery C11',
      );
    }
  }
  work('boxfront_h', notched ? 'h - (n + 1)' : 'h', 'box front, height');
  work('back_h', choices.bottomStyle === 'captured' ? 'h' : 'h - yg - tbt', 'back, height');
}

function sizeFront({ choices }: DrawerLayout, put: Put, work: Work): void {
  if (choices.front === 'none') return;
  put('falseFrontThickness', 'tff', 'thickness of the false front');
  const overlay = choices.front === 'overlay';
  if (overlay) put('overlay', 'o', 'overlay each side');
  else put('insetGap', 'g', 'gap round the front');
  work('false_W', overlay ? 'Wo + 2*o' : 'Wo - 2*g', 'false front, width');
  work('false_H', overlay ? 'Ho + 2*o' : 'Ho - 2*g', 'false front, height');
}

const usualStop = 100; // of the drawer still behind the rail (joinery B5, calculated example)

function sizeLift({ book }: DrawerLayout, work: Work): void {
  work('notch_len', 'max(tr - setback, 0) + 3', 'notch, along the side');
  work('notch_depth', 'n + 1', 'notch, up from the lower edge');
  work('front_rise', 'n*Lb/(Lb - notch_len)', 'how far the front rises when lifted over the rail');
  work('clear_above_needed', 'n + 2', 'clear height needed above the front');
  book.put('stop_d', stopDistance(book), 'drawer still behind the rail when the stop holds it', 'joinery B5');
  work('tilt', 'asind(n / stop_d)', 'tilt of the drawer at the stop', 'degrees');
  work('room_needed', 'h/cosd(tilt) + tr*tand(tilt)', 'height needed at the stop');
}

/** The least of 100, 105, ... at which the tilted drawer still clears the rail above; the whole length when none does. */
function stopDistance(book: WorkingBook): number {
  const v = book.value;
  const [lift, height, rail, room, length] = [v('n'), v('h'), v('tr'), v('Ho'), v('Lb')];
  for (let d = Math.max(usualStop, 5 * Math.ceil((lift + 1) / 5)); d < length; d += 5) {
    const tilt = Math.asin(lift / d);
    if (height / Math.cos(tilt) + rail * Math.tan(tilt) <= room) return d;
  }
  return Math.max(length, lift + 1);
}

function sizeRunners({ choices, book }: DrawerLayout, work: Work): void {
  if (choices.runner === 'side-rail') {
    book.put('rail_H', 12, 'height of the side rail', 'common practice, no source');
    work('rail_groove_H', 'rail_H + 1', 'groove for the rail, height');
    work('rail_groove_D', 'min(ts/2, ts - 5)', 'groove for the rail, depth');
    work('rail_T', 'rail_groove_D + c_side - 0.5', 'side rail, thickness');
    work('runner_L', 'Do - setback - tf - 10 - 10', 'side rail, length, stopped behind the box front');
    work(
      'rail_up',
      'max(h/2 - rail_groove_H/2, yg + groove_W + 4)',
      'groove for the rail above the lower edge',
    );
    return;
  }
  book.put('runner_T', 20, 'runner, height', 'common practice, no source');
  book.put('guide_T', 12, 'guide, thickness', 'common practice, no source');
  work('runner_W', 'guide_T + c_side + ts + 4', 'runner, width: guide, clearance, side and 4 more');
  work('runner_L', 'Do - tr - 10', 'runner and guide, length behind the rail');
  work(
    'kicker_L',
    'Do - 60 - 10',
    `kicker, length: ${markSize(60)} short of the front so that the drawer lifts out`,
  );
}
