import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, newPiece, parametersOf, seenSizes } from '#core/joinery';
import type { BuiltPiece, Material, Piece, PieceKind } from '#core/joinery';

const materials: readonly Material[] = [
  { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' },
  { id: 'ply', kind: 'sheet', name: 'Birch plywood', thickness: 17.7 },
];

function build(kind: PieceKind, parameters: Record<string, unknown> = {}): BuiltPiece {
  const piece = newPiece(kind, { id: 'a', letter: 'A', name: 'Piece', shape: undefined, materials });
  const made = { ...piece, parameters: { ...piece.parameters, ...parameters } } as Piece;
  return buildPiece(made, { shape: null, materials, settings: defaultSettings });
}

const made = [
  build('drawer'),
  build('cabinet-front', { width: 900, height: 700 }),
  build('flat-door', { width: 560, height: 1700 }),
  build('framed-door'),
  build('louvred-door'),
  build('slat-lining'),
  build('lids'),
  build('access-panel'),
  build('curved-head'),
];

describe('numbers put in by a parameter', () => {
  test.each(made)('name a parameter of the piece whose value they are: $kind', (built) => {
    const infos = new Map(parametersOf(built.kind).map((info) => [info.key, info]));
    const put = built.working.filter((step) => step.parameter !== undefined);
    expect(put.length).toBeGreaterThan(4);
    for (const step of put) {
      expect(step.formula).toBeUndefined();
      expect(infos.has(step.parameter ?? '')).toBe(true);
    }
  });

  test.each(made)('whatever the user gave leads back to its parameter: $kind', (built) => {
    for (const step of built.working.filter(({ source }) => source === 'you'))
      expect(step.parameter).toBeDefined();
  });

  test('a change of the parameter changes the number that names it', () => {
    const wider = build('cabinet-front', { width: 900, height: 700, stileWidth: 55 });
    const step = wider.working.find(({ parameter }) => parameter === 'stileWidth');
    expect(step).toMatchObject({ name: 'ws', value: 55, source: 'you' });
  });
});

test('the sizes seen from the front are steps of the working', () => {
  for (const built of made) {
    const names = built.working.map(({ name }) => name);
    const { across, up } = seenSizes(built);
    expect(across.length).toBeGreaterThan(0);
    expect(up.length).toBeGreaterThan(0);
    for (const name of [...across, ...up]) expect(names).toContain(name);
  }
});
