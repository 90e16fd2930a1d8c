import { across, along } from './direction.ts';
import type { Direction, Limits } from './direction.ts';

export interface Block {
  readonly x: number;
  readonly y: number;
  readonly right: number;
  readonly top: number;
}

/** A rectangle of the sheet free of keep-outs, kerf added to its extents; parts are laid into it. */
export interface Piece {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  /** Direction and stage of the cut that freed it; 0 when it is the whole sheet. */
  readonly direction: Direction | 0;
  readonly stage: number;
}

/** The cuts that free the pieces: leaves name a piece, or nothing where the keep-out lies. */
export type Frame =
  | { readonly piece: number }
  | { readonly waste: true }
  | { readonly direction: Direction; readonly at: number; readonly low: Frame; readonly high: Frame };

export interface SheetPieces {
  readonly pieces: readonly Piece[];
  readonly frame: Frame;
}

interface Sheet {
  readonly length: number;
  readonly width: number;
  readonly blocks: readonly Block[];
  readonly kerfX: number;
  readonly kerfY: number;
  readonly limits: Limits;
}

interface Region {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly direction: Direction | 0;
  readonly stage: number;
}

/** Ways kept of those tried: each is one more for the search to draw from. */
const mostWays = 16;
/** Ways tried for one keep-out: each order of its four sides. Fewer where there are many. */
const mostTries = 256;

/** The ways to saw a sheet so that every keep-out lies in waste, at most sixteen; the whole sheet when there is nothing to avoid. */
export function planPieces(sheet: Sheet): readonly SheetPieces[] {
  const whole: Region = { x: 0, y: 0, length: sheet.length, width: sheet.width, direction: 0, stage: 0 };
  const blocks = sheet.blocks.filter((block) => isInside(block, whole, sheet));
  if (blocks.length === 0) return [{ pieces: [whole], frame: { piece: 0 } }];
  const tries = Math.max(mostWays, Math.floor(mostTries / blocks.length));
  const seen = new Map<string, SheetPieces>();
  for (let way = 0; way < tries; way++) {
    const plan = freePieces(whole, blocks, sheet, way);
    seen.set(JSON.stringify(plan.pieces), plan);
  }
  const plans = [...seen.values()];
  return plans
    .filter(
      (plan, at) =>
        !plans.some((rival, i) => i !== at && holds(rival, plan) && (i < at || !holds(plan, rival))),
    )
    .sort((a, b) => worthOf(b) - worthOf(a))
    .slice(0, mostWays);
}

/** Whether each piece of one way lies in a piece of another that asks no more of the saw. */
function holds(outer: SheetPieces, inner: SheetPieces): boolean {
  return inner.pieces.every((a) =>
    outer.pieces.some(
      (b) =>
        b.direction === a.direction &&
        b.stage <= a.stage &&
        b.x <= a.x &&
        b.y <= a.y &&
        b.x + b.length >= a.x + a.length &&
        b.y + b.width >= a.y + a.width,
    ),
  );
}

/** Large pieces before small ones. */
function worthOf({ pieces }: SheetPieces): number {
  return pieces.reduce((sum, { length, width }) => sum + (length * width) ** 1.25, 0);
}

function isInside(block: Block, region: Region, sheet: Sheet): boolean {
  return (
    block.x < region.x + region.length - sheet.kerfX &&
    block.right > region.x &&
    block.y < region.y + region.width - sheet.kerfY &&
    block.top > region.y
  );
}

/** Follows one way of sawing; `way` holds, digit by digit in base 4, the side cut off first at each step. */
function freePieces(whole: Region, blocks: readonly Block[], sheet: Sheet, way: number): SheetPieces {
  const pieces: Piece[] = [];
  let digits = way;
  const draw = () => {
    const digit = digits % 4;
    // digits that are used up go on as others, so that many keep-outs get many orders
    digits = Math.floor(digits / 4) + (blocks.length === 1 ? 0 : way * 7);
    return digit;
  };
  const free = (region: Region, left: readonly Block[]): Frame => {
    if (region.length <= sheet.kerfX || region.width <= sheet.kerfY) return { waste: true };
    const inside = left.filter((block) => isInside(block, region, sheet));
    if (inside.length === 0) {
      pieces.push(region);
      return { piece: pieces.length - 1 };
    }
    const block = inside[(inside.length === 1 ? 0 : draw()) % inside.length] as Block;
    const first = draw();
    for (let turn = 0; turn < 4; turn++) {
      const cut = cutBeside(region, block, (first + turn) % 4, sheet);
      if (!cut) continue;
      const low = free(cut.low, inside);
      return { direction: cut.direction, at: cut.at, low, high: free(cut.high, inside) };
    }
    return { waste: true };
  };
  const frame = free(whole, blocks);
  return { pieces, frame };
}

/** Cuts a region beside a block: side 0 below, 1 above, 2 left, 3 right. Null when nothing would come off. */
function cutBeside(region: Region, block: Block, side: number, sheet: Sheet) {
  const direction: Direction = side < 2 ? along : across;
  const [start, size, kerf] =
    direction === along ? [region.y, region.width, sheet.kerfY] : [region.x, region.length, sheet.kerfX];
  const edge = [block.y, block.top, block.x, block.right][side] ?? 0;
  const take = side % 2 === 0 ? edge - start + kerf : Math.max(edge - start, kerf + 1);
  // what is no wider than the saw beyond the cut becomes dust, the keep-out in it too
  if (take <= kerf || take >= size || (side % 2 === 1 && take >= size - kerf)) return null;
  if (!allowsCut(region, direction, take, sheet)) return null;
  const stage = region.direction === direction ? region.stage : region.stage + 1;
  const rest = { direction, stage };
  const parts =
    direction === along
      ? {
          low: { ...region, width: take, ...rest },
          high: { ...region, y: region.y + take, width: size - take, ...rest },
        }
      : {
          low: { ...region, length: take, ...rest },
          high: { ...region, x: region.x + take, length: size - take, ...rest },
        };
  return { direction, at: take, ...parts };
}

function allowsCut(region: Region, direction: Direction, take: number, sheet: Sheet): boolean {
  const { limits } = sheet;
  const stage = region.direction === direction ? region.stage : region.stage + 1;
  if (stage > limits.maxStages) return false;
  if (region.stage === 0 && limits.firstCut !== null && limits.firstCut !== direction) return false;
  const [kerf, size, line] =
    direction === along
      ? [sheet.kerfY, region.width, region.length - sheet.kerfX]
      : [sheet.kerfX, region.length, region.width - sheet.kerfY];
  return line <= limits.maxCut && Math.min(take - kerf, Math.max(0, size - take - kerf)) <= limits.maxRip;
}
