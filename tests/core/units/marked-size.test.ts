import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatNumber, markSize, sayLengths, sayLengthsWithin } from '#core/units';

describe('a size in a sentence', () => {
  test('in mm is the bare figure, as on a drawing', () => {
    expect(sayLengths(`${markSize(842.25)} wide, ${markSize(3.14159, 2)} deep`, 'mm')).toBe(
      '842.3 wide, 3.14 deep',
    );
    expect(sayLengths('a gap of 3 mm', 'mm')).toBe('a gap of 3 mm');
  });

  // 25.4 mm to the inch, exact by the agreement of 1959
  test('in inches is a fraction with its unit, a small one a decimal', () => {
    expect(sayLengths(`${markSize(25.4)} wide`, 'inch')).toBe('1 in wide');
    expect(sayLengths(`${markSize(641)} × ${markSize(1746)}.`, 'inch')).toBe('25 1/4 × 68 3/4 in.');
    expect(sayLengths(`a film of ${markSize(0.3)}`, 'inch')).toBe('a film of 0.012 in');
    expect(sayLengths('700 × 300 × 12 mm or 3 mm', 'inch')).toBe('27 9/16 × 11 13/16 × 15/32 in or 1/8 in');
  });

  test('two that differ in mm differ in inches too', () => {
    const text = sayLengths(`left ${markSize(12.5)} of ${markSize(12.8)}`, 'inch');
    expect(text).toBe('left 31/64 of 1/2 in'.replace('31/64', '31/64 in'));
  });

  test('areas, angles and counts stay, and so does a name the user gave', () => {
    expect(sayLengths('5 boards at 12° hold 3 kg on 2 mm² of 7 mm³', 'inch')).toContain(
      '12° hold 3 kg on 2 mm² of 7 mm³',
    );
    expect(sayLengths('Ply 6 mm is 6 mm thick', 'inch', ['Ply 6 mm'])).toBe('Ply 6 mm is 1/4 in thick');
  });

  test('always: comes back within half a step, and leaves no mark', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 9000, noNaN: true }), (length) => {
        const text = sayLengths(markSize(length), 'inch');
        const [, whole = '0', top = '0', bottom = '1'] =
          /^(?:(\d+)(?: |(?= ?in)))?(?:(\d+)\/(\d+) )?in$/.exec(text) ?? [];
        const said = text.includes('.')
          ? Number(text.replace(' in', ''))
          : Number(whole) + Number(top) / Number(bottom);
        expect(Math.abs(said * 25.4 - length)).toBeLessThanOrEqual(25.4 / 64 + 1e-9);
        expect(sayLengths(markSize(length), 'mm')).toBe(formatNumber(length, 1));
      }),
    );
  });

  test('in data is told wherever it stands; data without any stay the same object', () => {
    const say = (text: string) => sayLengths(text, 'inch');
    const data = { id: '3 mm', list: [{ text: '25.4 mm' }, { text: 'none' }] };
    const said = sayLengthsWithin(data, say, new Set(['id']));
    expect(said).toEqual({ id: '3 mm', list: [{ text: '1 in' }, { text: 'none' }] });
    expect(said.list[1]).toBe(data.list[1]);
    expect(sayLengthsWithin(said, say, new Set(['id']))).toBe(said);
  });
});
