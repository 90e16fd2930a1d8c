/** Loss of a saw cut through the thickness and the planing of each of the two leaves, mm (joinery D3). */
const resawing = { kerf: 1.5, planingPerLeaf: 2 } as const;

/** Rip a board before flattening it when flattening it whole would lose more than this, mm (joinery D4). */
export const mostFlatteningLoss = 2;

/** Thickness lost on both faces together when a cupped board is flattened whole, mm: w² / (8 R), joinery D4. */
export function flatteningLoss(width: number, cupRadius: number): number {
  return width ** 2 / (8 * cupRadius);
}

/** Thickness of board, mm, that yields two leaves of a thickness when sawn through (joinery D3). */
export function boardForTwoLeaves(leaf: number): number {
  return 2 * (leaf + resawing.planingPerLeaf) + resawing.kerf;
}
