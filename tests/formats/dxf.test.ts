import { describe, expect, test } from 'vitest';
import { drawRouterFiles } from '#core/drawing';
import { checkDxf, readEntities, readGroups } from '#formats/dxf';
import { sampleDrawerSide } from '../support/samples.ts';

const [face] = drawRouterFiles(sampleDrawerSide, { cutter: 6, passDepth: 4 });
const good = face!.dxf;

test('a file of ours is found good, with either kind of line end', () => {
  expect(checkDxf(good)).toEqual([]);
  expect(checkDxf(good.replace(/\n/g, '\r\n'))).toEqual([]);
});

describe('a damaged file is found out', () => {
  test.each([
    ['cut off in the middle', good.slice(0, good.length / 2), /dxf-cut-off|dxf-broken/],
    ['without its end', good.replace(/0\nEOF\n$/, ''), /^dxf-cut-off$/],
    ['no DXF at all', 'part,length\nC4,641\n', /^dxf-broken$/],
    ['empty', '', /dxf-cut-off/],
    ['with a number that is none', good.replace('\n450\n', '\nNaN\n'), /^dxf-number$/],
    ['with a word for a number', good.replace('\n450\n', '\nlong\n'), /^dxf-number$/],
    [
      'with an open contour',
      good.replace(/POLYLINE\n8\nOUTLINE_THROUGH\n6\nCONTINUOUS\n66\n1\n70\n1/, (m) => m.replace(/1$/, '0')),
      /^dxf-open$/,
    ],
    ['in inches', good.replace('$INSUNITS\n70\n4', '$INSUNITS\n70\n1'), /^dxf-units$/],
  ])('%s', (_, text, code) => {
    expect(text).not.toBe(good);
    const findings = checkDxf(text);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings[0]?.code).toMatch(code);
  });

  test('a loose line where only contours belong', () => {
    const loose = '0\nLINE\n8\nOUTLINE_THROUGH\n10\n0\n20\n0\n11\n5\n21\n0\n';
    const text = good.replace('ENTITIES\n', `ENTITIES\n${loose}`);
    expect(checkDxf(text).map((f) => f.code)).toEqual(['dxf-open']);
  });
});

test('the entities are read with their corners', () => {
  const entities = readEntities(readGroups(good).groups);
  const outline = entities.find((e) => e.layer === 'OUTLINE_THROUGH');
  expect([outline?.type, outline?.vertices.length]).toEqual(['POLYLINE', 4]);
});
