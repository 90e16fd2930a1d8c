import { describe, expect, test } from 'vitest';
import { drawReadingSketch, drawSurvey } from '#core/drawing';
import type { Mark } from '#core/drawing';
import { adjustSurvey, makeOpeningReading } from '#core/measuring';
import type { Reading } from '#core/measuring';

const distances = { wb: 641, wt: 635, hl: 1746, hr: 1752, d1: 1868, d2: 1855 } as const;
const readings: readonly Reading[] = [
  ...Object.entries(distances).map(([key, value]) =>
    makeOpeningReading(key as keyof typeof distances, value),
  ),
  { id: 'b1', kind: 'bow', from: 'BL', to: 'TL', value: 3 },
  { id: 'a1', kind: 'angle', at: 'BL', from: 'BR', to: 'TL', value: 89.5 },
  { id: 'o1', kind: 'offset', point: 'TR', from: 'BL', to: 'BR', value: 1752 },
];
/** Every number of a drawing. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}
const textsOf = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

describe('bows, angles and offsets', () => {
  test('stand in the survey with their values', () => {
    const survey = { seenFrom: 'from the saloon', readings };
    const { adjustment, shape } = adjustSurvey(survey);
    const texts = textsOf(drawSurvey({ ...survey, adjustment, shape, width: 180 }).marks);
    expect(texts).toContain('b1 +3');
    expect(texts).toContain('a1 89.5°');
    expect(texts).toContain('o1  1752');
  });

  test.each(readings.slice(-3).map((reading) => [reading.kind, reading] as const))(
    'a sketch shows where the %s is taken',
    (_, reading) => {
      const { marks } = drawReadingSketch(reading);
      const bold = marks.flatMap((mark) =>
        mark.kind === 'text' && mark.weight === 'bold' ? [mark.text] : [],
      );
      const named = { b1: ['BL', 'TL'], a1: ['BL', 'BR', 'TL'], o1: ['BL', 'BR', 'TR'] }[reading.id] ?? [];
      expect(bold.sort()).toEqual(named);
      expect(
        marks.some((mark) => mark.kind === 'path' && mark.link === undefined && mark.pen === 'cut'),
      ).toBe(true);
    },
  );
});

test.each(['constructor', 'toString', '__proto__'])(
  'a point called %s, as every object has one, is drawn or left out, never at no place',
  (to) => {
    const odd: Reading = { id: 'odd', kind: 'distance', from: 'BL', to, value: 500 };
    for (const taken of [[...readings, odd], [odd]]) {
      const survey = { seenFrom: 'from the saloon', readings: taken };
      const drawn = drawSurvey({ ...survey, ...adjustSurvey(survey), width: 180 });
      expect(numbersIn(drawn).every(Number.isFinite)).toBe(true);
    }
    expect(numbersIn(drawReadingSketch(odd)).every(Number.isFinite)).toBe(true);
  },
);
