import type { Problem } from '#core/problems';
import { addUp } from '../add-up.ts';
import { carryCuts } from '../joints/carry.ts';
import { workOutBoxJoint, workOutRebate, type Standing } from '../joints/case-joints.ts';
import { workOutEndOnFace } from '../joints/end-on-face.ts';
import { proudEnds } from '../joints/fingers.ts';
import { mirrorAll } from '../joints/mirror.ts';
import { workOutHousing } from '../joints/standing-joints.ts';
import type { WorkedJoint } from '../joints/worked-joint.ts';
import { placeAt, type PartDraft } from '../parts.ts';
import type { Fixing, Machining, Part } from '../types.ts';
import type { DividersLayout } from './sizes.ts';

/** Numbers of the walls of a tray in their addresses. */
export const wallNumbers = { front: 5, back: 6, left: 7, right: 8 } as const;
type Wall = keyof typeof wallNumbers;

const up = { x: 0, y: 1, z: 0 };
const right = { x: 1, y: 0, z: 0 };
const forwards = { x: 0, y: 0, z: 1 };
const opposite = ({ x, y, z }: typeof up) => ({ x: -x, y: -y, z: -z });

export const hasWalls = ({ choices }: Pick<DividersLayout, 'choices'>): boolean => choices.walls !== 'none';

/** Where the grid begins, from the left wall and the front of the locker. */
export function gridStart({ book, choices }: DividersLayout): number {
  return choices.walls === 'none' ? 0 : book.value('fit') / 2 + book.value('t');
}

/** The joint of a side wall, which is the male, with the front or the back one. */
export function cornerJoint({ book, choices }: DividersLayout): WorkedJoint & {
  readonly takes: readonly Fixing[];
} {
  const v = book.value;
  const board = (length: number) => ({ length, width: v('h'), thickness: v('t') });
  const standing: Standing = {
    male: board(v('wall_z')),
    other: board(v('wall_x')),
    ...(choices.glue !== undefined && { glue: choices.glue }),
  };
  if (choices.walls === 'box') return { ...workOutBoxJoint(standing), takes: [] };
  if (choices.walls === 'rebate') {
    const joint = workOutRebate(standing, { lip: v('lip') });
    const inside = mirrorAll(joint.cuts.other, 'z', standing.other);
    return { ...joint, cuts: { male: [], other: inside }, takes: [] };
  }
  const joint = workOutEndOnFace(standing, { kind: 'butt', housing: 0, sheet: true });
  const { other } = standing;
  const atEnd = other.length / 2 - v('t') / 2;
  const to = ({ x, y }: { x: number; y: number }) => ({ x: x + atEnd, y });
  return {
    ...joint,
    cuts: { male: [], other: carryCuts(joint.cuts.other, { face: 'face', size: other, to }) },
  };
}

/** The housing of a divider in a wall; null where the walls are too thin for one. */
function dividerJoint({ book, choices }: DividersLayout, wall: Wall, at: number): WorkedJoint | null {
  const v = book.value;
  if (v('let') === 0) return null;
  const along = wall === 'front' || wall === 'back' ? 'wall_x' : 'wall_z';
  const [width, thickness] = [v('h'), v('t')];
  return workOutHousing(
    {
      male: { length: v(along), width, thickness },
      other: { length: v(along), width, thickness },
      ...(choices.glue !== undefined && { glue: choices.glue }),
    },
    { at, depth: v('let') },
  );
}

/** The middles of the dividers that end at a wall, from its start. */
function meetings(layout: DividersLayout, wall: Wall): readonly number[] {
  const { book, atX, atZ } = layout;
  const v = book.value;
  const middle = (at: number) => gridStart(layout) + at + v('t') / 2 - v('fit') / 2;
  const inset = v('wall_inset');
  switch (wall) {
    case 'front':
      return atX.map(middle);
    case 'back':
      return atX.map((at) => v('wall_x') - middle(at));
    case 'right':
      return atZ.map((at) => middle(at) - inset);
    case 'left':
      return atZ.map((at) => v('wall_z') + inset - middle(at));
  }
}

/** The four walls, face sides inwards. */
export function wallDrafts(layout: DividersLayout): readonly PartDraft[] {
  if (!hasWalls(layout)) return [];
  return (['front', 'back', 'left', 'right'] as const).map((wall) => wallDraft(layout, wall));
}

function wallDraft(layout: DividersLayout, wall: Wall): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const across = wall === 'front' || wall === 'back';
  const length = across ? 'wall_x' : 'wall_z';
  const finished = { length: v(length), width: v('h'), thickness: v('t') };
  const asCut = choices.walls === 'box' ? (`${length}_cut` as const) : length;
  const { cuts } = cornerJoint(layout);
  const corner = across ? cuts.other : cuts.male;
  const housings = meetings(layout, wall).flatMap(
    (at): readonly Machining[] => dividerJoint(layout, wall, at)?.cuts.other ?? [],
  );
  return {
    number: wallNumbers[wall],
    name: `Wall, ${wall}`,
    material: choices.stock.dividers,
    finished,
    cut: { ...finished, length: v(asCut) },
    working: { length: asCut, width: 'h', thickness: 't' },
    edges: choices.walls === 'box' ? proudEnds : [],
    machining: [...corner, ...mirrorAll(corner, 'x', finished), ...housings],
    faceSide: 'face side inwards, face edge down',
    placements: [placeWall(layout, wall)],
  };
}

function placeWall({ book }: DividersLayout, wall: Wall) {
  const v = book.value;
  const near = v('fit') / 2;
  const inside = near + v('t');
  const inset = near + v('wall_inset');
  switch (wall) {
    case 'front':
      return placeAt({ x: near, y: 0, z: -inside }, right, up);
    case 'back':
      return placeAt({ x: v('Wi') - near, y: 0, z: inside - v('Di') }, opposite(right), up);
    case 'left':
      return placeAt({ x: inside, y: 0, z: inset - v('Di') }, forwards, up);
    case 'right':
      return placeAt({ x: v('Wi') - inside, y: 0, z: -inset }, opposite(forwards), up);
  }
}

/** What the joints of the walls have to say, once each. */
export function wallFindings(layout: DividersLayout): readonly Problem[] {
  if (!hasWalls(layout)) return [];
  const walls = Object.keys(wallNumbers) as readonly Wall[];
  const found = [
    ...cornerJoint(layout).findings,
    ...walls.flatMap((wall) =>
      meetings(layout, wall).flatMap((at) => dividerJoint(layout, wall, at)?.findings ?? []),
    ),
  ];
  return [...new Map(found.map((one) => [one.message, one])).values()];
}

/** The settings of the housings of the dividers in the walls; none where they are only glued. */
export function housingSettings(layout: DividersLayout): readonly string[] {
  const joint = dividerJoint(layout, 'front', layout.book.value('wall_x') / 2);
  return joint?.settings ?? ['Glued between the walls.'];
}

/** Screws of the corners, and glue. */
export function wallFixings(layout: DividersLayout): readonly Fixing[] {
  if (!hasWalls(layout)) return [];
  const takes = cornerJoint(layout).takes.map((one) => ({
    ...one,
    quantity: 4 * one.quantity,
    use: 'corners of the tray',
  }));
  const glue = { item: 'Epoxy glue, small pack', quantity: 1, use: 'tray', source: 'joinery C' };
  return addUp([...takes, glue]);
}

/** The walls among the parts. */
export const wallsOf = (parts: readonly Part[]): readonly Part[] =>
  parts.filter(({ name }) => name.startsWith('Wall'));
