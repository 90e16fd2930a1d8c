import { putPart } from './losses.ts';
import { copyPlace, emptyPlace } from './nest.ts';
import type { Nest, Place } from './nest.ts';
import { fitsOn, holdInside, isFree } from './weigh-place.ts';

/** Lays a part clash-free on a sheet, as far left and then as low as some tries find; false when they find no room. */
export function layPart(nest: Nest, i: number, sheet: number, tries: number): boolean {
  const best = findRoom(nest, i, sheet, tries);
  if (!best) return false;
  putPart(nest, i, best);
  return true;
}

function findRoom(nest: Nest, i: number, sheet: number, tries: number): Place | null {
  const { shapes, random } = nest;
  const best = emptyPlace();
  const trial = emptyPlace();
  trial.sheet = sheet;
  const first = shapes.firstPose[nest.source[i]!]!;
  const poses = shapes.firstPose[nest.source[i]! + 1]! - first;
  let reach = Infinity;
  for (let k = 0; k < tries; k++) {
    trial.pose = first + Math.floor(random.next() * poses);
    if (!fitsOn(nest, trial.pose, sheet)) continue;
    const width = shapes.width[trial.pose]!;
    const roomY = nest.sheetWidth[sheet]! - shapes.height[trial.pose]!;
    trial.x = k < 4 ? 0 : random.next() * Math.min(nest.sheetLength[sheet]! - width, reach - width);
    trial.y = k < 8 ? (k % 2) * roomY : random.next() * roomY;
    if (!holdInside(nest, trial) || !isFree(nest, i, trial)) continue;
    slide(nest, i, trial);
    if (trial.x + width >= reach) continue;
    reach = trial.x + width;
    copyPlace(trial, best);
  }
  return reach < Infinity ? best : null;
}

/** Slides a free place left and down in halving steps while it stays free. */
function slide(nest: Nest, i: number, place: Place): void {
  const { shapes } = nest;
  const size = Math.max(shapes.width[place.pose]!, shapes.height[place.pose]!);
  for (let step = size; step > size / 300; step /= 2) {
    let moved = true;
    for (let k = 0; moved && k < 50; k++) moved = slideBy(nest, i, place, step);
  }
}

function slideBy(nest: Nest, i: number, place: Place, step: number): boolean {
  const { x, y } = place;
  place.x = Math.max(0, x - step);
  if (place.x !== x && isFree(nest, i, place)) return true;
  place.x = x;
  place.y = Math.max(0, y - step);
  if (place.y !== y && isFree(nest, i, place)) return true;
  place.y = y;
  return false;
}

/** Parts from the bulkiest down. */
export function byBulk(nest: Nest): number[] {
  const { shapes, source } = nest;
  const size = (i: number) => {
    const pose = shapes.firstPose[source[i]!]!;
    return shapes.bulk[pose]! ** 2 * shapes.span[pose]!;
  };
  return Array.from({ length: nest.count }, (_, i) => i).sort((a, b) => size(b) - size(a) || a - b);
}
