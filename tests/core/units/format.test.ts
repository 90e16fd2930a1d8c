import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { formatLength, formatMoney, formatNumber, roundDown, roundNearest, roundUp } from '#core/units';

describe('lengths shown', () => {
  test.each([
    [842, '842'],
    [842.04, '842'],
    [842.05, '842.1'],
    [-0.04, '0'],
    [1234567, '1234567'],
  ])('%d mm reads %s', (length, text) => {
    expect(formatLength(length, { system: 'mm' })).toBe(text);
  });

  test.each([
    [841.375, '33 1/8'],
    [25.4, '1'],
    [12.7, '1/2'],
    [-12.7, '-1/2'],
    [0.3, '0'],
    [25.3, '1'],
  ])('%d mm reads %s in inches', (length, text) => {
    expect(formatLength(length, { system: 'inch' })).toBe(text);
  });

  test('a thirty-second shows when it is asked for', () => {
    expect(formatLength(25.4 / 32, { system: 'inch', step: 1 / 32, unit: true })).toBe('1/32 in');
  });

  test('what is not a number is never shown', () => {
    expect(() => formatLength(NaN, { system: 'mm' })).toThrow();
    expect(() => formatNumber(Infinity)).toThrow();
  });
});

describe('numbers and money shown', () => {
  test('trailing zeros are left off and no exponent appears', () => {
    expect(formatNumber(12.5, 3)).toBe('12.5');
    expect(formatNumber(100, 2)).toBe('100');
    expect(formatNumber(1e-9, 2)).toBe('0');
    expect(formatNumber(1e21)).toBe('1000000000000000000000');
    expect(formatNumber(1.005, 2)).toBe('1.01');
  });

  test('money carries its code and as many decimals as the currency has', () => {
    expect(formatMoney(78, 'EUR')).toBe('78.00 EUR');
    expect(formatMoney(1200.4, 'JPY')).toBe('1200 JPY');
  });
});

describe('rounding by the rule of joinery 0.4', () => {
  test('a value that is a whole number of steps but for the last bit stays where it is', () => {
    expect(roundDown(0.1 + 0.2, 0.1)).toBe(0.3);
    expect(roundUp(0.1 + 0.2, 0.1)).toBe(0.3);
    expect(roundDown(624.9565, 0.5)).toBe(624.5);
    expect(roundUp(649.5, 1)).toBe(650);
    expect(roundNearest(3.26, 0.5)).toBe(3.5);
  });

  test('always: down is not above, up is not below, both within a step', () => {
    const step = fc.constantFrom(0.1, 0.5, 1, 50, 25.4 / 16);
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), step, (value, size) => {
        expect(roundDown(value, size)).toBeLessThanOrEqual(value + 1e-8 * size + 1e-9);
        expect(roundUp(value, size)).toBeGreaterThanOrEqual(value - 1e-8 * size - 1e-9);
        expect(roundUp(value, size) - roundDown(value, size)).toBeLessThanOrEqual(size * (1 + 1e-9));
      }),
    );
  });
});
