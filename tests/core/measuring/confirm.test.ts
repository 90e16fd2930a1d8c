import { describe, expect, test } from 'vitest';
import { adjustSurvey, confirmReading, suggestRepeat, withdrawSuggestion } from '#core/measuring';
import type { Reading } from '#core/measuring';
import { readOpening, workedCase } from './openings.ts';

const seenFrom = 'from the saloon, looking forward';
const adjust = (readings: readonly Reading[]) => adjustSurvey({ seenFrom, readings });
const clean = readOpening(workedCase);
const spoilt = clean.map((r) => (r.id === 'w23' ? { ...r, value: 627 } : r)); // joinery A4, vector lsq_slip: slip -9.97

function take(): { readonly taken: Reading; readonly all: readonly Reading[] } {
  const [suspect] = adjust(spoilt).adjustment.suspects;
  const read = spoilt.find(({ id }) => id === 'w23');
  const taken = suspect && read ? suggestRepeat(read, suspect) : null;
  if (!taken) throw new Error('no suggestion');
  return { taken, all: spoilt.map((r) => (r.id === 'w23' ? taken : r)) };
}

describe('a suggestion that is taken', () => {
  test('keeps what was read, and says what is expected', () => {
    const { taken } = take();
    expect(taken.value).toBe(627);
    expect(taken.toConfirm).toBeCloseTo(636.97, 1);
  });

  test('puts the reading aside: the shape is that of the other eleven, and a finding asks for the look', () => {
    const { all } = take();
    const outcome = adjust(all);
    const eleven = adjust(spoilt.filter(({ id }) => id !== 'w23'));
    expect(outcome.shape).toEqual(eleven.shape);
    expect(outcome.adjustment.suspects).toEqual([]);
    const found = outcome.adjustment.findings.find(({ code }) => code === 'reading-to-confirm');
    expect(found?.message).toBe(
      'The width at two thirds w23 was read as 627 mm, the others say 637 mm: it is put aside and counts for nothing until it is measured again.',
    );
    expect(outcome.adjustment.findings.map(({ severity }) => severity)).not.toContain('stop');
  });

  test('confirmed by a fresh look, the look counts and the first one is kept in the note', () => {
    const { taken, all } = take();
    const confirmed = confirmReading({ ...taken, note: 'in a hurry' }, 637);
    expect(confirmed).toMatchObject({ value: 637, repeats: [], note: 'in a hurry First read as 627 mm.' });
    expect(confirmed.toConfirm).toBeUndefined();
    const { adjustment } = adjust(all.map((r) => (r.id === 'w23' ? confirmed : r)));
    expect(adjustment.suspects).toEqual([]);
    expect(adjustment.readings).toHaveLength(12);
  });

  test('not confirmed, both looks stand side by side and the doubt is back', () => {
    const { taken, all } = take();
    const looked = confirmReading(taken, 627.5);
    expect(looked).toMatchObject({ value: 627, repeats: [627.5] });
    expect(adjust(all.map((r) => (r.id === 'w23' ? looked : r))).adjustment.suspects[0]?.id).toBe('w23');
  });

  test('withdrawn, leaves no trace', () => {
    const { taken } = take();
    expect(withdrawSuggestion(taken)).toEqual(spoilt.find(({ id }) => id === 'w23'));
  });

  test('is made for its own reading only', () => {
    const [suspect] = adjust(spoilt).adjustment.suspects;
    expect(suspect && suggestRepeat(clean[0] as Reading, suspect)).toBeNull();
  });
});
