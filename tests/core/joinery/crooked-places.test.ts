import { describe, expect, test } from 'vitest';
import { boxOfPoints, isInside, placePoint, type Point, type Shape } from '#core/geometry';
import type { BuiltPiece, Part } from '#core/joinery';
import { buildKind, partOf, usualMaterials } from '../../support/flat-pieces.ts';
import { codesOf, worked } from '../../support/joinery-boxes.ts';
import { openingShape, type Corners } from '../../support/joinery-samples.ts';

// Simulated openings showed these: pieces planned from exact corners that would not go into the place they were measured
// for. Checked here by distances to the sides of the opening, not by the rules they were made by.

/** Leans 40 to the right, its head falls 18 to the right: such as old boats and houses have. */
const crooked: Corners = { BL: [0, 0], BR: [600, 0], TR: [635, 470], TL: [44, 488] };
const names = ['BL', 'BR', 'TR', 'TL'] as const;
const cornersOf = (corners: Corners): readonly Point[] =>
  names.map((name) => ({ x: corners[name][0], y: corners[name][1] }));
const within = (shape: Shape) => ({ shape, shapeName: 'Hole' });
const shapeOf = (corners: Corners, bow: Partial<Record<string, number>> = {}): Shape => {
  const shape = openingShape(corners);
  const edges = shape.edges.map((edge) => {
    const own = bow[edge.name];
    return own === undefined ? edge : { ...edge, bow: own };
  });
  return { ...shape, edges };
};

/** How far inside the opening the points lie, side by side from the sill counter-clockwise: the least of each. */
function gapsTo(corners: readonly Point[], points: readonly Point[]): readonly number[] {
  return corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    return Math.min(...points.map((p) => (dx * (p.y - from.y) - dy * (p.x - from.x)) / Math.hypot(dx, dy)));
  });
}

const cornersOfPart = (part: Part): readonly Point[] =>
  part.placements.flatMap((at) => part.outline.map(({ x, y }) => placePoint(at, { x, y, z: 0 })));

const panel = (mount: 'lap' | 'inset', shape: Shape): BuiltPiece =>
  buildKind('access-panel', { mount, materials: { panel: 'ply9', solid: 'oak' } }, within(shape));

describe('a removable panel', () => {
  test('let in follows a hole out of square, with its gap on all sides', () => {
    const built = panel('inset', shapeOf(crooked));
    for (const gap of gapsTo(cornersOf(crooked), cornersOfPart(partOf(built, 1))))
      expect(gap).toBeCloseTo(2, 6);
    expect(codesOf(built)).toContain('hole-not-square');
  });
  test('let in stays clear of a side that bows into the hole', () => {
    const built = panel('inset', shapeOf(crooked, { right: -3 }));
    const [sill, right, head, left] = gapsTo(cornersOf(crooked), cornersOfPart(partOf(built, 1)));
    expect(right).toBeCloseTo(5, 6);
    for (const gap of [sill, head, left]) expect(gap).toBeCloseTo(2, 6);
  });
  test('its cleats lie within the hole and out of each other', () => {
    const built = panel('inset', shapeOf(crooked));
    const cleats = built.parts.filter(({ name }) => name.startsWith('Cleat'));
    for (const part of cleats)
      expect(Math.min(...gapsTo(cornersOf(crooked), cornersOfPart(part)))).toBeGreaterThan(-1e-9);
    const places = cleats.flatMap((part) =>
      part.placements.map((at) => part.outline.map(({ x, y }) => placePoint(at, { x, y, z: 0 }))),
    );
    for (const [i, one] of places.entries())
      for (const other of places.filter((_, k) => k !== i))
        for (const point of one) expect(isInside(point, other)).toBe(false);
  });
  test('that laps covers all of a hole out of square by its lap, seen from any corner of it', () => {
    const built = panel('lap', shapeOf(crooked));
    const sheet = boxOfPoints(cornersOfPart(partOf(built, 1)));
    const hole = boxOfPoints(cornersOf(crooked)); // its frame is moved to the lower left of the hole
    expect(sheet.maxX - sheet.minX).toBeCloseTo(hole.maxX - hole.minX + 30, 6);
    expect(sheet.maxY - sheet.minY).toBeCloseTo(hole.maxY - hole.minY + 30, 6);
    expect(sheet.minX).toBeCloseTo(-15, 6);
  });
});

describe('slats', () => {
  test('are 1 shorter at each end than the narrowest place, what bows in included', () => {
    const lining = (shape: Shape) =>
      worked(buildKind('slat-lining', { materials: { slats: 'oak', cleats: 'oak' } }, within(shape)), 'run');
    const head = Math.hypot(635 - 44, 470 - 488);
    expect(lining(shapeOf(crooked))).toBeCloseTo(head - 2, 6);
    expect(lining(shapeOf(crooked, { left: -1.5, right: 4 }))).toBeCloseTo(head - 3.5, 6);
  });
});

describe('lids', () => {
  const lids = (shape: Shape) =>
    buildKind('lids', { materials: { lids: 'ply18', cleats: 'oak' } }, within(shape));
  test('keep their gap from where a side bows in', () => {
    const points = lids(shapeOf(crooked, { head: -3 }))
      .parts.filter(({ name }) => name.startsWith('Lid'))
      .flatMap(cornersOfPart);
    // the frame of the piece begins at the lower left of the aperture
    const [, , head] = gapsTo(cornersOf(crooked), points);
    expect(head).toBeCloseTo(6, 6);
  });
  test('their cleats are free of the sides measured, so that they go in', () => {
    const cleats = lids(shapeOf(crooked)).parts.filter(({ name }) => name.startsWith('Cleat'));
    expect(cleats).toHaveLength(4);
    for (const part of cleats)
      expect(Math.min(...gapsTo(cornersOf(crooked), cornersOfPart(part)))).toBeCloseTo(1, 6);
  });
});

describe('a panel with solid edges', () => {
  const lipped = (bow: number) =>
    buildKind(
      'free-panel',
      { lippedSides: [2], materials: { panel: 'ply18', lipping: 'oak' } },
      within(shapeOf(crooked, { right: bow })),
    );
  test.each([
    [1.5, 2],
    [-1.5, 3.5],
  ])('goes straight along a side that bows by %d, %d from its ends', (bow, gap) => {
    const built = lipped(bow);
    expect(codesOf(built)).not.toContain('curved-side-lipped');
    const [, right] = gapsTo(cornersOf(crooked), built.parts.flatMap(cornersOfPart));
    expect(right).toBeCloseTo(gap, 1);
  });
  test('is still refused where the side bows by more than 2', () => {
    expect(codesOf(lipped(2.5))).toContain('curved-side-lipped');
  });
});

test('corners that lie along one straight line go round all the same', () => {
  const top = buildKind('countertop', {
    corners: [0, 0, 1200, 0, 1200, 540, 900, 540, 600, 540, 300, 540, 0, 540],
    materials: { top: 'ply18', lipping: 'oak' },
  });
  expect(codesOf(top)).not.toContain('outline-does-not-close');
  expect(top.parts.length).toBeGreaterThan(0);
  const crossed = buildKind('free-panel', {
    corners: [0, 0, 600, 400, 600, 0, 0, 400],
    materials: { panel: 'ply18' },
  });
  expect(codesOf(crossed)).toContain('outline-does-not-close');
});

test('runners that reach into a flared hull are told, though the box stays clear of it', () => {
  const line = [
    { x: 300, y: 0 },
    { x: 430, y: 150 },
    { x: 560, y: 300 },
    { x: 690, y: 450 },
  ];
  const section = (at: number) => ({ name: `S${at}`, at, line, bevels: [], sigma: 0.7 });
  const shape: Shape = { ...openingShape(crooked), kind: 'sections', sections: [section(0), section(800)] };
  const drawer = (clearDepth: number) =>
    buildKind(
      'drawer',
      {
        ...{ openingWidth: 400, openingHeight: 140, clearDepth, heightAbove: 170 },
        ...{ runner: 'bottom-notch', front: 'none' },
        materials: { box: 'ply9', bottom: 'ply6', runners: 'oak' },
      },
      { shape, shapeName: 'Hull', materials: usualMaterials },
    );
  // the box is 400 long; the runners, 30 under the opening, reach 440 back, where the hull is about 421 deep
  const found = drawer(450).findings.find(({ code }) => code === 'runners-hit-hull');
  expect(found?.message).toMatch(/^The runners reach 440 back; at 140 up the hull is 42[01]\.?\d* deep\.$/);
  expect(codesOf(drawer(450))).not.toContain('drawer-hits-hull');
  expect(codesOf(drawer(420))).not.toContain('runners-hit-hull');
});
