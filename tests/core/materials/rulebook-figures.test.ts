import { expect, test } from 'vitest';
import { diagonalTolerance, findSpecies, movement, worstOutOfSquare } from '#core/materials';

// Every value as printed in the trade rulebook's calculated examples (joinery D and E), whose arithmetic was evaluated there.
test('white oak 180 wide, flat sawn, moves by 3.94 with 6 % of moisture', () => {
  const oak = findSpecies('Oak, white');
  expect(oak?.tangential).toBe(0.00365);
  expect(movement(180, oak?.tangential ?? NaN, 6)).toBeCloseTo(3.94, 2);
});

test('the diagonals of a sheet of 2440 × 1220 are 2728 long: 6.8 is 0.25 % of that', () => {
  expect(worstOutOfSquare(2440, 1220).diagonalDifference / diagonalTolerance).toBeCloseTo(2728.0, 1);
});
