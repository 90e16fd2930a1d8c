import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '#core/geometry';
import { adjustSurvey, checkAdjustment, checkSurvey, readingWords } from '#core/measuring';
import type { Reading } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import { readOpening, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';
const adjust = (readings: readonly Reading[]) => adjustSurvey({ seenFrom, readings });

/** A hull beside a batten from A to B, 1500 long: ordinates every 300 or so. */
const hull: Readonly<Record<string, Point>> = {
  A: { x: 0, y: 0 },
  B: { x: 1500, y: 0 },
  P: { x: 0, y: 182 },
  Q: { x: 300, y: 281 },
  R: { x: 610, y: 347 },
  S: { x: 900, y: 369 },
  T: { x: 1490, y: -40 },
};
const at = (name: string): Point => hull[name] ?? { x: NaN, y: NaN };

function ordinate(point: string, more: Partial<Extract<Reading, { kind: 'ordinate' }>> = {}): Reading {
  const { x, y } = at(point);
  return { id: `o${point}`, kind: 'ordinate', point, from: 'A', to: 'B', station: x, value: y, ...more };
}

function distance(from: string, to: string, more = 0): Reading {
  const value = Math.hypot(at(to).x - at(from).x, at(to).y - at(from).y) + more;
  return { id: `${from}${to}`, kind: 'distance', from, to, value };
}

/** A tick on a board that lies at (x, y), its edge turned: the point in the board's own axes, by hand. */
function tick(point: string, board: string, place: readonly [x: number, y: number, turn: number]): Reading {
  const [dx, dy] = [at(point).x - place[0], at(point).y - place[1]];
  const [cos, sin] = [Math.cos(place[2]), Math.sin(place[2])];
  const [station, value] = [dx * cos + dy * sin, dy * cos - dx * sin];
  return { id: `t${board}${point}`, kind: 'tick', board, point, station, value };
}

function farthest(shape: ReturnType<typeof adjust>['shape']): number {
  if (!shape) return NaN;
  return Math.max(
    ...Object.entries(shape.points).map(([name, p]) => Math.hypot(p.x - at(name).x, p.y - at(name).y)),
  );
}

describe('ordinates from a batten', () => {
  const all = ['P', 'Q', 'R', 'S', 'T'].map((name) => ordinate(name));

  test('fix their points, on the side and at the station they say', () => {
    const { adjustment, shape } = adjust([distance('A', 'B'), ...all]);
    expect(farthest(shape)).toBeLessThan(1e-6);
    expect(adjustment.dof).toBe(0);
    expect(adjustment.undetermined).toEqual([]);
    expect(adjustment.findings.map(({ code }) => code)).not.toContain('hand-guessed');
  });

  test('err by 0.7 along the ordinate and 0.5 along the batten (joinery A1, M9)', () => {
    const { adjustment } = adjust([distance('A', 'B'), ...all]);
    const [told] = adjustment.readings.filter(({ id }) => id === 'oR');
    expect(told?.sigma).toBeCloseTo(0.7, 12);
    expect(told?.station?.sigma).toBeCloseTo(0.5, 12);
    const point = adjustment.points.find(({ id }) => id === 'R');
    expect(point?.sx).toBeCloseTo(0.5, 6);
    expect(point?.sy).toBeCloseTo(0.7, 6);
  });

  test('count twice in the degrees of freedom, once in the list of readings', () => {
    const readings = [distance('A', 'B'), ...all, distance('Q', 'S'), distance('P', 'R')];
    const { adjustment } = adjust(readings);
    expect(adjustment.readings.map(({ id }) => id)).toEqual(readings.map(({ id }) => id));
    expect(adjustment.dof).toBe(2);
  });

  const checks = [
    ...[distance('A', 'P'), distance('A', 'Q'), distance('B', 'Q'), distance('A', 'R'), distance('B', 'R')],
    ...[distance('P', 'R'), distance('Q', 'S'), distance('A', 'S'), distance('B', 'S')],
  ];

  test('a slip in an ordinate, and one in a station, are told apart', () => {
    const said = [distance('A', 'B'), ...checks, ordinate('P'), ordinate('R'), ordinate('S')];
    const high = adjust([...said, ordinate('Q', { value: 301 })]).adjustment;
    expect(high.suspects.map(({ id, part }) => [id, part])).toEqual([['oQ', undefined]]);
    expect(high.suspects[0]?.slip).toBeCloseTo(20, 0);
    const along = adjust([...said, ordinate('Q', { station: 400 })]).adjustment;
    expect(along.suspects.map(({ id, part, mistake }) => [id, part, mistake])).toEqual([
      ['oQ', 'station', 'E1'],
    ]);
    expect(along.findings[0]?.message).toContain(
      'station of the ordinate of Q from A–B oQ is about 100 mm too large',
    );
  });

  test('a batten without a length leaves its far end open, and the sentence says what to measure', () => {
    const { adjustment } = adjust(all);
    expect(adjustment.undetermined[0]).toMatch(/^Point B can still .*distance A–B/);
  });
});

describe('ticks on boards', () => {
  const outline = ['A', 'B', 'T', 'S', 'R', 'Q', 'P'];
  const board = (name: string, place: readonly [number, number, number]) =>
    outline.map((point) => tick(point, name, place));

  test('carry a whole outline, wherever the board lay', () => {
    const { adjustment, shape } = adjust(board('1', [700, -320, 2.2]));
    expect(adjustment.undetermined).toEqual([]);
    expect(adjustment.dof).toBe(0);
    expect(farthest(shape)).toBeLessThan(1e-6);
  });

  test('two boards with some points in common are joined, and check each other there', () => {
    const first = ['A', 'B', 'P', 'Q'].map((point) => tick(point, '1', [30, 40, 1]));
    const second = ['B', 'Q', 'R', 'S', 'T'].map((point) => tick(point, '2', [900, 200, -2.5]));
    const { adjustment, shape } = adjust([...first, ...second]);
    expect(farthest(shape)).toBeLessThan(1e-6);
    expect(adjustment.dof).toBe(1);
  });

  test('an opening brought over on one board needs no tape', () => {
    const corners: Readonly<Record<string, Point>> = {
      ...{ BL: { x: 0, y: 0 }, BR: { x: 640, y: 0 }, TR: { x: 652, y: 1750 }, TL: { x: 9, y: 1744 } },
    };
    const readings = Object.entries(corners).map(([point, { x, y }]): Reading => ({
      ...{ id: `t${point}`, kind: 'tick', board: 'ply', point, station: 1900 - y, value: x + 80 },
    }));
    const { shape } = adjust(readings);
    for (const [name, p] of Object.entries(corners)) {
      expect(shape?.points[name]?.x).toBeCloseTo(p.x, 6);
      expect(shape?.points[name]?.y).toBeCloseTo(p.y, 6);
    }
  });

  test('a mark misread by 20 mm is named by two distances taped aboard', () => {
    const spoilt = board('1', [700, -320, 2.2]).map((r) =>
      r.id === 't1R' ? { ...r, value: r.value + 20 } : r,
    );
    const taped = [distance('A', 'R'), distance('B', 'R'), distance('P', 'R'), distance('R', 'T')];
    const { adjustment } = adjust([...spoilt, ...taped]);
    expect(adjustment.suspects[0]?.id).toBe('t1R');
    expect(adjustment.suspects[0]?.slip).toBeCloseTo(20, -1);
  });

  // joinery A7: trace error 0.3 an end; q = 1 gives 0.67, 2 gives 1.08, 3 gives 1.50
  test.each([
    [1, 0.67],
    [2, 1.08],
    [3, 1.5],
  ])('a tip that reaches %d times its traced edge scatters by %d', (reach, sigma) => {
    const readings = board('1', [0, 0, 0]).map((reading) => ({ ...reading, reach }) as Reading);
    expect(adjust(readings).adjustment.readings[0]?.sigma).toBeCloseTo(sigma, 2);
  });

  test('always: what is answered from scattered ordinates and ticks passes the checker', () => {
    const exact = [
      ...[distance('A', 'B'), distance('A', 'R'), distance('Q', 'T')],
      ...['P', 'Q', 'S'].map((name) => ordinate(name)),
      ...['A', 'Q', 'R', 'S', 'T'].map((point) => tick(point, '1', [100, 700, -1])),
    ];
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = makeRandom(seed);
        const readings = exact.map((reading) => ({
          ...reading,
          value: reading.value + random.normal(),
          ...('station' in reading && { station: reading.station + random.normal() }),
        })) as Reading[];
        const survey = { seenFrom, readings };
        expect(checkAdjustment(survey, adjustSurvey(survey).adjustment)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test('a tip that reaches more than three times its edge, and a board that carries too little, are told', () => {
    const tape = [distance('A', 'B'), distance('A', 'R'), distance('B', 'R')];
    const found = (readings: readonly Reading[]) => adjust([...tape, ...readings]).adjustment.findings;
    const far = board('1', [0, 0, 0]).map((reading) => ({ ...reading, reach: 4 }) as Reading);
    expect(found(far).find(({ code }) => code === 'stick-reach')?.message).toContain('up to 4 times');
    expect(found(board('1', [0, 0, 0])).map(({ code }) => code)).not.toContain('board-bare');
    const one = found([tick('R', '1', [0, 0, 0])]).find(({ code }) => code === 'board-bare');
    expect(one?.message).toContain('Board 1 carries R alone, and where it lay is not known');
    const two = found([tick('R', '1', [0, 0, 0]), tick('A', '1', [0, 0, 0])]);
    expect(two.find(({ code }) => code === 'board-bare')?.message).toContain(
      'R and A alone: it tells how far apart',
    );
  });

  test('the checker sees a tick that its board does not show', () => {
    const survey = { seenFrom, readings: [...board('1', [700, -320, 2.2]), distance('A', 'R')] };
    const { adjustment } = adjustSurvey(survey);
    const readings = adjustment.readings.map((r) =>
      r.id === 't1R' && r.station
        ? {
            ...r,
            station: { ...r.station, adjusted: r.station.adjusted + 1, residual: r.station.residual - 1 },
          }
        : r,
    );
    expect(checkAdjustment(survey, { ...adjustment, readings })[0]?.about).toBe('t1R');
  });
});

describe('distances from two or three marks', () => {
  test('from two marks a point may lie on either side, and the finding says which point', () => {
    const fixed = [
      { id: 'M', x: 0, y: 0 },
      { id: 'N', x: 1000, y: 0 },
    ];
    const readings: readonly Reading[] = [
      { id: 'm', kind: 'distance', from: 'M', to: 'C', value: 700 },
      { id: 'n', kind: 'distance', from: 'N', to: 'C', value: 800 },
    ];
    const { adjustment, shape } = adjustSurvey({ seenFrom, readings, fixed });
    expect(adjustment.findings.find(({ code }) => code === 'shape-ambiguous')?.message).toContain('C');
    // cosine rule by hand: x = (1000² + 700² - 800²) / 2000
    expect(shape?.points['C']?.x).toBeCloseTo(425, 6);
    expect(Math.abs(shape?.points['C']?.y ?? NaN)).toBeCloseTo(Math.sqrt(700 ** 2 - 425 ** 2), 6);
  });

  test('a third mark off their line settles it', () => {
    const fixed = [
      ...[
        { id: 'M', x: 0, y: 0 },
        { id: 'N', x: 1000, y: 0 },
      ],
      { id: 'O', x: 300, y: -500 },
    ];
    const readings = fixed.map(({ id, x, y }): Reading => {
      return {
        id: id.toLowerCase(),
        kind: 'distance',
        from: id,
        to: 'C',
        value: Math.hypot(x - 425, y - 556.2),
      };
    });
    const { adjustment, shape } = adjustSurvey({ seenFrom, readings, fixed });
    expect(shape?.points['C']?.y).toBeCloseTo(556.2, 6);
    expect(adjustment.findings.map(({ code }) => code)).not.toContain('shape-ambiguous');
  });

  test('known points that cannot be used are named, and the first line serves instead', () => {
    const readings = [distance('A', 'B'), distance('A', 'R'), distance('B', 'R')];
    const one = adjustSurvey({ seenFrom, readings, fixed: [{ id: 'A', x: 5, y: 5 }] });
    expect(one.adjustment.findings[0]).toMatchObject({ code: 'fixed-points', severity: 'stop' });
    expect(one.shape?.points['A']).toEqual({ x: 0, y: 0 });
    const odd = [
      { id: 'A', x: NaN, y: 5 },
      { id: 'B', x: 1e9, y: 5 },
    ];
    expect(adjustSurvey({ seenFrom, readings, fixed: odd }).adjustment.findings[0]?.message).toContain(
      'known point A has no place',
    );
  });

  test('the free datum shares the doubt among all points: the origin is no longer exact', () => {
    const readings = readOpening(workedCase);
    const held = adjustSurvey({ seenFrom, readings }).adjustment;
    const free = adjustSurvey({ seenFrom, readings, datum: 'free' }).adjustment;
    expect(held.points[0]).toMatchObject({ id: 'BL', sx: 0, sy: 0 });
    expect(free.points[0]?.sx).toBeGreaterThan(0.05);
    expect(free.points.map(({ x, y }) => [x, y])).toEqual(held.points.map(({ x, y }) => [x, y]));
    const total = (points: typeof free.points) => points.reduce((sum, p) => sum + p.sx ** 2 + p.sy ** 2, 0);
    expect(total(free.points)).toBeLessThan(total(held.points)); // inner constraints: least trace
  });
});

describe('twist and thickness', () => {
  const strings = (value: number, repeats: readonly number[] = []): Reading => ({
    ...{ id: 's', kind: 'twist', first: ['BL', 'TR'], second: ['BR', 'TL'], value, repeats },
  });
  const thickness = (id: string, place: string, value: number): Reading => ({
    id,
    kind: 'thickness',
    place,
    value,
  });

  test('twist is twice the gap of the strings, known to twice their 2 sigma (joinery A1 M8, A4)', () => {
    const { adjustment } = adjust([...readOpening(workedCase), strings(2)]);
    expect(adjustment.twist).toEqual({ value: 4, u95: 2 });
    expect(adjustment.readings).toHaveLength(12);
    const found = adjustment.findings.find(({ code }) => code === 'opening-twisted');
    expect(found?.message).toContain('4 mm (±2) out of the plane');
    expect(found?.message).toContain('a ply door would touch');
  });

  test('repeats sharpen it; 3 mm and less say nothing, more than 6 concern a framed door too', () => {
    const opening = readOpening(workedCase);
    expect(adjust([...opening, strings(1.4, [1.6])]).adjustment.twist?.u95).toBeCloseTo(Math.SQRT2, 12);
    const codes = (value: number) =>
      adjust([...opening, strings(value)]).adjustment.findings.map(({ code }) => code);
    expect(codes(1.5)).not.toContain('opening-twisted');
    expect(codes(-1.6)).toContain('opening-twisted');
    const far = adjust([...opening, strings(-3.2)]).adjustment.findings;
    expect(far.find(({ code }) => code === 'opening-twisted')?.message).toContain('either would touch');
  });

  test('thickness: least, most and mean; a bulkhead that varies by more than 2 is told (joinery B1.7)', () => {
    const opening = readOpening(workedCase);
    const even = [
      thickness('a', 'left, low', 18.1),
      thickness('b', 'left, high', 18.4),
      thickness('c', 'head', 18.4),
    ];
    const { adjustment } = adjust([...opening, ...even]);
    expect(adjustment.thickness).toMatchObject({ count: 3, least: 18.1, most: 18.4 });
    expect(adjustment.thickness?.mean).toBeCloseTo(18.3, 12);
    // 2 s / sqrt(n) by hand: s = sqrt((0.04 + 0.01 + 0.01) / 2)
    expect(adjustment.thickness?.u95).toBeCloseTo((2 * Math.sqrt(0.03)) / Math.sqrt(3), 12);
    expect(adjustment.findings.map(({ code }) => code)).not.toContain('thickness-varies');
    const varied = adjust([...opening, ...even, thickness('d', 'right, low', 20.2)]).adjustment;
    expect(varied.findings.find(({ code }) => code === 'thickness-varies')?.message).toContain(
      'from 18.1 to 20.2 mm over 4 places',
    );
  });

  test('alone they fix no shape, but are answered', () => {
    const { adjustment, shape } = adjust([strings(4), thickness('a', 'head', 18)]);
    expect(shape).toBeNull();
    expect(adjustment.twist?.value).toBe(8);
    expect(adjustment.thickness?.mean).toBe(18);
    expect(adjustment.undetermined).not.toEqual([]);
  });
});

describe('what cannot be used is named', () => {
  const faults = (reading: Reading) => checkSurvey({ seenFrom, readings: [reading] });
  test.each([
    [ordinate('P', { station: NaN }), 'station-not-a-number'],
    [ordinate('P', { point: 'A' }), 'ends-alike'],
    [{ ...tick('P', '1', [0, 0, 0]), board: ' ' } as Reading, 'board-unnamed'],
    [{ ...tick('P', '1', [0, 0, 0]), reach: -1 } as Reading, 'reach-outside'],
    [{ id: 's', kind: 'twist', first: ['A', 'B'], second: ['B', 'C'], value: 1 } as Reading, 'strings-meet'],
    [{ id: 'x', kind: 'thickness', place: '', value: 18 } as Reading, 'place-unnamed'],
    [{ id: 'x', kind: 'thickness', place: 'head', value: -18 } as Reading, 'reading-not-positive'],
  ])('%o: %s', (reading, code) => {
    expect(faults(reading).map((problem) => problem.code)).toEqual([code]);
  });

  test('and all have words', () => {
    expect(readingWords(ordinate('P'))).toBe('ordinate of P from A–B oP');
    expect(readingWords(tick('P', '1', [0, 0, 0]))).toBe('tick of P on board 1 t1P');
    expect(readingWords({ id: 'h', kind: 'thickness', place: 'head', value: 18 })).toBe(
      'thickness at head h',
    );
  });
});
