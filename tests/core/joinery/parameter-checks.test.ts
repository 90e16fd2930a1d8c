import { describe, expect, test } from 'vitest';

import { buildPiece, type BuildContext, type Piece } from '#core/joinery';

const context: BuildContext = {
  shape: null,
  materials: [
    { id: 'ply', kind: 'sheet', name: 'Ply 12', thickness: 12 },
    { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' },
  ],
  settings: { film: 0.15, moistureNow: 10, moistureLow: 9, moistureHigh: 16, arris: 1 },
};

function build(kind: string, parameters: Record<string, unknown>) {
  return buildPiece({ id: 'p', letter: 'A', name: 'Piece', kind, parameters } as unknown as Piece, context);
}

const drawer = {
  ...{ openingWidth: 400, openingHeight: 150, clearDepth: 450 },
  materials: { box: 'ply', bottom: 'ply', runners: 'oak' },
};
const front = { width: 900, height: 700, materials: { frame: 'oak', fronts: 'ply' } };

describe('numbers beyond reason', () => {
  test.each([
    ['a thousand million drawers', 'drawer', { ...drawer, count: 1e9 }],
    ['a drawer as wide as a planet', 'drawer', { ...drawer, openingWidth: 1e300 }],
    ['a front of a million columns', 'cabinet-front', { ...front, columns: 1e6 }],
    ['sides thinner than an atom', 'drawer', { ...drawer, sideThickness: 1e-9 }],
  ])('%s is a stop with the number and what to enter, and nothing is built', (_, kind, parameters) => {
    const built = build(kind, parameters);
    const found = built.findings.find((finding) => finding.code === 'parameter-unusable');
    expect(found?.severity).toBe('stop');
    expect(found?.message).toMatch(/\d.* is far too (much|little)\./);
    expect(found?.remedy).toMatch(/^Enter \d/);
    expect(built.parts).toEqual([]);
  });

  test('a number a little beyond the usual is built with a warning', () => {
    const built = build('drawer', { ...drawer, count: 25 });
    expect(built.findings.map((finding) => [finding.severity, finding.code])).toContainEqual([
      'warn',
      'parameter-above-limit',
    ]);
    expect(built.parts.length).toBeGreaterThan(0);
  });
});
