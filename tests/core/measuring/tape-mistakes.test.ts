import { describe, expect, test } from 'vitest';
import { matchMistakes } from '../../../src/core/measuring/mistakes.ts';

const causes = (value: number, slip: number) =>
  matchMistakes({ reading: { kind: 'distance', id: 'd', from: 'A', to: 'B', value }, value, slip });

// Test vectors beside the trade rulebook (joinery A5, E8 and E9).
describe('what a tape does to a length', () => {
  test('2.4447 too much on 640 is a tape held 5° askew', () => {
    const askew = causes(640 + 2.4447, 2.4447).find(({ id }) => id === 'E8');
    expect(askew?.words).toBe('the tape was not held square across (about 5° off)');
  });
  test('0.5926 too much on 1800 is a tape that sags by 20 in the middle', () => {
    // the vector rounds down by 0.00001 and stands at the limit of 20 below which no sag is named
    const sagging = causes(1800, 0.5926).find(({ id }) => id === 'E9');
    expect(sagging?.words).toBe('the tape sagged (about 20 mm in the middle)');
  });
});
