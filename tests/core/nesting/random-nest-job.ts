import fc from 'fast-check';
import type { Corner, NestJob, NestPart } from '#core/nesting';

/** A star-shaped outline: corners at rising angles round a middle, some far out, some near it; sometimes a hole inside. */
const figure = fc
  .record({
    corners: fc.array(fc.double({ min: 0.35, max: 1, noNaN: true }), { minLength: 3, maxLength: 9 }),
    size: fc.integer({ min: 30, max: 220 }),
    stretch: fc.double({ min: 0.5, max: 2, noNaN: true }),
    isHoled: fc.boolean(),
    isReversed: fc.boolean(),
  })
  .map(({ corners, size, stretch, isHoled, isReversed }) => {
    const ring = corners.map((share, i): Corner => {
      const angle = (2 * Math.PI * (i + 0.3)) / corners.length;
      return [
        Math.round(10 * size * share * stretch * Math.cos(angle)) / 10,
        Math.round(10 * size * share * Math.sin(angle)) / 10,
      ];
    });
    const hole = ring.map(([x, y]): Corner => [x * 0.15, y * 0.15]);
    return {
      outline: isReversed ? [...ring].reverse() : ring,
      holes: isHoled && corners.length > 4 ? [hole] : [],
    };
  });

const part: fc.Arbitrary<Omit<NestPart, 'id'>> = fc
  .record({
    figure,
    angles: fc.constantFrom([0], [0, 180], [0, 90, 180, 270], [0, 37.5, 211], undefined),
    count: fc.integer({ min: 0, max: 4 }),
  })
  .map(({ figure: { outline, holes }, angles, count }) => ({
    ...{ outline, holes, count },
    ...(angles && { angles }),
  }));

const parts = fc
  .array(part, { minLength: 1, maxLength: 6 })
  .map((list) => list.map((each, i): NestPart => ({ ...each, id: `p${i}` })));

const sheets = fc
  .array(
    fc.record({
      length: fc.integer({ min: 250, max: 1200 }),
      width: fc.integer({ min: 250, max: 700 }),
      cost: fc.option(fc.integer({ min: 1, max: 90 }), { nil: undefined }),
      count: fc.option(fc.integer({ min: 0, max: 4 }), { nil: null, freq: 3 }),
      keepOut: fc.array(
        fc.record({
          x: fc.integer({ min: -20, max: 500 }),
          y: fc.integer({ min: -20, max: 300 }),
          length: fc.integer({ min: 5, max: 120 }),
          width: fc.integer({ min: 5, max: 90 }),
        }),
        { maxLength: 2 },
      ),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((list) =>
    list.map(({ cost, ...each }, i) => ({ ...each, ...(cost !== undefined && { cost }), id: `s${i}` })),
  );

/** Jobs on sheets with all that a job can ask for; some parts may fit nowhere. */
export const randomSheetJob: fc.Arbitrary<NestJob> = fc.record({
  gap: fc.constantFrom(0, 8, 3.2),
  margin: fc.constantFrom(0, 10, 4.5),
  stock: sheets,
  parts,
});

export const randomStripJob: fc.Arbitrary<NestJob> = fc.record({
  gap: fc.constantFrom(0, 8),
  stock: fc.integer({ min: 200, max: 900 }).map((strip) => [{ strip }]),
  parts,
});
