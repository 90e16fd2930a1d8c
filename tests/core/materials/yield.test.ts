import { describe, expect, test } from 'vitest';
import { boardForTwoLeaves, flatteningLoss } from '#core/materials';

// joinery.md, calc block D
describe('what solid timber loses', () => {
  test('a 180 wide board of cup radius 900 loses 4.5 when flattened whole', () => {
    expect(flatteningLoss(180, 900)).toBeCloseTo(4.5, 12);
  });

  test('two leaves of 6 want a board of 17.5', () => {
    expect(boardForTwoLeaves(6)).toBeCloseTo(17.5, 12);
  });
});
