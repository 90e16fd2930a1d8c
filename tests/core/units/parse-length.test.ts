import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { formatLength, parseLength, type LengthSystem } from '#core/units';

function parsed(text: string, system: LengthSystem = 'mm'): number {
  const result = parseLength(text, system);
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.value;
}

describe('lengths typed', () => {
  test.each([
    ['842', 'mm', 842],
    [' 842 mm ', 'mm', 842],
    ['84.2 cm', 'mm', 842],
    ['84,2cm', 'mm', 842],
    ['1.752 m', 'inch', 1752],
    ['0,5', 'mm', 0.5],
    ['.5', 'mm', 0.5],
    ['2 140', 'mm', 2140],
    ['33 1/8 in', 'mm', 33.125 * 25.4],
    ['33-1/8"', 'mm', 33.125 * 25.4],
    ['33 1/8', 'inch', 33.125 * 25.4],
    ['33⅛', 'inch', 33.125 * 25.4],
    ['⅝″', 'mm', 0.625 * 25.4],
    ['1⁄2 inch', 'mm', 12.7],
    ['2\' 9-1/8"', 'mm', 33.125 * 25.4],
    ['2′ 9⅛″', 'mm', 33.125 * 25.4],
    ['2 ft 9 1/8 in', 'mm', 33.125 * 25.4],
    ["2'-9", 'inch', 33 * 25.4],
    ["6'", 'mm', 1828.8],
    ['33.125', 'inch', 33.125 * 25.4],
    ['-14', 'mm', -14],
    ['−3/4', 'inch', -19.05],
    ['+8', 'mm', 8],
    ['-0', 'mm', 0],
  ] as const)('%s (%s) is %d mm', (text, system, length) => {
    expect(parsed(text, system)).toBeCloseTo(length, 9);
    expect(Object.is(parsed(text, system), -0)).toBe(false);
  });

  test.each([
    '',
    '  ',
    'abc',
    '1e9',
    '12 parsecs',
    '3 5/4 in',
    '1/0',
    '--5',
    '2\' 13"',
    'NaN',
    'Infinity',
    '5 5',
    '9'.repeat(400),
  ])('"%s" is refused with a sentence that says what to type', (text) => {
    const result = parseLength(text, 'mm');
    expect(result.ok).toBe(false);
    expect(result.problems[0]?.message).toMatch(/\.$/);
    expect(result.problems[0]?.remedy).toMatch(/^Type .*\.?$/);
  });

  test.each(['1,234', '1,234.5', '1.234,5', '1,234,567'])(
    '%s may mean two lengths, so neither is assumed',
    (text) => {
      expect(parseLength(text, 'mm').problems[0]?.code).toBe('length-ambiguous');
    },
  );

  test('always: a length shown and typed again is the same within what was shown', () => {
    const shown = fc.constantFrom(
      { system: 'mm', step: 0.1 } as const,
      { system: 'mm', step: 0.5 } as const,
      { system: 'mm', step: 1 } as const,
      { system: 'inch', step: 1 / 16 } as const,
      { system: 'inch', step: 1 / 32 } as const,
      { system: 'inch', step: 1 / 64 } as const,
    );
    fc.assert(
      fc.property(
        fc.double({ min: -20000, max: 20000, noNaN: true }),
        shown,
        fc.boolean(),
        (length, format, unit) => {
          const text = formatLength(length, { ...format, unit });
          const half = (format.step * (format.system === 'mm' ? 1 : 25.4)) / 2;
          const back = parsed(text, unit ? 'mm' : format.system);
          expect(Math.abs(back - length)).toBeLessThanOrEqual(half + 1e-9);
          expect(formatLength(back, { ...format, unit })).toBe(text);
        },
      ),
    );
  });

  test('always: any text gives a finite length or a sentence', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789 .,-/\'"infcm½⅛e+') }), (text) => {
        const result = parseLength(text, 'inch');
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
        else expect(result.problems[0]?.remedy).toBeTruthy();
      }),
      { numRuns: 2000 },
    );
  });
});
