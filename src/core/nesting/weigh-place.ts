import type { Nest, Place } from './nest.ts';
import { lineAt, lines } from './whereabouts.ts';

/** Parts of a sheet among which clashes are sought. */
export interface Others {
  list: Int32Array;
  count: number;
}

/** A rectangle of a sheet. */
export interface Patch {
  sheet: number;
  left: number;
  low: number;
  right: number;
  high: number;
}

export function noOthers(): Others {
  return { list: new Int32Array(0), count: 0 };
}

/** What the clashes of a part at a place would weigh; some value not below the loss given with the place when they weigh that much. */
export function weighPlace(nest: Nest, i: number, place: Readonly<Place>): number {
  const { shapes, clash, pose, x, y, lies, weight, all } = nest;
  const { words, sets, perX, perY } = nest.where!;
  const { box } = shapes;
  const { pose: a, sheet, x: px, y: py } = place;
  const enough = place.loss;
  const left = px + box[4 * a]!;
  const low = py + box[4 * a + 1]!;
  const right = px + box[4 * a + 2]!;
  const high = py + box[4 * a + 3]!;
  const side = 4 * lines * sheet;
  const begins = words * (side + lineAt(right, perX[sheet]!));
  const ends = words * (side + lines + lineAt(left, perX[sheet]!));
  const beginsUp = words * (side + 2 * lines + lineAt(high, perY[sheet]!));
  const endsUp = words * (side + 3 * lines + lineAt(low, perY[sheet]!));
  const row = i * all;
  let sum = 0;
  for (let w = 0; w < words; w++) {
    let bits = sets[begins + w]! & sets[ends + w]! & sets[beginsUp + w]! & sets[endsUp + w]!;
    for (; bits !== 0; bits &= bits - 1) {
      const j = 32 * w + 31 - Math.clz32(bits & -bits);
      const j4 = 4 * j;
      if (lies[j4]! >= right || lies[j4 + 2]! <= left || lies[j4 + 1]! >= high || lies[j4 + 3]! <= low)
        continue;
      if (j === i) continue;
      const heavy = weight[row + j]!;
      clash.cap[0] = (enough - sum) / heavy;
      sum += heavy * clash.measure(a, pose[j]!, x[j]! - px, y[j]! - py);
      if (sum >= enough) return sum;
    }
  }
  return sum;
}

/** The same where a part can clash with some others only. */
export function weighAmong(nest: Nest, i: number, place: Readonly<Place>, others: Readonly<Others>): number {
  const { shapes, clash, pose, x, y, lies, weight, all } = nest;
  const { list, count } = others;
  const enough = place.loss;
  const { box } = shapes;
  const { pose: a, x: px, y: py } = place;
  const left = px + box[4 * a]!;
  const low = py + box[4 * a + 1]!;
  const right = px + box[4 * a + 2]!;
  const high = py + box[4 * a + 3]!;
  const row = i * all;
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const j = list[k]!;
    const j4 = 4 * j;
    if (lies[j4]! >= right || lies[j4 + 2]! <= left || lies[j4 + 1]! >= high || lies[j4 + 3]! <= low)
      continue;
    if (j === i) continue;
    const heavy = weight[row + j]!;
    clash.cap[0] = (enough - sum) / heavy;
    sum += heavy * clash.measure(a, pose[j]!, x[j]! - px, y[j]! - py);
    if (sum >= enough) return sum;
  }
  return sum;
}

/** Gathers the other parts that come within a patch of a sheet. */
export function gatherWithin(nest: Nest, i: number, patch: Readonly<Patch>, others: Others): void {
  const { lies } = nest;
  const { words, sets, perX, perY } = nest.where!;
  const { sheet, left, low, right, high } = patch;
  const side = 4 * lines * sheet;
  const begins = words * (side + lineAt(right, perX[sheet]!));
  const ends = words * (side + lines + lineAt(left, perX[sheet]!));
  const beginsUp = words * (side + 2 * lines + lineAt(high, perY[sheet]!));
  const endsUp = words * (side + 3 * lines + lineAt(low, perY[sheet]!));
  if (others.list.length < nest.all) others.list = new Int32Array(nest.all);
  let found = 0;
  for (let w = 0; w < words; w++) {
    let bits = sets[begins + w]! & sets[ends + w]! & sets[beginsUp + w]! & sets[endsUp + w]!;
    for (; bits !== 0; bits &= bits - 1) {
      const j = 32 * w + 31 - Math.clz32(bits & -bits);
      const j4 = 4 * j;
      if (lies[j4]! >= right || lies[j4 + 2]! <= left || lies[j4 + 1]! >= high || lies[j4 + 3]! <= low)
        continue;
      if (j !== i) others.list[found++] = j;
    }
  }
  others.count = found;
}

/** Whether nothing would clash with a part at a place. */
export function isFree(nest: Nest, i: number, place: Readonly<Place>): boolean {
  const { shapes, clash, pose, x, y, lies, members } = nest;
  const { box } = shapes;
  const a = 4 * place.pose;
  const left = place.x + box[a]!;
  const low = place.y + box[a + 1]!;
  const right = place.x + box[a + 2]!;
  const high = place.y + box[a + 3]!;
  const list = members[place.sheet]!;
  clash.cap[0] = 0;
  for (let k = 0; k < nest.memberCount[place.sheet]!; k++) {
    const j = list[k]!;
    const j4 = 4 * j;
    if (lies[j4]! >= right || lies[j4 + 2]! <= left || lies[j4 + 1]! >= high || lies[j4 + 3]! <= low)
      continue;
    if (j !== i && clash.measure(place.pose, pose[j]!, x[j]! - place.x, y[j]! - place.y) > 0) return false;
  }
  return true;
}

export function fitsOn({ shapes, sheetLength, sheetWidth }: Nest, pose: number, sheet: number): boolean {
  return shapes.width[pose]! <= sheetLength[sheet]! && shapes.height[pose]! <= sheetWidth[sheet]!;
}

/** Moves a place inside its sheet; false when the pose is larger than the sheet. */
export function holdInside({ shapes, sheetLength, sheetWidth }: Nest, place: Place): boolean {
  const roomX = sheetLength[place.sheet]! - shapes.width[place.pose]!;
  const roomY = sheetWidth[place.sheet]! - shapes.height[place.pose]!;
  if (roomX < 0 || roomY < 0) return false;
  place.x = place.x < 0 ? 0 : place.x > roomX ? roomX : place.x;
  place.y = place.y < 0 ? 0 : place.y > roomY ? roomY : place.y;
  return true;
}
