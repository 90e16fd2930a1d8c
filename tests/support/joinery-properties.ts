import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point3 } from '#core/geometry';
import type { BuiltPiece } from '#core/joinery';
import { spreadPoints, worked } from './joinery-boxes.ts';
import { occupies, overlaps } from './joinery-solid.ts';
import { expectPlainWords, expectSound, expectWorking } from './joinery-sound.ts';

/** A kind of piece under test: how to build it, parameters that make sense, names of numbers to be filled with nonsense. */
export interface KindUnderTest<Parameters> {
  readonly build: (parameters: Partial<Parameters>) => BuiltPiece;
  readonly sensible: fc.Arbitrary<Partial<Parameters>>;
  readonly numbers: readonly (keyof Parameters & string)[];
  readonly choices?: Readonly<Record<string, readonly unknown[]>>;
  readonly runs?: number;
}

const wild = fc.oneof(
  fc.integer({ min: -50, max: 2000 }),
  fc.constantFrom(0, NaN, Infinity, -Infinity, 1e-9, 1e12),
);

export const isStopped = (built: BuiltPiece) => built.findings.some(({ severity }) => severity === 'stop');

/** How many parts have wood at a point. */
export const countAt = (built: BuiltPiece, point: Point3) =>
  built.parts.reduce(
    (sum, part) => sum + part.placements.filter((at) => occupies(part, point, at)).length,
    0,
  );

/** The properties that hold for every kind: sound and worked out again, nonsense found out, no two parts in the same wood. */
export function testAlways<Parameters>(kind: KindUnderTest<Parameters>): void {
  const { build, sensible, numbers, choices = {}, runs = 150 } = kind;

  test('every part is a positive size, square and its machining inside it; every number can be worked out again', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        expectSound(built);
        if (built.parts.length > 0) expectWorking(built);
      }),
      { numRuns: runs },
    );
  });

  test('sizes outside all sense give findings, never a size below nothing or no number', () => {
    const any = fc.record(
      {
        ...Object.fromEntries(numbers.map((key) => [key, wild])),
        ...Object.fromEntries(
          Object.entries(choices).map(([key, values]) => [key, fc.constantFrom(...values)]),
        ),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(any, (parameters) => {
        const built = build(parameters as Partial<Parameters>);
        expectSound(built);
        expectPlainWords(built);
      }),
      { numRuns: 2 * runs },
    );
  });

  test('no two parts are in the same wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        if (isStopped(built)) return;
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 500))).toEqual([]);
      }),
      { numRuns: Math.min(runs, 60) },
    );
  });
}

/** Mass of the wood found point by point over the mass worked out; densities by material, kg/m³. */
export function massRatio(
  built: BuiltPiece,
  densities: Readonly<Record<string, number>>,
  count = 6000,
): number {
  const { min, max } = built.envelope;
  const volume = (max.x - min.x) * (max.y - min.y) * (max.z - min.z);
  const sum = spreadPoints(min, max, count).reduce((kg, point) => {
    const part = built.parts.find((one) => one.placements.some((at) => occupies(one, point, at)));
    return kg + (part ? (densities[part.material] ?? NaN) : 0);
  }, 0);
  return ((sum / count) * volume) / 1e9 / worked(built, 'mass');
}
