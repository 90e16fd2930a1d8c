import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placePoint } from '#core/geometry';
import type { Point, Point3 } from '#core/geometry';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, DoorFrameParameters, FrameCorner, Part } from '#core/joinery';
import { evaluateFormula } from '#core/numerics';
import { contextFor, curlewOpening, doorFrame, openingShape } from '../../support/joinery-samples.ts';
import type { Corners } from '../../support/joinery-samples.ts';
import { occupies, occupiesDeep, overlaps } from '../../support/joinery-solid.ts';

const corners: readonly FrameCorner[] = [
  'rebate',
  'tongue',
  'housing-over',
  'housing-between',
  'dowel',
  'loose-tenon',
  'half-lap',
  'bridle',
  'mitre',
  'butt',
];
const flat = (corner: FrameCorner | undefined) =>
  corner === 'half-lap' || corner === 'bridle' || corner === 'mitre';

const off = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const opening: fc.Arbitrary<Corners> = fc
  .record({
    w: fc.integer({ min: 450, max: 900 }),
    h: fc.integer({ min: 900, max: 2000 }),
    x: fc.array(off(25), { minLength: 4, maxLength: 4 }),
    y: off(20),
    z: off(20),
  })
  .map(({ w, h, x, y, z }) => ({
    BL: [0, 0],
    BR: [w + (x[0] ?? 0), (x[3] ?? 0) / 2],
    TR: [w + (x[1] ?? 0), h + y],
    TL: [x[2] ?? 0, h + z],
  }));
const chosen: fc.Arbitrary<Partial<DoorFrameParameters>> = fc
  .record({
    corner: fc.constantFrom(...corners),
    mode: fc.constantFrom('square' as const, 'fitted' as const),
    sill: fc.boolean(),
    sillJoint: fc.constantFrom('tongue' as const, 'butt' as const),
    stop: fc.constantFrom('planted' as const, 'rebated' as const, 'cover' as const, 'none' as const),
    datum: fc.constantFrom('mean' as const, 'left' as const, 'right' as const, 'boat' as const),
    bulkheadMax: fc.integer({ min: 15, max: 60 }),
    thickness: fc.integer({ min: 18, max: 28 }),
    sillThickness: fc.integer({ min: 18, max: 70 }),
  })
  .map(({ thickness, ...rest }) => ({
    ...rest,
    bulkheadMin: rest.bulkheadMax,
    jambThickness: flat(rest.corner) ? 2 * thickness : thickness,
    headThickness: flat(rest.corner) ? 2 * thickness + 10 : thickness + 2,
  }));

const build = (at: Corners, parameters: Partial<DoorFrameParameters>, tilt = 0) =>
  buildPiece(doorFrame(parameters), contextFor(openingShape(at, { tilt })));
const valueOf = (built: BuiltPiece, name: string): number =>
  built.working.find((step) => step.name === name)?.value ?? NaN;

/** Points spread over a block by the low-discrepancy sequence of the plastic number; no chance involved. */
function spread(min: Point3, max: Point3, count: number): readonly Point3[] {
  const share = (i: number, step: number) => (0.437 + i * step) % 1;
  return Array.from({ length: count }, (_, i) => ({
    x: min.x + share(i, 0.8191725134) * (max.x - min.x),
    y: min.y + share(i, 0.6710436067) * (max.y - min.y),
    z: min.z + share(i, 0.5497004779) * (max.z - min.z),
  }));
}

/** Blocks of 90 mm round the corners of the frame, where the joints are. */
function cornerPoints(built: BuiltPiece, count: number): readonly Point3[] {
  const xs = built.parts.slice(0, 2).map((part) => middleOf(part).x);
  const { min, max } = built.envelope;
  const opening = Object.values(built.opening ?? {}).map((p) => p.y);
  const heights = [Math.min(...opening), Math.max(...opening)];
  return xs.flatMap((x) =>
    heights.flatMap((y) =>
      spread({ x: x - 60, y: y - 90, z: min.z }, { x: x + 60, y: y + 60, z: max.z }, count),
    ),
  );
}

function middleOf(part: Part): Point3 {
  const { length, width, thickness } = part.finished;
  const placement = part.placements[0];
  if (!placement) throw new Error('not placed');
  return placePoint(placement, { x: length / 2, y: width / 2, z: thickness / 2 });
}

/** How far a point lies inside the opening, the least over its four sides; negative outside. */
function inside(built: BuiltPiece, point: Point): number {
  const at = built.opening ?? {};
  const ring = ['BL', 'BR', 'TR', 'TL'].map((name) => at[name] ?? { x: NaN, y: NaN });
  return Math.min(
    ...ring.map((from, i) => {
      const to = ring[(i + 1) % 4] ?? from;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      return (dx * (point.y - from.y) - dy * (point.x - from.x)) / Math.hypot(dx, dy);
    }),
  );
}

describe('always:', () => {
  test('no part has a size that is not a positive number, and every placement is square', () => {
    fc.assert(
      fc.property(opening, chosen, (at, parameters) => {
        const built = build(at, parameters);
        for (const part of built.parts) {
          for (const size of [part.finished, part.cut, part.rough]) {
            for (const value of Object.values(size)) expect(value).toBeGreaterThan(0);
          }
          for (const key of ['length', 'width', 'thickness'] as const) {
            expect(part.cut[key], part.name).toBeGreaterThanOrEqual(part.finished[key]);
            expect(part.rough[key], part.name).toBeGreaterThanOrEqual(part.cut[key]);
          }
          const { xAxis: x, yAxis: y } = part.placements[0] ?? {
            xAxis: { x: 0, y: 0, z: 0 },
            yAxis: { x: 0, y: 0, z: 0 },
          };
          expect(Math.hypot(x.x, x.y, x.z)).toBeCloseTo(1, 9);
          expect(x.x * y.x + x.y * y.y + x.z * y.z).toBeCloseTo(0, 9);
        }
        if (built.parts.length === 0) expect(built.findings[0]?.severity).toBe('stop');
        for (const step of built.working) expect(Number.isFinite(step.value), step.name).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  test('every size is the working it names, and every step can be worked out again from its numbers', () => {
    fc.assert(
      fc.property(opening, chosen, (at, parameters) => {
        const built = build(at, parameters);
        for (const step of built.working) {
          if (step.formula === undefined) continue;
          const again = evaluateFormula(
            step.formula,
            Object.fromEntries(step.inputs.map((i) => [i.name, i.value])),
          );
          expect(again, step.name).toBeCloseTo(step.value, 9);
        }
        for (const part of built.parts) {
          for (const size of ['length', 'width', 'thickness'] as const) {
            const named = valueOf(built, part.working[size]);
            expect(named, `${part.name} ${size} = ${part.working[size]}`).toBeCloseTo(part.finished[size], 6);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  test('no two parts want the same wood', () => {
    fc.assert(
      fc.property(opening, chosen, (at, parameters) => {
        const built = build(at, parameters);
        expect(overlaps(built, cornerPoints(built, 150))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('the members stay in the opening, and in the depth of the lining', () => {
    fc.assert(
      fc.property(opening, chosen, (at, parameters) => {
        const built = build(at, { ...parameters, covers: 'none', stop: 'none', sillNosing: 0 });
        const depth = (parameters.bulkheadMax ?? 0) + 2;
        for (const part of built.parts.slice(0, parameters.sill ? 4 : 3)) {
          const { length, width, thickness } = part.finished;
          const ends = [0.001, 0.999];
          for (const x of ends)
            for (const y of ends)
              for (const z of ends) {
                const placement = part.placements[0];
                if (!placement) continue;
                const point = placePoint(placement, { x: x * length, y: y * width, z: z * thickness });
                expect(point.z).toBeLessThan(1);
                expect(point.z).toBeGreaterThan(1 - depth);
                if (!occupiesDeep(part, point, 0.15) && !occupies(part, point)) continue;
                if (parameters.corner === 'housing-over' && part.name === 'Head') continue;
                expect(inside(built, point), `${part.name} ${x} ${y} ${z}`).toBeGreaterThan(-0.15);
              }
        }
      }),
      { numRuns: 80 },
    );
  });

  test('jamb + clear + jamb + packing is the opening at its tightest, and likewise upright', () => {
    fc.assert(
      fc.property(opening, chosen, (at, parameters) => {
        const built = build(at, { ...parameters, mode: 'square' });
        const p = built.opening ?? {};
        const x = (name: string) => p[name]?.x ?? NaN;
        const y = (name: string) => p[name]?.y ?? NaN;
        const width = Math.min(x('BR'), x('TR')) - Math.max(x('BL'), x('TL'));
        const height = Math.min(y('TL'), y('TR')) - Math.max(y('BL'), y('BR'));
        const across = (part: Part | undefined) =>
          (flat(parameters.corner) ? part?.finished.width : part?.finished.thickness) ?? NaN;
        const [left, right, head] = built.parts;
        const sumX = across(left) + valueOf(built, 'Wc') + across(right) + 2 * 5;
        const above = parameters.corner === 'housing-between' ? 15 : 0;
        const sumY =
          valueOf(built, 'Hc') +
          across(head) +
          above +
          (parameters.sill ? (parameters.sillThickness ?? NaN) : 0) +
          5;
        expect(width - sumX).toBeGreaterThan(-1e-6);
        expect(width - sumX).toBeLessThan(0.5 + 1e-6);
        expect(height - sumY).toBeGreaterThan(-1e-6);
        expect(height - sumY).toBeLessThan(0.5 + 1e-6);
      }),
      { numRuns: 100 },
    );
  });

  test('a mirrored opening gives mirrored parts', () => {
    const swap = { left: 'right', right: 'left', mean: 'mean', boat: 'boat' } as const;
    fc.assert(
      fc.property(opening, chosen, off(0.01), (at, parameters, tilt) => {
        // Mirrored about the upright through BR, which becomes the new BL.
        const mirror = ([x, y]: readonly [number, number]): readonly [number, number] => [
          at.BR[0] - x,
          y - at.BR[1],
        ];
        const mirrored: Corners = {
          BL: mirror(at.BR),
          BR: mirror(at.BL),
          TR: mirror(at.TL),
          TL: mirror(at.TR),
        };
        const one = build(at, parameters, tilt);
        const other = build(mirrored, { ...parameters, datum: swap[parameters.datum ?? 'mean'] }, -tilt);
        expect(other.parts.length).toBe(one.parts.length);
        for (const part of one.parts) {
          const twin = other.parts.find((p) => p.name === mirrorName(part.name));
          // 0.15: an addition or slope under 0.1 is not sawn, so it may be there on one side only.
          expect(Math.abs((twin?.finished.length ?? NaN) - part.finished.length)).toBeLessThan(0.15);
          expect(twin?.finished.width).toBeCloseTo(part.finished.width, 6);
          expect(twin?.machining.length).toBe(part.machining.length);
        }
      }),
      { numRuns: 100 },
    );
  });
});

function mirrorName(name: string): string {
  return name.replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'));
}

describe('the corner of a square frame is full of wood:', () => {
  test.each(corners)('%s', (corner) => {
    const wide = flat(corner) ? { jambThickness: 45, headThickness: 60 } : {};
    const built = build(curlewOpening, { corner, mode: 'square', stop: 'none', covers: 'none', ...wide });
    const [jamb, head] = [built.parts[0], built.parts[2]];
    if (!jamb || !head) throw new Error('no parts');
    const left = valueOf(built, 'xF');
    const top = valueOf(built, 'yF') + valueOf(built, 'Fh') - (corner === 'housing-between' ? 15 : 0);
    const [tj, th] = [valueOf(built, 'tj'), valueOf(built, 'th')];
    const points = spread({ x: left, y: top - th, z: 1 - 20.4 }, { x: left + tj, y: top, z: 1 }, 3000);
    const counts = points.map((point) => Number(occupies(jamb, point)) + Number(occupies(head, point)));
    // The spline's slot is empty until the spline is in; all other corners are filled exactly once.
    const empty = counts.filter((count) => count === 0).length / counts.length;
    expect(counts.filter((count) => count > 1)).toEqual([]);
    if (corner === 'mitre') expect(empty).toBeLessThan(0.12);
    else if (corner === 'loose-tenon')
      expect(empty).toBeLessThan(0.03); // slots of tenons that are bought
    else expect(empty).toBeLessThan(0.002);
  });

  test('the panel above the head sits in its grooves and nowhere else', () => {
    const built = build(curlewOpening, {
      infill: true,
      infillOrdinates: [212, 221, 204],
      stop: 'none',
      covers: 'none',
    });
    const { min, max } = built.envelope;
    const head = valueOf(built, 'yF') + valueOf(built, 'Fh');
    const points = spread({ ...min, y: head - 30 }, { ...max, y: head + 40 }, 8000);
    expect(overlaps(built, points)).toEqual([]);
    const panel = built.parts.find((part) => part.id === 'A14');
    expect(points.some((point) => panel && occupies(panel, point) && point.y < head)).toBe(true);
  });
});
