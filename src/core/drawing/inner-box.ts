import { boxOfOutline, isInside } from '#core/geometry';
import type { Box, Outline } from '#core/geometry';

/** Cells along each side of the grid in which room is sought. */
const cells = 28;

/** About the largest upright box inside an outline, to write in; its middle cell when the outline is thinner than a cell. */
export function innerBox(outline: Outline): Box {
  const { minX, minY, maxX, maxY } = boxOfOutline(outline);
  const [dx, dy] = [(maxX - minX) / cells, (maxY - minY) / cells];
  const isFree = (i: number, j: number): boolean => isInside({ x: minX + i * dx, y: minY + j * dy }, outline);
  const corners = range(cells + 1).map((j) => range(cells + 1).map((i) => isFree(i, j)));
  const isWhole = (i: number, j: number): boolean =>
    [corners[j], corners[j + 1]].every((row) => row?.[i] && row[i + 1]);
  // for each row of cells how many lie free one over the other up to it
  const heights: number[] = range(cells).map(() => 0);
  let best = { area: 0, from: cells / 2, to: cells / 2 + 1, low: cells / 2, high: cells / 2 + 1 };
  for (let j = 0; j < cells; j++) {
    for (let i = 0; i < cells; i++) heights[i] = isWhole(i, j) ? (heights[i] ?? 0) + 1 : 0;
    for (const found of boxesUnder(heights, j + 1))
      if (found.area * dx * dy > best.area * dx * dy) best = found;
  }
  return {
    minX: minX + best.from * dx,
    maxX: minX + best.to * dx,
    minY: minY + best.low * dy,
    maxY: minY + best.high * dy,
  };
}

function boxesUnder(heights: readonly number[], high: number) {
  return heights.flatMap((_, from) => {
    let least = Infinity;
    return heights.slice(from).map((height, k) => {
      least = Math.min(least, height);
      return { area: least * (k + 1), from, to: from + k + 1, low: high - least, high };
    });
  });
}

function range(count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => i);
}
