import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { findCrossing, type Point } from '#core/geometry';
import { checkAdjustment, type Reading } from '#core/measuring';
import { adjustShape, listTasks, summarise, understandProject } from '#core/pipeline';
import { newProject, type MeasuredOutline, type MeasuredShape, type MeasuredWalls } from '#core/project';

import { bowLocker, galleyHull, saloonWalls, tracedHatch } from '../../support/sample-shapes.ts';

const codes = (outcome: ReturnType<typeof adjustShape>) =>
  outcome.adjustment.findings.map(({ code }) => code);

/** Distances between all corners of a polygon, or those that `keep` keeps. */
function tape(points: readonly Point[], keep: (i: number, j: number) => boolean = () => true): Reading[] {
  return points.flatMap((p, i) =>
    points.slice(i + 1).flatMap((q, k): Reading[] => {
      const j = i + 1 + k;
      if (!keep(i, j)) return [];
      const value = Math.hypot(p.x - q.x, p.y - q.y);
      return [{ id: `${i}-${j}`, kind: 'distance', from: `K${i}`, to: `K${j}`, value, sigma: 0.5 }];
    }),
  );
}

function outline(points: readonly Point[], readings = tape(points)): MeasuredOutline {
  return {
    ...{ id: 'o', name: 'Locker mouth', kind: 'outline', seenFrom: 'from the saloon', readings },
    corners: points.map((_, i) => `K${i}`),
  };
}

/** An L: the corner K3 points inwards. */
const ell: readonly Point[] = [
  { x: 0, y: 0 },
  { x: 800, y: 0 },
  { x: 800, y: 300 },
  { x: 400, y: 300 },
  { x: 400, y: 700 },
  { x: 0, y: 700 },
];

describe('outlines by readings', () => {
  test('a V of three corners: the law of cosines', () => {
    const { adjusted } = adjustShape({ ...bowLocker, curves: [] });
    // source: law of cosines by hand: (1000² + 800² - 1000²) / (2 · 1000) = 320; √(800² - 320²) = 733.212
    expect(adjusted?.points['stem']).toEqual({ x: 1000, y: 0 });
    expect(adjusted?.points['aft starboard']?.x).toBeCloseTo(320, 6);
    expect(adjusted?.points['aft starboard']?.y).toBeCloseTo(733.212, 3);
    expect(adjusted?.edges.map(({ name }) => name)).toEqual([
      'aft port–stem',
      'stem–aft starboard',
      'aft starboard–aft port',
    ]);
    expect(adjusted?.kind).toBe('outline');
  });

  test('an L with a hollow corner stands as it is, from its first side', () => {
    const outcome = adjustShape(outline(ell));
    ell.forEach(({ x, y }, i) => {
      expect(outcome.adjusted?.points[`K${i}`]?.x).toBeCloseTo(x, 4);
      expect(outcome.adjusted?.points[`K${i}`]?.y).toBeCloseTo(y, 4);
    });
    expect(outcome.adjustment.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(codes(outcome)).not.toContain('hand-guessed');
    expect(outcome.adjusted?.edges.every(({ sigma }) => sigma !== undefined && sigma > 0)).toBe(true);
  });

  test('always: corners in any order of readings go round counter-clockwise, as they are', () => {
    const shape = fc.record({
      radii: fc.array(fc.double({ min: 0.4, max: 1, noNaN: true }), { minLength: 4, maxLength: 9 }),
      shuffle: fc.infiniteStream(fc.nat(1000)),
    });
    fc.assert(
      fc.property(shape, ({ radii, shuffle }) => {
        const points = radii.map((radius, k) => {
          const angle = (2 * Math.PI * k) / radii.length;
          return { x: 500 * radius * Math.cos(angle), y: 500 * radius * Math.sin(angle) };
        });
        fc.pre(findCrossing(points) === null);
        const readings = tape(points)
          .map((reading) => ({ reading, key: shuffle.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ reading }) => reading);
        const { adjusted } = adjustShape(outline(points, readings));
        const found = points.map((_, i) => adjusted?.points[`K${i}`] ?? { x: NaN, y: NaN });
        const area = (way: readonly Point[]) =>
          way.reduce((sum, p, i) => {
            const q = way[(i + 1) % way.length] ?? p;
            return sum + (p.x * q.y - q.x * p.y) / 2;
          }, 0);
        expect(area(found) / area(points)).toBeCloseTo(1, 5);
        points.forEach((p, i) => {
          const [a, b] = [found[i], found[0]];
          const apart = Math.hypot((a?.x ?? 0) - (b?.x ?? 0), (a?.y ?? 0) - (b?.y ?? 0));
          expect(apart).toBeCloseTo(Math.hypot(p.x - (points[0]?.x ?? 0), p.y - (points[0]?.y ?? 0)), 3);
        });
      }),
      { numRuns: 60 },
    );
  });

  test('a slip in a diagonal of six corners is named, and stays in', () => {
    const readings = tape(ell).map((reading) =>
      reading.id === '1-4' ? { ...reading, value: reading.value + 10 } : reading,
    );
    const { adjustment } = adjustShape(outline(ell, readings));
    expect(adjustment.suspects[0]?.id).toBe('1-4');
    expect(adjustment.suspects[0]?.slip).toBeCloseTo(10, 0);
  });

  test('the answer passes the checker that does not trust it', () => {
    const shape = outline(ell);
    const { adjustment } = adjustShape(shape);
    expect(checkAdjustment({ seenFrom: shape.seenFrom, readings: shape.readings }, adjustment)).toEqual([]);
  });

  test('corners listed out of order cross: a finding, not a shape in silence', () => {
    const [a, b, c, d] = ['K0', 'K1', 'K3', 'K2'];
    const square = [
      { x: 0, y: 0 },
      { x: 500, y: 0 },
      { x: 500, y: 400 },
      { x: 0, y: 400 },
    ];
    const outcome = adjustShape({ ...outline(square), corners: [a, b, c, d] as string[] });
    const crossing = outcome.adjustment.findings.find(({ code }) => code === 'outline-crosses');
    expect(crossing?.message).toContain('cross');
    expect(crossing?.severity).toBe('stop');
  });

  test('readings that have a side tell when the corners are listed clockwise', () => {
    const square = ell.slice(0, 3).concat([{ x: 0, y: 300 }]);
    const offset: Reading = { id: 'o', kind: 'offset', point: 'K2', from: 'K0', to: 'K1', value: 300 };
    const fine = adjustShape(outline(square, [...tape(square), offset]));
    expect(codes(fine)).not.toContain('corners-clockwise');
    const turned = adjustShape({
      ...outline(square, [...tape(square), offset]),
      corners: ['K3', 'K2', 'K1', 'K0'],
    });
    expect(codes(turned)).toContain('corners-clockwise');
  });

  test('what lacks is named: corners, readings', () => {
    expect(codes(adjustShape({ ...outline(ell), corners: ['K0', 'K1'] }))).toContain('corners-few');
    const lame = adjustShape(
      outline(
        ell,
        tape(ell, (i, j) => i !== 4 && j !== 4),
      ),
    );
    expect(lame.adjusted).toBeNull();
    expect(lame.adjustment.findings.find(({ code }) => code === 'corner-unmeasured')?.message).toContain(
      'K4',
    );
  });
});

describe('curved edges', () => {
  test('a parabola through ordinates is met between them', () => {
    const { adjusted, adjustment } = adjustShape(bowLocker);
    const curve = adjusted?.edges[0]?.curve ?? [];
    expect(curve[0]).toEqual({ x: 0, y: 0 });
    expect(curve.at(-1)?.x).toBeCloseTo(1000, 6);
    for (const { x, y } of curve) expect(-y).toBeCloseTo((60 * x * (1000 - x)) / 250_000, 0); // outwards is down
    expect(adjustment.findings.filter(({ code }) => code.startsWith('ordinate'))).toEqual([]);
  });

  test('a slip of 10 in one ordinate is named with its curve; it stays in', () => {
    const [curve] = bowLocker.curves ?? [];
    if (!curve) throw new Error('the sample has a curve');
    const ordinates = curve.ordinates.map((o) => (o.at === 500 ? { ...o, value: o.value - 10 } : o));
    const outcome = adjustShape({ ...bowLocker, curves: [{ ...curve, ordinates }] });
    expect(outcome.ordinateSlips).toEqual([
      { item: 'port', at: [4], slip: expect.closeTo(-10, 0) as number },
    ]);
    const finding = outcome.adjustment.findings.find(({ code }) => code === 'ordinate-slip');
    expect(finding?.about).toBe('port');
    expect(finding?.message).toContain('station 500');
  });

  test('ordinates beyond the corner, or off it, are told', () => {
    const [curve] = bowLocker.curves ?? [];
    if (!curve) throw new Error('the sample has a curve');
    const beyond = { ...curve, ordinates: [...curve.ordinates, { at: 1100, value: 3 }] };
    expect(codes(adjustShape({ ...bowLocker, curves: [beyond] }))).toContain('station-beyond-corner');
    const off = { ...curve, ordinates: [{ at: 0, value: 8 }, ...curve.ordinates] };
    expect(codes(adjustShape({ ...bowLocker, curves: [off] }))).toContain('curve-misses-corner');
  });
});

describe('hull sections', () => {
  test('the line passes through every ordinate and starts at the first section', () => {
    const { adjusted } = adjustShape(galleyHull);
    expect(adjusted?.sections?.map(({ name, at }) => [name, at])).toEqual([
      ['Left end', 0],
      ['Right end', 620],
    ]);
    for (const { height, depth } of galleyHull.sections[0]?.ordinates ?? []) {
      const point = adjusted?.sections?.[0]?.line.find(({ y }) => Math.abs(y - height) < 1e-9);
      expect(point?.x).toBeCloseTo(depth, 9);
    }
    expect(adjusted?.sections?.[0]?.bevels[0]?.angle).toBeCloseTo((4 * Math.PI) / 180, 12);
    expect(adjusted?.obstructions?.[0]).toEqual({
      name: 'Stringer',
      box: { minX: 250, minY: 410, maxX: 310, maxY: 440 },
      section: 'Left end',
    });
  });

  test('no section, one section, and sections far apart are told; a faulty one is left out', () => {
    const [left, right] = galleyHull.sections;
    if (!left || !right) throw new Error('the sample has two sections');
    const none = adjustShape({ ...galleyHull, sections: [], obstructions: [] });
    expect(none.adjusted).toBeNull();
    expect(codes(none)).toEqual(['sections-none']);
    expect(codes(adjustShape({ ...galleyHull, sections: [left] }))).toContain('sections-one');
    expect(codes(adjustShape({ ...galleyHull, sections: [left, { ...right, at: 1200 }] }))).toContain(
      'sections-far-apart',
    );
    const faulty = adjustShape({ ...galleyHull, sections: [left, { ...right, ordinates: [] }] });
    expect(faulty.adjusted?.sections).toHaveLength(1);
    expect(codes(faulty)).toContain('ordinates-few');
  });
});

describe('walls in plan', () => {
  test('lengths and angles are set out left to right, the room below', () => {
    const { adjusted } = adjustShape(saloonWalls);
    // set out by hand: the second wall turns 88.5° to the right, the third 88° back to the left
    const turn = (degrees: number) => (degrees * Math.PI) / 180;
    expect(adjusted?.points['B']).toEqual({ x: 900, y: 0 });
    expect(adjusted?.points['C']?.x).toBeCloseTo(900 + 1200 * Math.cos(turn(-88.5)), 6);
    expect(adjusted?.points['C']?.y).toBeCloseTo(1200 * Math.sin(turn(-88.5)), 6);
    expect(adjusted?.points['D']?.x).toBeCloseTo(
      900 + 1200 * Math.cos(turn(-88.5)) + 80 * Math.cos(turn(-0.5)),
      6,
    );
    expect(adjusted?.edges.map(({ name, bow }) => [name, bow])).toEqual([
      ['Bulkhead', undefined],
      ['Side', 4],
      ['Post', undefined],
    ]);
  });

  const room: MeasuredWalls = {
    ...saloonWalls,
    closed: true,
    walls: [3000, 2000, 3000, 2000].map((length, at) => ({
      id: `w${at}`,
      name: `Wall ${at + 1}`,
      length,
      corner: { degrees: 90 },
    })),
  };

  test('a closed room checks itself: a wall read 100 short is contradicted, and named with one diagonal', () => {
    const fine = adjustShape(room);
    expect(fine.adjustment.dof).toBe(3);
    expect(fine.adjustment.suspects).toEqual([]);
    const walls = room.walls.map((wall) => (wall.id === 'w2' ? { ...wall, length: 2900 } : wall));
    const short = adjustShape({ ...room, walls });
    expect(short.adjustment.suspects.length).toBeGreaterThan(0); // bevel gauges alone cannot tell which
    const diagonal = { kind: 'distance', value: Math.hypot(3000, 2000) } as const;
    const braced = adjustShape({
      ...room,
      walls,
      readings: [
        { ...diagonal, id: 'd1', from: 'A', to: 'C' },
        { ...diagonal, id: 'd2', from: 'B', to: 'D' },
      ],
    });
    expect(braced.adjustment.suspects.map(({ id }) => id)).toEqual(['w2']);
    expect(braced.adjustment.suspects[0]?.slip).toBeCloseTo(-100, 0);
  });

  test('a measured diagonal checks an open run', () => {
    const diagonal: Reading = { id: 'd', kind: 'distance', from: 'A', to: 'C', value: 1517.6 };
    const { adjustment } = adjustShape({ ...saloonWalls, readings: [diagonal] });
    expect(adjustment.dof).toBe(1);
  });

  test('one wall is a run without corners; a missing angle and two closed walls are told', () => {
    const [first, second] = saloonWalls.walls;
    if (!first || !second) throw new Error('the sample has three walls');
    const one = adjustShape({ ...saloonWalls, walls: [first] });
    expect(one.adjusted?.points['B']).toEqual({ x: 900, y: 0 });
    const loose = adjustShape({
      ...saloonWalls,
      walls: [{ id: 'w1', name: 'Bulkhead', length: 900 }, second],
    });
    expect(codes(loose)).toContain('corner-unmeasured');
    expect(loose.adjusted).toBeNull();
    expect(codes(adjustShape({ ...saloonWalls, walls: [first, second], closed: true }))).toContain(
      'walls-not-closed',
    );
    expect(codes(adjustShape({ ...saloonWalls, walls: [] }))).toEqual(['walls-none']);
  });
});

describe('outlines from drawings', () => {
  test('they are brought to scale by the check bar; arcs stay on their circle', () => {
    const { adjusted, adjustment } = adjustShape(tracedHatch);
    const scale = 500 / 499.5;
    expect(adjusted?.points['B']?.x).toBeCloseTo(500 * scale, 9);
    expect(adjustment.findings).toEqual([]); // 0.1 % is within the 0.2 % of joinery A9
    const [straight, , arc] = adjusted?.edges ?? [];
    expect(straight?.curve).toBeUndefined();
    for (const { x, y } of arc?.curve ?? [])
      expect(Math.hypot(x - 450 * scale, y - 350 * scale)).toBeCloseTo(50 * scale, 6);
  });

  test('a scale off by 0.5 % is corrected with a warning, by 2 % it stops, unchecked it is told', () => {
    const traced = tracedHatch.traced;
    if (!traced) throw new Error('the sample is traced');
    const withBar = (drawn: number) =>
      adjustShape({ ...tracedHatch, traced: { ...traced, bars: { x: { drawn, real: 500 } } } });
    expect(withBar(497.5).adjustment.findings).toMatchObject([{ code: 'scale-off', severity: 'warn' }]);
    expect(withBar(490).adjustment.findings).toMatchObject([{ code: 'scale-off', severity: 'stop' }]);
    const { bars, ...unchecked } = traced;
    expect(bars).toBeDefined();
    expect(codes(adjustShape({ ...tracedHatch, traced: unchecked }))).toEqual(['scale-unchecked']);
  });

  test('a tape between two corners that contradicts the drawing is told', () => {
    const say = (value: number) =>
      codes(
        adjustShape({
          ...tracedHatch,
          readings: [{ id: 'w', kind: 'distance', from: 'A', to: 'B', value }],
        }),
      );
    expect(say(501)).toEqual([]);
    expect(say(520)).toEqual(['drawing-contradicts-tape']);
  });
});

describe('what a shape says', () => {
  const summaryOf = (...shapes: readonly MeasuredShape[]): string => {
    const project = { ...newProject('Curlew'), shapes };
    const understanding = understandProject(project);
    return summarise(project, understanding, [], {
      findings: understanding.findings,
      withheld: [],
      routed: [],
    });
  };

  test('the summary tells every kind in its own way', () => {
    const text = summaryOf(bowLocker, galleyHull, saloonWalls, tracedHatch);
    expect(text).toContain('Curved aft port–stem: 1009.5 long over a straight 1000, 60 off it at most');
    expect(text).toContain('Left end, at 0: from height 0 to 750 the hull stands 182 to 369 off, ±1.4.');
    expect(text).toContain('Side: 1200, hollow by 4; then a corner of 268°.');
    expect(text).toContain('Taken from the drawing hatch.dxf.');
    expect(summaryOf(outline(ell))).toContain('Pointing inwards: K3.');
  });

  test('an ordinate in doubt leads the summary of its shape and becomes a task', () => {
    const [curve] = bowLocker.curves ?? [];
    if (!curve) throw new Error('the sample has a curve');
    const ordinates = curve.ordinates.map((o) => (o.at === 500 ? { ...o, value: o.value - 10 } : o));
    const shape = { ...bowLocker, curves: [{ ...curve, ordinates }] };
    expect(summaryOf(shape)).toContain('SLIP SUSPECTED: the ordinate at 500 of the curve aft port–stem');
    const project = { ...newProject('Curlew'), shapes: [shape] };
    const [task] = listTasks(project, understandProject(project));
    expect(task?.text).toContain('take the ordinate at 500 of the curve aft port–stem again');
  });
});

describe('hostile shapes', () => {
  const number = fc.oneof(fc.integer({ min: -2000, max: 2000 }), fc.constantFrom(0, 1e-9, 1e5));
  const size = fc.oneof(fc.integer({ min: 1, max: 3000 }), fc.constantFrom(1e-6, 1e5));
  const name = fc.constantFrom('A', 'B', 'C', 'D', '__proto__', 'constructor', '');
  const base = { id: 's', name: 'Shape', seenFrom: 'from nowhere' };

  test('always: whatever was entered, it ends in a shape of numbers or in sentences', () => {
    const reading = fc
      .record({ from: name, to: name, value: size })
      .map((each) => ({ ...each, id: `${each.from}-${each.to}`, kind: 'distance' as const }));
    const curve = fc.record({
      ...{ id: name, from: name, to: name },
      ordinates: fc.array(fc.record({ at: number, value: number }), { maxLength: 9 }),
    });
    const shape: fc.Arbitrary<MeasuredShape> = fc.oneof(
      fc
        .record({
          corners: fc.array(name, { maxLength: 5 }),
          readings: fc.array(reading, { maxLength: 8 }),
          curves: fc.array(curve, { maxLength: 2 }),
        })
        .map((parts): MeasuredShape => ({ ...base, kind: 'outline', ...parts })),
      fc
        .record({
          points: fc.array(fc.record({ x: number, y: number, bulge: fc.constantFrom(0, 1, -1e6) }), {
            maxLength: 6,
          }),
          cornersAt: fc.array(fc.integer({ min: -1, max: 6 }), { maxLength: 4 }),
        })
        .map((traced): MeasuredShape => ({
          ...base,
          kind: 'outline',
          readings: [],
          corners: traced.cornersAt.map((_, at) => `K${at}`),
          traced,
        })),
      fc
        .array(
          fc.record({
            ...{ id: name, name, at: number },
            ordinates: fc.array(fc.record({ height: number, depth: number }), { maxLength: 9 }),
          }),
          { maxLength: 3 },
        )
        .map((sections): MeasuredShape => ({ ...base, kind: 'sections', readings: [], sections })),
      fc
        .record({
          closed: fc.boolean(),
          walls: fc.array(
            fc.record({
              id: name,
              name,
              length: size,
              corner: fc.record({ degrees: fc.double({ min: 0.01, max: 359, noNaN: true }) }),
            }),
            { maxLength: 5 },
          ),
        })
        .map((parts): MeasuredShape => ({ ...base, kind: 'walls', readings: [], ...parts })),
    );
    fc.assert(
      fc.property(shape, (hostile) => {
        const { adjusted, adjustment } = adjustShape(hostile);
        for (const { message } of adjustment.findings) expect(message).not.toMatch(/NaN|undefined|Infinity/);
        for (const { x, y } of Object.values(adjusted?.points ?? {}))
          expect(Number.isFinite(x + y)).toBe(true);
        for (const { curve: way = [], sigma = 0 } of adjusted?.edges ?? [])
          for (const { x, y } of way) expect(Number.isFinite(x + y + sigma)).toBe(true);
        for (const { line } of adjusted?.sections ?? [])
          for (const { x, y } of line) expect(Number.isFinite(x + y)).toBe(true);
        if (adjusted === null)
          expect(adjustment.findings.length + adjustment.undetermined.length).toBeGreaterThan(0);
      }),
      { numRuns: 120 },
    );
  });
});
