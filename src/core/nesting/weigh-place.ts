import type { Nest, Place } from './nest.ts';

/** What the clashes of a part at a place would weigh; some value not below `enough` when they weigh that much. */
export function weighPlace(nest: Nest, i: number, place: Readonly<Place>, enough: number): number {
  const { shapes, clash, pose, x, y, lies, weight, all, members } = nest;
  const { box } = shapes;
  const { pose: a, x: px, y: py } = place;
  const left = px + box[4 * a]!;
  const low = py + box[4 * a + 1]!;
  const right = px + box[4 * a + 2]!;
  const high = py + box[4 * a + 3]!;
  const list = members[place.sheet]!;
  const end = nest.memberCount[place.sheet]!;
  const row = i * all;
  let sum = 0;
  for (let k = 0; k < end; k++) {
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
