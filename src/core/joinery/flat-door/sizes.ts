import { markSize } from '#core/units';
import type { DoorChoices } from './choices.ts';
import { doorOfCell } from '../front-cell.ts';
import { hasBevel } from '../hung-door/choices.ts';
import { sizeLock, type LockObstacle, type LockSite } from '../hung-door/lock.ts';
import { isPaired, lapTerm, leafWidth, sizeBolts, sizeLap, sizeLeaf, widthName } from '../hung-door/pair.ts';
import { pocketTerm } from '../hung-door/pockets.ts';
import { flatDoorParameters } from './parameters.ts';
import { sizeHinges, sizeSwing } from '../hung-door/sizes.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import type { JoinerySettings } from '../piece-types.ts';

/** A flat door with its sizes worked out. */
export interface DoorLayout {
  readonly choices: DoorChoices;
  readonly book: WorkingBook;
  readonly battens: boolean;
}

type NumberKey = {
  [Key in keyof DoorChoices]-?: DoorChoices[Key] extends number ? Key : never;
}[keyof DoorChoices];
type Unit = 'mm' | 'degrees' | 'count' | 'ratio' | 'kg';

const rule = 'joinery B2';
const cp = 'common practice, no source';
const usualDensity = 0.55; // plywood, g/cm³ (joinery B2)

/** Largest door of a single sheet that stays flat without battens, m² (joinery B2.4). */
export const largestPlain = 0.9;

/** Works out the sizes of a flat door (joinery B2). */
export function workOutDoor(choices: DoorChoices, settings: JoinerySettings): DoorLayout {
  const book = openWorkingBook();
  const area = (leafWidth(choices) * choices.height) / 1e6;
  const wanted = choices.battens === 'auto' ? area > largestPlain : choices.battens === 'always';
  const layout = { choices, book, battens: wanted };
  putIn(layout, settings);
  sizeLippings(layout);
  if (choices.blocks) sizeBlocks(layout);
  if (choices.slots > 0) sizeSlots(layout);
  sizeSwing(book);
  if (wanted) sizeBattens(layout);
  sizeBolts(book, choices);
  sizeLock(book, choices, { infos: flatDoorParameters, site: lockSite(layout) });
  const cutOut = `${lapTerm(choices, 'rho')}${pocketTerm(book, 'rho')}`;
  book.work('mass', `Wd*Hd*T*rho*1e-6${cutOut}`, 'mass', rule, 'kg');
  sizeHinges(book, [choices.hingeLength, originOf(choices, 'hingeLength')]);
  return layout;
}

/** Where a lock can go: anywhere along the sheet but in corner blocks, vent slots and battens. */
export function lockSite({ book, choices, battens }: DoorLayout): LockSite {
  const v = book.value;
  const ends = (what: string, size: number, from: number): readonly LockObstacle[] => [
    { what, up: [0, size], from },
    { what, up: [v('Hd') - size, v('Hd')], from },
  ];
  const slots = (): readonly LockObstacle[] =>
    [v('slot_edge'), v('Hd') - v('slot_edge') - v('band_H')].map((foot) => ({
      what: 'the vent slots',
      up: [foot, foot + v('band_H')],
      from: v('band_side'),
    }));
  const ledges = (): readonly LockObstacle[] =>
    [v('batten_low'), v('batten_high')].map((middle) => ({
      what: 'a batten',
      up: [middle - v('batten_W') / 2, middle + v('batten_W') / 2],
      from: v('batten_in'),
    }));
  return {
    stile: null,
    obstacles: [
      ...(choices.blocks ? ends('a corner block', v('block'), 0) : []),
      ...(choices.slots > 0 ? slots() : []),
      ...(battens ? ledges() : []),
    ],
  };
}

function putIn({ choices, book }: DoorLayout, settings: JoinerySettings): void {
  const put = (key: NumberKey, name: string, label: string, unit?: Unit) =>
    book.putChoice(parameterOf(choices, key), name, choices[key], label, originOf(choices, key), unit);
  put('width', widthName(choices), isPaired(choices) ? 'width of both doors' : 'door width');
  sizeLeaf(book, choices, flatDoorParameters);
  put('height', 'Hd', 'door height');
  put('thickness', 'T', 'thickness of the sheet');
  put('lipping', 'a', 'lipping, top and bottom');
  put('hingeLipping', 'a_hinge', 'lipping, hinge edge');
  put('lockLipping', 'a_lock', 'lipping, lock edge');
  put('cornerRadius', 'r', 'corner radius');
  if (hasBevel(choices)) put('bevelDegrees', 'beta', 'bevel of the leading edge', 'degrees');
  else book.put('beta', 0, 'bevel of the leading edge: square where it meets the other', cp, 'degrees');
  put('gapSide', 'gs', 'gap, each side');
  put('gapTop', 'gt', 'gap, top');
  put('gapBottom', 'gb', 'gap, bottom');
  put('pivotBeyond', 'e', 'pivot beyond the hinge edge');
  put('pivotProud', 'k', 'pivot proud of the face');
  book.put('f_v', settings.film, 'finish film, each face', 'setting');
  sizeLap(book, choices);
  const { core } = choices.stock;
  const known = core.density !== undefined;
  const label = 'density of the sheet, g/cm³';
  book.put(
    'rho',
    known ? (core.density ?? 0) / 1000 : usualDensity,
    label,
    known ? core.name : rule,
    'ratio',
  );
}

/** The parameter that decides a number: its own, or the frame whose size it takes. */
function parameterOf(choices: DoorChoices, key: NumberKey): string {
  if (isOfCell(choices, key)) return 'cabinetFront';
  return choices.frame && key in choices.frame.sizes ? 'frame' : key;
}

/** Whether a number is that of the opening in a front that it closes. */
function isOfCell({ frame, cell, given }: DoorChoices, key: NumberKey): boolean {
  return !frame && cell !== null && !given.has(key) && key in doorOfCell(cell);
}

/** Where a number put in comes from: the frame, the user, the sheet measured, or the rule. */
function originOf(choices: DoorChoices, key: NumberKey): string {
  const { frame, given, stock, cell } = choices;
  if (cell && isOfCell(choices, key)) return `front ${cell.built.letter}, ${cell.built.name}`;
  if (frame && key in frame.sizes) return `frame ${frame.built.letter}, ${frame.built.name}`;
  if (given.has(key)) return 'you';
  return key === 'thickness' && stock.core.kind === 'sheet' ? `measured: ${stock.core.name}` : rule;
}

function sizeLippings({ choices, book }: DoorLayout): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('core_W', 'Wd - a_hinge - a_lock', 'core, width');
  work('core_H', 'Hd - 2*a', 'core, height');
  if (choices.blocks) work('block', 'max(r, a, a_hinge, a_lock) + 10', 'corner block, side of the square');
  const mitred = choices.lipJoint === 'mitre';
  work('lip_v_L', choices.blocks ? 'Hd - 2*block' : 'Hd', 'upright lippings, length');
  work(
    'lip_h_L',
    choices.blocks ? 'Wd - 2*block' : mitred ? 'Wd' : 'core_W',
    'top and bottom lippings, length',
  );
  work('lip_v_rough_L', 'lip_v_L + 20', 'blank of the upright lippings, length');
  work('lip_h_rough_L', 'lip_h_L + 20', 'blank of the top and bottom lippings, length');
  work('lip_rough_T', 'a + 0.5', 'blank of the top and bottom lippings, out from the core');
  work('lip_hinge_rough_T', 'a_hinge + 0.5', 'blank of the hinge lipping, out from the core');
  work('lip_lock_rough_T', 'a_lock + 0.5', 'blank of the lock lipping, out from the core');
  work(
    'lip_rough_W',
    'T + 2',
    `blank of the lippings, over the thickness of the door: ${markSize(1)} proud each face`,
  );
  work('back_W', 'Wd - T*tand(beta)', 'door width at the back of the bevelled edge');
  work('a_lock_back', 'a_lock - T*tand(beta)', 'lock lipping left at the back of the bevel');
}

function sizeBlocks({ book }: DoorLayout): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  work('notch_v', 'block - a', 'notch in the corners of the core, up and down');
  work('notch_hinge', 'block - a_hinge', 'notch in the corners of the core, at the hinge edge');
  work('notch_lock', 'block - a_lock', 'notch in the corners of the core, at the lock edge');
  work('block_blank', 'sqrt(2)*block', 'blank of a block, its grain corner to corner');
  work('solid_at_corner', 'sqrt(2)*block - r*(sqrt(2) - 1)', 'wood from the arc to the inner corner');
}

function sizeSlots({ choices, book }: DoorLayout): void {
  const put = (key: NumberKey, name: string, label: string, unit?: Unit) =>
    book.putChoice(parameterOf(choices, key), name, choices[key], label, originOf(choices, key), unit);
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  put('slots', 'n', 'slots in each band', 'count');
  put('slotWidth', 's', 'slot width');
  put('slotLength', 'slot_L', 'slot length');
  put('slotEdge', 'slot_edge', 'from the edge of the door to the band');
  if (choices.slots > 1) {
    put('slotZone', 'zone', 'width of the band over its slots');
    work('pitch', 's + (zone - n*s)/(n - 1)', 'slot to slot');
    work('web', 'pitch - s', 'wood between two slots');
  } else work('zone', 's', 'width of the band: one slot');
  const upright = choices.slotsRun === 'upright';
  work('band_W', upright ? 'zone' : 'slot_L', 'band, across the door');
  work('band_H', upright ? 'slot_L' : 'zone', 'band, up and down');
  work('band_side', '(Wd - band_W)/2', 'from the sides of the door to the bands');
  const area = '2*n*(s*(slot_L - s) + pi*s**2/4)';
  book.work('free_area_2_bands', area, 'free area of both bands, mm²', rule, 'ratio');
}

function sizeBattens({ book }: DoorLayout): void {
  book.put('batten_W', 60, 'batten, width', cp);
  book.put('batten_T', 20, 'batten, thickness', cp);
  book.put('batten_in', 40, 'batten short of the edges, clear of the stops', cp);
  book.work('batten_L', 'Wd - 2*batten_in', 'batten, length', cp);
  book.work('batten_low', 'Hd/3', 'lower batten, its middle above the lower edge', cp);
  book.work('batten_high', 'Hd*2/3', 'upper batten, its middle above the lower edge', cp);
}
