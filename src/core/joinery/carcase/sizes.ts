import { boxOfOutline, outlineArea, type Outline, type Point } from '#core/geometry';
import { leastDepth, uprightBack, type Reach } from '../hull/back-edge.ts';
import { readGauge } from '../hull/gauge.ts';
import { depthOf, stationAt } from '../hull/hull.ts';
import { putDensity } from '../material-facts.ts';
import { putParameters } from '../parameter-book.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import type { Material } from '../piece-types.ts';
import type { CarcaseChoices } from './choices.ts';
import { carcaseParameters } from './parameters.ts';
import { facesOf, reachOf, rule, sideName, type Side } from './sides.ts';
import { sizeSag, sizeShelf } from './shelf-sizes.ts';
import { placeVents } from './vents.ts';

/** A carcase with its sizes worked out; outlines as depth behind the front and height, or along and depth. */
export interface CarcaseLayout {
  readonly choices: CarcaseChoices;
  readonly book: WorkingBook;
  readonly left: Outline;
  readonly right: Outline;
  /** One for each shelf, from its left end at x = 0. */
  readonly shelves: readonly Outline[];
  /** Vent holes of the left and the right end, by height. */
  readonly vents: Readonly<Record<Side, readonly Point[]>>;
  readonly backRail: boolean;
}

/** Works out a carcase whose hull is known (joinery B7). */
export function workOutCarcase(choices: CarcaseChoices): CarcaseLayout {
  const book = openWorkingBook();
  const { given, stock } = choices;
  const from = { infos: carcaseParameters, values: choices, given };
  const names = { width: 'W', height: 'H', foot: 'y0', start: 'at0', clearance: 'c', frontThickness: 'Tfr' };
  putParameters(book, from, { ...names, railWidth: 'rail_W' });
  if (choices.joint === 'housing') putParameters(book, from, { housing: 'g' });
  else book.put('g', 0, 'shelves go into the ends by', `${rule}, ${choices.joint.replace('-', ' ')}`);
  putThickness(book, choices, ['thickness', 'T', stock.panel]);
  putThickness(book, choices, ['shelfThickness', 'Ts', stock.shelf]);
  book.work('Wi', 'W - 2*T', 'width inside', rule);
  book.work('top', 'y0 + H', 'upper edge of the ends', rule);
  const left = sizeEnd(book, choices, 'l');
  const right = sizeEnd(book, choices, 'r');
  const backRail = sizeRails(book, choices);
  if (choices.railJoint === 'rebate') {
    book.work('rail_lip', 'max(5, T/3)', 'end left beside the rebate of the rails', 'joinery C8');
    book.work('rail_L', 'Wi + 2*(T - rail_lip)', 'top rails, length', rule);
  } else book.work('rail_L', 'Wi', 'top rails, length', rule);
  if (choices.shelves.length > 0) putParameters(book, from, { cleat: 'k' });
  book.work('shelf_L', 'Wi + 2*g', 'shelf, length', rule);
  const shelves = choices.shelves.map((y, i) => sizeShelf(book, choices, [y, i + 1]));
  if (shelves.length > 0) sizeSag(book, choices);
  const vents = placeVents(book, choices);
  const layout = { choices, book, left, right, shelves, vents, backRail };
  weigh(layout);
  return layout;
}

function putThickness(
  book: WorkingBook,
  { given, ...choices }: CarcaseChoices,
  [key, name, material]: readonly ['thickness' | 'shelfThickness', string, Material],
): void {
  const measured = material.kind === 'sheet' ? `measured: ${material.name}` : rule;
  const label = key === 'thickness' ? 'thickness of the ends' : 'thickness of the shelves';
  book.putChoice(key, name, choices[key], label, given.has(key) ? 'you' : measured);
}

/** The outline of an end: straight in front, its back the true offset of the hull. */
function sizeEnd(book: WorkingBook, choices: CarcaseChoices, side: Side): Outline {
  const faces = facesOf(choices, side);
  const [low, high] = [book.value('y0'), book.value('top')];
  const bevelled = choices.endBack === 'bevelled';
  const reach: Reach = { ...reachOf(choices), ...(bevelled && { faces: 'most' }) };
  const back = uprightBack(reach, faces, [low, high]);
  const outline: Outline = [{ x: 0, y: low }, ...back, { x: 0, y: high }];
  const depths = back.map(({ x }) => x);
  const label = `${sideName[side]} end`;
  const source = `${rule}, offset of ${choices.hull.source}`;
  book.put(`end_${side}_D`, boxOfOutline(outline).maxX, `${label}, deepest`, source);
  book.put(`end_${side}_least`, Math.min(...depths), `${label}, shallowest`, source);
  const middle = (low + high) / 2;
  const [outer, inner] = faces.map((at) =>
    depthOf(stationAt(choices.hull, at, [middle - 10, middle + 10]), middle),
  );
  const fall = `${label}, hull nearer at its inner face by`;
  const gauge = readGauge(choices.hull, ((faces[0] ?? 0) + (faces[1] ?? 0)) / 2, middle);
  book.put(`drawn_${side}`, (outer ?? 0) - (inner ?? 0), `${fall}, by the sections`, choices.hull.source);
  if (gauge) {
    // what falls away along the boat is nearer at the outer face of the left end and at the inner one of the right
    const degrees = side === 'l' ? -gauge.degrees : gauge.degrees;
    const read = `read at ${gauge.read}, ${choices.hull.source}`;
    book.put(`gauge_${side}`, degrees, `${label}, bevel of the hull by the gauge`, read, 'degrees');
    book.work(`fall_${side}`, `T*tand(gauge_${side})`, fall, 'joinery A6');
  } else book.work(`fall_${side}`, `drawn_${side}`, fall, 'joinery A6');
  book.work(`bevel_${side}`, `atand(fall_${side}/T)`, `${label}, bevel of the hull`, 'joinery A6', 'degrees');
  return outline;
}

function sizeRails(book: WorkingBook, choices: CarcaseChoices): boolean {
  const level = [book.value('top') - book.value('T'), book.value('top')] as const;
  const { start, width } = choices;
  const places = [0, 1, 2, 3, 4].map((i) => start + (i * width) / 4);
  const least = Math.min(...places.map((at) => leastDepth(reachOf(choices), at, level)));
  book.put('rail_free', least, 'clear depth under the top', `${rule}, offset of ${choices.hull.source}`);
  book.work('rail_back', 'down(rail_free, 0.5)', 'back of the rear top rail, behind the front', rule);
  return book.value('rail_back') >= 2 * book.value('rail_W') + 20;
}

function weigh({ book, choices, left, right, shelves }: CarcaseLayout): void {
  const area = (outlines: readonly Outline[]) => outlines.reduce((sum, one) => sum + outlineArea(one), 0);
  putDensity(book, 'rho', choices.stock.panel, 'the ends');
  putDensity(book, 'rho_s', choices.stock.shelf, 'the shelves');
  book.put('area_ends', area([left, right]), 'area of both ends, mm²', 'outlines', 'ratio');
  book.put('area_shelves', area(shelves), 'area of the shelves, mm²', 'outlines', 'ratio');
  const formula = '(area_ends*T*rho + area_shelves*Ts*rho_s)*1e-6';
  book.work('mass', formula, 'mass of ends and shelves, before holes and housings', rule, 'kg');
}
