import { describe, expect, test } from 'vitest';
import { buildPiece } from '#core/joinery';
import { adjustSurvey } from '#core/measuring';
import type { Reading } from '#core/measuring';
import type { BuiltPiece, DoorFrameParameters } from '#core/joinery';
import { contextFor, doorFrame, openingShape } from '../../support/joinery-samples.ts';
import type { Corners } from '../../support/joinery-samples.ts';

const square: Corners = { BL: [0, 0], BR: [640, 0], TR: [640, 1750], TL: [0, 1750] };
const valueOf = (built: BuiltPiece, name: string) => built.working.find((step) => step.name === name)?.value;
const build = (shape: Parameters<typeof contextFor>[0], parameters: Partial<DoorFrameParameters> = {}) =>
  buildPiece(doorFrame({ stop: 'cover', ...parameters }), contextFor(shape));

describe('the survey behind the fit', () => {
  test('sides that bow inwards make the frame narrower by the bow, square or fitted', () => {
    const bowed = openingShape(square, {
      edges: [
        { name: 'left', from: 'TL', to: 'BL', bow: -4 },
        { name: 'right', from: 'BR', to: 'TR', bow: 3 },
      ],
    });
    expect(valueOf(build(openingShape(square)), 'Fw')).toBe(630);
    expect(valueOf(build(bowed), 'Fw')).toBe(626);
    expect(valueOf(build(bowed, { mode: 'fitted' }), 'Fw')).toBeCloseTo(626, 9);
  });
  test('the lean is uncertain by the worse side, less what its top and foot err alike', () => {
    const order = ['BR.x', 'TR.x', 'TL.x'];
    const uncertain = (together: number) =>
      openingShape(square, {
        order,
        covariance: [
          [1, together, 0],
          [together, 1.69, 0],
          [0, 0, 0.25],
        ],
      });
    // 2 sqrt(1 + 1.69 - 2 c): by hand.
    expect(valueOf(build(uncertain(0)), 'u95_lean')).toBeCloseTo(2 * Math.sqrt(2.69), 9);
    expect(valueOf(build(uncertain(0.8)), 'u95_lean')).toBeCloseTo(2 * Math.sqrt(1.09), 9);
  });
  test('the vertical of the boat is the shape turned back by its tilt', () => {
    // An opening upright aboard, measured in a frame turned by a hundredth of a radian.
    const turn = ([x, y]: readonly [number, number]): readonly [number, number] => [
      x * Math.cos(0.01) - y * Math.sin(0.01),
      x * Math.sin(0.01) + y * Math.cos(0.01),
    ];
    const turned: Corners = { BL: [0, 0], BR: turn(square.BR), TR: turn(square.TR), TL: turn(square.TL) };
    const built = build(openingShape(turned, { tilt: 0.01 }), { datum: 'boat' });
    expect(valueOf(built, 'Fw')).toBe(630);
    expect(valueOf(built, 'leanmm_per_m')).toBeCloseTo(0, 9);
    expect(built.turn).toBeCloseTo(-0.01, 12);
    expect(built.opening?.TR?.x).toBeCloseTo(640, 9);
    expect(valueOf(build(openingShape(turned, { tilt: 0.01 })), 'leanmm_per_m')).toBeCloseTo(0, 6);
  });
  test('each reading-born number says which corner it is and how well it is known', () => {
    const step = build(openingShape(square)).working.find((one) => one.name === 'TR_x');
    expect(step).toMatchObject({
      label: 'corner TR, x, from the survey ±2.6',
      source: 'shape Galley door',
      value: 640,
    });
  });
});

describe('a fitted frame', () => {
  // A parallelogram leaning 20 in 1750: closed form by hand. Cosine and sine of the corner angle.
  const lean: Corners = { BL: [0, 0], BR: [640, 0], TR: [660, 1750], TL: [20, 1750] };
  const slope = Math.hypot(20, 1750) / 1750; // 1 / sine
  const built = build(openingShape(lean), { mode: 'fitted' });
  test('is a parallelogram inside a parallelogram', () => {
    expect(valueOf(built, 'out_head')).toBeCloseTo(640 - 2 * 5 * slope, 6);
    expect(valueOf(built, 'out_left')).toBeCloseTo((1750 - 5) * slope, 6);
    expect(valueOf(built, 'Wc')).toBeCloseTo(640 - 2 * 25 * slope, 6);
    expect(valueOf(built, 'jamb_left_L')).toBeCloseTo((1750 - 5 - 10) * slope, 6);
  });
  test('has ends sawn at the angle of the corner', () => {
    const head = built.parts.find((part) => part.name === 'Head');
    const bevels = head?.machining.flatMap((one) => (one.kind === 'bevel' ? [one.degrees] : [])) ?? [];
    // Head X runs to the right, face below: at the right end the back is the longer side, at the left the face.
    expect(bevels).toHaveLength(2);
    for (const bevel of bevels)
      expect(Math.abs(bevel)).toBeCloseTo((Math.atan(20 / 1750) * 180) / Math.PI, 6);
    expect(bevels[0]).toBeCloseTo(-(bevels[1] ?? 0), 6);
  });
  test('has housings square to their member up to 2 degrees, and cut at the angle beyond', () => {
    const kinds = (dx: number) => {
      const at: Corners = { BL: [0, 0], BR: [640, 0], TR: [640 + dx, 1750], TL: [dx, 1750] };
      const head = build(openingShape(at), { mode: 'fitted' }).parts.find((part) => part.name === 'Head');
      return new Set(
        head?.machining.flatMap((one) => (one.kind === 'hole' || one.kind === 'bevel' ? [] : [one.kind])),
      );
    };
    expect(kinds(1750 * Math.tan((1.9 * Math.PI) / 180))).toEqual(new Set(['recess']));
    expect(kinds(1750 * Math.tan((2.1 * Math.PI) / 180))).toEqual(new Set(['prism']));
  });
});

describe('what to buy', () => {
  test('screws 30 longer than the jamb, at most 450 apart and within 150 of the ends', () => {
    const built = build(openingShape(square));
    const jamb = built.parts[0];
    const stations = jamb?.machining.flatMap((one) => (one.kind === 'hole' ? [one.x] : [])) ?? [];
    const length = jamb?.finished.length ?? 0;
    expect(Math.min(...stations)).toBeLessThanOrEqual(150);
    expect(length - Math.max(...stations)).toBeLessThanOrEqual(150 + 1e-9);
    stations.slice(1).forEach((x, i) => expect(x - (stations[i] ?? 0)).toBeLessThanOrEqual(450 + 1e-9));
    expect(built.fixings).toContainEqual(
      expect.objectContaining({
        item: 'Screw 4.5 × 50, countersunk, stainless A4',
        quantity: 2 * stations.length,
      }),
    );
  });
  test('corner screws go ten diameters into the end of the jamb', () => {
    const corner = build(openingShape(square)).fixings.find((fixing) => fixing.use === 'frame corners');
    expect(corner).toMatchObject({ item: 'Screw 4.5 × 55, countersunk, stainless A4', quantity: 2 });
  });
});

// Rulebook A4, vectors lsq_clean: the twelve readings behind the worked frame, whose widths are known to 0.8 and whose
// tops may lean by 2.6.
test('the twelve readings of the rulebook lead to its worked frame', () => {
  const span = (from: string, to: string, value: number): Reading => ({
    id: `${from}${to}`,
    kind: 'distance',
    from,
    to,
    value,
    sigma: 0.5,
  });
  const across = (at: number, value: number): Reading => ({
    id: `w${at}`,
    kind: 'width',
    left: ['BL', 'TL'],
    right: ['BR', 'TR'],
    at,
    value,
    sigma: 0.5,
  });
  const off = (kind: 'plumb' | 'level', from: string, to: string, value: number): Reading => ({
    id: `${kind}${from}`,
    kind,
    from,
    to,
    value,
    sigma: 1,
  });
  const readings = [
    ...[span('BL', 'BR', 641), span('TL', 'TR', 635), span('BL', 'TL', 1746), span('BR', 'TR', 1752)],
    ...[span('BL', 'TR', 1868), span('BR', 'TL', 1855), across(1 / 3, 639), across(2 / 3, 637)],
    ...[
      off('plumb', 'BL', 'TL', 14),
      off('plumb', 'BR', 'TR', 8),
      off('level', 'BL', 'BR', 0),
      off('level', 'TL', 'TR', 6),
    ],
  ];
  const { shape } = adjustSurvey({ seenFrom: 'from the saloon, looking forward', readings });
  const built = build(shape);
  expect(valueOf(built, 'u95_lean')).toBeCloseTo(2.6, 1);
  expect(Math.abs((valueOf(built, 'Fw') ?? 0) - 624.5)).toBeLessThanOrEqual(0.5);
  expect(Math.abs((valueOf(built, 'Fh') ?? 0) - 1737)).toBeLessThanOrEqual(0.5);
  expect(valueOf(built, 'phi')).toBeCloseTo(0.36, 1);
  expect(built.findings.filter((found) => found.severity === 'stop')).toEqual([]);
});
