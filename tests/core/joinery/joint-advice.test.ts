import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jointAdvice, suitability, workOutJoint } from '#core/joinery';
import type { JointKind, Material } from '#core/joinery';
import { buildKind } from '../../support/flat-pieces.ts';

const oak: Material = { id: 'oak', kind: 'solid', name: 'Oak', state: 'planed' };
const ply: Material = { id: 'ply', kind: 'sheet', name: 'Birch plywood 18', thickness: 17.7 };
const kinds = Object.keys(suitability) as JointKind[];

// The table of joints against materials, loads and wet: trade rulebook, section C0 (common practice, no source).
describe('how joints suit', () => {
  test('dovetails and tenons in plywood are refused, with what does it instead', () => {
    const [told] = jointAdvice('through-dovetail', { materials: [ply, ply] });
    expect(told).toMatchObject({
      severity: 'stop',
      code: 'joint-unfit',
      message: 'Weak joint: a through dovetail does not hold in Birch plywood 18.',
      remedy: 'Take a rebate or a housing.',
    });
    expect(jointAdvice('stub-tenon', { materials: [oak, ply] })[0]?.remedy).toBe(
      'Take a screwed butt or a loose tenon.',
    );
  });
  test('what suits is passed over in silence', () => {
    expect(jointAdvice('loose-tenon', { materials: [oak, ply], wet: true })).toEqual([]);
    expect(jointAdvice('stub-tenon', { materials: [oak], load: 'heavy', wet: true })).toEqual([]);
  });
  test('a mitre with a spline is warned of where it is racked', () => {
    const [told] = jointAdvice('mitre-and-spline', { materials: [oak], load: 'heavy' });
    expect(told).toMatchObject({ severity: 'warn', code: 'joint-weak' });
    expect(told?.message).toBe('Weak joint: a mitre and spline holds poorly where it is racked.');
  });
  test('always: what is advised instead is advised against by nothing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.subarray([oak, ply], { minLength: 1 }),
        fc.boolean(),
        fc.constantFrom<'light' | 'heavy'>('light', 'heavy'),
        (kind, materials, wet, load) => {
          const duty = { materials, wet, load };
          for (const { remedy = '' } of jointAdvice(kind, duty)) {
            const named = kinds.filter((other) => {
              const name =
                other === 'box'
                  ? 'box joint'
                  : other === 'butt'
                    ? 'screwed butt'
                    : other.replaceAll('-', ' ');
              return new RegExp(`\\ba ${name}(?= or|\\.)`).test(remedy);
            });
            for (const other of named) expect(jointAdvice(other, duty)).toEqual([]);
            expect(named.length > 0 || remedy.startsWith('Glue')).toBe(true);
          }
        },
      ),
    );
  });
  test('a piece says it of its own joints: a bridle in plywood', () => {
    const frame = (joint: 'bridle' | 'loose-tenon') =>
      buildKind('free-frame', {
        width: 600,
        height: 400,
        joint,
        materials: { frame: 'ply18' },
      }).findings.filter(({ code }) => code === 'joint-weak');
    expect(frame('bridle').map(({ message }) => message)).toEqual([
      'Weak joint: a bridle holds poorly in Marine ply 18.',
    ]);
    expect(frame('loose-tenon')).toEqual([]);
  });
});

describe('any joint between two members', () => {
  const every = [...kinds, 'lock-rebate'] as const;
  test('always: figures and sentences hold no number that is none', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...every),
        fc.record({ width: fc.integer({ min: 25, max: 150 }), other: fc.integer({ min: 25, max: 150 }) }),
        fc.integer({ min: 9, max: 40 }),
        fc.integer({ min: 40, max: 140 }),
        fc.constantFrom(oak, ply),
        (kind, { width, other }, thickness, degrees, material) => {
          const joint = workOutJoint({
            kind,
            male: { length: 400, width, thickness },
            other: { length: 600, width: other, thickness },
            materials: [material, oak],
            degrees: kind === 'mitre-and-spline' ? degrees / 2 : degrees,
          });
          for (const { value } of joint.figures) expect(Number.isFinite(value)).toBe(true);
          const texts = [
            ...joint.settings,
            ...joint.findings.map(({ message, remedy }) => `${message} ${remedy}`),
          ];
          for (const text of texts) expect(text).not.toMatch(/NaN|undefined|Infinity/);
          expect(joint.settings.length).toBeGreaterThan(0);
        },
      ),
    );
  });
  test('a dovetail asked for in plywood is refused once', () => {
    const member = { length: 400, width: 100, thickness: 15 };
    const joint = workOutJoint({
      kind: 'through-dovetail',
      male: member,
      other: member,
      materials: [ply, ply],
    });
    expect(joint.findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code)).toEqual([
      'dovetail-in-sheet',
    ]);
  });
});
