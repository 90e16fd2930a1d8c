import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placePoint } from '#core/geometry';
import { buildPiece } from '#core/joinery';
import type { BuiltPiece, CabinetFrontParameters, Machining, Part } from '#core/joinery';
import { boxContext, cabinetFront, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { openingShape } from '../../support/joinery-samples.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';

const joints = ['loose-tenon', 'stub-tenon', 'half-lap', 'dowel', 'butt'] as const;

const sensible: fc.Arbitrary<Partial<CabinetFrontParameters>> = fc
  .record({
    columns: fc.integer({ min: 1, max: 3 }),
    rows: fc.integer({ min: 1, max: 5 }),
    cellWidth: fc.integer({ min: 180, max: 420 }),
    cellHeight: fc.integer({ min: 110, max: 240 }),
    joint: fc.constantFrom(...joints),
    grading: fc.constantFrom('equal' as const, 'arithmetic' as const, 'geometric' as const),
    step: fc.integer({ min: 0, max: 20 }),
    ratio: fc.constantFrom(1, 1.05, 1.12),
    fronts: fc.constantFrom('inset' as const, 'overlay' as const),
    overlay: fc.integer({ min: 5, max: 9 }),
    stileWidth: fc.integer({ min: 36, max: 60 }),
    midRail: fc.integer({ min: 26, max: 40 }),
    grain: fc.constantFrom('vertical' as const, 'horizontal' as const),
    continuous: fc.constantFrom('none' as const, 'tight' as const, 'true' as const),
    closed: fc.array(fc.constantFrom('drawer' as const, 'door' as const, 'open' as const), {
      minLength: 15,
      maxLength: 15,
    }),
  })
  .map(({ cellWidth, cellHeight, closed, ...rest }) => ({
    ...rest,
    width: rest.columns * cellWidth + (rest.columns + 1) * rest.stileWidth,
    height: rest.rows * cellHeight + 80 + (rest.rows - 1) * rest.midRail,
    cells: Array.from({ length: rest.rows }, (_, r) =>
      closed.slice(r * rest.columns, (r + 1) * rest.columns),
    ),
  }));

const build = (parameters: Partial<CabinetFrontParameters>): BuiltPiece =>
  buildPiece(cabinetFront(parameters), boxContext());

const frameOf = (built: BuiltPiece): readonly Part[] =>
  built.parts.filter((part) => /stile|rail/i.test(part.name));

/** Where a recess of a part lies in the frame of the piece. */
function placedBox(part: Part, one: Machining) {
  const placement = part.placements[0];
  if (one.kind !== 'recess' || !placement) throw new Error('not a placed recess');
  const ends = [placePoint(placement, one.box.min), placePoint(placement, one.box.max)];
  const of = (axis: 'x' | 'y' | 'z') => ends.map((p) => p[axis]).sort((a, b) => a - b);
  return { x: of('x'), y: of('y'), z: of('z') };
}

describe('always:', () => {
  test('every part is a positive size, square and its machining inside it, and every answer of nothing has its stop', () => {
    fc.assert(
      fc.property(sensible, (parameters) => expectSound(build(parameters))),
      { numRuns: 200 },
    );
  });

  test('sizes outside all sense give findings, never a size below nothing or no number', () => {
    const wild = fc.oneof(
      fc.integer({ min: -50, max: 2000 }),
      fc.constantFrom(0, NaN, Infinity, -Infinity, 1e-9, 1e12, 0.5),
    );
    const keys = [
      'width',
      'height',
      'columns',
      'rows',
      'stileWidth',
      'midRail',
      'thickness',
      'step',
      'ratio',
      'jointLength',
      'overlay',
      'gap',
    ];
    const any = fc.record({
      ...Object.fromEntries(keys.map((key) => [key, fc.option(wild, { nil: undefined, freq: 2 })])),
      grading: fc.constantFrom(
        'equal' as const,
        'arithmetic' as const,
        'geometric' as const,
        'given' as const,
      ),
      heights: fc.array(wild, { maxLength: 5 }),
      joint: fc.constantFrom(...joints),
    });
    fc.assert(
      fc.property(any, (parameters) => {
        const kept = Object.entries(parameters).filter(([, value]) => value !== undefined);
        expectSound(build(Object.fromEntries(kept)));
      }),
      { numRuns: 300 },
    );
  });

  test('every size is the working it names, and every step can be worked out again from its numbers', () => {
    fc.assert(
      fc.property(sensible, (parameters) => expectWorking(build(parameters))),
      { numRuns: 100 },
    );
  });

  test('members and openings add up to the width and the height', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const [m, n] = [worked(built, 'm'), worked(built, 'n')];
        expect(m * worked(built, 'wo') + (m + 1) * worked(built, 'ws')).toBeCloseTo(parameters.width ?? 0, 9);
        const rows = Array.from({ length: n }, (_, i) => worked(built, `h${i + 1}`));
        const rails = worked(built, 'wt') + worked(built, 'wb') + (n > 1 ? (n - 1) * worked(built, 'wm') : 0);
        expect(rows.reduce((sum, h) => sum + h, rails)).toBeCloseTo(parameters.height ?? 0, 9);
        expect(built.envelope.max.x - built.envelope.min.x).toBeGreaterThanOrEqual(
          (parameters.width ?? 0) - 1e-9,
        );
      }),
      { numRuns: 100 },
    );
  });

  test('no two parts are in the same wood', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, columns: 2, cells: [] });
        const { min, max } = built.envelope;
        const rails = frameOf(built).filter((part) => part.name.includes('rail') || part.name === 'Rail');
        const around = rails.flatMap((part) =>
          part.placements.flatMap((at) => {
            const low = { x: min.x, y: at.origin.y - part.finished.width - 25, z: -worked(built, 'T') };
            return spreadPoints(low, { x: max.x, y: at.origin.y + 25, z: 0 }, 120);
          }),
        );
        expect(overlaps(built, [...around, ...spreadPoints(min, max, 300)])).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('half-laps leave no hole in the frame', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build({ ...parameters, joint: 'half-lap' });
        const [width, height, T] = ['W', 'H', 'T'].map((name) => worked(built, name));
        const left = { x: 0, y: 0, z: -(T ?? 0) };
        const points = spreadPoints(left, { x: width ?? 0, y: height ?? 0, z: 0 }, 800);
        const [ws, wo] = [worked(built, 'ws'), worked(built, 'wo')];
        for (const point of points) {
          const acrossOpening = point.x % (ws + wo) > ws;
          const filled = frameOf(built).some((part) =>
            part.placements.some((at) => occupies(part, point, at)),
          );
          if (!acrossOpening) expect(filled, JSON.stringify(point)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('the slots of a loose tenon meet face to face, the mortise is a stub tenon and its clearance', () => {
    fc.assert(
      fc.property(
        sensible,
        fc.constantFrom('loose-tenon' as const, 'stub-tenon' as const),
        (parameters, joint) => {
          const built = build({ ...parameters, joint });
          const [left, , top] = built.parts;
          if (!left || !top) throw new Error('no frame');
          const boxes = left.machining.filter((one) => one.kind === 'recess' && one.name === 'mortise');
          const mortise = boxes
            .map((one) => placedBox(left, one))
            .find((box) => (box.y[1] ?? 0) > worked(built, 'H') - worked(built, 'wt'));
          if (!mortise) throw new Error('no mortise for the top rail');
          const edge = worked(built, 'ws');
          expect(mortise.x[1]).toBeCloseTo(edge, 9);
          const reach = worked(built, 'reach_s');
          const shoulder = Math.min(10, worked(built, 'wt') / 4);
          const tenon = worked(built, 'tenon_T');
          if (joint === 'loose-tenon') {
            const slot = top.machining
              .filter((one) => one.kind === 'recess' && one.from === 'start')
              .map((one) => placedBox(top, one))[0];
            expect(slot?.x[0]).toBeCloseTo(edge, 9);
            expect(slot?.y.map((v) => v.toFixed(6))).toEqual(mortise.y.map((v) => v.toFixed(6)));
            expect(slot?.z.map((v) => v.toFixed(6))).toEqual(mortise.z.map((v) => v.toFixed(6)));
          } else {
            // joinery C-COORD: 1.5 past the end, 0.25 at each side, a glue gap on each face
            expect(edge - (mortise.x[0] ?? 0)).toBeCloseTo(reach + 1.5, 9);
            expect((mortise.y[1] ?? 0) - (mortise.y[0] ?? 0)).toBeCloseTo(
              worked(built, 'wt') - 2 * shoulder + 0.5,
              9,
            );
            expect((mortise.z[1] ?? 0) - (mortise.z[0] ?? 0)).toBeCloseTo(tenon + 0.2, 9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('the right stile is the left one in a mirror', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        const [left, right] = built.parts;
        if (!left || !right) throw new Error('no stiles');
        const [W, H, ws, T] = ['W', 'H', 'ws', 'T'].map((name) => worked(built, name)) as [
          number,
          number,
          number,
          number,
        ];
        for (const point of spreadPoints({ x: 0, y: 0, z: -T }, { x: ws, y: H, z: 0 }, 300)) {
          expect(occupies(right, { ...point, x: W - point.x })).toBe(occupies(left, point));
        }
      }),
      { numRuns: 50 },
    );
  });

  test('a strip is its fronts, what is lost between them and the trim; its fronts follow one another in place', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const built = build(parameters);
        built.matchedSets.forEach((set, i) => {
          const parts = set.parts.map((id) => built.parts.find((part) => part.id === id));
          const ahead = (part: Part | undefined) =>
            (set.direction === 'along' ? part?.cut.length : part?.cut.width) ?? NaN;
          const strip =
            parts.reduce((sum, part) => sum + ahead(part), 0) +
            set.between.reduce((sum, between) => sum + between, 0) +
            2 * set.trim;
          const name = `strip_${parameters.continuous}${i === 0 ? '' : `_${i + 1}`}`;
          expect(worked(built, name)).toBeCloseTo(strip, 9);
          // in place: the next front begins where the last one ends, the visible distance further along the strip
          for (let k = 1; k < parts.length; k++) {
            const [last, next] = [parts[k - 1], parts[k]];
            const [from, to] = [last?.placements[0], next?.placements[0]];
            if (!from || !to) throw new Error('not placed');
            const axis = set.direction === 'along' ? from.xAxis : from.yAxis;
            const way = (to.origin.x - from.origin.x) * axis.x + (to.origin.y - from.origin.y) * axis.y;
            const visible = way - ahead(last);
            if (parameters.continuous === 'true') expect(visible).toBeCloseTo(set.between[k - 1] ?? NaN, 9);
            else expect(visible).toBeGreaterThan(0);
          }
        });
      }),
      { numRuns: 200 },
    );
  });

  test('a frame fitted to an opening is inside it by its gap', () => {
    const off = fc.integer({ min: -12, max: 12 });
    fc.assert(
      fc.property(fc.array(off, { minLength: 5, maxLength: 5 }), (o) => {
        const at = {
          BL: [0, 0],
          BR: [500, o[0] ?? 0],
          TR: [500 + (o[1] ?? 0), 700 + (o[2] ?? 0)],
          TL: [o[3] ?? 0, 700 + (o[4] ?? 0)],
        } as const;
        const shape = openingShape(at, { tilt: (o[0] ?? 0) / 1000 });
        const built = buildPiece(cabinetFront(), boxContext({ shape }));
        const ring = ['BL', 'BR', 'TR', 'TL'].map((name) => built.opening?.[name] ?? { x: NaN, y: NaN });
        const [W, H] = [worked(built, 'W'), worked(built, 'H')];
        for (const corner of [
          [0, 0],
          [W, 0],
          [W, H],
          [0, H],
        ] as const) {
          ring.forEach((from, i) => {
            const to = ring[(i + 1) % 4] ?? from;
            const [dx, dy] = [to.x - from.x, to.y - from.y];
            const inside = (dx * (corner[1] - from.y) - dy * (corner[0] - from.x)) / Math.hypot(dx, dy);
            expect(inside).toBeGreaterThanOrEqual(2 * Math.cos(0.05) - 0.05);
          });
        }
      }),
      { numRuns: 100 },
    );
  });
});
