import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boxOfOutline,
  circleOutline,
  flattenOutline,
  isInside,
  mirrorOutline,
  moveOutline,
  outlineArea,
  placePoint,
  rectangleOutline,
  reverseOutline,
  subtractOutlines,
  turnOutline,
  unplacePoint,
} from '#core/geometry';
import type { Outline } from '#core/geometry';

const slot: Outline = [
  { x: 0, y: 0 },
  { x: 100, y: 0, bulge: 1 },
  { x: 100, y: 40 },
  { x: 0, y: 40, bulge: 0.3 },
];
const size = fc.double({ min: 1, max: 3000, noNaN: true });
const angle = fc.double({ min: -7, max: 7, noNaN: true });

describe('outlines', () => {
  test('box counts the belly of an arc', () => {
    const box = boxOfOutline(slot);
    expect(box.maxX).toBeCloseTo(120, 9);
    expect(box.minX).toBeLessThan(-3);
  });

  test('always: moving, turning and mirroring keep the area, reversing turns its sign', () => {
    fc.assert(
      fc.property(size, size, angle, (dx, dy, turn) => {
        const area = outlineArea(slot);
        expect(outlineArea(moveOutline(turnOutline(slot, turn), dx, dy))).toBeCloseTo(area, 4);
        expect(outlineArea(mirrorOutline(slot, dx))).toBeCloseTo(area, 4);
        expect(outlineArea(reverseOutline(slot))).toBeCloseTo(-area, 6);
      }),
    );
  });

  test('always: mirrored twice is the same path', () => {
    fc.assert(
      fc.property(size, (axis) => {
        const twice = mirrorOutline(mirrorOutline(slot, axis), axis);
        const points = (outline: Outline) =>
          outline.map((p) => [p.x.toFixed(6), p.y.toFixed(6), (p.bulge ?? 0).toFixed(9)].join());
        const there = points(slot);
        const back = points(twice);
        const shift = back.indexOf(there[0] ?? '');
        expect([...back.slice(shift), ...back.slice(0, shift)]).toEqual(there);
      }),
    );
  });

  test('always: chords of a flattened circle stay within the tolerance', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0.01, max: 1, noNaN: true }), (radius, tolerance) => {
        const flat = flattenOutline(circleOutline({ x: 5, y: 7 }, radius), tolerance);
        flat.forEach((point, i) => {
          const next = flat[(i + 1) % flat.length] ?? point;
          const middle = Math.hypot((point.x + next.x) / 2 - 5, (point.y + next.y) / 2 - 7);
          expect(radius - middle).toBeLessThanOrEqual(tolerance + 1e-9);
        });
      }),
    );
  });

  test('a notch flush with an edge is really taken away', () => {
    const left = subtractOutlines([rectangleOutline(300, 200)], [rectangleOutline(60, 60)]);
    expect(left.reduce((sum, path) => sum + outlineArea(path), 0)).toBeCloseTo(56_400, 3);
  });

  test('a point in the mouth of a notch is outside', () => {
    const [cornerless] = subtractOutlines([rectangleOutline(300, 200)], [rectangleOutline(60, 60)]);
    expect(isInside({ x: 30, y: 30 }, cornerless ?? [])).toBe(false);
    expect(isInside({ x: 100, y: 30 }, cornerless ?? [])).toBe(true);
  });
});

describe('placement', () => {
  test('always: a point placed and taken back is the same point', () => {
    fc.assert(
      fc.property(size, size, size, angle, (x, y, z, turn) => {
        const placement = {
          origin: { x: 3, y: -4, z: 5 },
          xAxis: { x: Math.cos(turn), y: Math.sin(turn), z: 0 },
          yAxis: { x: 0, y: 0, z: 1 },
        };
        const back = unplacePoint(placement, placePoint(placement, { x, y, z }));
        expect(back.x).toBeCloseTo(x, 6);
        expect(back.y).toBeCloseTo(y, 6);
        expect(back.z).toBeCloseTo(z, 6);
      }),
    );
  });
});
