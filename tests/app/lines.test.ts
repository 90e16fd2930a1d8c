import { expect, test } from 'vitest';
import {
  adjustSurvey,
  makeOpeningReading,
  openingChecklist,
  type OpeningKey,
  type Reading,
} from '#core/measuring';
import type { ShapeOutcome } from '#core/pipeline';
import { changeReading, isSigned, nextLine, siteLines } from '#app/site/lines.ts';

function outcomeOf(readings: readonly Reading[]): ShapeOutcome {
  const seenFrom = 'from the saloon, looking forward';
  const { adjustment, shape } = adjustSurvey({ seenFrom, readings });
  return {
    shape: { id: 'door', name: 'Door', kind: 'opening', seenFrom, readings },
    adjustment,
    adjusted: shape,
  };
}

/** The worked case in the contract of the command line. */
const worked: Readonly<Record<OpeningKey, number>> = {
  wb: 641,
  w13: 639,
  w23: 637,
  wt: 635,
  hl: 1746,
  hr: 1752,
  d1: 1868,
  d2: 1855,
  pl: 14,
  pr: 8,
  ls: 0,
  lh: 6,
};
const readings = openingChecklist.map((line) => makeOpeningReading(line.key, worked[line.key]));

test('the lines follow the visit, and the next one is the first without a reading', () => {
  const lines = siteLines(outcomeOf(readings.slice(0, 5)));
  expect(lines.map((line) => line.id)).toEqual(openingChecklist.map((line) => line.key));
  expect(nextLine(lines, null)?.id).toBe('hr');
  expect(nextLine(lines, 'wb')?.id).toBe('wb');
  expect(nextLine(siteLines(outcomeOf(readings)), null)).toBeNull();
});

test('a reading beside the twelve has a line of its own at the end', () => {
  const own: Reading = { id: 'mine', kind: 'distance', from: 'BL', to: 'X', value: 300 };
  const lines = siteLines(outcomeOf([...readings, own]));
  expect(lines).toHaveLength(13);
  expect(lines.at(-1)).toMatchObject({ id: 'mine', standard: null });
});

test('a suspected reading carries its slip to its line', () => {
  const wrong = readings.map((reading) => (reading.id === 'w23' ? { ...reading, value: 627 } : reading));
  const suspects = siteLines(outcomeOf(wrong)).filter((line) => line.suspect !== null);
  expect(suspects.map((line) => line.id)).toEqual(['w23']);
  // joinery A4, worked case lsq_slip: -9.97
  expect(suspects[0]?.suspect?.slip).toBeCloseTo(-9.97, 1);
});

test('only lean and rise take a sign', () => {
  const signed = siteLines(outcomeOf([])).filter(isSigned);
  expect(signed.map((line) => line.id)).toEqual(['pl', 'pr', 'ls', 'lh']);
});

test('correcting a reading keeps its repeats and forgets the manner that was taken back', () => {
  const before = makeOpeningReading('wb', 641, { toFace: 'headlining', repeats: [640] });
  const after = changeReading(before, 642, { method: 'M3', toFace: '' });
  expect(after).toMatchObject({ id: 'wb', value: 642, method: 'M3', repeats: [640] });
  expect('toFace' in after).toBe(false);
});
