import { describe, expect, test } from 'vitest';
import { adjustSurvey, closeQuadrilateral } from '#core/measuring';
import type { Adjustment, OpeningKey, Reading } from '#core/measuring';
import { exactValue, pick, readOpening, sixKeys, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';
const twelve = Object.keys(workedCase) as OpeningKey[];

function adjust(values: Partial<Record<OpeningKey, number>>): Adjustment {
  return adjustSurvey({ seenFrom, readings: readOpening(values) }).adjustment;
}

function pointOf(adjustment: Adjustment, id: string) {
  const point = adjustment.points.find((candidate) => candidate.id === id);
  if (!point) throw new Error(`no point ${id}`);
  return point;
}

function codes(adjustment: Adjustment): readonly string[] {
  return adjustment.findings.map(({ code }) => code);
}

const rectangle = {
  BL: { x: 0, y: 0 },
  BR: { x: 640, y: 0 },
  TR: { x: 640, y: 1750 },
  TL: { x: 0, y: 1750 },
};

describe('the worked case of the trade rulebook (joinery A4, numbers invented there)', () => {
  const adjustment = adjust(workedCase);

  test('corners, tilt, residuals and chi-square come out as written', () => {
    const expected = { BR: [640.982, 0], TR: [648.725, 1751.874], TL: [13.767, 1745.845] } as const;
    for (const [id, [x, y]] of Object.entries(expected)) {
      expect(Math.abs(pointOf(adjustment, id).x - x)).toBeLessThan(0.001);
      expect(Math.abs(pointOf(adjustment, id).y - y)).toBeLessThan(0.001);
    }
    expect(Math.abs(((adjustment.tilt ?? NaN) * Math.PI) / 180 - 0.000126)).toBeLessThan(1e-6);
    const residuals = [0.018, 0.023, 0.022, 0.014, 0.101, 0.108, -0.129, -0.094, 0.013, 0.036, 0.081, 0.051];
    residuals.forEach((v, k) =>
      expect(Math.abs((adjustment.readings[k]?.residual ?? NaN) - v)).toBeLessThan(0.001),
    );
    expect(Math.abs(adjustment.chi2 - 0.207)).toBeLessThan(0.001);
    expect(adjustment.dof).toBe(6);
  });

  test('the smallest slips come out as written', () => {
    const slips = [3.31, 2.44, 2.44, 3.31, 3.61, 3.61, 3.45, 3.46, 6.12, 6.13, 4.76, 4.76];
    slips.forEach((slip, k) =>
      expect(Math.abs((adjustment.readings[k]?.smallestSlip ?? NaN) - slip)).toBeLessThan(0.01),
    );
  });

  test('widths are known to 0.8 mm but the lean of the tops only to 2.6 mm, two sigma', () => {
    expect(2 * pointOf(adjustment, 'BR').sx).toBeCloseTo(0.8, 1);
    expect(2 * pointOf(adjustment, 'TL').sx).toBeCloseTo(2.6, 1);
  });

  test('a set in agreement brings neither suspects nor advice nor findings', () => {
    expect(adjustment.suspects).toEqual([]);
    expect(adjustment.undetermined).toEqual([]);
    expect(adjustment.advice).toBeNull();
    expect(adjustment.findings).toEqual([]);
  });
});

describe('a slip is named', () => {
  test('the width at two thirds 10 mm short', () => {
    const adjustment = adjust({ ...workedCase, w23: 627 });
    expect(adjustment.suspects.map(({ id }) => id)).toEqual(['w23']);
    expect(Math.abs((adjustment.suspects[0]?.slip ?? NaN) - -9.97)).toBeLessThan(0.02);
    expect(adjustment.suspects[0]?.mistake).toBe('E2');
    const w = adjustment.readings.find(({ id }) => id === 'w23')?.normalised ?? NaN;
    expect(Math.abs(w - -16.88)).toBeLessThan(0.01);
    expect(codes(adjustment)).toContain('readings-contradict');
  });

  // joinery A2: the closure of the six distances counts beyond 3.3 times its own deviation
  test('the closure of the six distances is said only where it is itself too large', () => {
    const said = (values: Partial<Record<OpeningKey, number>>) =>
      adjust({ ...workedCase, ...values }).findings.find(({ code }) => code === 'readings-contradict')
        ?.message;
    expect(said({ w23: 627 })).not.toContain('miss closing');
    // worked out from the formula of A2 with these six
    expect(said({ d1: 1880 })).toMatch(/the six distances miss closing by 5\.9 mm/);
  });

  test('the bottom width started at the 100 mark', () => {
    const [suspect, ...others] = adjust({ ...workedCase, wb: 741 }).suspects;
    expect(others).toEqual([]);
    expect(suspect?.id).toBe('wb');
    expect(suspect?.mistake).toBe('E1');
    // 741 less what the others say; the linear v / r of the rulebook gives 100.09.
    expect(Math.abs((suspect?.slip ?? NaN) - 100.09)).toBeLessThan(0.06);
  });

  test('the reading stays as it was: nothing is corrected', () => {
    const adjustment = adjust({ ...workedCase, wb: 741 });
    expect(adjustment.readings.find(({ id }) => id === 'wb')?.value).toBe(741);
    expect(pointOf(adjustment, 'BR').x).toBeGreaterThan(690);
  });

  test.each([
    ['digits of the right height swapped', { hr: 1725 }, 'hr', 'E3', 'two digits swapped'],
    ['the left height in centimetres', { hl: 174.6 }, 'hl', 'E13', 'centimetres for millimetres'],
    ['a diagonal in inches', { d1: 73.54 }, 'd1', 'E13', 'inches for millimetres'],
    ['the case of the tape forgotten', { w13: 564 }, 'w13', 'E5', 'case was not added'],
    ['a height misread by 50', { hl: 1796 }, 'hl', 'E2', 'misread by 50 mm'],
    ['the lean of a jamb with the wrong sign', { pl: -14 }, 'pl', 'E11', 'the sign is turned'],
  ] as const)('%s', (_, change, id, mistake, words) => {
    const { suspects } = adjust({ ...workedCase, ...change });
    expect(suspects.map((suspect) => suspect.id)).toEqual([id]);
    expect(suspects[0]?.mistake).toBe(mistake);
    expect(suspects[0]?.cause).toContain(words);
  });

  test('a face that was not bare is the first cause thought of', () => {
    const readings = readOpening({ ...workedCase, hl: 1740 }).map((reading) =>
      reading.id === 'hl' ? { ...reading, toFace: 'headlining 6 mm' } : reading,
    );
    const { adjustment } = adjustSurvey({ seenFrom, readings });
    expect(adjustment.suspects[0]).toMatchObject({ id: 'hl', mistake: 'E10' });
    expect(codes(adjustment)).toContain('measured-to-layer');
  });

  test('diagonals that changed places are told from a slip', () => {
    const adjustment = adjust({ ...workedCase, d1: 1855, d2: 1868 });
    expect(adjustment.suspects.map(({ id, mistake }) => [id, mistake])).toEqual([
      ['d1', 'E12'],
      ['d2', 'E12'],
    ]);
    expect(adjustment.suspects.map(({ slip }) => slip)).toEqual([-13, 13]);
    expect(codes(adjustment)).toContain('leans-disagree');
  });

  test('left and right exchanged throughout the tape readings is told from a slip', () => {
    const { d1, d2, hl, hr } = { d1: 1940, d2: 1900, hl: 1760, hr: 1800 };
    const corners = closeQuadrilateral({ wb: 700, wt: 700, hl, hr, d1, d2 });
    if (!corners) throw new Error('no such opening');
    const shape = { ...rectangle, BR: { x: 700, y: 0 }, TR: corners.topRight, TL: corners.topLeft };
    const exact = Object.fromEntries(twelve.map((key) => [key, exactValue(key, shape)]));
    const { suspects } = adjust({
      ...exact,
      d1: exact['d2'],
      d2: exact['d1'],
      hl: exact['hr'],
      hr: exact['hl'],
    });
    expect(new Set(suspects.map(({ mistake }) => mistake))).toEqual(new Set(['E11']));
  });

  test('both widths between too small while all else agrees: the sides are bowed', () => {
    const adjustment = adjust({ ...workedCase, w13: 633, w23: 631 });
    expect(adjustment.suspects.map(({ id, mistake }) => [id, mistake])).toEqual([
      ['w13', 'E14'],
      ['w23', 'E14'],
    ]);
    for (const { slip } of adjustment.suspects) expect(Math.abs(slip + 6)).toBeLessThan(0.1);
    expect(adjustment.findings[0]?.message).toContain('bowed inwards');
  });

  test('two slips are both named', () => {
    const adjustment = adjust({ ...workedCase, wb: 651, d1: 1888 });
    expect(adjustment.suspects.map(({ id }) => id).sort()).toEqual(['d1', 'wb']);
  });
});

describe('where the set cannot decide, all candidates are listed', () => {
  test('six readings, a diagonal 10 mm short: all six', () => {
    const { suspects } = adjust(pick(sixKeys, { d2: 1845 }));
    expect(suspects.map(({ id }) => id).sort()).toEqual([...sixKeys].sort());
    const slip = (id: string) => suspects.find((suspect) => suspect.id === id)?.slip ?? NaN;
    expect(Math.abs(slip('d2') - -10.43)).toBeLessThan(0.01);
    // Each candidate closes the six exactly when its slip is taken out.
    for (const { id } of suspects) {
      const mended = {
        ...pick(sixKeys, { d2: 1845 }),
        [id]: (id === 'd2' ? 1845 : workedCase[id as OpeningKey]) - slip(id),
      };
      const closed = closeQuadrilateral(mended as Parameters<typeof closeQuadrilateral>[0]);
      expect(Math.abs(closed?.closure ?? NaN)).toBeLessThan(1e-4);
    }
  });

  test('six readings, 100 mm off: the usual mistake comes first and the slip is exact', () => {
    const [first] = adjust(pick(sixKeys, { wb: 741 })).suspects;
    expect(first).toMatchObject({ id: 'wb', mistake: 'E1' });
    expect(Math.abs((first?.slip ?? NaN) - 100)).toBeLessThan(2);
  });

  test('six readings, a width 10 mm long: slips of a distinct size come before vague ones', () => {
    const { suspects } = adjust(pick(sixKeys, { wb: 651 }));
    expect(suspects.slice(0, 2).map(({ id, mistake }) => [id, mistake])).toEqual([
      ['wt', 'E2'],
      ['wb', 'E2'],
    ]);
  });

  test('a slip that a second look already contradicts is put down to it', () => {
    const readings = readOpening(workedCase).map((r) => (r.id === 'hl' ? { ...r, repeats: [1764] } : r));
    const [suspect] = adjustSurvey({ seenFrom, readings }).adjustment.suspects;
    expect(suspect).toMatchObject({ id: 'hl', mistake: 'E3' });
    expect(suspect?.cause).toContain(
      '1746 agrees with the other readings, 1764 does not: two digits swapped',
    );
  });

  test('eight readings: heights and diagonals cannot be told apart, widths can', () => {
    const eight = ['wb', 'w13', 'w23', 'wt', 'hl', 'hr', 'd1', 'd2'] as const;
    const height = adjust(pick(eight, { hl: 1756 }));
    expect(height.suspects.map(({ id }) => id).sort()).toEqual(['d1', 'd2', 'hl', 'hr']);
    expect(adjust(pick(eight, { w13: 649 })).suspects.map(({ id }) => id)).toEqual(['w13']);
  });
});

describe('the closed form of an opening (joinery A2)', () => {
  const six = { wb: 641, wt: 635, hl: 1746, hr: 1752, d1: 1868, d2: 1855 };

  test('corners and closures as written', () => {
    const closed = closeQuadrilateral(six);
    expect(closed?.topRight.x).toBeCloseTo(648.051, 3);
    expect(closed?.topRight.y).toBeCloseTo(1751.986, 3);
    expect(closed?.topLeft.x).toBeCloseTo(14.331, 3);
    expect(closed?.topLeft.y).toBeCloseTo(1745.941, 3);
    expect(closed?.closureTop).toBeCloseTo(1.251, 3);
    expect(closed?.closure).toBeCloseTo(0.213, 3);
  });

  test('a diagonal 10 mm short opens it by 5.027, a width 10 mm long only by 1.857', () => {
    expect(Math.abs(closeQuadrilateral({ ...six, d2: 1845 })?.closure ?? NaN)).toBeCloseTo(5.027, 3);
    expect(Math.abs(closeQuadrilateral({ ...six, wb: 651 })?.closure ?? NaN)).toBeCloseTo(1.857, 3);
  });

  test('lengths that make no triangle give nothing', () => {
    expect(closeQuadrilateral({ ...six, d1: 5000 })).toBeNull();
  });
});

describe('what each set of readings can see (joinery A3, opening 640 x 1750)', () => {
  const sets: readonly (readonly [readonly OpeningKey[], number, number, number, number, number | null])[] = [
    [sixKeys, 1, 12.0, 4.4, 4.1, null],
    [['wb', 'wt', 'hl', 'hr', 'd1', 'd2', 'w13', 'w23'], 3, 3.7, 4.3, 4.1, 2.5],
    [['wb', 'wt', 'hl', 'hr', 'd1', 'd2', 'pl', 'pr', 'ls', 'lh'], 4, 5.7, 3.6, 3.5, null],
    [twelve, 6, 3.3, 3.6, 3.5, 2.4],
  ];
  test.each(sets)('%j', (keys, dof, width, height, diagonal, middle) => {
    const adjustment = adjust(Object.fromEntries(keys.map((key) => [key, exactValue(key, rectangle)])));
    const slip = (id: string) =>
      adjustment.readings.find((reading) => reading.id === id)?.smallestSlip ?? NaN;
    expect(adjustment.dof).toBe(dof);
    expect(Math.abs(slip('wb') - width)).toBeLessThan(0.06);
    expect(Math.abs(slip('hl') - height)).toBeLessThan(0.06);
    expect(Math.abs(slip('d1') - diagonal)).toBeLessThan(0.06);
    if (middle !== null) expect(Math.abs(slip('w13') - middle)).toBeLessThan(0.06);
  });

  test('six and the width at mid height', () => {
    const readings: readonly Reading[] = [
      ...readOpening(Object.fromEntries(sixKeys.map((key) => [key, exactValue(key, rectangle)]))),
      { id: 'w12', kind: 'width', left: ['BL', 'TL'], right: ['BR', 'TR'], at: 0.5, value: 640, sigma: 0.5 },
    ];
    const { adjustment } = adjustSurvey({ seenFrom, readings });
    const slips = Object.fromEntries(
      adjustment.readings.map(({ id, smallestSlip }) => [id, smallestSlip ?? NaN]),
    );
    expect(adjustment.dof).toBe(2);
    for (const [id, slip] of [
      ['wb', 4.9],
      ['hl', 4.4],
      ['d1', 4.1],
      ['w12', 2.5],
    ] as const)
      expect(Math.abs((slips[id] ?? NaN) - slip)).toBeLessThan(0.06);
  });

  test('redundancy in the six readings of a rectangle is (length / 2 diagonal) squared', () => {
    const adjustment = adjust(Object.fromEntries(sixKeys.map((key) => [key, exactValue(key, rectangle)])));
    const diagonal = Math.hypot(640, 1750);
    for (const { value, redundancy } of adjustment.readings)
      expect(redundancy).toBeCloseTo((value / (2 * diagonal)) ** 2, 9);
  });
});
