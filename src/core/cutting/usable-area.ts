import type { Block } from './keep-out.ts';
import type { Bin, Model } from './model.ts';

/**
 * The area of a piece of stock that parts and the kerf beside them can cover, square grid units: what no part can cover
 * without lying on a keep-out is taken off.
 */
export function usableArea({ kerfX, kerfY }: Model, bin: Bin): number {
  // a part's own kerf may lie in a keep-out, so that low and left of it one kerf of the keep-out still counts
  const lost = bin.blocks.map(({ x, y, right, top }) => ({
    x: Math.max(0, x + kerfX),
    y: Math.max(0, y + kerfY),
    right: Math.min(bin.length, right),
    top: Math.min(bin.width, top),
  }));
  return bin.area - unionArea(lost.filter((block) => block.x < block.right && block.y < block.top));
}

function unionArea(blocks: readonly Block[]): number {
  const xs = [...new Set(blocks.flatMap(({ x, right }) => [x, right]))].sort((a, b) => a - b);
  let area = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    const [from, to] = [xs[i] as number, xs[i + 1] as number];
    const across = blocks.filter(({ x, right }) => x <= from && right >= to);
    area += (to - from) * coveredWidth(across);
  }
  return area;
}

function coveredWidth(blocks: readonly Block[]): number {
  let covered = 0;
  let reached = -Infinity;
  for (const { y, top } of [...blocks].sort((a, b) => a.y - b.y)) {
    covered += Math.max(0, top - Math.max(y, reached));
    reached = Math.max(reached, top);
  }
  return covered;
}
