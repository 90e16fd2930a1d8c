import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, parametersOf } from '#core/joinery';
import type { DoorFrameParameters, JoinerySettings } from '#core/joinery';
import { contextFor, curlewOpening, doorFrame, openingShape, ply9 } from '../../support/joinery-samples.ts';
import type { Corners } from '../../support/joinery-samples.ts';

const squareOpening: Corners = { BL: [0, 0], BR: [640, 0], TR: [640, 1750], TL: [0, 1750] };

function findingsOf(
  parameters: Partial<DoorFrameParameters>,
  at: Corners = squareOpening,
  settings: Partial<JoinerySettings> = {},
) {
  const shape = openingShape(at);
  return buildPiece(
    doorFrame({ stop: 'cover', ...parameters }),
    contextFor(shape, { settings: { ...defaultSettings, ...settings } }),
  ).findings;
}
const find = (code: string, ...args: Parameters<typeof findingsOf>) =>
  findingsOf(...args).find((found) => found.code === code);

describe('a sound frame', () => {
  test('has notes, but nothing to stop or warn for', () => {
    const noted = findingsOf({});
    expect(noted.filter((found) => found.severity !== 'note')).toEqual([]);
    for (const found of noted) {
      expect(found.about).toBe('A');
      expect(found.remedy).toBeTruthy();
      expect(found.source).toBeTruthy();
    }
  });
});

// Each with the numbers at which the rule of the rulebook bites, and just before it does.
describe('findings', () => {
  test('B1.1: a gap over 18 is not packed', () => {
    const wide: Corners = { ...squareOpening, TL: [14, 1750] };
    expect(find('gap-too-wide', { mode: 'square', datum: 'boat' }, wide)?.message).toContain('gap of 19');
    expect(
      find('gap-too-wide', { mode: 'square', datum: 'boat' }, { ...wide, TL: [12, 1750] }),
    ).toBeUndefined();
  });
  test('B1.2: a lean over 2 mm per m is seen', () => {
    const leaning: Corners = { BL: [0, 0], BR: [640, 0], TR: [650, 1750], TL: [10, 1750] };
    expect(find('frame-leans', {}, leaning)?.message).toContain('5.7 mm per m');
    expect(find('frame-leans', { datum: 'boat', mode: 'square' }, leaning)).toBeUndefined();
  });
  test('B1, mode: what was chosen, and the gap and cover it was chosen by', () => {
    const wide: Corners = { ...squareOpening, TL: [14, 1750] };
    expect(find('fit-chosen', { datum: 'boat' }, wide)?.message).toContain(
      'leave a gap of 19, the covers hide 18',
    );
    expect(find('fit-chosen', { datum: 'boat' })?.message).toContain('is square: its largest gap, 5,');
    expect(find('fit-chosen', { mode: 'square' })).toBeUndefined();
    expect(find('door-not-square', { datum: 'boat' }, wide)?.message).toContain('at the head');
  });
  test('B1, housing over: the bulkhead is notched for the head', () => {
    expect(find('bulkhead-to-notch', { corner: 'housing-over' })?.message).toContain('660 in all');
  });
  test('B1.4: a small clear opening is mentioned', () => {
    expect(
      find('opening-small', {}, { BL: [0, 0], BR: [480, 0], TR: [480, 1750], TL: [0, 1750] })?.message,
    ).toContain('430 × 1725');
  });
  test('B1.5: a housing that leaves less than 10 of the jamb', () => {
    expect(
      find('little-behind-housing', { corner: 'housing-between', jambThickness: 16 })?.message,
    ).toContain('leaves 9');
    expect(find('little-behind-housing', { corner: 'housing-between', jambThickness: 17 })).toBeUndefined();
  });
  test('B1.6: a cover that hardly laps, and one that does not hide the gap', () => {
    // 45 - (20 - 5) - 5 - 2.6 = 22.4 with the usual cover; 8 and 4 are the limits.
    expect(find('cover-overlap', { coverWidth: 31 })).toBeUndefined();
    expect(find('cover-overlap', { coverWidth: 30 })).toMatchObject({ severity: 'warn' });
    expect(find('cover-overlap', { coverWidth: 26 })).toMatchObject({ severity: 'stop' });
  });
  test('B1.7: a bulkhead that varies by more than 2', () => {
    expect(find('bulkhead-varies', { bulkheadMax: 21, bulkheadMin: 18.5 })?.message).toContain(
      'varies by 2.5',
    );
    expect(find('bulkhead-varies', { bulkheadMax: 20, bulkheadMin: 18 })).toBeUndefined();
  });
  test('B1.8: screws into the edge of a thin bulkhead', () => {
    expect(
      find('screw-splits-bulkhead', { bulkheadMax: 12, bulkheadMin: 12, doorThickness: 12 }),
    ).toMatchObject({
      severity: 'warn',
    });
  });
  test('B1.10 and C0.3: a housing too near the end', () => {
    expect(find('short-grain', { corner: 'housing-over', horn: 14 })).toMatchObject({ severity: 'stop' });
    expect(find('short-grain', { corner: 'housing-over', horn: 15, jointDepth: 7 })).toBeUndefined();
    expect(find('short-grain', { corner: 'housing-over', horn: 15, jointDepth: 8 })).toBeDefined();
  });
  test('B1.11: a stop under 10, and the width at which it does', () => {
    expect(find('stop-too-narrow', { stop: 'planted' })?.message).toContain('0.4 wide');
    expect(find('stop-too-narrow', { stop: 'planted', bulkheadMax: 28, bulkheadMin: 28 })).toBeUndefined();
  });
  test('B1: a door thicker than the lining stands proud of it', () => {
    expect(find('door-proud', { doorThickness: 25 })?.message).toContain('4.6 proud');
    expect(find('door-proud', {})).toBeUndefined();
  });
  test('0.7, G6: no room to open once varnished', () => {
    expect(find('no-room-once-finished', { doorGapSide: 1.4 })).toMatchObject({ severity: 'stop' });
    expect(find('no-room-once-finished', { doorGapSide: 1.5 })).toBeUndefined();
    expect(find('no-room-once-finished', {}, squareOpening, { film: 1 })?.message).toContain('films 2');
  });
  test('G7: a thick door in a narrow gap strikes the jamb', () => {
    expect(find('door-strikes-jamb', { doorThickness: 45, doorGapSide: 2 })).toMatchObject({
      severity: 'warn',
    });
    expect(find('door-strikes-jamb', {})).toBeUndefined();
  });
  test('C0.1: a butt joint hangs on screws in end grain', () => {
    expect(find('screw-into-end-grain', { corner: 'butt' })).toMatchObject({ severity: 'warn' });
    expect(find('screw-into-end-grain', { corner: 'tongue' })).toBeUndefined();
  });
  test('C0.2: a wall under 5, or under a quarter', () => {
    expect(find('wall-too-thin', { jointDepth: 16 })).toMatchObject({ severity: 'stop' });
    expect(find('wall-too-thin', { jointDepth: 15 })).toBeUndefined();
    expect(find('wall-too-thin', { corner: 'bridle', bulkheadMax: 12, bulkheadMin: 12 })).toBeDefined();
  });
  test('D2: timber much drier or wetter than where it goes', () => {
    expect(find('timber-moisture', {}, squareOpening, { moistureNow: 9 })?.message).toContain(
      '3.5 points drier',
    );
    expect(find('timber-moisture', {}, squareOpening, { moistureNow: 10 })).toBeUndefined();
  });
  test('D5, G24: parts too small for a machine are named with their sizes', () => {
    const narrow = { stop: 'planted', bulkheadMax: 30, bulkheadMin: 30 } as const;
    expect(find('part-small-for-machines', narrow)?.message).toBe(
      'Too small to be planed or ripped alone: A5, A6 (1725 × 12 × 12); A7 (566 × 12 × 12). The planer wants 300 × 20 × 12.',
    );
    expect(find('part-small-for-machines', {})).toBeUndefined();
  });
  test('G8: members of another thickness than the sheet measures', () => {
    expect(find('sheet-thickness', { materials: { frame: ply9.id } })?.message).toContain('9.2');
  });
  test('a material that is not there is named', () => {
    expect(find('material-missing', { materials: { frame: 'ebony' } })).toMatchObject({ severity: 'stop' });
  });
  test('choices that do not go together are named, and what was taken', () => {
    expect(find('rebated-corner', { stop: 'rebated', corner: 'mitre' })).toMatchObject({ severity: 'stop' });
    expect(find('stop-without-cover', { stop: 'cover', covers: 'near' })).toMatchObject({ severity: 'stop' });
    expect(
      find('infill-corner', { infill: true, infillOrdinates: [90, 90], corner: 'rebate' }),
    ).toMatchObject({
      severity: 'warn',
    });
    expect(find('infill-ordinates', { infill: true })).toMatchObject({ severity: 'stop' });
  });
  test('a number outside its limits is a warning with the limit, no number at all a stop', () => {
    expect(find('parameter-below-limit', { packingSides: 2 })?.message).toContain('usual least of 3');
    expect(find('parameter-above-limit', { packingSides: 11 })?.remedy).toContain('10 or less');
    expect(find('parameter-unusable', { jambThickness: -1 })).toMatchObject({ severity: 'stop' });
  });
});

describe('without a usable opening there are no parts, and one reads what to measure:', () => {
  test('none measured', () => {
    const built = buildPiece(doorFrame(), contextFor(null));
    expect(built.parts).toEqual([]);
    expect(built.findings[0]).toMatchObject({ severity: 'stop', code: 'opening-not-measured' });
    expect(built.findings[0]?.remedy).toContain('diagonals');
  });
  test('a corner without its point', () => {
    const shape = openingShape(squareOpening);
    const { BL, BR, TR } = shape.points;
    if (!BL || !BR || !TR) throw new Error('sample lacks a corner');
    const built = buildPiece(doorFrame(), contextFor({ ...shape, points: { BL, BR, TR } }));
    expect(built.findings[0]?.message).toContain('has no TL');
  });
  test('corners that cross', () => {
    const built = buildPiece(
      doorFrame(),
      contextFor(openingShape({ ...squareOpening, TL: [640, 1750], TR: [0, 1750] })),
    );
    expect(built.findings[0]).toMatchObject({ code: 'opening-crossed', severity: 'stop' });
  });
  test('an opening too small for its members', () => {
    const built = buildPiece(
      doorFrame(),
      contextFor(openingShape({ BL: [0, 0], BR: [64, 0], TR: [64, 175], TL: [0, 175] })),
    );
    expect(built.parts).toEqual([]);
    expect(built.findings[0]).toMatchObject({ code: 'frame-impossible', severity: 'stop' });
    expect(built.findings[0]?.message).toMatch(/door width comes out at|stop length comes out at/);
  });
});

test('always: whatever the numbers, an answer comes back, without NaN, and no parts only with a stop', () => {
  const odd = fc.oneof(
    fc.constantFrom(0, -5, NaN, Infinity, 1e9),
    fc.double({ min: 0, max: 300, noNaN: true }),
  );
  const keys = parametersOf('door-frame')
    .filter((info) => info.type === 'length')
    .map((info) => info.key);
  const parameters = fc.record(
    {
      ...Object.fromEntries(keys.map((key) => [key, odd])),
      corner: fc.constantFrom(
        'rebate',
        'tongue',
        'housing-over',
        'housing-between',
        'half-lap',
        'bridle',
        'mitre',
        'butt',
      ),
      stop: fc.constantFrom('planted', 'rebated', 'cover', 'none'),
      mode: fc.constantFrom('auto', 'square', 'fitted'),
      sill: fc.boolean(),
      infill: fc.boolean(),
      infillOrdinates: fc.array(odd, { maxLength: 5 }),
    },
    { requiredKeys: [] },
  );
  const at = fc.array(fc.double({ min: -900, max: 2000, noNaN: true }), { minLength: 8, maxLength: 8 });
  const shaped = fc.oneof(
    at.map((v): Corners => ({
      BL: [v[0] ?? 0, v[1] ?? 0],
      BR: [v[2] ?? 0, v[3] ?? 0],
      TR: [v[4] ?? 0, v[5] ?? 0],
      TL: [v[6] ?? 0, v[7] ?? 0],
    })),
    fc.constantFrom(curlewOpening, squareOpening),
  );
  fc.assert(
    fc.property(parameters, shaped, (given, corners) => {
      const built = buildPiece(
        doorFrame(given as Partial<DoorFrameParameters>),
        contextFor(openingShape(corners)),
      );
      if (built.parts.length === 0) expect(built.findings[0]?.severity).toBe('stop');
      for (const part of built.parts) {
        const numbers = [part.finished, part.cut, part.rough].flatMap((size) => Object.values(size));
        for (const n of numbers) expect(Number.isFinite(n)).toBe(true);
        for (const n of numbers) expect(n).toBeGreaterThan(0);
      }
    }),
    { numRuns: 1500 },
  );
});
