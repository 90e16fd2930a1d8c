import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings, kindWords, newPiece, parametersOf, seenSizes } from '#core/joinery';
import type { Piece, PieceKind } from '#core/joinery';
import { expectWords, usualMaterials } from '../../support/flat-pieces.ts';
import { expectSound, expectWorking } from '../../support/joinery-sound.ts';

const kinds: readonly PieceKind[] = [
  'free-panel',
  'free-frame',
  'trim-run',
  'infill',
  'step',
  'dividers',
  'hatch-surround',
];
const context = { shape: null, materials: usualMaterials, settings: defaultSettings };
const start = { id: 'x', letter: 'X', name: 'New', materials: usualMaterials };

describe.each(kinds)('a new %s', (kind) => {
  const piece = newPiece(kind, start);
  const built = buildPiece(piece, context);
  test('can be made as it is offered', () => {
    expect(built.parts.length).toBeGreaterThan(0);
    expect(built.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(built.steps.length).toBeGreaterThan(3);
    expectSound(built);
    expectWorking(built);
    expectWords(built);
  });
  test('has steps that name parts that are there, and joints with settings', () => {
    const ids = new Set(built.parts.map(({ id }) => id));
    for (const step of built.steps) for (const id of step.parts) expect(ids.has(id)).toBe(true);
    for (const joint of built.joints) expect(joint.settings.join('')).not.toBe('');
  });
  test('shows sizes from the front that its working knows', () => {
    const { across, up } = seenSizes(built);
    expect(across.length).toBeGreaterThan(0);
    expect(up.length).toBeGreaterThan(0);
  });
  test('leads every number that a parameter put in back to it', () => {
    const keys = new Set(parametersOf(kind).map(({ key }) => key));
    for (const step of built.working.filter(({ parameter }) => parameter !== undefined)) {
      expect(keys.has(step.parameter ?? '')).toBe(true);
      expect(step.formula).toBeUndefined();
    }
  });
  test('says without materials what is missing', () => {
    const bare = buildPiece(newPiece(kind, { ...start, materials: [] }), { ...context, materials: [] });
    expect(bare.findings[0]).toMatchObject({ severity: 'stop', code: 'material-missing' });
  });
  test('comes out the same when it is built again', () => {
    expect(buildPiece(piece, context)).toEqual(built);
  });
});

describe.each(kinds)('the parameters of a %s', (kind) => {
  const infos = parametersOf(kind);
  test('are named once, their defaults within their limits and among their choices', () => {
    expect(new Set(infos.map(({ key }) => key)).size).toBe(infos.length);
    for (const info of infos) {
      if (typeof info.default === 'number') {
        expect(info.default, info.key).toBeGreaterThanOrEqual(info.min ?? -Infinity);
        expect(info.default, info.key).toBeLessThanOrEqual(info.max ?? Infinity);
      }
      if (info.choices) expect(info.choices.map(({ value }) => value)).toContain(info.default);
    }
  });
  test.each(infos.filter((info) => info.choices))('$key can be anything it offers', (info) => {
    const piece = newPiece(kind, start);
    for (const { value } of info.choices ?? []) {
      const parameters = { ...piece.parameters, [info.key]: value };
      const built = buildPiece({ ...piece, parameters } as Piece, context);
      expect(built.parts.length, `${info.key} ${value}`).toBeGreaterThan(0);
    }
  });
  test('numbers outside all sense give findings, never a size that is none', () => {
    const piece = newPiece(kind, start);
    for (const info of infos) {
      for (const wild of [NaN, Infinity, -1, 0, 1e-9, 1e12]) {
        const isList = info.type === 'lengths' || info.type === 'numbers';
        if (!isList && !['length', 'number', 'whole'].includes(info.type)) continue;
        const value = isList ? [wild, wild, wild, wild] : wild;
        const parameters = { ...piece.parameters, [info.key]: value };
        const built = buildPiece({ ...piece, parameters } as Piece, context);
        expectSound(built);
        expectWords(built);
      }
    }
  });
  test('and the kind is explained', () => {
    const { name, purpose, help } = kindWords(kind);
    expect(name.length * purpose.length).toBeGreaterThan(0);
    expect(help.length).toBeGreaterThan(2);
  });
});
