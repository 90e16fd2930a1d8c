import { expect, test } from 'vitest';
import { buildPiece, defaultSettings, kindWords, newPiece } from '#core/joinery';
import { usualMaterials } from '../../support/flat-pieces.ts';

const materials = [
  ...usualMaterials,
  { id: 'ply12', kind: 'sheet', name: 'Marine ply 12', thickness: 12, density: 550 } as const,
];

test.each(['carcase', 'shelf', 'countertop', 'run'] as const)(
  'a new %s with the usual choices can be made',
  (kind) => {
    const piece = newPiece(kind, { id: 'new', letter: 'N', name: kindWords(kind).name, materials });
    const built = buildPiece(piece, { shape: null, materials, settings: defaultSettings });
    expect(built.parts.length).toBeGreaterThan(0);
    expect(built.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  },
);
