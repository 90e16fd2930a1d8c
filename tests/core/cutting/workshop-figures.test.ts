import { describe, expect, test } from 'vitest';
import { solveCutting } from '#core/cutting';
import { loadGlpk } from '#solver/glpk';

const solveLp = await loadGlpk();

// The arithmetic of the rulebook's blocks D and E, through the real solver.
describe('strips from a board', () => {
  const stripsFrom = (board: number, strip: number, kerf: number) => {
    const plan = solveCutting(
      {
        kerf,
        stock: [{ id: 'board', length: 400, width: board, count: 1 }],
        parts: [{ id: 'strip', length: 400, width: strip, count: 50 }],
      },
      { solveLp, clock: () => 0, work: 500 },
    );
    return plan.layouts[0]?.placed ?? [];
  };

  test('five drawer slips of 8 come out of a 62 board with a kerf of 3, and take 52', () => {
    const slips = stripsFrom(62, 8, 3);
    expect(slips).toHaveLength(5);
    const ends = slips.map((slip) => (slip.y ?? 0) + (slip.width ?? 0));
    expect(Math.max(...ends)).toBeCloseTo(52, 9);
  });

  test.each([
    [1210, 146, 2.2, 8],
    [300, 97, 3, 3],
    [300, 98.1, 3, 2],
    [1220, 300, 3.2, 4],
    [1220, 304, 3.2, 3],
  ])('a width of %d gives strips of %d at kerf %d: %d', (board, strip, kerf, count) => {
    expect(stripsFrom(board, strip, kerf)).toHaveLength(count);
  });

  test('a trimmed sheet of 2440 × 1220 leaves 2425 × 1210', () => {
    const plan = solveCutting(
      {
        trim: { left: 10, right: 5, bottom: 10 },
        stock: [{ id: 'sheet', length: 2440, width: 1220 }],
        parts: [{ id: 'all', length: 2425, width: 1210 }],
      },
      { solveLp, clock: () => 0, work: 100 },
    );
    expect(plan.proven).toBe(true);
    expect(plan.layouts[0]?.cuts).toMatchObject({ x: 10, y: 10, length: 2425, width: 1210, part: 'all' });
  });
});
