import { sortBySeverity } from '#core/problems';
import { markSize } from '#core/units';
import {
  alongAt,
  cutInner,
  drillInner,
  innerAt,
  innerFace,
  sideOf,
  type InnerFace,
} from './frame-members.ts';
import { checkDoorsOf, checkStrike, frameFindings } from './frame-checks.ts';
import {
  hingeSide,
  isLeaf,
  leafOf,
  nearOf,
  rebateOf,
  valueOf,
  valuesOf,
  type MadePiece,
} from './made-door.ts';
import type { BuiltPiece, Fixing, Machining, Part } from '../types.ts';

const show = markSize;
const cutNotes = ['hinge leaf of', 'strike of', 'bolt hole of', 'bolt of'];
const listNotes = ['Hinge beds for', 'Strike for', 'Bolt holes for'];

/**
 * A frame with what its doors want of it (joinery B2.6): beds for their hinges in the jamb on their hinge side, the strike
 * of a mortise lock in the other, holes for the bolts of the second of two doors in head and sill. The very same when
 * nothing changes. Doors are built from their frame, so this comes last.
 */
export function withHingeBeds(frame: MadePiece, doors: readonly MadePiece[]): BuiltPiece {
  const { built } = frame;
  const hung = doors.filter(
    ({ piece, built: door }) =>
      door.parts.length > 0 && 'frame' in piece.parameters && piece.parameters.frame === built.piece,
  );
  const faces = built.parts.flatMap((part) => innerFace(part, built) ?? []);
  const parts = built.parts.map((part) => fitted(part, { frame, hung, faces }));
  const fixings = withoutLatch(built, hung);
  const findings = findingsOf(frame, hung, faces);
  const isSame =
    parts.every((part, i) => part === built.parts[i]) &&
    JSON.stringify([fixings, findings]) === JSON.stringify([built.fixings, built.findings]);
  return isSame ? built : { ...built, parts, fixings, findings };
}

interface Hung {
  readonly frame: MadePiece;
  readonly hung: readonly MadePiece[];
  readonly faces: readonly InnerFace[];
}

function findingsOf(frame: MadePiece, hung: readonly MadePiece[], faces: readonly InnerFace[]) {
  const { built } = frame;
  const own = built.findings.filter(({ code }) => !frameFindings.includes(code));
  const found = [
    ...checkDoorsOf(built, hung),
    ...faces.flatMap((face) =>
      checkStrike(
        built,
        face,
        hung.filter((door) => isStruckBy(face, door)),
      ),
    ),
  ].map((one) => ({ about: built.letter, ...one }));
  return found.length === 0 && own.length === built.findings.length
    ? built.findings
    : sortBySeverity([...own, ...found]);
}

/** The frame lists a latch for its door; not when that has a lock of its own, or none. */
function withoutLatch(built: BuiltPiece, hung: readonly MadePiece[]): readonly Fixing[] {
  const latch: Fixing = { item: 'Latch with strike', quantity: 1, use: 'door', source: 'joinery B1' };
  if (built.kind !== 'door-frame') return built.fixings;
  const others = built.fixings.filter(({ item }) => item !== latch.item);
  const first = hung.find(({ piece }) => leafOf(piece) !== 'second');
  if (first && valueOf(first.built)('lock_at') !== null) return others;
  const hook = others.findIndex(({ item }) => item === 'Hook-back');
  return hook < 0 ? others : [...others.slice(0, hook), latch, ...others.slice(hook)];
}

function fitted(part: Part, { frame, hung, faces }: Hung): Part {
  const face = faces.find((one) => one.part === part);
  if (!face || !sideOf(part, frame.built)) return part;
  const fits = hung.map((door) => fitsOf(face, { frame, door, faces }));
  const plain = part.machining.filter(({ note = '' }) => !cutNotes.some((start) => note.startsWith(start)));
  const plainNotes = part.notes.filter((note) => !listNotes.some((start) => note.startsWith(start)));
  const machining = [...plain, ...fits.flatMap(({ cuts }) => cuts)];
  const notes = [...plainNotes, ...fits.flatMap(({ words }) => words)];
  const isSame = JSON.stringify([machining, notes]) === JSON.stringify([part.machining, part.notes]);
  return isSame ? part : { ...part, machining, notes };
}

interface DoorInFrame {
  readonly frame: MadePiece;
  readonly door: MadePiece;
  readonly faces: readonly InnerFace[];
}

interface Fits {
  readonly cuts: readonly Machining[];
  readonly words: readonly string[];
}

function fitsOf(face: InnerFace, where: DoorInFrame): Fits {
  const { door } = where;
  if (face.side === 'head' || face.side === 'sill') {
    return isLeaf(door.piece, 'second') ? boltHole(face, where) : { cuts: [], words: [] };
  }
  const fits = [
    ...(hingeSide(door.piece) === face.side ? [hingeBeds(face, where)] : []),
    ...(isStruckBy(face, door) ? [strike(face, where)] : []),
  ];
  return { cuts: fits.flatMap(({ cuts }) => cuts), words: fits.flatMap(({ words }) => words) };
}

/** Whether the bolt of a door goes into this jamb: of two doors it goes into the other door. */
function isStruckBy(face: InnerFace, { piece, built }: MadePiece): boolean {
  const isJamb = face.side === 'left' || face.side === 'right';
  return (
    isJamb && face.side !== hingeSide(piece) && isLeaf(piece, 'whole') && valueOf(built)('strike_in') !== null
  );
}

/** Height of the foot of a door in the frame of its frame, beside a jamb: hung with its gap under the head. */
function footOf(jamb: InnerFace, { frame, door, faces }: DoorInFrame): number | null {
  const head = faces.find(({ side }) => side === 'head');
  const [height, gap] = valuesOf(door.built, 'Hd', 'gt');
  if (!head || height == null || gap == null) return null;
  return innerAt(head, jamb.at.x) + rebateOf(frame) - gap - height;
}

/** Places along a jamb of heights above the foot of a door, those missing left out. */
function placesOn(jamb: InnerFace, where: DoorInFrame, names: readonly string[]): readonly number[] {
  const foot = footOf(jamb, where);
  const value = valueOf(where.door.built);
  return names.flatMap((name) => {
    const above = value(name);
    return above === null || foot === null ? [] : [alongAt(jamb, foot + above)];
  });
}

const isOn = ({ part }: InnerFace, middle: number, size: number) =>
  middle - size / 2 > 0 && middle + size / 2 < part.finished.length;

/** Beds as deep as those in the door, open to the side of the knuckles; behind a far cover the door lies at the far edge. */
function hingeBeds(jamb: InnerFace, where: DoorInFrame): Fits {
  const { frame, door } = where;
  const [long, deep, leaf] = valuesOf(door.built, 'hinge_L', 'hinge_in', 'hinge_leaf');
  if (long == null || deep == null || leaf == null) return { cuts: [], words: [] };
  const near = nearOf(frame, door, jamb.through);
  const middles = placesOn(jamb, where, ['hinge_top', 'hinge_mid', 'hinge_low']);
  const cuts = middles
    .filter((middle) => isOn(jamb, middle, long))
    .map((middle) =>
      cutInner(
        jamb,
        'housing',
        {
          x: [middle - long / 2, middle + long / 2],
          into: [0, rebateOf(frame) + deep],
          through: [near, Math.min(near + leaf, jamb.through)],
        },
        `hinge leaf of ${door.built.letter}; width and depth from the hinge itself`,
      ),
    );
  return {
    cuts,
    words: [`Hinge beds for ${nameOf(door)}: middles ${list(middles)} from the ${fromWhere(jamb)}.`],
  };
}

/** The bed of the strike, as the forend, and the hole of the bolt in it, at the height of the lock. */
function strike(jamb: InnerFace, where: DoorInFrame): Fits {
  const { frame, door } = where;
  const [high, wide, plate, T] = valuesOf(door.built, 'forend_H', 'forend_W', 'forend_T', 'T');
  const [hole, holeWide, deep] = valuesOf(door.built, 'strike_H', 'strike_W', 'strike_in');
  const [middle] = placesOn(jamb, where, ['case_mid']);
  const missing = [high, wide, plate, T, hole, holeWide, deep, middle].some((one) => one == null);
  if (missing || !isOn(jamb, middle ?? 0, high ?? 0)) return { cuts: [], words: [] };
  const z = nearOf(frame, door, jamb.through) + (T ?? 0) / 2;
  const rebate = rebateOf(frame);
  const box = (size: number, width: number, depth: number) => ({
    x: [(middle ?? 0) - size / 2, (middle ?? 0) + size / 2] as const,
    into: [0, Math.min(jamb.depth, rebate + depth)] as const,
    through: [Math.max(0, z - width / 2), Math.min(jamb.through, z + width / 2)] as const,
  });
  const letter = door.built.letter;
  const from = 'size from the lock itself';
  return {
    cuts: [
      cutInner(jamb, 'housing', box(high ?? 0, wide ?? 0, plate ?? 0), `strike of ${letter}; ${from}`),
      cutInner(jamb, 'mortise', box(hole ?? 0, holeWide ?? 0, deep ?? 0), `bolt hole of ${letter}; ${from}`),
    ],
    words: [`Strike for ${nameOf(door)}: middle ${list([middle ?? 0])} from the ${fromWhere(jamb)}.`],
  };
}

const boltThrow = 12; // mm, common practice, no source
const boltSpare = 3; // mm deeper than a flush bolt reaches beyond its gap, common practice, no source

/** The hole for a bolt of the second of two doors, over or under its meeting edge. */
function boltHole(face: InnerFace, { frame, door, faces }: DoorInFrame): Fits {
  const jamb = faces.find(({ side }) => side === hingeSide(door.piece));
  const [gs, Wd, from, deep] = valuesOf(door.built, 'gs', 'Wd', 'bolt_from', 'bolt_in');
  const [z, gap] = valuesOf(door.built, 'bolt_z', face.side === 'head' ? 'gt' : 'gb');
  const missing = [gs, Wd, from, deep, z, gap].some((one) => one == null);
  if (!jamb || missing) return { cuts: [], words: [] };
  const off = (gs ?? 0) + (Wd ?? 0) - (from ?? 0) - (deep ?? 0) / 2 - rebateOf(frame);
  const edge = innerAt(jamb, face.at.y);
  const left = jamb.side === 'left' ? edge + off : edge - off;
  const x = alongAt(face, left);
  if (!isOn(face, x, 20)) return { cuts: [], words: [] };
  const rebate = face.side === 'head' ? rebateOf(frame) : 0;
  const hole = {
    x,
    through: nearOf(frame, door, face.through) + (z ?? 0),
    diameter: 10,
    depth: Math.min(face.depth, Math.max(boltThrow / 2, rebate + boltThrow + boltSpare - (gap ?? 0))),
  };
  return {
    cuts: [drillInner(face, hole, `bolt of ${door.built.letter}`)],
    words: [`Bolt holes for ${nameOf(door)}: ${list([x])} from the end.`],
  };
}

const list = (places: readonly number[]) => places.map((place) => show(place)).join(', ');
const fromWhere = ({ along }: InnerFace) => (along.y > 0 ? 'foot' : 'top');
const nameOf = ({ built }: MadePiece) => `${built.letter} ${built.name}`;
