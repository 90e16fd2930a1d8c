import type { BuiltPiece, Material, Part, PartId, PartSize } from '#core/joinery';
import { weighVolume } from '#core/materials';

import { blanksOf } from './need.ts';

/** What became of a part between two versions of a piece. */
export interface PartChange {
  readonly part: PartId;
  readonly name: string;
  readonly kind: 'added' | 'removed' | 'size' | 'joints' | 'count' | 'material';
  readonly before?: PartSize;
  readonly after?: PartSize;
}

/** What a version of a piece comes to, to set it beside another. */
export interface PieceFigures {
  readonly parts: number;
  /** Copies of all parts. */
  readonly copies: number;
  /** Area of blanks from sheets, m². */
  readonly sheetArea: number;
  /** Volume of blanks of solid timber, litres. */
  readonly solidVolume: number;
  /** kg of the finished parts whose density is known; null when none is. */
  readonly mass: number | null;
  readonly joints: number;
  /** Minutes of all its steps. */
  readonly minutes: number;
  readonly findings: { readonly stop: number; readonly warn: number; readonly note: number };
}

/** Which parts a change made different, in the order of the piece as it is now; what is gone comes last. */
export function comparePieces(
  before: BuiltPiece | undefined,
  after: BuiltPiece | undefined,
): readonly PartChange[] {
  const old = new Map((before?.parts ?? []).map((part) => [part.id, part]));
  const now = new Set((after?.parts ?? []).map((part) => part.id));
  return [
    ...(after?.parts ?? []).flatMap((part) => changeOf(old.get(part.id), part)),
    ...(before?.parts ?? []).filter((part) => !now.has(part.id)).map((part) => gone(part)),
  ];
}

function gone(part: Part): PartChange {
  return { part: part.id, name: part.name, kind: 'removed', before: part.finished };
}

/** Less is rounding, mm. */
const seen = 0.05;

function changeOf(before: Part | undefined, after: Part): readonly PartChange[] {
  if (before === after) return [];
  const named = { part: after.id, name: after.name, after: after.finished };
  if (!before) return [{ ...named, kind: 'added' }];
  const both = { ...named, before: before.finished };
  if (before.material !== after.material) return [{ ...both, kind: 'material' }];
  const moved = (['length', 'width', 'thickness'] as const).some(
    (size) => Math.abs(before.finished[size] - after.finished[size]) > seen,
  );
  if (moved) return [{ ...both, kind: 'size' }];
  if (before.quantity !== after.quantity) return [{ ...both, kind: 'count' }];
  return sameForm(before, after) ? [] : [{ ...both, kind: 'joints' }];
}

function sameForm(one: Part, other: Part): boolean {
  const form = ({ outline, holes, machining }: Part) =>
    JSON.stringify([outline, holes, machining], (_, value: unknown) =>
      typeof value === 'number' ? Math.round(value / seen) : value,
    );
  return form(one) === form(other);
}

/** What a piece comes to: material, mass, joints, time, findings. Density by the project's materials, where given. */
export function figuresOf(built: BuiltPiece, materials: readonly Material[]): PieceFigures {
  const sum = (of: (part: Part) => number) => built.parts.reduce((total, part) => total + of(part), 0);
  const count = (severity: 'stop' | 'warn' | 'note') =>
    built.findings.filter((found) => found.severity === severity).length;
  return {
    parts: built.parts.length,
    copies: sum((part) => part.quantity),
    sheetArea: sum((part) => (part.kind === 'sheet' ? (part.quantity * areaOf(part.rough)) / 1e6 : 0)),
    solidVolume: sum((part) =>
      part.kind === 'solid'
        ? (part.quantity * blanksOf(part) * areaOf(part.rough) * part.rough.thickness) / 1e6
        : 0,
    ),
    mass: massOf(built, materials),
    joints: built.joints.reduce((total, joint) => total + joint.count, 0),
    minutes: built.steps.reduce((total, step) => total + step.minutes, 0),
    findings: { stop: count('stop'), warn: count('warn'), note: count('note') },
  };
}

function areaOf({ length, width }: PartSize): number {
  return length * width;
}

function massOf(built: BuiltPiece, materials: readonly Material[]): number | null {
  const masses = built.parts.flatMap((part) => {
    const density = materials.find(({ id }) => id === part.material)?.density;
    if (density === undefined || part.spare !== undefined) return [];
    return [part.quantity * weighVolume(areaOf(part.finished) * part.finished.thickness, density)];
  });
  return masses.length === 0 ? null : masses.reduce((total, mass) => total + mass, 0);
}
