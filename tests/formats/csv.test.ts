import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCsv, writeCsv } from '#formats/csv';
import { haveTool, python, runTool } from '../support/outside-tools.ts';

const reader = haveTool('CSV read by the csv module of Python', python, ['-c', 'import csv']);
const readAll =
  'import sys,csv,json,io; print(json.dumps(list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode("utf-8"), newline=""), strict=True))))';
const readOutside = (text: string) =>
  JSON.parse(runTool(python, ['-c', readAll], text)) as readonly (readonly string[])[];

// RFC 4180 section 2 (Y. Shafranovich, October 2005), the examples of its rules 1 to 7
const examples: readonly (readonly [string, readonly (readonly string[])[]])[] = [
  [
    'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    'aaa,bbb,ccc\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
];

describe('reading', () => {
  test.each(examples)('RFC 4180: %j', (text, rows) => {
    expect(readCsv(text)).toEqual(rows);
  });

  test('spaces are part of a field and an empty last field counts', () => {
    expect(readCsv(' a , b\r\n,\r\nx,')).toEqual([
      [' a ', ' b'],
      ['', ''],
      ['x', ''],
    ]);
  });

  test('a byte order mark and bare line feeds are taken', () => {
    expect(readCsv('\ufeffa,b\nc,d\n')).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
  });
});

describe('writing', () => {
  test('lines end in CRLF, and what needs quotes has them', () => {
    const text = writeCsv(
      ['part', 'length mm'],
      [
        ['C4, left', 641.5],
        ['say "when"', 10],
        [null, 0],
      ],
    );
    expect(text).toBe('part,length mm\r\n"C4, left",641.5\r\n"say ""when""",10\r\n,0\r\n');
  });

  test.each(['=1+1', '+1', '-1', '@sum(a1)', '\tx', '\rx'])('the text %j cannot become a formula', (text) => {
    const [, row] = readCsv(writeCsv(['a'], [[text]]));
    expect(row).toEqual([`'${text}`]);
  });

  test('numbers stay numbers, negative and small ones too', () => {
    expect(writeCsv(['a'], [[-3.5], [-0], [1e-7], [1e21], [0.1]])).toBe(
      'a\r\n-3.5\r\n0\r\n0.0000001\r\n1000000000000000000000\r\n0.1\r\n',
    );
  });

  test('a number that is none is our mistake', () => {
    expect(() => writeCsv(['a'], [[Number.NaN]])).toThrow('no number');
  });

  const cell = fc
    .string({ unit: 'grapheme' })
    .map((text) => text.replace(/^[=+\-@\t\r\n]+/, '').replaceAll('\u0000', ''));
  const table = fc
    .integer({ min: 2, max: 4 })
    .chain((n) => fc.array(fc.array(cell, { minLength: n, maxLength: n }), { minLength: 2, maxLength: 12 }));

  test('always: reads back as it was written', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const [header = [], ...rest] = rows;
        expect(readCsv(writeCsv(header, rest))).toEqual(rows);
      }),
    );
  });

  test.skipIf(!reader)('always: another reader sees the same cells', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const [header = [], ...rest] = rows;
        expect(readOutside(writeCsv(header, rest))).toEqual(rows);
      }),
      { numRuns: 15 },
    );
  });
});
