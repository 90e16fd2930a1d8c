import { describe, expect, test } from 'vitest';
import { adjustSurvey } from '#core/measuring';
import type { Reading } from '#core/measuring';
import { pick, readOpening, sixKeys, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';
const distance = (from: string, to: string, value: number, sigma = 0.5): Reading => ({
  id: `${from}${to}`,
  kind: 'distance',
  from,
  to,
  value,
  sigma,
});
const adjust = (readings: readonly Reading[]) => adjustSurvey({ seenFrom, readings });
const at = (readings: readonly Reading[], id: string) => {
  const point = adjust(readings).adjustment.points.find((candidate) => candidate.id === id);
  if (!point) throw new Error(`no point ${id}`);
  return point;
};

describe('where the coordinates begin', () => {
  test('the first distance starts at the origin and runs along x; the next point lies above it', () => {
    const readings = [distance('P', 'Q', 300), distance('P', 'R', 500), distance('Q', 'R', 400)];
    expect(at(readings, 'P')).toMatchObject({ x: 0, y: 0, sx: 0, sy: 0 });
    expect(at(readings, 'Q').y).toBe(0);
    expect(at(readings, 'R').x).toBeCloseTo(300, 9);
    expect(at(readings, 'R').y).toBeCloseTo(400, 9);
    expect(adjust(readings).adjustment.findings.map(({ code }) => code)).toContain('hand-guessed');
  });

  test('an opening measured from its jamb is listed above that jamb, but its shape keeps left on the left', () => {
    const first = readOpening({ hl: 1746, ...pick(sixKeys) });
    const { adjustment, shape } = adjust(first);
    expect(adjustment.points.find(({ id }) => id === 'TL')).toMatchObject({ y: 0 });
    expect(adjustment.points.find(({ id }) => id === 'BR')?.y).toBeGreaterThan(600);
    expect(adjustment.findings.map(({ code }) => code)).toContain('shown-mirrored');
    expect(shape?.points['BR']?.y).toBe(0);
    expect(shape?.points['TL']?.x).toBeCloseTo(13.71, 2);
    const usual = adjust(readOpening(pick(sixKeys))).shape;
    for (const corner of ['BL', 'BR', 'TR', 'TL']) {
      expect(shape?.points[corner]?.x).toBeCloseTo(usual?.points[corner]?.x ?? NaN, 6);
      expect(shape?.points[corner]?.y).toBeCloseTo(usual?.points[corner]?.y ?? NaN, 6);
    }
  });

  test('plumb and level readings settle which of two mirror images it is', () => {
    const triangle = [distance('P', 'Q', 300), distance('P', 'R', 500), distance('Q', 'R', 400)];
    // R lies 400 mm below the level line from P to Q, as plumb line and level say.
    const signed: readonly Reading[] = [
      { id: 'l1', kind: 'level', from: 'P', to: 'Q', value: 0, sigma: 1 },
      { id: 'p1', kind: 'plumb', from: 'P', to: 'Q', value: 300, sigma: 1 },
      { id: 'l2', kind: 'level', from: 'P', to: 'R', value: -400, sigma: 1 },
    ];
    const { adjustment, shape } = adjust([...triangle, ...signed]);
    expect(adjustment.chi2).toBeLessThan(1e-9);
    expect(shape?.points['R']?.y).toBeCloseTo(-400, 6);
  });
});

test('a set without plumb and level is told so', () => {
  const { findings } = adjust(readOpening(pick(sixKeys))).adjustment;
  expect(findings.find(({ code }) => code === 'upright-unknown')?.severity).toBe('note');
  const weak = findings.find(({ code }) => code === 'slip-could-pass');
  expect(weak?.message).toBe('A slip of 12.1 mm in the bottom width wb could pass unseen (also weak: wt).');
  expect(weak?.remedy).toContain('Measure the width at one third');
});

describe('the shape for the pieces', () => {
  const { shape } = adjust(readOpening(workedCase));

  test('an opening has sill, right jamb, head and left jamb, counter-clockwise', () => {
    expect(shape?.edges.map(({ name }) => name)).toEqual(['sill', 'right jamb', 'head', 'left jamb']);
    expect(shape?.order).toEqual(
      ['BL.x', 'BL.y', 'BR.x', 'BR.y', 'TR.x', 'TR.y', 'TL.x', 'TL.y'].sort(byPoint),
    );
    expect(shape?.seenFrom).toBe(seenFrom);
  });

  test('its covariance is symmetric and agrees with the deviations of the points', () => {
    const { points } = adjust(readOpening(workedCase)).adjustment;
    shape?.order.forEach((name, i) => {
      shape.order.forEach((_, j) =>
        expect(shape.covariance[i]?.[j]).toBeCloseTo(shape.covariance[j]?.[i] ?? NaN, 12),
      );
      const point = points.find(({ id }) => id === name.slice(0, -2));
      const deviation = name.endsWith('x') ? point?.sx : point?.sy;
      expect(Math.sqrt(shape.covariance[i]?.[i] ?? NaN)).toBeCloseTo(deviation ?? NaN, 9);
    });
  });

  test('other points join up in the order in which they are first named', () => {
    const readings = [distance('P', 'Q', 300), distance('P', 'R', 500), distance('Q', 'R', 400)];
    expect(adjust(readings).shape?.edges.map(({ from, to }) => from + to)).toEqual(['PQ', 'QR', 'RP']);
  });

  test('with a tilted boat, upright turns and the shape stays', () => {
    const tilted = adjust(readOpening({ ...workedCase, ls: 12, lh: 18, pl: -19, pr: -25 }));
    expect(tilted.shape?.tilt).toBeLessThan(-0.015);
    expect(tilted.shape?.points['TR']?.x).toBeCloseTo(shape?.points['TR']?.x ?? NaN, 0);
  });
});

function byPoint(a: string, b: string): number {
  const order = ['BL', 'BR', 'TL', 'TR'];
  const [p, q] = [a.slice(0, 2), b.slice(0, 2)];
  return order.indexOf(p) - order.indexOf(q) || (a < b ? -1 : 1);
}

describe('sets that leave something open', () => {
  test('four sides: both top corners can swing, a diagonal is asked for', () => {
    const { adjustment, shape } = adjust(readOpening(pick(['wb', 'wt', 'hl', 'hr'])));
    expect(shape).toBeNull();
    expect(adjustment.undetermined).toContain(
      'The top right corner can still swing: measure the rising diagonal.',
    );
    expect(adjustment.advice).toMatch(/^Measure the (rising|falling) diagonal/);
    expect(adjustment.findings.map(({ code }) => code)).toContain('shape-undetermined');
    expect(adjustment.points.map(({ id }) => id)).toEqual(['BL', 'BR']);
  });

  test('one diagonal missing is made up by plumb and level', () => {
    const { adjustment, shape } = adjust(readOpening(pick(['wb', 'wt', 'hl', 'hr', 'pl', 'ls'])));
    expect(adjustment.undetermined).toEqual([]);
    expect(shape?.points['TL']?.x).toBeCloseTo(14, 6);
    expect(adjustment.readings.every(({ smallestSlip }) => smallestSlip === null)).toBe(true);
  });

  test.each([
    ['heights, bottom width, one diagonal, head', ['wb', 'wt', 'hl', 'hr', 'd1'] as const],
    ['intermediate widths for the top width', ['wb', 'w13', 'w23', 'hl', 'hr', 'd1', 'd2'] as const],
    ['no bottom width', ['wt', 'w13', 'hl', 'hr', 'd1', 'd2'] as const],
    ['one height, both diagonals', ['wb', 'wt', 'hl', 'd1', 'd2'] as const],
    ['no diagonals, both plumbs and the sill', ['wb', 'wt', 'hl', 'hr', 'pl', 'pr', 'ls'] as const],
    [
      'no heights, both diagonals and plumbs and sill and head',
      ['wb', 'wt', 'd1', 'd2', 'pl', 'pr', 'ls', 'lh'] as const,
    ],
  ])('any sufficient set gives the corners: %s', (_, keys) => {
    const { shape } = adjust(readOpening(pick(keys)));
    expect(Math.abs((shape?.points['TL']?.x ?? NaN) - 13.8)).toBeLessThan(6);
    expect(Math.abs((shape?.points['TL']?.y ?? NaN) - 1745.8)).toBeLessThan(6);
    expect(Math.abs((shape?.points['TR']?.x ?? NaN) - 648.7)).toBeLessThan(6);
  });

  test('a corner that no reading mentions is said to be missing', () => {
    const { adjustment } = adjust(readOpening(pick(['wb'])));
    expect(adjustment.undetermined).toEqual([
      'The top right corner is not measured yet.',
      'The top left corner is not measured yet.',
    ]);
  });

  test('two groups of points without a link are told apart', () => {
    const { adjustment } = adjust([distance('A', 'B', 500), distance('C', 'D', 400)]);
    expect(adjustment.findings.find(({ code }) => code === 'readings-not-joined')?.message).toContain(
      'C and D',
    );
    expect(adjustment.undetermined.length).toBeGreaterThan(0);
  });

  test('a point on the line of two others is not taken for certain', () => {
    const { adjustment, shape } = adjust([
      distance('A', 'B', 100),
      distance('A', 'C', 50),
      distance('C', 'B', 50),
    ]);
    expect(shape).toBeNull();
    expect(adjustment.undetermined.join()).toContain('Point C can still');
  });

  test('a point that could lie on either side of a line is called ambiguous', () => {
    const sides = [distance('A', 'B', 400), distance('A', 'C', 500), distance('B', 'C', 450)];
    const { adjustment } = adjust([...sides, distance('A', 'D', 350), distance('B', 'D', 300)]);
    expect(adjustment.findings.map(({ code }) => code)).toContain('shape-ambiguous');
    const sure = adjust([
      ...sides,
      distance('A', 'D', 350),
      distance('B', 'D', 300),
      distance('C', 'D', 745),
    ]);
    expect(sure.adjustment.findings.map(({ code }) => code)).not.toContain('shape-ambiguous');
  });
});

describe('advice is worked out, not canned', () => {
  test('six readings: a width between, with the gain in numbers', () => {
    const { advice } = adjust(readOpening(pick(sixKeys))).adjustment;
    expect(advice).toMatch(
      /^Measure the width at one third: .* falls from 12\.1 mm \(the bottom width wb\) to 6\.9 mm\.$/,
    );
    const better = adjust(readOpening(pick([...sixKeys, 'w13']))).adjustment;
    const worst = Math.max(...better.readings.map(({ smallestSlip }) => smallestSlip ?? Infinity));
    expect(worst).toBeCloseTo(6.9, 1);
  });

  test('five readings: the sixth checks them all', () => {
    const { advice } = adjust(readOpening(pick(['wb', 'wt', 'hl', 'hr', 'd1']))).adjustment;
    expect(advice).toContain('Measure the falling diagonal: 5 of the tape readings that nothing checks');
  });

  test('a rougher reading among the twelve is asked for once more', () => {
    const readings = readOpening(workedCase).map((r) => (r.id === 'wt' ? { ...r, sigma: 3 } : r));
    expect(adjust(readings).adjustment.advice).toContain('once more');
  });

  test('a suspect is to be measured again', () => {
    expect(adjust(readOpening({ ...workedCase, w23: 627 })).adjustment.advice).toContain(
      'width at two thirds w23 again',
    );
  });
});

describe('repeats', () => {
  const withRepeats = (repeats: readonly number[], value = 641) =>
    readOpening({ ...workedCase, wb: value }).map((r) => (r.id === 'wb' ? { ...r, repeats } : r));
  const used = (readings: readonly Reading[]) =>
    adjust(readings).adjustment.readings.find(({ id }) => id === 'wb');

  test('the mean is used, and is worth more than one look', () => {
    expect(used(withRepeats([640]))).toMatchObject({ value: 640.5, sigma: 0.5 / Math.SQRT2 });
  });

  test('two looks further apart than three sigma of their difference call for a third', () => {
    const { findings } = adjust(withRepeats([644])).adjustment;
    expect(findings.find(({ code }) => code === 'repeats-differ')?.remedy).toContain('once more');
    expect(adjust(withRepeats([643])).adjustment.findings.map(({ code }) => code)).not.toContain(
      'repeats-differ',
    );
  });

  test('swapped digits between two looks are named', () => {
    const { findings } = adjust(withRepeats([614])).adjustment;
    expect(findings.find(({ code }) => code === 'repeats-differ')?.message).toContain('digits look swapped');
  });

  test('of three looks the odd one is left out, and said to be', () => {
    const readings = withRepeats([641.5, 651]);
    expect(used(readings)?.value).toBe(641.25);
    const finding = adjust(readings).adjustment.findings.find(({ code }) => code === 'repeats-differ');
    expect(finding?.message).toContain('651 is left out');
  });
});

describe('hostile input is answered in sentences', () => {
  test.each([
    ['zero', { value: 0 }, 'reading-not-positive'],
    ['negative', { value: -641 }, 'reading-not-positive'],
    ['not a number', { value: NaN }, 'reading-not-a-number'],
    ['without end', { value: Infinity }, 'reading-not-a-number'],
    ['a thousand kilometres', { value: 1e9 }, 'reading-too-long'],
    ['a repeat that is none', { repeats: [NaN] }, 'reading-not-a-number'],
    ['no deviation', { sigma: 0 }, 'sigma-not-positive'],
    ['an id used before', { id: 'wt' }, 'id-twice'],
    ['no id', { id: ' ' }, 'id-missing'],
    ['an unknown method', { method: 'M99' as 'M1' }, 'method-unknown'],
  ] as const)('%s', (_, change, code) => {
    const readings = [...readOpening(workedCase)]
      .reverse()
      .map((r) => (r.id === 'wb' ? { ...r, ...change } : r));
    const { adjustment, shape } = adjust(readings as readonly Reading[]);
    const finding = adjustment.findings.find((candidate) => candidate.code === code);
    expect(finding?.severity).toBe('stop');
    expect(finding?.remedy).toMatch(/\.$/);
    expect(adjustment.readings.length).toBe(11);
    expect(shape).not.toBeNull();
    expect(JSON.stringify(adjustment)).not.toMatch(/NaN|Infinity/);
  });

  test('the same point at both ends, a width of one edge, a fraction outside', () => {
    const odd: readonly Reading[] = [
      distance('A', 'A', 5),
      { id: 'w', kind: 'width', left: ['A', 'B'], right: ['B', 'A'], at: 0.5, value: 10 },
      { id: 'x', kind: 'width', left: ['A', 'B'], right: ['C', 'D'], at: 2, value: 10 },
      { id: 'y', kind: 'plumb', from: '', to: 'A', value: 10 },
    ];
    const { adjustment, shape } = adjust(odd);
    const codes = adjustment.findings.map(({ code }) => code);
    expect(codes).toEqual(['ends-alike', 'edges-alike', 'fraction-outside', 'point-unnamed']);
    expect(shape).toBeNull();
    expect(adjustment.points).toEqual([]);
  });

  test('no readings, and no side', () => {
    const { adjustment } = adjustSurvey({ seenFrom: ' ', readings: [] });
    expect(adjustment.findings.map(({ code }) => code)).toEqual(['seen-from-missing', 'no-readings']);
    expect(adjustment.advice).not.toBeNull();
  });

  test('lengths that no triangle has are contradicted, not drawn', () => {
    const { adjustment } = adjust([
      distance('A', 'B', 100),
      distance('A', 'C', 300),
      distance('B', 'C', 600),
    ]);
    expect(adjustment.findings.some(({ severity }) => severity === 'stop')).toBe(true);
    expect(JSON.stringify(adjustment)).not.toMatch(/NaN|Infinity/);
  });
});
