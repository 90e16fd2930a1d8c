import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placePoint, unplacePoint, type Point, type Shape } from '#core/geometry';
import type { BuiltPiece, Part, TrimRunParameters } from '#core/joinery';
import { buildKind, expectWords, partOf } from '../../support/flat-pieces.ts';
import { codesOf, spreadPoints, worked } from '../../support/joinery-boxes.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';
import { occupies, overlaps } from '../../support/joinery-solid.ts';

const build = (parameters: Partial<TrimRunParameters> = {}): BuiltPiece =>
  buildKind('trim-run', { wallLengths: [900, 600], materials: { trim: 'oak' }, ...parameters });

/** A wall of 900 between two corners of these angles. */
const between = (left: number, right: number) =>
  build({ wallLengths: [400, 900, 400], cornerAngles: [left, right] });

describe('lengths and settings', () => {
  // Front lengths of trim 14 thick on a wall of 900. Source: test vectors of the trade rulebook (joinery B11), checked there
  // against the offset of a polygon; 872 and 900 are plain addition.
  test.each([
    [90, 90, 872.0],
    [90, 270, 900.0],
    [91.5, 268, 899.881],
    [135, 135, 888.402],
    [180, 90, 886.0],
  ])('between corners of %d° and %d° the front is %d', (left, right, front) => {
    expect(worked(between(left, right), 'Lf_2')).toBeCloseTo(front, 3);
  });
  test('the saw stands 44.25° and 44° off square for corners of 91.5° and 268°', () => {
    const built = between(91.5, 268); // joinery B11
    expect(worked(built, 'set_1')).toBeCloseTo(44.25, 9);
    expect(worked(built, 'set_2')).toBeCloseTo(44.0, 9);
  });
  test('half a degree opens a corner of 45 by 0.39', () => {
    expect(worked(build(), 'open_half')).toBeCloseTo(0.39, 2); // joinery B11
  });
  test('trim stops 54.02 before the outer point of a post of radius 60 in a corner of 96°, its round is 87.96', () => {
    const built = build({ outside: 'post', postRadius: 60, cornerAngles: [360 - 96], thickness: 50 });
    expect(worked(built, 'tangent_1')).toBeCloseTo(54.02, 2); // joinery B11
    expect(worked(built, 'arc_1')).toBeCloseTo(87.96, 2);
  });
});

describe('compound mitres', () => {
  const sprung = (angle: number, tilt: number) => build({ cornerAngles: [angle], tiltDegrees: tilt });
  // Trade rulebook, joinery B11 and its test vectors: turn A at the corner, tilt B.
  test.each([
    [90, 45, 35.2644, 30.0],
    [90, 38, 38.2385, 25.8068],
    [88.5, 38, 37.5115, 25.4423],
    [60, 70, 11.1702, 28.0243],
  ])('a turn of %d° and a tilt of %d°: mitre %d°, bevel %d°', (turn, tilt, mitre, bevel) => {
    const built = sprung(180 - turn, tilt);
    expect(worked(built, 'X_1')).toBeCloseTo(mitre, 3);
    expect(worked(built, 'Y_1')).toBeCloseTo(bevel, 3);
  });
  // Outside tables. S is the slope of the moulding to the wall, C the corner: tilt 90 - S, angle C. Source: J. Bartok, "Crown
  // molding: formulas and example calculations" (S 38, C 135), and the crown table for S = 52 of sbebuilders.com (C 1, 2, 3,
  // 7); the values for a square corner at 38 and 45 are printed in every handbook, here from memory.
  test.each([
    [38, 135, 14.30638, 17.55124],
    [52, 7, 85.5618, 37.91655],
    [52, 3, 88.09674, 37.98466],
    [52, 2, 88.73106, 37.99318],
    [52, 1, 89.3655, 37.9983],
    [38, 90, 31.62, 33.86],
    [45, 90, 35.26, 30.0],
    [52, 90, 38.23849, 25.806829],
  ])('slope %d° and corner %d°: mitre %d°, bevel %d°', (slope, corner, mitre, bevel) => {
    const built = sprung(corner, 90 - slope);
    const digits = mitre === 31.62 || mitre === 35.26 ? 1.9 : 4.5;
    expect(worked(built, 'X_1')).toBeCloseTo(mitre, digits);
    expect(worked(built, 'Y_1')).toBeCloseTo(bevel, digits);
  });
});

describe('pieces', () => {
  test('from left to right, an inside corner longer at the back', () => {
    const built = build();
    expect(built.parts.map(({ id, name, finished }) => [id, name, finished.length])).toEqual([
      ['P1', 'Trim, wall 1', 900],
      ['P2', 'Trim, wall 2', 600],
    ]);
    expect(partOf(built, 1).machining).toMatchObject([{ kind: 'bevel', edge: 'start', degrees: 45 }]);
    expect(partOf(built, 2).machining).toMatchObject([{ kind: 'bevel', edge: 'end', degrees: 45 }]);
  });
  test('an outside corner is longer at the front by its thickness', () => {
    const built = build({ cornerAngles: [270] });
    expect(partOf(built, 1).finished.length).toBeCloseTo(914, 9);
    expect(partOf(built, 1).machining).toMatchObject([{ edge: 'start', degrees: -45 }]);
  });
  test('a returned end is a piece as long as the trim is thick', () => {
    const built = build({ leftEnd: 'return' });
    expect(built.parts.map(({ name }) => name)).toEqual(['Return, left', 'Trim, wall 1', 'Trim, wall 2']);
    expect(partOf(built, 1).finished.length).toBeCloseTo(14, 9);
    expect(codesOf(built)).toContain('trim-piece-short');
  });
  test('a wall longer than the stick is scarfed: the pieces less their overlaps are the whole', () => {
    const built = build({ wallLengths: [3000] });
    const sizes = built.parts.map(({ finished }) => finished.length);
    expect(sizes).toHaveLength(2);
    expect(sizes.reduce((sum, size) => sum + size, 0) - 14).toBeCloseTo(3000, 9);
    expect(built.joints.map(({ kind }) => kind)).toEqual(['scarf']);
  });
  test('what goes on one stick comes from it in the order of the run', () => {
    const built = build({ wallLengths: [700, 800, 600, 900], touches: 'upper' });
    expect(built.matchedSets.map(({ parts }) => parts)).toEqual([['P1', 'P2', 'P3']]);
    for (const set of built.matchedSets) expect(set.between).toHaveLength(set.parts.length - 1);
  });
});

test('walls of a shape give lengths and angles; a closed room has a corner at every wall', () => {
  const points: Record<string, Point> = {
    A: { x: 0, y: 0 },
    B: { x: 0, y: 500 },
    C: { x: 800, y: 500 },
    D: { x: 900, y: 0 },
  };
  const names = ['A', 'B', 'C', 'D'];
  const shape: Shape = {
    kind: 'walls',
    seenFrom: 'standing in the cabin',
    points,
    edges: names.map((from, i) => ({ name: `wall ${from}`, from, to: names[(i + 1) % 4] ?? 'A' })),
    order: [],
    covariance: [],
    tilt: 0,
  };
  const built = buildKind('trim-run', { materials: { trim: 'oak' } }, { shape, shapeName: 'Cabin' });
  const angles = [1, 2, 3, 4].map((i) => worked(built, `theta_${i}`));
  expect(angles.reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(360, 9);
  expect(angles[0]).toBeCloseTo(90, 9);
  expect(angles[1]).toBeCloseTo(180 - (Math.atan2(500, 100) * 180) / Math.PI + 0, 6);
  expect(built.joints).toHaveLength(4);
  expectSound(built);
  expectWorking(built);
});

describe('what stands against it is said', () => {
  test.each<[string, Partial<TrimRunParameters>]>([
    ['walls-missing', { wallLengths: [] }],
    ['corner-too-sharp', { cornerAngles: [10] }],
    ['trim-longer-corners-than-wall', { wallLengths: [400, 20, 400] }],
    ['post-with-sprung-trim', { outside: 'post', tiltDegrees: 45, cornerAngles: [270] }],
    ['post-radius-unfit', { outside: 'post', postRadius: 60, cornerAngles: [270] }],
    ['post-radius-unfit', { outside: 'post', postRadius: 12, cornerAngles: [270] }],
  ])('%s', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
    expect(build(parameters).parts).toEqual([]);
  });
  test.each<[string, Partial<TrimRunParameters>]>([
    ['trim-scarfed', { wallLengths: [2500] }],
    ['corner-nearly-straight', { cornerAngles: [180.4] }],
    ['corner-error-opens', {}],
  ])('%s', (code, parameters) => {
    expect(codesOf(build(parameters))).toContain(code);
  });
});

const sensible = fc.record({
  wallLengths: fc.array(fc.integer({ min: 300, max: 3000 }), { minLength: 1, maxLength: 4 }),
  cornerAngles: fc.array(fc.double({ min: 60, max: 300, noNaN: true }), { minLength: 3, maxLength: 3 }),
  leftEnd: fc.constantFrom('square' as const, 'return' as const),
  rightEnd: fc.constantFrom('square' as const, 'return' as const),
  width: fc.integer({ min: 25, max: 90 }),
  thickness: fc.integer({ min: 8, max: 20 }),
  touches: fc.constantFrom('lower' as const, 'upper' as const),
  outside: fc.constantFrom('mitre' as const, 'post' as const),
});

/** How far a point of a part is from its own ends by the compound cut worked out anew: from the wall depth and the angle. */
const depthOf = (point: Point, from: Point, along: Point) =>
  (point.x - from.x) * along.y - (point.y - from.y) * along.x;

describe('always:', () => {
  test('sound and worked out', () => {
    fc.assert(
      fc.property(sensible, fc.constantFrom(90, 90, 60, 38), (parameters, tiltDegrees) => {
        const built = build({ ...parameters, tiltDegrees });
        expectSound(built);
        expectWords(built);
        if (built.parts.length > 0) expectWorking(built);
      }),
      { numRuns: 200 },
    );
  });
  test('standing trim and posts fill the strip before the walls, once', () => {
    fc.assert(
      fc.property(sensible, (parameters) => {
        const one = { ...parameters, wallLengths: parameters.wallLengths.slice(0, 2) };
        const built = build({ ...one, leftEnd: 'square', rightEnd: 'square' });
        if (built.parts.length === 0) return;
        const { min, max } = built.envelope;
        expect(overlaps(built, spreadPoints(min, max, 300))).toEqual([]);
        const t = parameters.thickness;
        const [first = 0, second] = one.wallLengths;
        const theta = second === undefined ? 180 : (one.cornerAngles[0] ?? 90);
        const turn = ((theta - 180) * Math.PI) / 180;
        const corner = { x: first, y: 0 };
        const along = { x: Math.cos(turn), y: Math.sin(turn) };
        for (const point of spreadPoints(min, max, 300)) {
          const plan = { x: point.x, y: -point.z };
          const d1 = depthOf(plan, { x: 0, y: 0 }, { x: 1, y: 0 });
          const d2 = depthOf(plan, corner, along);
          const s2 = (plan.x - corner.x) * along.x + (plan.y - corner.y) * along.y;
          const inFirst = d1 > 0 && d1 < t && plan.x > 0;
          const inSecond = second !== undefined && d2 > 0 && d2 < t && s2 < second;
          // inside corners: both strips less what lies behind the other wall; outside: either strip, up to the bisector
          const inside = theta <= 180;
          const before = plan.x - first < (d1 * -1) / Math.tan((theta * Math.PI) / 360);
          const wanted = second === undefined ? inFirst && plan.x < first : before ? inFirst : inSecond;
          const margin = Math.min(
            ...[d1, d1 - t, d2, d2 - t, plan.x, s2 - (second ?? 0)].map(Math.abs),
            second === undefined ? Math.abs(plan.x - first) : Infinity,
            Math.abs(plan.x - first + d1 / Math.tan((theta * Math.PI) / 360)),
          );
          if (margin < 0.5) continue;
          if (parameters.outside === 'post' && !inside && Math.hypot(plan.x - first, plan.y) < 120) continue;
          const there = built.parts.filter((part) => occupies(part, point));
          const scarf = there.length === 0 && built.parts.some((part) => nearScarf(part, point));
          if (!scarf) expect(there.length > 0).toBe(wanted);
        }
      }),
      { numRuns: 60 },
    );
  });
  test('sprung trim: the cut faces of neighbours lie in the one upright plane that halves the corner', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 300, noNaN: true }),
        fc.integer({ min: 25, max: 85 }),
        fc.constantFrom('lower' as const, 'upper' as const),
        (angle, tiltDegrees, touches) => {
          const built = build({ cornerAngles: [angle], tiltDegrees, touches, wallLengths: [700, 800] });
          const half = (angle * Math.PI) / 360;
          for (const part of built.parts) {
            const end = partAtCorner(part, built);
            for (const corner of end) {
              // on the plane through the corner of the walls that halves the angle of the room
              const plan = { x: corner.x - 700, y: -corner.z };
              const bisector = { x: -Math.cos(half), y: -Math.sin(half) };
              expect(plan.x * bisector.y - plan.y * bisector.x).toBeCloseTo(0, 6);
            }
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});

function nearScarf(part: Part, point: { x: number; y: number; z: number }): boolean {
  const at = part.placements[0];
  if (!at) return false;
  const p = unplacePoint(at, point);
  return p.x > -1 && p.x < part.finished.length + 1 && Math.min(p.x, part.finished.length - p.x) < 25;
}

/** The four corners of the cut at the corner of the walls, by the part's outline, its mitre and the saw's bevel. */
function partAtCorner(part: Part, built: BuiltPiece) {
  const at = part.placements[0];
  const cut = part.machining.find((one) => one.kind === 'bevel');
  if (!at || !cut || cut.kind !== 'bevel') throw new Error('no cut at the corner');
  const { width, thickness } = part.finished;
  const tilted = (worked(built, 'X_1') * Math.PI) / 180;
  // a bevel of Y square to the cut moves the cut along the part by tan Y / cos X over the thickness
  const recede = (thickness * Math.tan((Math.abs(cut.degrees) * Math.PI) / 180)) / Math.cos(tilted);
  const sorted = [...part.outline].sort((a, b) => a.y - b.y || a.x - b.x);
  const pick = (y: number) => sorted.filter((p) => Math.abs(p.y - y) < 1e-6);
  const end = cut.edge === 'end' ? 1 : 0;
  const inwards = end === 1 ? -1 : 1;
  return [0, width].flatMap((y) => {
    const edge = pick(y)[end];
    if (!edge) throw new Error('an outline without an end');
    // the outline is the longer face: the back when the angle is positive
    const longer = cut.degrees > 0 ? thickness : 0;
    return [
      placePoint(at, { x: edge.x, y, z: longer }),
      placePoint(at, { x: edge.x + inwards * recede, y, z: thickness - longer }),
    ];
  });
}
