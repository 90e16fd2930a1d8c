import { clipOutline } from '../clip.ts';
import { putDensity } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { freeAtEnds } from '../rules.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import { shrink } from './aperture.ts';
import { layHoles } from './holes.ts';
import { lidsParameters } from './parameters.ts';
import type { LaidLid, LidsChoices, LidsLayout } from './layout.ts';
import { boxOfPoints, outlineArea, type Point } from '#core/geometry';

const rule = 'joinery B10';
const modulus = 7000; // of plywood along the face grain, N/mm² (joinery B10)

/** Works out the sizes of lids (joinery B10). */
export function workOutLids(choices: LidsChoices): LidsLayout {
  const book = openWorkingBook();
  const { aperture, measured, given } = choices;
  const values = { ...choices, length: aperture.length, width: aperture.width };
  const from = { infos: lidsParameters, values, given };
  if (measured === null) putParameters(book, from, { length: 'L', width: 'W' });
  else {
    book.put('L', aperture.length, 'aperture, length', measured);
    book.put('W', aperture.width, 'aperture, width', measured);
  }
  putParameters(book, from, { gap: 'g', cleatWidth: 'cw', cleatThickness: 'ct', bearerWidth: 'bw' });
  putParameters(book, from, {
    holeDiameter: 'hole',
    holeIn: 'hole_in',
    ventDiameter: 'vent',
    ventPitch: 'vent_pitch',
  });
  sizeLids(choices, book);
  const step = book.value('lid_L') + book.value('g');
  const count = book.value('n');
  const inner = shrink(aperture.corners, book.value('g'));
  const lids = Array.from({ length: Math.max(0, count) }, (_, i) => {
    const left = book.value('g') + i * step;
    const corners = clipOutline(inner, { x: [left, left + book.value('lid_L')] });
    return { corners, left: boxOfPoints(corners).minX, foot: boxOfPoints(corners).minY };
  });
  putLidSizes(choices, book, lids);
  const layout = {
    choices,
    book,
    lids,
    bearers: lids.slice(1).map((_, i) => (i + 1) * step + book.value('g') / 2),
  };
  const holes = lids
    .flatMap((lid) => layHoles(layout, lid))
    .reduce((sum, { r }) => sum + Math.PI * r ** 2, 0);
  book.put('holes_area', holes, 'holes in the lids, area in mm²', rule, 'ratio');
  sizeUnder(layout);
  return layout;
}

function sizeLids({ stock, lids }: LidsChoices, book: WorkingBook): void {
  const work = (name: string, formula: string, label: string) => book.work(name, formula, label, rule);
  const thick = stock.lids.kind === 'sheet' ? stock.lids.thickness : 12;
  book.put(
    'T',
    thick,
    'lids, thickness',
    stock.lids.kind === 'sheet' ? `measured: ${stock.lids.name}` : rule,
  );
  putDensity(book, 'rho', stock.lids, 'the lids');
  putDensity(book, 'rho_cleat', stock.cleats, 'cleats and bearers');
  if (lids !== undefined) book.putChoice('lids', 'n', lids, 'lids', 'you', 'count');
  else book.work('n', 'ceil(L/650)', 'lids', rule, 'count');
  work('lid_L', '(L - (n + 1)*g)/n', 'a lid, along the row');
  work('lid_W', 'W - 2*g', 'a lid, from front to back');
  work('bearing', 'cw - g', 'bearing of a lid on its cleats');
  work('bearing_mid', '(bw - g)/2', 'bearing of a lid on a cross bearer');
  work('span', 'W - 2*cw', 'between the cleats');
  book.work('lid_mass', 'lid_L*lid_W*T*rho*1e-6', 'mass of a lid', rule, 'kg');
  book.work('I', 'lid_L*T**3/12', 'second moment of area of a lid, mm⁴', 'joinery B8', 'ratio');
  book.put('E', modulus, 'stiffness of the sheet along the face grain, N/mm²', rule, 'ratio');
  book.work('sag', '80*9.81*span**3/(48*E*I)', 'sag under 80 kg in the middle', rule);
  work('sag_limit', 'span/100', 'sag at most');
}

/** Puts a size in: by its formula in a rectangle, else as it was read off the outline. */
function sizer(book: WorkingBook, square: boolean) {
  return (name: string, drawn: number, formula: string, label: string) =>
    square
      ? book.work(name, formula, label, rule)
      : book.put(name, drawn, label, 'off the outline, joinery B10');
}

/** Sizes of every lid, off its outline where the aperture is no rectangle; and the area of all. */
function putLidSizes({ aperture }: LidsChoices, book: WorkingBook, lids: readonly LaidLid[]): void {
  const size = sizer(book, aperture.square);
  lids.forEach(({ corners }, i) => {
    if (corners.length < 3) return;
    const box = boxOfPoints(corners);
    size(`lid${i + 1}_W`, box.maxY - box.minY, 'lid_W', `lid ${i + 1}, from front to back`);
    size(`lid${i + 1}_L`, box.maxX - box.minX, 'lid_L', `lid ${i + 1}, along the row`);
  });
  const area = lids.reduce((sum, { corners }) => sum + outlineArea(corners), 0);
  book.put('lids_area', area, 'lids, area of all in mm²', rule, 'ratio');
}

function sizeUnder({ choices, book, bearers }: LidsLayout): void {
  const { square } = choices.aperture;
  if (!square) book.put('free', freeAtEnds, 'cleats clear of what was measured, each end', 'common practice');
  const corners = cleatRing(choices, 0);
  const inside = cleatRing(choices, book.value('cw'));
  const size = sizer(book, choices.aperture.square);
  corners.forEach((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    size(`cleat${i + 1}_L`, long, i % 2 === 0 ? 'L' : 'W', `cleat ${i + 1}, length`);
  });
  bearers.forEach((at, i) => {
    const strip = bearerOutline(inside, at, book.value('bw'));
    if (strip.length < 3) return;
    const box = boxOfPoints(strip);
    size(`bearer${i + 1}_L`, box.maxY - box.minY, 'W - 2*cw', `cross bearer ${i + 1}, length`);
  });
  const ring = Math.max(0, outlineArea(corners) - outlineArea(inside));
  book.put('cleats_area', ring, 'cleats, area of all in mm²', rule, 'ratio');
  const strips = bearers.reduce(
    (sum, at) => sum + outlineArea(bearerOutline(inside, at, book.value('bw'))),
    0,
  );
  book.put('bearers_area', strips, 'cross bearers, area of all in mm²', rule, 'ratio');
  book.work('block_L', '2*cw', 'block under the end of a bearer, out from the side', rule);
  const blocks = `${2 * bearers.length}*block_L*bw*ct`;
  book.work(
    'mass',
    `((lids_area - holes_area)*T*rho + ((cleats_area + bearers_area)*ct + ${blocks})*rho_cleat)*1e-6`,
    'mass of all',
    rule,
    'kg',
  );
}

/** The outline that the cleats keep to, free of an aperture as measured; or so far within it, mm. */
export function cleatRing({ aperture }: LidsChoices, within: number): readonly Point[] {
  return shrink(aperture.corners, within + (aperture.square ? 0 : freeAtEnds));
}

/** A cross bearer between the cleats, seen from above. */
export function bearerOutline(inside: readonly Point[], at: number, width: number): readonly Point[] {
  return clipOutline(inside, { x: [at - width / 2, at + width / 2] });
}
