import { putHung } from '../hung-door/choices.ts';
import type { HungChoices } from '../hung-door/hung-choices.ts';
import { lapTerm } from '../hung-door/pair.ts';
import { pocketTerm } from '../hung-door/pockets.ts';
import { sizeHinges } from '../hung-door/sizes.ts';
import { gluedWith } from '../glue.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { putDensity } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { louvredDoorParameters } from './parameters.ts';
import type { LouvredDoorParameters } from './types.ts';
import type { JoinerySettings, Material } from '../piece-types.ts';

type Left = 'frame' | 'tenon' | 'slats' | 'slatWidth' | 'materials' | keyof HungChoices;

/** Every parameter of a louvred door with its default filled in. */
export interface LouvredChoices extends HungChoices, Required<Omit<LouvredDoorParameters, Left>> {
  readonly tenon?: number;
  readonly slatWidth?: number;
  readonly slats?: number;
  readonly stock: { readonly frame: Material; readonly slats: Material };
}

/** A louvred door with its sizes worked out. */
export interface LouvredLayout {
  readonly choices: LouvredChoices;
  readonly book: WorkingBook;
}

const rule = 'joinery B4';

/** Works out the sizes of a louvred door (joinery B4). */
export function workOutLouvred(choices: LouvredChoices, settings: JoinerySettings): LouvredLayout {
  const book = openWorkingBook();
  const layout = { choices, book };
  putHung(book, choices, louvredDoorParameters, settings);
  const from = { infos: louvredDoorParameters, values: choices, given: choices.given };
  putParameters(book, from, {
    stile: 'ws',
    topRail: 'wt',
    bottomRail: 'wb',
    midRails: 'nm',
    slatThickness: 'ts',
    housing: 'hd',
  });
  if (choices.midRails > 0) putParameters(book, from, { midRail: 'wm' });
  putParameters(book, from, { angleDegrees: 'phi' }, 'degrees');
  putParameters(book, from, { overlap: 'overlap_wanted' });
  book.put('gap', gluedGap(gluedWith(settings)), 'gap on each glued face', 'joinery C');
  sizeFrame(layout);
  sizeSlat(layout);
  spaceSlats(layout);
  return layout;
}

function sizeFrame({ choices, book }: LouvredLayout): void {
  const work = (name: string, formula: string, label: string) =>
    book.work(name, formula, label, 'joinery B3, C4');
  const loose = choices.joint === 'loose-tenon';
  work('Ls', 'Wd - 2*ws', 'clear width between the stiles');
  const parted = choices.midRails > 0;
  const clear = parted ? '(Hd - wt - wb - nm*wm)/(nm + 1)' : 'Hd - wt - wb';
  work('clear', clear, 'clear height between two rails');
  const label = loose ? 'loose tenon, depth of each pocket' : 'tenon, reach';
  if (choices.tenon !== undefined) book.putChoice('tenon', 'reach', choices.tenon, label, 'you');
  else work('reach', loose ? 'min(0.5*ws, 25)' : 'down(0.5*ws, 1)', label);
  if (loose) book.put('l', 0, 'rails, beyond each shoulder', rule);
  else work('l', 'reach', 'rails, beyond each shoulder');
  work('rail_L', 'Ls + 2*l', 'rails, length');
  work('tenon_t', 'max(6, min(12, 2*round(T/6)))', 'tenon, thickness');
  book.put('inner', 10, 'tenon, from the inner edge of the rail', 'joinery C3');
  for (const [name, width, words] of [
    ['top', 'wt', 'top rail'],
    ['bottom', 'wb', 'bottom rail'],
    ...(parted ? ([['mid', 'wm', 'mid rails']] as const) : []),
  ] as const) {
    const outer = loose || name === 'mid' ? 'inner' : `${width}/3`;
    work(`outer_${name}`, outer, `tenon of the ${words}, from its outer edge`);
    work(`tenon_b_${name}`, `${width} - outer_${name} - inner`, `tenon of the ${words}, width`);
    if (loose) work(`loose_W_${name}`, `tenon_b_${name} - 1`, `loose tenon of the ${words}, width`);
  }
  if (loose) work('tenon_L', '2*reach - 2', 'loose tenon, length');
}

/** Section of a slat: square-edged within the thickness of the door, or bevelled flush with its faces (joinery B4). */
function sizeSlat({ choices, book }: LouvredLayout): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  if (choices.section === 'flush') {
    work('b', 'T/sind(phi) + ts/tand(phi)', 'slat, width of the blank');
    work('depth', 'T', 'slat, from face to back');
    work('vert', 'T/tand(phi) + ts/sind(phi)', 'slat, upright extent');
    work('tilt', '90 - phi', 'saw tilt from square for the edges of the slats');
    return;
  }
  const from = { infos: louvredDoorParameters, values: choices, given: choices.given };
  putParameters(book, from, { setback: 'setback' });
  if (choices.slatWidth !== undefined)
    book.putChoice('slatWidth', 'b', choices.slatWidth, 'slat, width', 'you');
  else work('b', 'down((T - 2*setback - ts*cosd(phi))/sind(phi), 0.5)', 'slat, width');
  work('depth', 'b*sind(phi) + ts*cosd(phi)', 'slat, from face to back');
  work('vert', 'b*cosd(phi) + ts*sind(phi)', 'slat, upright extent');
}

function spaceSlats({ choices, book }: LouvredLayout): void {
  const work = (name: string, formula: string, label: string, unit: 'mm' | 'count' = 'mm') =>
    book.work(name, formula, label, rule, unit);
  work('p0', 'vert - overlap_wanted', 'pitch at most');
  work('room', 'clear - vert', 'from the first slat to the last');
  if (choices.slats !== undefined)
    book.putChoice('slats', 'nl', choices.slats, 'slats in a field', 'you', 'count');
  else work('nl', 'ceil(room/p0) + 1', 'slats in a field', 'count');
  work('p', 'room/(nl - 1)', 'pitch');
  work('overlap', 'vert - p', 'overlap');
  work('air', 'p*sind(phi) - ts', 'air gap, square to the slats');
  work('nl_all', 'nl*(nm + 1)', 'slats', 'count');
  work('slat_L', 'Ls + 2*hd - 0.5', 'slats, length');
}

/** Mass of the door, from its sizes and those of what is cut for its lock, and the hinges that hold it. */
export function weigh({ choices, book }: LouvredLayout): void {
  putDensity(book, 'rho', choices.stock.frame, 'the frame');
  putDensity(book, 'rho_slat', choices.stock.slats, 'the slats');
  const section = choices.section === 'flush' ? '(b - ts/tand(phi))*ts' : 'b*ts';
  book.work('section', section, 'section of a slat, mm²', rule, 'ratio');
  book.work(
    'frame_mass',
    `((Wd*Hd - (nm + 1)*Ls*clear)*T - 2*nl_all*section*hd)*rho*1e-6${lapTerm(choices, 'rho')}${pocketTerm(book, 'rho')}`,
    'mass of the frame',
    rule,
    'kg',
  );
  book.work('mass', 'frame_mass + nl_all*section*slat_L*rho_slat*1e-6', 'mass', rule, 'kg');
  sizeHinges(book, [choices.hingeLength, choices.given.has('hingeLength') ? 'you' : 'joinery B2']);
}
