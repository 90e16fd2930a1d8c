import { describe, expect, test } from 'vitest';
import { evaluateFormula, namesInFormula, parseFormula } from '#core/numerics';

describe('formulas', () => {
  test('follow the usual precedence, and powers bind to the right', () => {
    expect(evaluateFormula('2 + 3*4', {})).toBe(14);
    expect(evaluateFormula('-2**2', {})).toBe(-4);
    expect(evaluateFormula('2**3**2', {})).toBe(512);
    expect(evaluateFormula('10 - 4 - 3', {})).toBe(3);
  });
  test('round down and up to a step without falling for a hair of error', () => {
    expect(evaluateFormula('down(0.1 + 0.2, 0.1)', {})).toBeCloseTo(0.3, 12);
    expect(evaluateFormula('up(624.5, 0.5)', {})).toBe(624.5);
  });
  test('name what they need, once and in order', () => {
    expect(namesInFormula('min(b, a) + b*pi')).toEqual(['b', 'a']);
  });
  test.each(['2 +', '(1', '1 1', 'a $ b', '* 3', 'f(1,'])('refuse %s', (text) => {
    expect(() => parseFormula(text)).toThrow();
  });
  test('do not know names that objects inherit', () => {
    expect(() => evaluateFormula('toString', {})).toThrow('unknown name');
    expect(() => evaluateFormula('constructor(1)', {})).toThrow('unknown function');
  });
});
