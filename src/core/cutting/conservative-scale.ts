import type { Kind, Model } from './model.ts';
import { roundBound } from './bounds.ts';

/** Sizes of one side changed so that what fits beside each other still does; fractions of the whole side. */
type Scale = (size: number) => number;

/**
 * The least cost by dual feasible functions: sizes are changed so that no plan is lost, and the changed areas added up
 * (Fekete & Schepers 2001, from memory). Valid for every style; says something for jobs with one sheet size only.
 */
export function scaledAreaBound(model: Model): number {
  const [bin] = model.bins;
  const kinds = model.kinds.filter((kind) => kind.count > 0);
  if (!bin || model.bins.length > 1 || kinds.length > mostKinds) return 0;
  const scalesX = makeScales(bin.length, sidesOf(kinds, 'length'));
  const scalesY = makeScales(bin.width, sidesOf(kinds, 'width'));
  const tables = scalesY.map((scale) => tabulate(kinds, scale));
  let most = 0;
  for (const scaleX of scalesX) {
    const xs = tabulate(kinds, scaleX);
    for (const ys of tables) most = Math.max(most, sumAreas(kinds, xs, ys));
  }
  return roundBound(model, Math.ceil(most - 1e-9) * bin.cost);
}

/** Above so many kinds the pairs of functions cost more than they tell. */
const mostKinds = 250;

function sidesOf(kinds: readonly Kind[], side: 'length' | 'width'): readonly number[] {
  const sides = kinds.flatMap((kind) => (kind.turn ? [kind.length, kind.width] : [kind[side]]));
  return [...new Set(sides)].sort((a, b) => a - b);
}

/** The functions worth trying on one side. */
function makeScales(whole: number, sides: readonly number[]): readonly Scale[] {
  const scales: Scale[] = [(size) => size / whole];
  for (let k = 1; k <= 6; k++) scales.push(roundingScale(whole, k));
  const small = sides.filter((side) => 2 * side <= whole);
  const step = Math.max(1, Math.ceil(small.length / 40));
  for (let i = 0; i < small.length; i += step) {
    const unit = small[i] as number;
    scales.push(countingScale(whole, unit));
    if (2 * (unit + 1) <= whole) scales.push(thresholdScale(whole, unit + 1));
  }
  return scales;
}

/** Multiples of 1/(k+1) stay, others go down to multiples of 1/k. */
function roundingScale(whole: number, k: number): Scale {
  return (size) => {
    const parts = size * (k + 1);
    return parts % whole === 0 ? size / whole : Math.floor(parts / whole) / k;
  };
}

/** What leaves less than `least` beside it takes the whole side; what is smaller takes nothing. */
function thresholdScale(whole: number, least: number): Scale {
  return (size) => (size > whole - least ? 1 : size < least ? 0 : size / whole);
}

/** Counts how many of size `unit` fit beside. */
function countingScale(whole: number, unit: number): Scale {
  const most = Math.floor(whole / unit);
  return (size) => {
    if (2 * size > whole) return 1 - Math.floor((whole - size) / unit) / most;
    if (2 * size === whole) return 0.5;
    return size >= unit ? 1 / most : 0;
  };
}

/** Both extents of each kind under a scale: as length or width, and as the other when turned. */
interface Table {
  readonly length: Float64Array;
  readonly width: Float64Array;
}

function tabulate(kinds: readonly Kind[], scale: Scale): Table {
  return {
    length: Float64Array.from(kinds, (kind) => scale(kind.length)),
    width: Float64Array.from(kinds, (kind) => scale(kind.width)),
  };
}

function sumAreas(kinds: readonly Kind[], xs: Table, ys: Table): number {
  let sum = 0;
  for (let i = 0; i < kinds.length; i++) {
    const kind = kinds[i] as Kind;
    let area = (xs.length[i] as number) * (ys.width[i] as number);
    if (kind.turn) area = Math.min(area, (xs.width[i] as number) * (ys.length[i] as number));
    sum += area * kind.count;
  }
  return sum;
}
