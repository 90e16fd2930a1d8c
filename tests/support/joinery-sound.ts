import { expect } from 'vitest';
import { evaluateFormula } from '#core/numerics';
import { placePoint } from '#core/geometry';
import type { BuiltPiece, Machining, Part } from '#core/joinery';

const slack = 1e-6;

/** Sizes positive, placements square, machining inside the part, parts inside the envelope; nothing built only with a stop. */
export function expectSound(built: BuiltPiece): void {
  if (built.parts.length === 0) expect(built.findings[0]?.severity).toBe('stop');
  const ids = built.parts.map((part) => part.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const part of built.parts) expectPart(built, part);
  for (const step of built.steps) for (const id of step.parts) expect(ids).toContain(id);
  for (const joint of built.joints) for (const id of joint.between) expect(ids).toContain(id);
  for (const fixing of built.fixings) expect(fixing.quantity).toBeGreaterThan(0);
}

function expectPart(built: BuiltPiece, part: Part): void {
  for (const size of [part.finished, part.cut, part.rough]) {
    for (const value of Object.values(size)) {
      expect(Number.isFinite(value)).toBe(true);
      expect(value, part.name).toBeGreaterThan(0);
    }
  }
  const { min, max } = built.envelope;
  for (const at of part.placements) {
    const { xAxis: x, yAxis: y } = at;
    expect(Math.hypot(x.x, x.y, x.z)).toBeCloseTo(1, 9);
    expect(x.x * y.x + x.y * y.y + x.z * y.z).toBeCloseTo(0, 9);
    const { length, width, thickness } = part.finished;
    for (const corner of [
      { x: 0, y: 0, z: 0 },
      { x: length, y: width, z: thickness },
    ]) {
      const point = placePoint(at, corner);
      for (const axis of ['x', 'y', 'z'] as const) {
        expect(point[axis]).toBeGreaterThanOrEqual(min[axis] - slack);
        expect(point[axis]).toBeLessThanOrEqual(max[axis] + slack);
      }
    }
  }
  const stopped = built.findings.some((found) => found.severity === 'stop');
  if (!stopped) for (const one of part.machining) expectInside(part, one);
}

function expectInside(part: Part, one: Machining): void {
  const { length, width, thickness } = part.finished;
  const size = { x: length, y: width, z: thickness };
  if (one.kind === 'recess') {
    for (const axis of ['x', 'y', 'z'] as const) {
      const { min, max } = one.box;
      expect(min[axis], `${part.name} ${one.name} ${axis}`).toBeGreaterThanOrEqual(-slack);
      expect(max[axis], `${part.name} ${one.name} ${axis}`).toBeLessThanOrEqual(size[axis] + slack);
      expect(max[axis], `${part.name} ${one.name} ${axis}`).toBeGreaterThan(min[axis]);
    }
  }
  if (one.kind === 'bevel' || one.kind === 'recess') return;
  const ends = one.from === 'start' || one.from === 'end';
  const flat = one.from === 'face' || one.from === 'back';
  const [along, across] = flat ? [length, width] : ends ? [width, thickness] : [length, thickness];
  const points = one.kind === 'hole' ? [one] : one.outline;
  for (const point of points) {
    expect(point.x, part.name).toBeGreaterThanOrEqual(-slack);
    expect(point.x, part.name).toBeLessThanOrEqual(along + slack);
    expect(point.y, part.name).toBeGreaterThanOrEqual(-slack);
    expect(point.y, part.name).toBeLessThanOrEqual(across + slack);
  }
}

/** Every size is the step it names, and every step comes out again from its formula and its inputs. */
export function expectWorking(built: BuiltPiece): void {
  const values = new Map(built.working.map((step) => [step.name, step.value]));
  expect(values.size).toBe(built.working.length);
  for (const step of built.working) {
    expect(Number.isFinite(step.value), step.name).toBe(true);
    if (step.formula === undefined) continue;
    const inputs = Object.fromEntries(step.inputs.map((input) => [input.name, input.value]));
    expect(evaluateFormula(step.formula, inputs), step.name).toBeCloseTo(step.value, 9);
    for (const input of step.inputs) expect(values.get(input.name), step.name).toBe(input.value);
  }
  for (const part of built.parts) {
    expect(values.get(part.working.length), `${part.name} length`).toBeOneOf([
      part.finished.length,
      part.cut.length,
    ]);
    expect(values.get(part.working.width), `${part.name} width`).toBe(part.finished.width);
    expect(values.get(part.working.thickness), `${part.name} thickness`).toBe(part.finished.thickness);
  }
}

/** No finding says a nonsense number, unless it says that a size given is one. */
export function expectPlainWords({ findings }: Pick<BuiltPiece, 'findings'>): void {
  for (const { message, remedy } of findings)
    expect(`${message} ${remedy}`.replace(/^.*: (NaN|-?Infinity) is not.*$/, '')).not.toMatch(
      /NaN|undefined/,
    );
}
