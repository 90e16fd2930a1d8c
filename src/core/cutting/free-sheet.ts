import type { Bin, Model } from './model.ts';

/** A rectangle in whole units from the corner of the usable stock, a kerf added to its extents. */
export interface Space {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A part where it lies. */
export interface Placing extends Space {
  readonly kind: number;
  readonly turned: boolean;
}

/** A sheet on which parts lie beside each other without a tree of cuts. Never changed, only replaced. */
export interface FreeSheet {
  readonly bin: Bin;
  readonly placings: readonly Placing[];
  /** The largest rectangles that hold nothing; they overlap. */
  readonly spaces: readonly Space[];
  readonly usedArea: number;
}

/** A sheet with given parts on it. */
export function laySheet(model: Model, bin: Bin, placings: readonly Placing[]): FreeSheet {
  let spaces: readonly Space[] = [{ x: 0, y: 0, length: bin.length, width: bin.width }];
  for (const block of blocksOf(model, bin)) spaces = takeSpace(spaces, block);
  for (const placing of placings) spaces = takeSpace(spaces, placing);
  return {
    bin,
    placings,
    spaces,
    usedArea: placings.reduce((sum, each) => sum + each.length * each.width, 0),
  };
}

/** Keep-outs as parts see them: a part's kerf may reach into one, the part may not. */
function blocksOf(model: Model, bin: Bin): readonly Space[] {
  return bin.blocks.map((block) => {
    const x = Math.min(block.x + model.kerfX, block.right - 1);
    const y = Math.min(block.y + model.kerfY, block.top - 1);
    return { x, y, length: block.right - x, width: block.top - y };
  });
}

/** The same sheet with one part more. */
export function addPlacing(sheet: FreeSheet, placing: Placing): FreeSheet {
  return {
    bin: sheet.bin,
    placings: [...sheet.placings, placing],
    spaces: takeSpace(sheet.spaces, placing),
    usedArea: sheet.usedArea + placing.length * placing.width,
  };
}

/** What remains of the spaces when one rectangle is taken: up to four of each it meets, none inside another. */
export function takeSpace(spaces: readonly Space[], taken: Space): readonly Space[] {
  const kept: Space[] = [];
  const cut: Space[] = [];
  for (const space of spaces) {
    if (meets(space, taken)) splitAround(cut, space, taken);
    else kept.push(space);
  }
  const untouched = kept.length;
  cut.forEach((space, i) => {
    const isInner =
      kept.some((other, k) => k < untouched && holds(other, space)) ||
      cut.some((other, k) => k !== i && holds(other, space) && (k < i || !holds(space, other)));
    if (!isInner) kept.push(space);
  });
  return kept;
}

function meets(a: Space, b: Space): boolean {
  return a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
}

function holds(a: Space, b: Space): boolean {
  return a.x <= b.x && a.y <= b.y && a.x + a.length >= b.x + b.length && a.y + a.width >= b.y + b.width;
}

function splitAround(into: Space[], space: Space, taken: Space): void {
  const right = space.x + space.length;
  const top = space.y + space.width;
  const takenRight = taken.x + taken.length;
  const takenTop = taken.y + taken.width;
  if (taken.x > space.x) into.push({ ...space, length: taken.x - space.x });
  if (takenRight < right) into.push({ ...space, x: takenRight, length: right - takenRight });
  if (taken.y > space.y) into.push({ ...space, width: taken.y - space.y });
  if (takenTop < top) into.push({ ...space, y: takenTop, width: top - takenTop });
}
