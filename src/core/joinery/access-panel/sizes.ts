import { boxOfPoints, outlineArea, type Point } from '#core/geometry';
import { insetSides } from '../flat/polygon.ts';
import { putDensity } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { freeAtEnds } from '../rules.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { placeOnSide } from './hole.ts';
import { accessPanelParameters } from './parameters.ts';
import type { AccessPanelParameters } from './types.ts';
import type { JoinerySettings, Material } from '../piece-types.ts';

type Left = 'materials' | 'buttons' | 'pivot' | 'arm' | 'pullRoom';

/** Every parameter of an access panel with its default filled in; `measured` says where the hole comes from. */
export interface PanelChoices extends Required<Omit<AccessPanelParameters, Left>> {
  readonly buttons?: number;
  readonly pivot?: number;
  readonly arm?: number;
  readonly pullRoom?: number;
  readonly measured: string | null;
  /** How far the measured hole is from a rectangle. */
  readonly skew: number;
  /** Corners of the hole counter-clockwise from its lower left, in the frame of the piece. */
  readonly corners: readonly Point[];
  readonly given: ReadonlySet<string>;
  readonly stock: { readonly panel: Material; readonly solid: Material };
}

/** An access panel with its sizes worked out. */
export interface PanelLayout {
  readonly choices: PanelChoices;
  readonly book: WorkingBook;
  /** The panel counter-clockwise from its lower left, in the frame of the piece. */
  readonly outline: readonly Point[];
}

const rule = 'joinery B14';
const solidThickness = 12; // of a panel that is no sheet; common practice, no source

/** Works out the sizes of an access panel (joinery B14). */
export function workOutPanel(choices: PanelChoices, settings: JoinerySettings): PanelLayout {
  const book = openWorkingBook();
  const { measured, given, stock } = choices;
  const from = { infos: accessPanelParameters, values: choices, given };
  if (measured === null) putParameters(book, from, { width: 'hole_W', height: 'hole_H' });
  else {
    book.put('hole_W', choices.width, 'hole, width', measured);
    book.put('hole_H', choices.height, 'hole, height', measured);
  }
  const sheet = stock.panel.kind === 'sheet';
  const thick = stock.panel.kind === 'sheet' ? stock.panel.thickness : solidThickness;
  book.put(
    'T',
    thick,
    'panel, thickness',
    sheet ? `measured: ${stock.panel.name}` : 'common practice, no source',
  );
  book.put('f_v', settings.film, 'finish film, each face', 'setting');
  const outline = sizePanel(choices, book);
  sizeButtons(choices, book);
  putDensity(book, 'rho', stock.panel, 'the panel');
  putDensity(book, 'rho_solid', stock.solid, 'buttons and cleats');
  sizeMass(choices, book, outline);
  return { choices, book, outline };
}

/** Sizes of the panel and its cleats; its outline. */
function sizePanel(choices: PanelChoices, book: WorkingBook): readonly Point[] {
  const from = { infos: accessPanelParameters, values: choices, given: choices.given };
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  if (choices.mount === 'lap') {
    putParameters(book, from, { lap: 'lap' });
    work('panel_W', 'hole_W + 2*lap', 'panel, width');
    work('panel_H', 'hole_H + 2*lap', 'panel, height');
    work('out', 'lap', 'edge of the panel beyond the edge of the hole');
    return placeOutline(choices, book);
  }
  putParameters(book, from, { gap: 'g', cleatWidth: 'cw', cleatThickness: 'ct' });
  work('out', '-g', 'edge of the panel beyond the edge of the hole');
  work('bearing', 'cw - g', 'bearing of the panel on its cleats');
  if (choices.measured === null) {
    work('panel_W', 'hole_W - 2*g', 'panel, width');
    work('panel_H', 'hole_H - 2*g', 'panel, height');
    work('cleat_L', 'hole_W', 'cleats above and below, length');
    work('cleat_side_L', 'hole_H - 2*cw', 'cleats at the sides, length');
    return placeOutline(choices, book);
  }
  const outline = placeOutline(choices, book);
  const { minX, minY, maxX, maxY } = boxOfPoints(outline);
  book.put('panel_W', maxX - minX, 'panel, width over all', 'the hole less its gaps, joinery B14');
  book.put('panel_H', maxY - minY, 'panel, height over all', 'the hole less its gaps, joinery B14');
  book.put('free', cleatsFree(choices, book), 'cleats clear of the corners, each end', 'common practice');
  work('cleat_L', 'hole_W - 2*free', 'cleats above and below, length');
  work('cleat_side_L', 'hole_H - 2*cw - 2*free', 'cleats at the sides, length');
  return outline;
}

/** What a cleat leaves free at each end: a hair, and what the next one takes of its corner where that is not square. */
function cleatsFree({ corners }: PanelChoices, book: WorkingBook): number {
  const slants = corners.map((_, i) => {
    const [before, after] = [placeOnSide(corners, i + 3, 0), placeOnSide(corners, i, 0)];
    return Math.abs(before.along.x * after.along.x + before.along.y * after.along.y);
  });
  return freeAtEnds + book.value('cw') * Math.max(...slants);
}

/** The panel round or within the hole; nothing where the gaps leave nothing. */
function placeOutline({ corners, mount }: PanelChoices, book: WorkingBook): readonly Point[] {
  const off = mount === 'lap' ? book.value('lap') : -book.value('g');
  return (
    insetSides(
      corners,
      corners.map(() => -off),
    ) ?? [{ x: 0, y: 0 }]
  );
}

function sizeButtons(choices: PanelChoices, book: WorkingBook): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  const from = { infos: accessPanelParameters, values: choices, given: choices.given };
  putParameters(book, from, { buttonWidth: 'bw', buttonThickness: 'bt' });
  const given = (key: 'buttons' | 'pivot' | 'arm', name: string, label: string, formula: string) => {
    const value = choices[key];
    const unit = key === 'buttons' ? 'count' : 'mm';
    if (value !== undefined) book.putChoice(key, name, value, label, 'you', unit);
    else book.work(name, formula, label, rule, unit);
  };
  given('buttons', 'buttons', 'turn buttons', 'max(2, ceil(2*(hole_W + hole_H)/400))');
  given('pivot', 'e', 'pivot from the edge of the panel', 'bw/2 + 2');
  given('arm', 'arm', 'button, from pivot to tip', 'e + 10');
  work('reach', 'arm - e', 'button closed, over the panel');
  work('clear', 'e - bw/2', 'button open, from the edge of the panel');
  work('button_L', 'arm + bw/2', 'button, length');
}

function sizeMass({ mount }: PanelChoices, book: WorkingBook, outline: readonly Point[]): void {
  const under = mount === 'lap' ? 'buttons*bw**2*T*rho' : '2*(cleat_L + cleat_side_L)*cw*ct*rho_solid';
  const buttons = 'buttons*button_L*bw*bt*rho_solid';
  book.put('panel_A', outlineArea(outline), 'panel, area in mm²', 'outline', 'ratio');
  book.work('mass', `(panel_A*T*rho + ${buttons} + ${under})*1e-6`, 'mass', rule, 'kg');
}
