import type { Box3, Point3 } from '#core/geometry';
import { sortBySeverity } from '#core/problems';
import { cutBox } from './cut-box.ts';
import { checkDoorsOf, frameFindings } from './frame-checks.ts';
import { hingeSide, isLeaf, valueOf, type MadePiece } from './made-door.ts';
import { cellOf, type FrontOpeningCell } from '../front-cell.ts';
import type { CellReference } from '../cell-reference.ts';
import type { Range } from '../parts.ts';
import type { Machining, Part } from '../types.ts';

const notes = ['hinge leaf of', 'strike of', 'bolt hole of', 'bolt of'];

/**
 * A cabinet front with what the doors of its openings want of it, where they are inset: beds for their hinges, strikes of
 * mortise locks, holes for bolts; and what is to be said of doors that share an opening. The very same when nothing
 * changes. An inner stile that is made more than once stays plain: its copies must be alike.
 */
export function withFrontFittings(front: MadePiece, all: readonly MadePiece[]): MadePiece['built'] {
  const { built } = front;
  const doors = all.flatMap((made) => {
    const given = made.piece.parameters as CellReference;
    if (!isDoor(made) || given.cabinetFront !== built.piece || made.built.parts.length === 0) return [];
    const cell = cellOf(built, given.row ?? 1, given.column ?? 1);
    return cell ? [{ ...made, cell }] : [];
  });
  const plain = built.parts.map(withoutFittings);
  const parts = doors.reduce<readonly Part[]>((done, door) => fit(done, door), plain);
  const own = built.findings.filter(({ code }) => !frameFindings.includes(code));
  const cells = new Set(doors.map(({ cell }) => `${cell.row} ${cell.column}`));
  const found = [...cells].flatMap((key) =>
    checkDoorsOf(
      built,
      doors.filter(({ cell }) => `${cell.row} ${cell.column}` === key),
    ).map((one) => ({ about: built.letter, ...one })),
  );
  const findings =
    found.length > 0 || own.length < built.findings.length ? sortBySeverity([...own, ...found]) : own;
  const kept = parts.map((part, i) => {
    const before = built.parts[i];
    return before && JSON.stringify(before.machining) === JSON.stringify(part.machining) ? before : part;
  });
  const isSame =
    kept.every((part, i) => part === built.parts[i]) &&
    JSON.stringify(findings) === JSON.stringify(built.findings);
  return isSame ? built : { ...built, parts: kept, findings };
}

const doorKinds: readonly string[] = ['flat-door', 'framed-door', 'louvred-door'];
const isDoor = ({ piece }: MadePiece) => doorKinds.includes(piece.kind);

function withoutFittings(part: Part): Part {
  const machining = part.machining.filter(({ note = '' }) => !notes.some((start) => note.startsWith(start)));
  return machining.length === part.machining.length ? part : { ...part, machining };
}

type DoorInCell = MadePiece & { readonly cell: FrontOpeningCell };

function fit(parts: readonly Part[], door: DoorInCell): readonly Part[] {
  if (door.cell.gap === null) return parts; // it overlays the frame and hangs on its face
  const fitted = hingeBeds(parts, door);
  return isLeaf(door.piece, 'second') ? boltHoles(fitted, door) : strike(fitted, door);
}

interface Cut {
  readonly name: Extract<Machining, { kind: 'recess' }>['name'];
  readonly into: number;
  readonly up: Range;
  readonly deep: Range;
  readonly note: string;
}

/** Wood taken from the upright at one side of an opening, above the foot of its door and behind its face. */
function cutSide(parts: readonly Part[], { cell, built }: DoorInCell, side: 'left' | 'right', cut: Cut) {
  const foot = cell.at.y + (valueOf(built)('gb') ?? 0);
  const edge = side === 'left' ? cell.at.x : cell.at.x + cell.width;
  const x: Range = side === 'left' ? [edge - cut.into, edge] : [edge, edge + cut.into];
  const box: Box3 = {
    min: { x: x[0], y: foot + cut.up[0], z: -cut.deep[1] },
    max: { x: x[1], y: foot + cut.up[1], z: -cut.deep[0] },
  };
  const out: Point3 = { x: side === 'left' ? 1 : -1, y: 0, z: 0 };
  return cutBox(parts, { name: cut.name, box, out, note: cut.note });
}

const about = (middle: number, size: number): Range => [middle - size / 2, middle + size / 2];

function hingeBeds(parts: readonly Part[], door: DoorInCell): readonly Part[] {
  const v = (name: string) => valueOf(door.built)(name) ?? 0;
  const middles = ['hinge_top', 'hinge_mid', 'hinge_low'].flatMap((name) => valueOf(door.built)(name) ?? []);
  return middles.reduce(
    (done, middle) =>
      cutSide(done, door, hingeSide(door.piece), {
        name: 'housing',
        into: v('hinge_in'),
        up: about(middle, v('hinge_L')),
        deep: [0, v('hinge_leaf')],
        note: `hinge leaf of ${door.built.letter}; width and depth from the hinge itself`,
      }),
    parts,
  );
}

function strike(parts: readonly Part[], door: DoorInCell): readonly Part[] {
  if (!isLeaf(door.piece, 'whole') || valueOf(door.built)('strike_in') === null) return parts;
  const v = (name: string) => valueOf(door.built)(name) ?? 0;
  const side = hingeSide(door.piece) === 'left' ? 'right' : 'left';
  const cut = (done: readonly Part[], name: 'housing' | 'mortise', size: readonly [number, number, number]) =>
    cutSide(done, door, side, {
      name,
      into: size[2],
      up: about(v('case_mid'), size[0]),
      deep: about(v('T') / 2, size[1]),
      note: `${name === 'housing' ? 'strike of' : 'bolt hole of'} ${door.built.letter}; size from the lock itself`,
    });
  const bed = cut(parts, 'housing', [v('forend_H'), v('forend_W'), v('forend_T')]);
  return cut(bed, 'mortise', [v('strike_H'), v('strike_W'), v('strike_in')]);
}

const bolt = { width: 10, depth: 15 } as const; // mm, common practice, no source

/** Holes in the rails over and under the meeting edge of the second of two doors. */
function boltHoles(parts: readonly Part[], { cell, built, piece }: DoorInCell): readonly Part[] {
  const v = (name: string) => valueOf(built)(name) ?? 0;
  const off = v('gs') + v('Wd') - v('bolt_from') - v('bolt_in') / 2;
  const x = hingeSide(piece) === 'left' ? cell.at.x + off : cell.at.x + cell.width - off;
  const [foot, head] = [cell.at.y, cell.at.y + cell.height];
  const ends: readonly (readonly [Range, 1 | -1])[] = [
    [[foot - bolt.depth, foot], 1],
    [[head, head + bolt.depth], -1],
  ];
  return ends.reduce(
    (done, [y, up]) =>
      cutBox(done, {
        name: 'mortise',
        box: {
          min: { x: x - bolt.width / 2, y: y[0], z: -v('bolt_z') - bolt.width / 2 },
          max: { x: x + bolt.width / 2, y: y[1], z: -v('bolt_z') + bolt.width / 2 },
        },
        out: { x: 0, y: up, z: 0 },
        note: `bolt of ${built.letter}`,
      }),
    parts,
  );
}
