import { putPart, weightedLossOf } from './losses.ts';
import { copyPlace, emptyPlace } from './nest.ts';
import type { Nest, Place } from './nest.ts';
import { fitsOn, gatherWithin, holdInside, noOthers, weighAmong, weighPlace } from './weigh-place.ts';
import type { Patch } from './weigh-place.ts';

/** How hard a place is sought. */
export interface Seeking {
  /** Places tried anywhere, and near where the part lies. */
  readonly wide: number;
  readonly near: number;
  /** Places tried with a corner on a corner of another part, or in a corner of the sheet. */
  readonly matched: number;
  /** So many of the best are refined. */
  readonly kept: number;
}

/** Steps of the two refinements as shares of the part's smaller extent: first step and the one to stop below. */
const coarse = { from: 0.25, to: 0.02 } as const;
const fine = { from: 0.01, to: 0.001 } as const;
/** How far from the part a near place is, as a share of its extents either way. */
const nearby = 0.25;
/** More sheets than this are not sampled any more than so many. */
const mostWidened = 8;

/** A tool that seeks a better place for a part and puts it there; it keeps its scratch memory. */
export function makePlacer(nest: Nest, seeking: Seeking): (i: number) => void {
  const { shapes, random, sheet } = nest;
  const { width, height } = shapes;
  const best: Place[] = Array.from({ length: seeking.kept }, emptyPlace);
  const trial = emptyPlace();

  /** Weighs the trial and puts it among the best found. */
  const consider = (i: number): void => {
    trial.loss = best[best.length - 1]!.loss;
    trial.loss = weighPlace(nest, i, trial);
    const at = best.findIndex((place) => trial.loss < place.loss);
    if (at < 0) return;
    const spare = best.pop()!;
    copyPlace(trial, spare);
    best.splice(at, 0, spare);
  };
  const tryAnywhere = (i: number): void => {
    if (!chooseSheetAndPose(nest, i, trial)) return;
    trial.x = random.next() * (nest.sheetLength[trial.sheet]! - width[trial.pose]!);
    trial.y = random.next() * (nest.sheetWidth[trial.sheet]! - height[trial.pose]!);
    consider(i);
  };
  const tryMatched = (i: number): void => {
    if (chooseSheetAndPose(nest, i, trial) && matchCorners(nest, i, trial)) consider(i);
  };
  const tryNear = (i: number): void => {
    if (placeNear(nest, i, trial)) consider(i);
  };

  return (i) => {
    nest.moves++;
    const current = weightedLossOf(nest, i);
    const isHomeless = sheet[i]! < 0;
    for (const place of best) place.loss = Infinity;
    if (!isHomeless) for (let k = 0; k < seeking.near; k++) tryNear(i);
    const wide = seeking.wide * (0.5 + 0.5 * Math.min(nest.sheets, mostWidened));
    for (let k = 0; k < wide; k++) tryAnywhere(i);
    for (let k = 0; k < seeking.matched; k++) tryMatched(i);
    for (const place of best) if (place.loss < Infinity) refine(nest, i, place, coarse);
    const found = best.reduce((a, b) => (b.loss < a.loss ? b : a));
    if (found.loss === Infinity) return;
    if (found.loss > 0) refine(nest, i, found, fine);
    if (found.loss < current || isHomeless) putPart(nest, i, found);
  };
}

/** A place near where a part lies, as it is turned or otherwise; false when there is none. */
function placeNear(nest: Nest, i: number, place: Place): boolean {
  const { shapes, random, source, pose, sheet, x, y } = nest;
  const { width, height, firstPose } = shapes;
  const from = pose[i]!;
  const first = firstPose[source[i]!]!;
  const end = firstPose[source[i]! + 1]!;
  place.pose = random.next() < 0.5 ? from : first + Math.floor(random.next() * (end - first));
  place.sheet = sheet[i]!;
  const offX = 0.5 + (2 * random.next() - 1) * nearby;
  const offY = 0.5 + (2 * random.next() - 1) * nearby;
  place.x = x[i]! + width[from]! * offX - width[place.pose]! / 2;
  place.y = y[i]! + height[from]! * offY - height[place.pose]! / 2;
  return holdInside(nest, place);
}

/** Lays a corner of the part on a corner of another on the sheet, or the part into a corner of the sheet; false where it sticks out. */
function matchCorners(nest: Nest, i: number, place: Place): boolean {
  const { shapes, random } = nest;
  const { corners, cornerStart, width, height } = shapes;
  const count = nest.memberCount[place.sheet]!;
  const other = count === 0 ? i : nest.members[place.sheet]![Math.floor(random.next() * count)]!;
  if (other === i) {
    place.x = random.next() < 0.5 ? 0 : nest.sheetLength[place.sheet]! - width[place.pose]!;
    place.y = random.next() < 0.5 ? 0 : nest.sheetWidth[place.sheet]! - height[place.pose]!;
    return true;
  }
  const pick = (pose: number) => {
    const first = cornerStart[pose]!;
    return 2 * (first + Math.floor(random.next() * (cornerStart[pose + 1]! - first)));
  };
  const own = pick(place.pose);
  const its = pick(nest.pose[other]!);
  place.x = nest.x[other]! + corners[its]! - corners[own]!;
  place.y = nest.y[other]! + corners[its + 1]! - corners[own + 1]!;
  return (
    place.x >= 0 &&
    place.y >= 0 &&
    place.x + width[place.pose]! <= nest.sheetLength[place.sheet]! &&
    place.y + height[place.pose]! <= nest.sheetWidth[place.sheet]!
  );
}

/** Some pose of the part on some sheet that takes it; false when none was found in a few tries. */
function chooseSheetAndPose(nest: Nest, i: number, place: Place): boolean {
  const { shapes, random, source, sheets } = nest;
  const first = shapes.firstPose[source[i]!]!;
  const end = shapes.firstPose[source[i]! + 1]!;
  for (let tries = 0; tries < 8; tries++) {
    place.sheet = sheets === 1 ? 0 : Math.floor(random.next() * sheets);
    place.pose = first + Math.floor(random.next() * (end - first));
    if (fitsOn(nest, place.pose, place.sheet)) return true;
  }
  return false;
}

const probe = emptyPlace();
const step = { x: 0, y: 0 };
/** The parts round the place being refined: none else is met while it stays within the span they were gathered for. */
const around = noOthers();
const patch: Patch = { sheet: 0, left: 0, low: 0, right: 0, high: 0 };

/**
 * Walks a place downhill: a step each way along an axis or a diagonal chosen by chance, longer after a success, halved
 * after none, until the step is short.
 */
function refine(
  nest: Nest,
  i: number,
  place: Place,
  steps: { readonly from: number; readonly to: number },
): void {
  const { random, shapes } = nest;
  const size = Math.min(shapes.width[place.pose]!, shapes.height[place.pose]!);
  const shortest = size * steps.to;
  let reach = size * steps.from;
  let centreX = Infinity;
  let centreY = Infinity;
  let span = 0;
  while (reach >= shortest && place.loss > 0) {
    if (Math.abs(place.x - centreX) + reach > span || Math.abs(place.y - centreY) + reach > span) {
      centreX = place.x;
      centreY = place.y;
      span = Math.max(2 * reach, 0.1 * size);
      gatherRound(nest, i, place, span);
    }
    const way = Math.floor(random.next() * 4);
    step.x = way === 1 ? 0 : way === 3 ? -reach : reach;
    step.y = way === 0 ? 0 : reach;
    reach *= tryStep(nest, i, place, 1) || tryStep(nest, i, place, -1) ? 1.1 : 0.5;
  }
}

/** Gathers the parts that one meets no further than a distance from a place. */
function gatherRound(nest: Nest, i: number, place: Readonly<Place>, distance: number): void {
  const { box } = nest.shapes;
  const p = 4 * place.pose;
  patch.sheet = place.sheet;
  patch.left = place.x + box[p]! - distance;
  patch.low = place.y + box[p + 1]! - distance;
  patch.right = place.x + box[p + 2]! + distance;
  patch.high = place.y + box[p + 3]! + distance;
  gatherWithin(nest, i, patch, around);
}

/** Moves a place by a step, forwards or back, if it clashes less there. */
function tryStep(nest: Nest, i: number, place: Place, way: 1 | -1): boolean {
  probe.pose = place.pose;
  probe.sheet = place.sheet;
  probe.x = place.x + way * step.x;
  probe.y = place.y + way * step.y;
  if (!holdInside(nest, probe) || (probe.x === place.x && probe.y === place.y)) return false;
  probe.loss = place.loss;
  probe.loss = weighAmong(nest, i, probe, around);
  if (probe.loss >= place.loss) return false;
  copyPlace(probe, place);
  return true;
}
