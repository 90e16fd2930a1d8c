import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { adjustSurvey, makeOpeningReading, openingChecklist, type Reading } from '#core/measuring';
import { readReadings } from '#formats/csv';

function readingsOf(text: string): readonly Reading[] {
  const result = readReadings(text);
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join(' '));
  expect(result.problems).toEqual([]);
  return result.value.readings;
}

describe('readings from a table', () => {
  test('columns named by the fields, of every kind', () => {
    const text = [
      'id,kind,from,to,point,at,left,right,station,board,first,second,place,value,sigma,method,note,seenFrom',
      'w,distance,A,B,,,,,,,,,,641.5,0.5,M1,"from the sill, up",from the saloon',
      'm,width,,,,1/2,A D,B C,,,,,,640,,,,',
      'p,plumb,A,D,,,,,,,,,,-3,,,,',
      'l,level,A,B,,,,,,,,,,2,,,,',
      'o,offset,A,B,C,,,,,,,,,12,,,,',
      'a,angle,B,D,,A,,,,,,,,91.5,,,,',
      'b,bow,A,B,,,,,,,,,,4,,,,',
      's,ordinate,A,B,E,,,,300,,,,,41,,,,',
      't,tick,,,E,,,,120,ply,,,,88,,,,',
      'x,twist,,,,,,,,,A C,B–D,,3,,,,',
      'h,thickness,,,,,,,,,,,left low,18.2,,,,',
    ].join('\r\n');
    const readings = readingsOf(text);
    expect(readings.map(({ kind }) => kind)).toEqual([
      ...['distance', 'width', 'plumb', 'level', 'offset', 'angle', 'bow', 'ordinate', 'tick', 'twist'],
      'thickness',
    ]);
    expect(readings[0]).toEqual({
      ...{ id: 'w', kind: 'distance', from: 'A', to: 'B', value: 641.5 },
      ...{ sigma: 0.5, method: 'M1', note: 'from the sill, up' },
    });
    expect(readings[1]).toMatchObject({ left: ['A', 'D'], right: ['B', 'C'], at: 0.5 });
    expect(readings[9]).toMatchObject({ first: ['A', 'C'], second: ['B', 'D'] });
    const result = readReadings(text);
    expect(result.ok && result.value.seenFrom).toBe('from the saloon');
  });

  test('without a heading the order is id, kind, from, to, value', () => {
    expect(readingsOf('d1,distance,BL,TR,1868\nd2,distance,BR,TL,1855\n')).toEqual([
      { id: 'd1', kind: 'distance', from: 'BL', to: 'TR', value: 1868 },
      { id: 'd2', kind: 'distance', from: 'BR', to: 'TL', value: 1855 },
    ]);
  });

  test('semicolons with decimal commas, inches, and the standard readings by their names', () => {
    expect(readingsOf('id;value\nwb;641,5\nw13;25 1/4 in\n')).toEqual([
      makeOpeningReading('wb', 641.5),
      makeOpeningReading('w13', 25.25 * 25.4),
    ]);
  });

  test('the same row again is a repeat', () => {
    expect(readingsOf('id,from,to,value\na,P,Q,500\na,P,Q,501\n')).toEqual([
      { id: 'a', kind: 'distance', from: 'P', to: 'Q', value: 500, repeats: [501] },
    ]);
    expect(readingsOf('id,from,to,value,repeats\na,P,Q,500,501;499.5\n')[0]?.repeats).toEqual([501, 499.5]);
  });

  test('rows that cannot be read are named by their number, the others stay', () => {
    const text = [
      'id,kind,from,to,left,right,at,value,method,colour',
      'a,distance,P,Q,,,,500,,',
      'b,distance,P,Q,,,,five,,',
      'c,distance,P,,,,,500,,',
      ',distance,P,Q,,,,500,,',
      'e,guess,P,Q,,,,500,,',
      'f,width,,,AD,B C,0.5,500,,',
      'g,distance,P,Q,,,,500,M20,',
      'h,distance,P,Q,,,,,,',
    ].join('\n');
    const result = readReadings(text);
    expect(result.ok && result.value.readings.map(({ id }) => id)).toEqual(['a']);
    expect(result.problems.map(({ code, about }) => about ?? code)).toEqual([
      ...['colour', 'row 3', 'row 4', 'row 5', 'row 6', 'row 7', 'row 8', 'row 9'],
    ]);
    const sentences = result.problems.map(({ message }) => message);
    expect(sentences[1]).toBe('Row 3, reading b, has the value "five", which is no length; it was left out.');
    expect(sentences[2]).toContain('has no to');
    expect(sentences[4]).toContain('which is none of distance');
  });

  test('a table without a reading fails with a sentence', () => {
    for (const text of ['', '\n\n', 'id,value\n', 'id,value\n,\n']) {
      const result = readReadings(text);
      expect(result.ok, text).toBe(false);
      expect(result.problems.at(-1)?.message).toMatch(/\.$/);
    }
  });

  test('always: whatever the text is, it ends in readings or sentences', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const result = readReadings(text);
        for (const { message } of result.problems) expect(message.length).toBeGreaterThan(10);
        if (result.ok)
          for (const { value } of result.value.readings) expect(Number.isFinite(value)).toBe(true);
      }),
    );
  });

  test('the twelve readings of joinery A4 from a table are adjusted to its corners', () => {
    const values = { wb: 641, w13: 639, w23: 637, wt: 635, hl: 1746, hr: 1752, d1: 1868, d2: 1855 };
    const plumbs = { pl: 14, pr: 8, ls: 0, lh: 6 };
    const rows = openingChecklist.map(({ key }) => `${key},${{ ...values, ...plumbs }[key]}`);
    const sigmas = rows.map((row, at) => `${row},${at < 8 ? 0.5 : 1}`);
    const readings = readingsOf(['id,value,sigma', ...sigmas].join('\n'));
    const { adjustment } = adjustSurvey({ seenFrom: 'from the saloon', readings });
    const corner = adjustment.points.find(({ id }) => id === 'TR');
    expect(corner?.x).toBeCloseTo(648.7, 1); // source: joinery A4, worked case
    expect(corner?.y).toBeCloseTo(1751.9, 1);
  });
});
