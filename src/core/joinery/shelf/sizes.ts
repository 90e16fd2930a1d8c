import { boxOfOutline, outlineArea, type Outline } from '#core/geometry';
import type { Problem } from '#core/problems';
import { chooseSides } from '../flat/choose-sides.ts';
import { insetSides } from '../flat/polygon.ts';
import { leastDepth, levelBack, type Reach } from '../hull/back-edge.ts';
import { readHull, type Hull } from '../hull/hull.ts';
import { putDensity } from '../material-facts.ts';
import { fillDefaults, putParameters } from '../parameter-book.ts';
import { findMaterial } from '../parts.ts';
import { putStiffness } from '../stiffness.ts';
import { openWorkingBook, type WorkingBook } from '../working.ts';
import type { Material } from '../piece-types.ts';
import type { BuildContext } from '../types.ts';
import { shelfParameters } from './parameters.ts';
import type { ShelfParameters } from './types.ts';

type Optional = 'materials' | 'itemWidth' | 'itemCentre' | 'itemHeight' | 'room';

/** Every choice of a shelf with its default filled in. */
export interface ShelfChoices
  extends Required<Omit<ShelfParameters, Optional>>, Pick<ShelfParameters, Exclude<Optional, 'materials'>> {
  readonly stock: { readonly shelf: Material; readonly fiddle: Material; readonly cleats: Material };
  readonly given: ReadonlySet<string>;
  /** Where its plan comes from; `sides` with the walls' outline, the front first. */
  readonly plan:
    | { readonly kind: 'size' }
    | { readonly kind: 'hull'; readonly hull: Hull }
    | {
        readonly kind: 'outline';
        readonly sides: Outline;
        readonly curved: boolean;
        readonly source: string;
      };
}

/** A shelf with its sizes worked out; its plan from the left end of its front edge, y being depth. */
export interface ShelfLayout {
  readonly choices: ShelfChoices;
  readonly book: WorkingBook;
  /** Empty when the clearance leaves nothing. */
  readonly outline: Outline;
  readonly backCleat: boolean;
}

const rule = 'joinery B8';

/** Fills in the defaults of a shelf and finds its plan; `lacking` when there is none. */
export function chooseShelf(
  parameters: ShelfParameters,
  context: BuildContext,
  name: string,
): {
  readonly choices: ShelfChoices;
  readonly findings: readonly Problem[];
  readonly lacking: readonly Problem[];
} {
  const { materials } = parameters;
  const { values, given } = fillDefaults(parameters, shelfParameters);
  const solid = context.materials.find(({ kind }) => kind === 'solid')?.id ?? materials.shelf;
  const shelf = findMaterial(context, materials.shelf, { for: 'the shelf', kind: 'either' });
  const fiddle = findMaterial(context, materials.fiddle ?? solid, { for: 'the fiddle', kind: 'solid' });
  const cleats = findMaterial(context, materials.cleats ?? solid, { for: 'the cleats', kind: 'solid' });
  const { plan, lacking } = choosePlan(context, name);
  const end = plan?.kind === 'hull' ? (plan.hull.stations[plan.hull.stations.length - 1]?.at ?? 0) : 0;
  const box = plan?.kind === 'outline' ? boxOfOutline(plan.sides) : null;
  const choices = {
    length: box ? box.maxX : end - (parameters.start ?? 0),
    depth: box ? box.maxY : 0,
    ...values,
    ...(box && { length: box.maxX, depth: box.maxY }),
    thickness: parameters.thickness ?? (shelf.material.kind === 'sheet' ? shelf.material.thickness : 12),
    stock: { shelf: shelf.material, fiddle: fiddle.material, cleats: cleats.material },
    given,
    plan,
  } as unknown as ShelfChoices;
  const findings = [
    ...shelf.findings,
    ...(choices.fiddle === 'none' ? [] : fiddle.findings),
    ...cleats.findings,
  ];
  return { choices, findings, lacking: plan ? lackSize(choices) : lacking };
}

function choosePlan(context: BuildContext, name: string) {
  const { shape } = context;
  if (!shape) return { plan: { kind: 'size' } as ShelfChoices['plan'], lacking: [] };
  if (shape.kind === 'sections') {
    const read = readHull(shape, context.shapeName ?? 'the hull', {});
    return read.ok
      ? { plan: { kind: 'hull', hull: read.value } as ShelfChoices['plan'], lacking: [] }
      : { plan: null, lacking: read.problems };
  }
  const { chosen, findings } = chooseSides({}, context, name);
  if (!chosen) return { plan: null, lacking: findings };
  const sides = chosen.sides.flatMap(({ from, between }) => [from, ...between]);
  const curved = chosen.sides.some(({ between }) => between.length > 0);
  return {
    plan: { kind: 'outline', sides, curved, source: chosen.source } as ShelfChoices['plan'],
    lacking: [],
  };
}

function lackSize({ plan, length, depth }: ShelfChoices): readonly Problem[] {
  const needs = plan.kind === 'hull' ? [length] : [length, depth];
  if (needs.every((one) => one > 0 && Number.isFinite(one))) return [];
  return [
    {
      severity: 'stop',
      code: 'shelf-size-missing',
      message: 'The shelf has no length or no depth yet.',
      remedy: 'Enter both, or fit it to an outline in plan or to sections of the hull.',
      source: 'joinery A10, B8',
    },
  ];
}

/** Works out a shelf whose plan is known (joinery B8). */
export function workOutShelf(choices: ShelfChoices): ShelfLayout {
  const book = openWorkingBook();
  putIn(book, choices);
  const outline = planOf(book, choices);
  if (outline.length === 0) return { choices, book, outline, backCleat: false };
  sizeFiddle(book, choices);
  sizeSag(book, choices);
  const straight = choices.plan.kind === 'size';
  const backCleat = straight && choices.backHeld === 'cleat';
  if (straight) {
    if (backCleat) book.work('back_cleat_L', 'L - 20', 'back cleat, length', rule);
    // a thick cleat at the back takes more than those 20
    const short = backCleat ? 'max(20, k)' : '20';
    book.work('end_cleat_L', `D_end - ${short}`, 'end cleats, length', rule);
  }
  if (choices.plan.kind === 'outline') sizeWallCleats(book, choices.plan, outline);
  putDensity(book, 'rho', choices.stock.shelf, 'the shelf');
  book.put('area', outlineArea(outline), 'area of the shelf, mm²', 'outline', 'ratio');
  book.work('mass', 'area*T*rho*1e-6', 'mass of the shelf', rule, 'kg');
  return { choices, book, outline, backCleat };
}

/** A cleat under every straight side but the front, clear of its neighbours in the corners. */
function sizeWallCleats(
  book: WorkingBook,
  { curved, source }: Extract<ShelfChoices['plan'], { kind: 'outline' }>,
  outline: Outline,
): void {
  const k = book.value('k');
  outline.slice(1).forEach((from, i) => {
    const to = outline[(i + 2) % outline.length] ?? from;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (curved || length < 7 * k) return;
    book.put(`side_${i + 2}`, length, `side ${i + 2}, length`, source);
    book.work(`wall_cleat_${i + 2}`, `side_${i + 2} - 4*k`, `cleat under side ${i + 2}, length`, rule);
  });
}

function putIn(book: WorkingBook, choices: ShelfChoices): void {
  const { given, stock, plan } = choices;
  const from = { infos: shelfParameters, values: choices, given };
  if (plan.kind === 'outline') {
    book.put('L', choices.length, 'length of what it fills', plan.source);
    book.put('D', choices.depth, 'depth of what it fills', plan.source);
  } else putParameters(book, from, { length: 'L', ...(plan.kind === 'size' && { depth: 'D' }) });
  const measured = stock.shelf.kind === 'sheet' ? `measured: ${stock.shelf.name}` : rule;
  const source = given.has('thickness') ? 'you' : measured;
  book.putChoice('thickness', 'T', choices.thickness, 'thickness of the shelf', source);
  putParameters(book, from, { clearance: 'c', cleat: 'k' });
  if (choices.fiddle !== 'none')
    putParameters(book, from, { fiddleHeight: 'f', fiddleThickness: 'tf', cornerOpen: 'open' });
  if (choices.fiddle === 'rebate')
    book.work('rebate', 'tf - max(5, tf/2)', 'rebate in the back of the fiddle, depth', 'joinery C8');
  const before = { edge: 'tf', rebate: 'tf - rebate', top: '0', none: '0' }[choices.fiddle];
  book.work('before', before, 'fiddle before the front edge', rule);
}

/** The plan of the shelf, the fiddle before its edge left out; its sizes go into the book. */
function planOf(book: WorkingBook, choices: ShelfChoices): Outline {
  const { plan } = choices;
  const v = book.value;
  if (plan.kind === 'hull') return hullPlan(book, choices, plan.hull);
  book.work('Ds', plan.kind === 'size' ? 'D - before' : 'D - before - c', 'shelf, depth', rule);
  if (plan.kind === 'size') {
    book.work('shelf_L', 'L', 'shelf, length', rule);
    book.work('front_L', 'L', 'front edge, length', rule);
    book.work('D_end', 'Ds', 'depth at the ends', rule);
    const [length, depth] = [v('L'), v('Ds')];
    return [
      { x: 0, y: 0 },
      { x: length, y: 0 },
      { x: length, y: depth },
      { x: 0, y: depth },
    ];
  }
  const inset = insetSides(
    plan.sides,
    plan.sides.map((_, i) => (i === 0 ? v('before') : v('c'))),
  );
  if (!inset) return [];
  const box = boxOfOutline(inset);
  const outline = inset.map(({ x, y }) => ({ x: x - box.minX, y: y - box.minY }));
  const [a, b] = [outline[0] ?? { x: 0, y: 0 }, outline[1] ?? { x: 0, y: 0 }];
  book.put('shelf_L', box.maxX - box.minX, 'shelf, length', `${plan.source}, less the clearance`);
  book.put('shelf_D', box.maxY - box.minY, 'shelf, depth', `${plan.source}, less the clearance`);
  book.put('front_L', Math.hypot(b.x - a.x, b.y - a.y), 'front edge, length', plan.source);
  return outline;
}

function hullPlan(book: WorkingBook, choices: ShelfChoices, hull: Hull): Outline {
  const { start, length, height } = choices;
  const level = [height, height + book.value('T')] as const;
  const reach: Reach = { hull, clearance: book.value('c'), before: book.value('before') };
  const back = levelBack(reach, [start, start + length], level).map((p) => ({ ...p, x: p.x - start }));
  const source = `${rule}, offset of ${hull.source}`;
  const ends = [start, start + length].map((at) => leastDepth(reach, at, level));
  book.put('D_end', Math.min(...ends), 'depth at its shallower end', source);
  const walked = back.toReversed().map(({ x, y }, i) => {
    const bulge = back[back.length - 2 - i]?.bulge;
    return bulge === undefined ? { x, y } : { x, y, bulge: -bulge };
  });
  const outline: Outline = [{ x: 0, y: 0 }, { x: length, y: 0 }, ...walked];
  book.put('Ds', boxOfOutline(outline).maxY, 'shelf, depth at its deepest', source);
  book.work('shelf_L', 'L', 'shelf, length', rule);
  book.work('front_L', 'L', 'front edge, length', rule);
  return outline;
}

function sizeFiddle(book: WorkingBook, choices: ShelfChoices): void {
  const { given, itemWidth, itemCentre } = choices;
  const from = { infos: shelfParameters, values: choices, given };
  if (choices.fiddle !== 'none') {
    book.work('fiddle_L', 'front_L - 2*open', 'fiddle, length', rule);
    book.work('fiddle_W', choices.fiddle === 'top' ? 'f' : 'f + T', 'fiddle, height of the strip', rule);
    if (choices.endFiddles !== 'none' && book.has('D_end'))
      book.work(
        'end_fiddle_L',
        { edge: 'D_end - open', rebate: 'D_end - open - rebate', top: 'D_end - open - tf' }[choices.fiddle],
        'end fiddle, length',
        rule,
      );
  }
  if (itemWidth === undefined || itemCentre === undefined) return;
  putParameters(book, from, { itemWidth: 'b', itemCentre: 'zc' });
  putParameters(book, from, { angle: 'theta' }, 'degrees');
  book.work('f_needed', 'zc - (b/2)/tand(theta)', 'fiddle below which the item tips over it', rule);
}

function sizeSag(book: WorkingBook, choices: ShelfChoices): void {
  const { stock, given } = choices;
  book.putChoice('load', 'load', choices.load, 'load on the shelf', given.has('load') ? 'you' : rule, 'kg');
  putStiffness(book, 'E', stock.shelf, { of: 'the shelf' });
  const depth = book.has('D_end') ? 'D_end' : 'Ds';
  book.work('q', 'load*9.81/shelf_L', 'load, N/mm', rule, 'ratio');
  book.work('I', `${depth}*T**3/12`, 'second moment of the shelf, mm⁴', rule, 'ratio');
  book.work('sag', '5*q*shelf_L**4/(384*E*I)', 'sag of the bare shelf', rule);
  book.work('long_term', '1.5*sag', 'sag of the bare shelf in time', rule);
  book.work('limit', 'shelf_L/300', 'sag that the eye sees', rule);
  if (choices.fiddle === 'none') return;
  putStiffness(book, 'E_f', stock.fiddle, { of: 'the fiddle' });
  book.work('I_f', 'tf*fiddle_W**3/12', 'second moment of the fiddle, mm⁴', rule, 'ratio');
  book.work('sag_front', '5*(q/2)*shelf_L**4/(384*E_f*I_f)', 'sag of the front half on its fiddle', rule);
}
