import { describe, expect, test } from 'vitest';
import { buildPiece, newPiece, parametersOf, roughSize, shapeNeeds } from '#core/joinery';
import type { Material } from '#core/joinery';
import {
  contextFor,
  doorFrame,
  mahogany,
  materials,
  openingShape,
  ply9,
} from '../../support/joinery-samples.ts';

const planed: Material = { id: 'par', kind: 'solid', name: 'Oak, planed', state: 'planed' };

// Rulebook D4, rough allowances; the reasons there from E. Joyce, The Technique of Furniture Making.
describe('the blank to ask for', () => {
  test.each([
    ['sawn, long', mahogany, [1731, 20.4, 20], [1756, 27, 25]],
    ['sawn, short', mahogany, [560.5, 20, 12], [586, 26, 15]],
    ['sawn, usual', mahogany, [900, 60, 20], [925, 66, 24]],
    ['sawn, wide', mahogany, [900, 160, 20], [925, 166, 25]],
    ['sawn, shorter than a blank may be', mahogany, [120, 30, 12], [300, 36, 15]],
    ['planed', planed, [900, 60, 20], [920, 64, 20]],
    ['sheet, cut to size', ply9, [700.2, 300, 9.2], [701, 300, 9.2]],
  ] as const)('%s', (_, material, [length, width, thickness], [l, w, t]) => {
    expect(roughSize({ length, width, thickness }, material)).toEqual({ length: l, width: w, thickness: t });
  });
  test('leaves 40 for horns, and 10 each way on a sheet to be trimmed', () => {
    const size = { length: 679, width: 55, thickness: 20 };
    expect(roughSize(size, mahogany, 'horns').length).toBe(719); // rulebook B3, stile_rough
    expect(roughSize(size, ply9, 'trimmed')).toMatchObject({ length: 689, width: 65 });
  });
});

describe('the parameters of a door frame', () => {
  const infos = parametersOf('door-frame');
  test('have defaults within their limits and among their choices', () => {
    for (const info of infos) {
      if (typeof info.default === 'number') {
        expect(info.default, info.key).toBeGreaterThanOrEqual(info.min ?? -Infinity);
        expect(info.default, info.key).toBeLessThanOrEqual(info.max ?? Infinity);
      }
      if (info.choices) expect(info.choices.map((choice) => choice.value)).toContain(info.default);
    }
  });
  test('are named once each', () => {
    expect(new Set(infos.map((info) => info.key)).size).toBe(infos.length);
  });
  test.each(infos.filter((info) => info.choices))('$key can be anything it offers', (info) => {
    for (const { value } of info.choices ?? []) {
      const built = buildPiece(
        doorFrame({ stop: 'cover', [info.key]: value }),
        contextFor(openingShape({ BL: [0, 0], BR: [640, 0], TR: [640, 1750], TL: [0, 1750] })),
      );
      expect(built.parts.length, value).toBeGreaterThan(2);
    }
  });
});

test('a door frame needs a measured opening', () => {
  expect(shapeNeeds('door-frame')).toEqual({ kinds: ['opening'], required: true });
});

test('a new piece takes the first material that suits it, and says so where there is none', () => {
  const piece = newPiece('door-frame', {
    id: 'x',
    letter: 'D',
    name: 'Frame',
    materials: [ply9, ...materials],
  });
  expect(piece.parameters.materials).toMatchObject({ frame: 'mahogany' });
  const bare = newPiece('door-frame', { id: 'x', letter: 'D', name: 'Frame', materials: [] });
  const shape = openingShape({ BL: [0, 0], BR: [640, 0], TR: [640, 1750], TL: [0, 1750] });
  const built = buildPiece(bare, contextFor(shape, { materials: [] }));
  expect(built.findings[0]).toMatchObject({ severity: 'stop', code: 'material-missing' });
});
