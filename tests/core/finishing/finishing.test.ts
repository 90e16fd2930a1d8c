import { describe, expect, test } from 'vitest';
import { coatedArea, coatsFor, finishLitres } from '#core/finishing';
import { circleOutline, rectangleOutline } from '#core/geometry';
import { coatingOf, coatings } from '#core/materials';

const board = { outline: rectangleOutline(1000, 500), holes: [], thickness: 18, count: 1 };
const varnish = coatings.find(({ name }) => name.startsWith('Spar varnish'))!;

describe('the area that gets a finish', () => {
  test('is both faces and the edges all round, for each copy', () => {
    const { shown, hidden } = coatedArea([board, { ...board, count: 2 }]);
    expect(hidden).toBeCloseTo(3 * 0.5, 9);
    expect(shown).toBeCloseTo(3 * (0.5 + 3 * 0.018), 9);
  });

  test('a hole takes off its faces and adds its wall', () => {
    const holed = { ...board, holes: [circleOutline({ x: 500, y: 250 }, 100)] };
    const { shown, hidden } = coatedArea([holed]);
    expect(hidden).toBeCloseTo(0.5 - Math.PI * 0.01, 6);
    // the wall by chords within 0.1 mm
    expect(shown).toBeCloseTo(0.5 - Math.PI * 0.01 + 3 * 0.018 + 2 * Math.PI * 0.1 * 0.018, 4);
  });
});

describe('litres of a finish', () => {
  // common practice, no source: one litre of spar varnish covers 10 to 14 m² once, 3 to 4 coats inside, 35 to 45 µm each,
  // and the first coat on bare wood takes 1.5 to 2 times as much
  test('lie between what the trade reckons for a thrifty and a lavish hand', () => {
    const area = { shown: 10, hidden: 0 };
    const litres = finishLitres(area, { shown: 4, hidden: 4 }, varnish);
    expect(litres).toBeGreaterThan((10 * (3 + 1.5)) / 14);
    expect(litres).toBeLessThan((10 * (3 + 2)) / 10);
  });

  test('a face that gets no coat takes none', () => {
    const area = { shown: 2, hidden: 50 };
    expect(finishLitres(area, { shown: 1, hidden: 0 }, varnish)).toBeCloseTo((2 * 1.5) / 12, 9);
    expect(finishLitres(area, { shown: 0, hidden: 0 }, varnish)).toBe(0);
  });

  // one data sheet of a tung-oil varnish: 600, 800, 1000, 1000 ft² to the US gallon for coats 1 to 4, 24.54 ft²/gal to 1 m²/l
  test('of an oil come within a tenth of what its data sheet says for four coats', () => {
    const sheet = [600, 800, 1000, 1000].reduce((sum, spread) => sum + (10 * 40.746) / spread, 0);
    const litres = finishLitres({ shown: 10, hidden: 0 }, { shown: 4, hidden: 0 }, coatingOf('oil'));
    expect(Math.abs(litres / sheet - 1)).toBeLessThan(0.1);
    expect(coatsFor(0.15, coatingOf('oil'))).toBe(4);
  });

  test('every finish says what can hurt, an oil that its rags catch fire, two-pack its isocyanates', () => {
    expect(coatings.every(({ cautions }) => cautions.length > 0)).toBe(true);
    for (const kind of ['oil', 'hard-wax-oil', 'oil-varnish'] as const)
      expect(coatingOf(kind).cautions.join(' ')).toMatch(/Oily rags/);
    expect(coatingOf('two-pack').cautions.join(' ')).toMatch(/isocyanates/);
  });

  test('the coats come from the film that gaps are reckoned with, three at least', () => {
    expect(coatsFor(0.15, varnish)).toBe(4);
    expect(coatsFor(0.04, varnish)).toBe(3);
  });
});
