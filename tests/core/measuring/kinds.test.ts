import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '#core/geometry';
import { adjustSurvey, checkAdjustment, checkSurvey, readingWords } from '#core/measuring';
import type { Reading } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { pick, readOpening, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';
const adjust = (readings: readonly Reading[]) => adjustSurvey({ seenFrom, readings });

/** A berth front with five corners, counter-clockwise. */
const berth: Readonly<Record<string, Point>> = {
  A: { x: 0, y: 0 },
  B: { x: 1900, y: 0 },
  C: { x: 1820, y: 430 },
  D: { x: 900, y: 510 },
  E: { x: -30, y: 400 },
};
const at = (name: string): Point => berth[name] ?? { x: NaN, y: NaN };

function distance(from: string, to: string, extra: Partial<Reading> = {}): Reading {
  const value = Math.hypot(at(to).x - at(from).x, at(to).y - at(from).y);
  return { id: `${from}${to}`, kind: 'distance', from, to, value, sigma: 0.5, ...extra } as Reading;
}

/** Sine rule and cosine by hand: height over the base line. */
function offset(point: string, from: string, to: string, more = 0): Reading {
  const [a, b, p] = [at(from), at(to), at(point)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const value = ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length + more;
  return { id: `o${point}`, kind: 'offset', point, from, to, value };
}

function angle(corner: string, from: string, to: string, more = 0): Reading {
  const direction = (name: string) => Math.atan2(at(name).y - at(corner).y, at(name).x - at(corner).x);
  const value = ((direction(to) - direction(from)) * 180) / Math.PI + more;
  return { id: `a${corner}`, kind: 'angle', at: corner, from, to, value };
}

function farthest(shape: ReturnType<typeof adjust>['shape']): number {
  return Math.max(
    ...Object.entries(shape?.points ?? { none: { x: NaN, y: NaN } }).map(([name, p]) =>
      Math.hypot(p.x - at(name).x, p.y - at(name).y),
    ),
  );
}

describe('offsets from a line', () => {
  const base = [distance('A', 'B'), distance('A', 'C'), distance('A', 'D'), distance('A', 'E')];
  const offsets = ['C', 'D', 'E'].map((name) => offset(name, 'A', 'B'));
  const more = [distance('B', 'C'), distance('B', 'D'), distance('B', 'E')];

  test('with distances give back the points, on the side that their sign says', () => {
    const { adjustment, shape } = adjust([...base, ...more, ...offsets]);
    expect(farthest(shape)).toBeLessThan(1e-6);
    expect(adjustment.suspects).toEqual([]);
    expect(adjustment.undetermined).toEqual([]);
    const turned = offsets.map((o) => ({ ...o, value: -o.value }));
    expect(adjust([...base, ...more, ...turned]).shape?.points['D']?.y).toBeCloseTo(-510, 6);
  });

  test('decide left from right, so nothing is said of a mirror image', () => {
    const codes = (readings: readonly Reading[]) =>
      adjust(readings).adjustment.findings.map(({ code }) => code);
    expect(codes([...base, ...more])).toContain('hand-guessed');
    expect(codes([...base, ...more, ...offsets])).not.toContain('hand-guessed');
  });

  test('a slip of 20 mm is found and named', () => {
    const cross = [distance('C', 'D'), distance('D', 'E'), distance('C', 'E')];
    const { adjustment } = adjust([
      ...base,
      ...more,
      ...cross,
      offset('C', 'A', 'B'),
      offset('D', 'A', 'B', 20),
      offset('E', 'A', 'B'),
    ]);
    expect(adjustment.suspects.map(({ id }) => id)).toEqual(['oD']);
    expect(adjustment.suspects[0]?.slip).toBeCloseTo(20, 3);
    expect(adjustment.suspects[0]?.cause).toContain('misread by 20 mm');
    expect(adjustment.findings[0]?.message).toContain('the offset of D from A–B oD is about 20 mm too large');
  });

  test('written with the wrong sign is recognised', () => {
    const { adjustment } = adjust([
      ...[...base, ...more, distance('C', 'D'), distance('D', 'E')],
      ...[offset('C', 'A', 'B'), { ...offset('D', 'A', 'B'), value: -510 }, offset('E', 'A', 'B')],
    ]);
    expect(adjustment.suspects.map(({ id, mistake }) => ({ id, mistake }))).toEqual([
      { id: 'oD', mistake: 'E11' },
    ]);
  });
});

describe('angles', () => {
  const sides = [distance('A', 'B'), distance('B', 'C'), distance('C', 'D'), distance('D', 'E')];
  const corners = [angle('B', 'C', 'A'), angle('C', 'D', 'B'), angle('D', 'E', 'C')];

  test('with the sides give back the corners, a wall at a time', () => {
    const { adjustment, shape } = adjust([...sides, ...corners]);
    expect(farthest(shape)).toBeLessThan(1e-6);
    expect(adjustment.dof).toBe(0);
    expect(adjustment.undetermined).toEqual([]);
  });

  test('are told in degrees, with the scatter of a bevel gauge unless another is given', () => {
    const { adjustment } = adjust([...sides, ...corners, distance('E', 'A'), angle('E', 'A', 'D')]);
    const told = adjustment.readings.find(({ id }) => id === 'aC');
    expect(told?.sigma).toBeCloseTo(0.3, 12); // joinery A1, M12
    expect(told?.adjusted).toBeCloseTo(angle('C', 'D', 'B').value, 6);
    const close = adjust([...sides, { ...angle('B', 'C', 'A'), sigma: 0.1 }]).adjustment.readings;
    expect(close.find(({ id }) => id === 'aB')?.sigma).toBeCloseTo(0.1, 12);
  });

  test('may be given a whole turn on: 280 and -80 degrees are the same', () => {
    const turned = corners.map((reading) => ({ ...reading, value: reading.value + 360 }));
    const far = turned.map((reading) =>
      reading.value > 360 ? { ...reading, value: reading.value - 720 } : reading,
    );
    expect(farthest(adjust([...sides, ...far]).shape)).toBeLessThan(1e-6);
  });

  test('repeats either side of 0 have their mean at 0, not at 180', () => {
    const straight: readonly Reading[] = [
      { id: 'AB', kind: 'distance', from: 'A', to: 'B', value: 1000 },
      { id: 'AP', kind: 'distance', from: 'A', to: 'P', value: 400 },
      { id: 'aA', kind: 'angle', at: 'A', from: 'B', to: 'P', value: 0.2, repeats: [359.8] },
    ];
    const { adjustment, shape } = adjust(straight);
    expect(shape?.points['P']?.x).toBeCloseTo(400, 6);
    expect(adjustment.findings.map(({ code }) => code)).not.toContain('repeats-differ');
  });

  test('the other side of the bevel is recognised', () => {
    const all = [
      ...['B', 'C', 'D', 'E'].map((name) => distance('A', name)),
      ...[distance('B', 'C'), distance('C', 'D'), distance('D', 'E'), distance('B', 'D'), distance('C', 'E')],
    ];
    const meant = angle('B', 'C', 'A').value;
    const { adjustment } = adjust([...all, { ...angle('B', 'C', 'A'), value: 180 - meant }]);
    expect(adjustment.suspects.map(({ id }) => id)).toEqual(['aB']);
    expect(adjustment.suspects[0]?.slip).toBeCloseTo(180 - 2 * meant, 1);
    expect(adjustment.suspects[0]?.cause).toBe('what is left to 180° was written down');
    expect(adjustment.findings[0]?.message).toMatch(/angle C–B–A aB is about [\d.]+° too/);
  });

  test('repeats that differ are told in degrees', () => {
    const reading = { ...angle('B', 'C', 'A', 0), repeats: [angle('B', 'C', 'A', 5).value] };
    const found = adjust([...sides, ...corners.slice(1), reading]).adjustment.findings;
    expect(found.find(({ code }) => code === 'repeats-differ')?.message).toContain(
      '5° apart, more than 1.27°',
    );
  });
});

describe('bows by straightedge', () => {
  const bow = (id: string, from: string, to: string, value: number): Reading => ({
    ...{ id, from, to, value },
    kind: 'bow',
  });
  /** The worked case with both jambs bowed outwards: the widths between grow by 4 t (1 - t) times both (joinery A3). */
  const swollen = pick(['wb', 'w13', 'w23', 'wt', 'hl', 'hr', 'd1', 'd2', 'pl', 'pr', 'ls', 'lh'], {
    w13: workedCase.w13 + (8 / 9) * (6 + 3),
    w23: workedCase.w23 + (8 / 9) * (6 + 3),
  });
  const straight = adjust(readOpening(workedCase));
  const jambs = [bow('bl', 'BL', 'TL', 6), bow('br', 'TR', 'BR', 3)];

  test('take their parabola out of the widths between', () => {
    const without = adjust(readOpening(swollen));
    expect(without.adjustment.suspects.map(({ mistake }) => mistake)).toEqual(['E14', 'E14']);
    const { adjustment, shape } = adjust([...readOpening(swollen), ...jambs]);
    expect(adjustment.suspects).toEqual([]);
    for (const corner of ['BR', 'TR', 'TL'])
      for (const axis of ['x', 'y'] as const)
        expect(
          Math.abs((shape?.points[corner]?.[axis] ?? NaN) - (straight.shape?.points[corner]?.[axis] ?? NaN)),
        ).toBeLessThan(0.1);
  });

  test('reach the edges of the shape, outwards positive, whichever end was named first', () => {
    const { shape } = adjust([...readOpening(swollen), ...jambs, bow('bh', 'TL', 'TR', -2)]);
    const bows = Object.fromEntries(shape?.edges.map(({ name, bow: amount }) => [name, amount]) ?? []);
    expect(bows['left jamb']).toBeCloseTo(6, 0);
    expect(bows['right jamb']).toBeCloseTo(3, 0);
    expect(bows['head']).toBe(-2);
    expect(bows['sill']).toBeUndefined();
  });

  test('are checked by the widths between; one of a side without widths is not', () => {
    const { adjustment } = adjust([...readOpening(swollen), ...jambs, bow('bh', 'TL', 'TR', -2)]);
    const told = (id: string) => adjustment.readings.find((reading) => reading.id === id);
    expect(told('bl')?.redundancy).toBeGreaterThan(0.1);
    expect(told('bh')).toMatchObject({ redundancy: 0, normalised: null, smallestSlip: null });
    expect(adjustment.dof).toBe(straight.adjustment.dof);
  });

  test('a bow written inwards for outwards is found', () => {
    const wrong = [bow('bl', 'BL', 'TL', -6), ...jambs.slice(1)];
    const { adjustment } = adjust([...readOpening(swollen), ...wrong]);
    expect(adjustment.suspects.map(({ id }) => id)).toContain('bl');
    expect(adjustment.suspects.find(({ id }) => id === 'bl')?.slip).toBeCloseTo(-12, 0);
    expect(adjustment.suspects.find(({ id }) => id === 'bl')?.mistake).toBe('E11');
  });

  test('a bow ties no points: its ends are still open', () => {
    expect(adjust([bow('bl', 'BL', 'TL', 6)]).adjustment.undetermined).not.toEqual([]);
  });
});

test('the readings have words', () => {
  expect(readingWords(offset('C', 'A', 'B'))).toBe('offset of C from A–B oC');
  expect(readingWords(angle('C', 'D', 'B'))).toBe('angle D–C–B aC');
  expect(readingWords({ id: 'b1', kind: 'bow', from: 'TL', to: 'BL', value: 3 })).toBe(
    'bow of the left jamb b1',
  );
  expect(readingWords({ id: 'b1', kind: 'bow', from: 'A', to: 'B', value: 3 })).toBe('bow of A–B b1');
});

describe('what cannot be used is named', () => {
  const faults = (reading: Reading) => checkSurvey({ seenFrom, readings: [reading] });
  test('an angle of more than a turn', () => {
    expect(faults({ ...angle('B', 'C', 'A'), value: 400 })[0]).toMatchObject({
      code: 'angle-too-wide',
      message: 'Reading aB is 400°, more than a whole turn.',
    });
  });
  test('an offset of a point from a line through itself, and an angle between a direction and nothing', () => {
    expect(faults({ ...offset('C', 'A', 'B'), point: 'A' } as Reading)[0]?.code).toBe('ends-alike');
    expect(faults({ ...angle('C', 'D', 'B'), at: 'B' } as Reading)[0]?.code).toBe('ends-alike');
  });
});

describe('the checker', () => {
  const all = [
    ...['B', 'C', 'D', 'E'].map((name) => distance('A', name)),
    ...[distance('B', 'C'), distance('C', 'D'), distance('D', 'E'), distance('B', 'D')],
    ...[offset('C', 'A', 'B'), offset('D', 'A', 'B'), angle('B', 'C', 'A'), angle('E', 'A', 'D')],
  ];

  test('always: passes what the adjustment answers with offsets, angles and bows', () => {
    const bows: readonly Reading[] = [
      ...readOpening(workedCase),
      { id: 'bl', kind: 'bow', from: 'BL', to: 'TL', value: 1 },
      { id: 'br', kind: 'bow', from: 'BR', to: 'TR', value: -1 },
    ];
    fc.assert(
      fc.property(fc.integer(), fc.constantFrom(all, bows), (seed, exact) => {
        const random = makeRandom(seed);
        const readings = exact.map((reading) => ({
          ...reading,
          value: reading.value + (reading.kind === 'angle' ? 0.3 : 1) * random.normal(),
        }));
        const survey = { seenFrom, readings };
        expect(checkAdjustment(survey, adjustSurvey(survey).adjustment)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('sees an offset, an angle and a bow that the points do not show', () => {
    const survey = { seenFrom, readings: all };
    const { adjustment } = adjustSurvey(survey);
    for (const id of ['oC', 'aB']) {
      const readings = adjustment.readings.map((r) =>
        r.id === id ? { ...r, adjusted: r.adjusted + 1, residual: r.residual - 1 } : r,
      );
      expect(checkAdjustment(survey, { ...adjustment, readings })[0]?.about).toBe(id);
    }
  });
});
