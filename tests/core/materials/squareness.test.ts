import { describe, expect, test } from 'vitest';
import { worstOutOfSquare } from '#core/materials';

// joinery.md E1, calc block E: 2440 × 1220, 0.25 % of the diagonal (BS 1088, from memory)
describe('a sheet as it leaves the mill', () => {
  test('of 2440 × 1220 may have diagonals 6.8 apart and be 3.8 out over its width, 7.6 over its length', () => {
    const worst = worstOutOfSquare(2440, 1220);
    expect(worst.diagonalDifference).toBeCloseTo(6.8, 1);
    expect(worst.acrossWidth).toBeCloseTo(3.8, 1);
    expect(worst.overLength).toBeCloseTo(7.6, 1);
  });
});
