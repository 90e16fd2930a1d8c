import { markSize } from '#core/units';
import { putHung } from '../hung-door/choices.ts';
import type { HungChoices } from '../hung-door/hung-choices.ts';
import { lapTerm, leafWidth } from '../hung-door/pair.ts';
import { pocketTerm } from '../hung-door/pockets.ts';
import { sizeHinges } from '../hung-door/sizes.ts';
import { gluedWith } from '../glue.ts';
import { gluedGap } from '../joints/worked-joint.ts';
import { putDensity, putMovement } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { framedDoorParameters } from './parameters.ts';
import type { FramedDoorJoint, FramedDoorParameters } from './types.ts';
import type { JoinerySettings, Material } from '../piece-types.ts';

type Own = 'stile' | 'topRail' | 'bottomRail' | 'midRails' | 'midRail' | 'midStile' | 'grooveDepth';
type OfPanel = 'panelThickness' | 'panelEdge' | 'panelMargin' | 'panelGlued' | 'panelMatch';

/** Every parameter of a framed door with its default filled in, and what follows from the choices alone. */
export interface FramedChoices extends HungChoices, Required<Pick<FramedDoorParameters, Own | OfPanel>> {
  readonly joint: FramedDoorJoint;
  readonly tenon?: number;
  readonly panelGap?: number;
  readonly stock: { readonly frame: Material; readonly panel: Material };
}

/** A framed door with its sizes worked out. */
export interface FramedLayout {
  readonly choices: FramedChoices;
  readonly book: WorkingBook;
  /** Mid rails, and mid stiles between two rails (0 or 1). */
  readonly rails: number;
  readonly stiles: number;
}

const rule = 'joinery B3';

/** Joints whose stile groove would show at the ends of the door and is stopped. */
export const stopsGroove = (joint: FramedDoorJoint) =>
  joint === 'stub-tenon' || joint === 'half-lap' || isPlugged(joint);

/** Joints of rails cut to their shoulders, with loose tenons or dowels across. */
export const isPlugged = (joint: FramedDoorJoint) => joint === 'loose-tenon' || joint === 'dowel';

/** Joints of members that both run to the corner. */
export const isLapped = (joint: FramedDoorJoint) => joint === 'bridle' || joint === 'half-lap';

/** Works out the sizes of a framed door (joinery B3). */
export function workOutFramed(choices: FramedChoices, settings: JoinerySettings): FramedLayout {
  const book = openWorkingBook();
  const wide = choices.midStile === 'auto' && leafWidth(choices) > 600;
  const layout = {
    choices,
    book,
    rails: choices.midRails,
    stiles: wide || choices.midStile === 'one' ? 1 : 0,
  };
  const from = { infos: framedDoorParameters, values: choices, given: choices.given };
  putHung(book, choices, framedDoorParameters, settings);
  putParameters(book, from, {
    stile: 'ws',
    topRail: 'wt',
    bottomRail: 'wb',
    grooveDepth: 'gd',
    midRails: 'nm',
  });
  if (layout.rails + layout.stiles > 0) putParameters(book, from, { midRail: 'wm' });
  book.put('gap', gluedGap(gluedWith(settings)), 'gap on each glued face', 'joinery C');
  sizeEdge(layout);
  sizeFrame(layout);
  sizePanel(layout, settings);
  sizeTenons(layout);
  return layout;
}

/** Panel and groove in the thickness. */
function sizeEdge({ choices, book }: FramedLayout): void {
  const { panel } = choices.stock;
  const from = { infos: framedDoorParameters, values: choices, given: choices.given };
  if (panel.kind === 'sheet') {
    book.put('tp', panel.thickness, 'panel, thickness', `measured: ${panel.name}`);
    book.work('te', 'tp', 'panel, thickness in the groove', rule);
  } else {
    putParameters(book, from, { panelThickness: 'tp', panelEdge: 'edge', panelMargin: 'margin_wanted' });
    book.work('te', 'min(edge, tp)', 'panel, thickness in the groove', rule);
    book.work('raise', 'tp - te', 'panel, raised by', rule);
  }
  book.work('gw', 'te + 0.2', 'groove, width', 'joinery B3, C9');
  book.work('gz', '(T - gw)/2', 'groove, from the face', rule);
  book.work('panel_z', '(T + te)/2 - tp', 'face of the panel behind the face of the frame', rule);
}

function sizeFrame(layout: FramedLayout): void {
  const { choices, book, rails, stiles } = layout;
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('Ls', 'Wd - 2*ws', 'rails, between their shoulders');
  sizeReach(layout);
  work('rail_L', 'Ls + 2*l', 'top and bottom rail, length');
  work('rail_rough', 'up(rail_L + 25, 1)', 'blank of the top and bottom rail, length');
  work('stile_rough', 'up(Hd + 2*20, 1)', 'blank of the stiles with horns, length');
  work('hs', rails > 0 ? '(Hd - wt - wb - nm*wm)/(nm + 1)' : 'Hd - wt - wb', 'sight of a panel, height');
  work('wc', stiles > 0 ? '(Ls - wm)/2' : 'Ls', 'sight of a panel, width');
  if (rails > 0) work('mid_rail_L', 'Ls + 2*lr', 'mid rails, length');
  if (stiles > 0) work('mid_stile_L', 'hs + 2*lm', 'mid stiles, length');
  if (choices.joint === 'through-tenon')
    work('rail_cut', 'rail_L + 4', `top and bottom rail as sawn, ${markSize(2)} proud each end`);
}

/** How far rails and mid stiles reach beyond their shoulders. */
function sizeReach({ choices, book, rails, stiles }: FramedLayout): void {
  const { joint, tenon } = choices;
  const tongued = joint === 'groove-tongue' || joint === 'scribed-moulding';
  const loose = isPlugged(joint);
  if (!tongued) {
    const label = reachWords(joint);
    if (tenon !== undefined) book.putChoice('tenon', 'reach', tenon, label, 'you');
    else if (joint === 'dowel')
      book.work('reach', 'min(2*max(6, min(12, 2*ceil(T/6))), 2/3*ws)', label, 'joinery C2');
    else if (loose) book.work('reach', 'min(0.6*ws, 25)', label, 'joinery C3');
    else book.work('reach', 'down(0.6*ws, 5)', label, rule);
  }
  const reach = (name: string, formula: string, label: string) =>
    loose ? book.put(name, 0, label, rule) : book.work(name, tongued ? 'gd' : formula, label, rule);
  const through = joint === 'through-tenon';
  reach('l', through || isLapped(joint) ? 'ws' : 'reach', 'top and bottom rail, beyond each shoulder');
  if (rails > 0) reach('lr', through ? 'ws' : 'reach', 'mid rails, beyond each shoulder');
  if (stiles === 0) return;
  const narrowest = rails > 0 ? 'min(wt, wb, wm)' : 'min(wt, wb)';
  if (!tongued)
    book.work('reach_mid', `min(reach, down(0.4*${narrowest}, 1))`, 'mid stile into the rails', rule);
  reach('lm', 'reach_mid', 'mid stiles, beyond each shoulder');
}

function reachWords(joint: FramedDoorJoint): string {
  if (joint === 'dowel') return 'dowels, depth in each part';
  return joint === 'loose-tenon' ? 'loose tenon, depth of each pocket' : 'tenon, reach';
}

/** Panel with room to swell (joinery B3, D1). */
function sizePanel({ choices, book }: FramedLayout, settings: JoinerySettings): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  const { panel } = choices.stock;
  book.put('mc_now', settings.moistureNow, 'moisture in the workshop', 'setting', 'percent');
  book.put('mc_low', settings.moistureLow, 'moisture aboard at the least', 'setting', 'percent');
  book.put('mc_high', settings.moistureHigh, 'moisture aboard at the most', 'setting', 'percent');
  putMovement(book, 'C', panel, 'the panel');
  work('Wp0', 'wc + 2*gd', 'from bottom to bottom of the grooves');
  work('swell', 'Wp0*C*(mc_high - mc_now)', 'panel, swells by');
  work('shrink', 'Wp0*C*(mc_now - mc_low)', 'panel, shrinks by');
  const gap = 'room to swell at each side';
  if (choices.panelGap !== undefined) book.putChoice('panelGap', 'gp', choices.panelGap, gap, 'you');
  else if (panel.kind === 'sheet') book.put('gp', 1, gap, rule);
  else work('gp', 'up((swell + 1)/2, 0.5)', gap);
  work('engage_dry', 'gd - gp - shrink/2', 'panel in the groove when dry');
  work('Wp', 'Wp0 - 2*gp', 'panel, width');
  work('Hp', 'hs + 2*gd - 2*1', 'panel, height');
  if (panel.kind === 'solid') {
    work('margin', 'min(margin_wanted, Wp/3, Hp/3)', 'panel, reduced this far in from its edge');
    work('reduced', '(Wp*Hp - (Wp - 2*margin)*(Hp - 2*margin))*raise', 'taken off the face of a panel, mm³');
  } else book.put('reduced', 0, 'taken off the face of a panel, mm³', rule);
}

/** Tenons in width and thickness (joinery C4): a tool size no thicker than the groove, so that the haunch enters it. */
function sizeTenons({ choices, book, rails, stiles }: FramedLayout): void {
  const { joint } = choices;
  const work = (name: string, formula: string, label: string) =>
    book.work(name, formula, label, 'joinery B3, C4');
  if (joint === 'groove-tongue' || joint === 'scribed-moulding') {
    work('tenon_t', 'gw - 0.2', 'tongue, thickness');
    if (joint === 'scribed-moulding') work('step', 'down(gz/2, 0.5)', 'moulding, depth from the face');
    return;
  }
  if (joint === 'dowel') {
    sizeDowels(book, rails, stiles);
    return;
  }
  work('tenon_t', 'max(6, min(12, 2*floor(gw/2)))', 'tenon, thickness');
  if (isLapped(joint)) {
    if (rails > 0) work('tenon_b_mid', 'wm - 2*gd', 'tenon of the mid rails, width');
  } else if (joint === 'loose-tenon') {
    work('tenon_L', '2*reach - 2', 'loose tenon, length');
    work('inner', 'max(gd, 10)', 'loose tenon, from the inner edge');
    for (const [name, width, label] of corners(rails)) {
      work(
        `tenon_b_${name}`,
        `${width} - ${name === 'mid' ? 'inner' : '10'} - inner`,
        `pocket in the ${label}, width`,
      );
      work(`loose_W_${name}`, `tenon_b_${name} - 1`, `loose tenon of the ${label}, width`);
    }
  } else {
    work('hh', 'max(gd, wt/3)', 'haunch of the top rail, width');
    work('hh_bottom', 'max(gd, wb/3)', 'haunch of the bottom rail, width');
    for (const [name, width, label] of corners(rails)) {
      const outer = name === 'mid' ? 'gd' : name === 'top' ? 'hh' : 'hh_bottom';
      work(`tenon_b_${name}`, `${width} - ${outer} - gd`, `tenon of the ${label}, width`);
    }
  }
  if (stiles === 0) return;
  work(
    'tenon_b_stile',
    joint === 'loose-tenon' ? 'wm - 2*inner' : 'wm - 2*gd',
    'tenon of the mid stiles, width',
  );
  if (joint !== 'loose-tenon') return;
  work('loose_W_stile', 'tenon_b_stile - 1', 'loose tenon of the mid stiles, width');
  work('tenon_L_stile', '2*reach_mid - 2', 'loose tenon of the mid stiles, length');
}

/** Dowels: a tool size of a third of the thickness or more, clear of the edge and of the groove (joinery C2). */
function sizeDowels(book: WorkingBook, rails: number, stiles: number): void {
  const work = (name: string, formula: string, label: string) =>
    book.work(name, formula, label, 'joinery C2');
  work('tenon_t', 'max(6, min(12, 2*ceil(T/6)))', 'dowels, diameter');
  work('dowel_out', '1.5*tenon_t', 'first dowel, from the outer edge');
  work('dowel_in', 'gd + tenon_t', 'first dowel, from the inner edge');
  for (const [name, width, label] of corners(rails)) {
    const outer = name === 'mid' ? 'dowel_in' : 'dowel_out';
    work(`tenon_b_${name}`, `${width} - ${outer} - dowel_in`, `dowels of the ${label}, first to last`);
  }
  if (stiles > 0) work('tenon_b_stile', 'wm - 2*dowel_in', 'dowels of the mid stiles, first to last');
}

const corners = (rails: number) => [
  ['top', 'wt', 'top rail'] as const,
  ['bottom', 'wb', 'bottom rail'] as const,
  ...(rails > 0 ? [['mid', 'wm', 'mid rails'] as const] : []),
];

/** Mass of the door, from its sizes and those of what is cut for its lock, and the hinges that hold it. */
export function weigh({ choices, book, stiles }: FramedLayout): void {
  putDensity(book, 'rho', choices.stock.frame, 'the frame');
  putDensity(book, 'rho_panel', choices.stock.panel, 'the panel');
  book.work('panels', stiles > 0 ? '2*(nm + 1)' : 'nm + 1', 'panels', rule, 'count');
  book.work(
    'grooves',
    'panels*((wc + 2*gd)*(hs + 2*gd) - wc*hs)*gw',
    'taken out by the grooves, mm³',
    rule,
    'ratio',
  );
  const lap = lapTerm(choices, 'rho') + pocketTerm(book, 'rho');
  const frameMass = `((Wd*Hd - panels*wc*hs)*T - grooves)*rho*1e-6${lap}`;
  book.work('frame_mass', frameMass, 'mass of the frame', rule, 'kg');
  book.work('mass', 'frame_mass + panels*(Wp*Hp*tp - reduced)*rho_panel*1e-6', 'mass', rule, 'kg');
  const origin = choices.given.has('hingeLength') ? 'you' : 'joinery B2';
  sizeHinges(book, [choices.hingeLength, origin]);
}
