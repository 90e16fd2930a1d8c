import { markSize } from '#core/units';
import { blockOutline, coreOutline } from './outlines.ts';
import {
  edgePlacement,
  hungOn,
  layLips,
  leadingBevel,
  lipName,
  towards,
  type DoorEdge,
  type LaidLip,
} from './lips.ts';
import { layHinges } from './hinges.ts';
import { layHoles } from './slots.ts';
import type { DoorLayout } from './sizes.ts';
import { makePart, placeAt, roughSize, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Machining, Part, PartSize } from '../types.ts';

/** Numbers of the parts of a flat door in their addresses. */
export const flatDoorNumbers = {
  core: 1,
  hinge: 2,
  lock: 3,
  top: 4,
  bottom: 5,
  blocksHinge: 6,
  blockLockTop: 7,
  blockLockFoot: 8,
  battens: 9,
} as const;

/**
 * The parts of a flat door (joinery B2). Frame of the piece: origin at the lower left of the door, x right, y up, z to the
 * viewer, z = 0 on the face with the hinge knuckles; battens stand on the back.
 */
export function flatDoorParts(piece: Piece, layout: DoorLayout): readonly Part[] {
  const drafts = [
    coreDraft(layout),
    ...layLips(layout).map((lip) => lipDraft(layout, lip)),
    ...(layout.choices.blocks ? blockDrafts(layout) : []),
    ...(layout.battens ? [battenDraft(layout)] : []),
  ];
  return drafts.map((draft) => makePart(piece, draft)).sort((one, other) => numberOf(one) - numberOf(other));
}

const numberOf = (part: Part) => Number(/\d+$/.exec(part.id)?.[0]);

function coreDraft(layout: DoorLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const [left, right] = [lipName(layout, 'left'), lipName(layout, 'right')];
  const finished = { length: v('core_H'), width: v('core_W'), thickness: v('T') };
  const notch = choices.blocks
    ? { up: v('notch_v'), left: v('block') - v(left), right: v('block') - v(right) }
    : null;
  const lipped = { treatment: 'lipped' } as const;
  return {
    number: flatDoorNumbers.core,
    name: 'Core',
    material: choices.stock.core,
    finished,
    working: { length: 'core_H', width: 'core_W', thickness: 'T' },
    outline: coreOutline(finished.length, finished.width, notch),
    holes: layHoles(layout).map(({ outline }) => outline),
    edges: [
      { ...lipped, edge: 'face-edge', amount: v(left) },
      { ...lipped, edge: 'far-edge', amount: v(right) },
      { ...lipped, edge: 'start', amount: v('a') },
      { ...lipped, edge: 'end', amount: v('a') },
    ],
    faceSide: 'face side to the knuckles of the hinges, face grain upright',
    placements: [placeAt({ x: v(left), y: v('a'), z: 0 }, towards.up, towards.right)],
    notes: ['Face grain upright; doors of one run from one sheet, side by side.'],
  };
}

function lipDraft(layout: DoorLayout, lip: LaidLip): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const { length, width, blank } = lip.names;
  const finished = { length: v(length), width: v(width), thickness: v('T') };
  const cut = { length: v(length) + 20, width: v(blank), thickness: v('lip_rough_W') };
  const key = lip.hinge ? 'hinge' : lip.lock ? 'lock' : lip.edge === 'top' ? 'top' : 'bottom';
  return {
    number: flatDoorNumbers[key],
    name: lip.hinge || lip.lock ? `Lipping, ${key} edge` : `Lipping, ${key}`,
    material: choices.stock.lipping,
    finished,
    cut,
    rough: cut,
    working: { length, width, thickness: 'T' },
    outline: lip.outline,
    machining: [...lip.bevels, ...(lip.hinge ? layHinges(layout, lip) : [])],
    placements: [lip.placement],
    faceSide: 'face edge outwards, face side to the knuckles of the hinges',
    notes: [
      `${markSize(20)} long, ${markSize(0.5)} wide and ${markSize(1)} proud of each face: trimmed and flushed when the glue is hard.`,
    ],
  };
}

function blockDrafts(layout: DoorLayout): readonly PartDraft[] {
  const { hinge, lock } = hungOn(layout);
  const left = lock === 'left';
  // seen clockwise, the corner at the start of an edge: left edge the lower left one, top edge the upper left one
  const [lockTop, lockFoot]: readonly DoorEdge[] = left ? ['top', 'left'] : ['right', 'bottom'];
  const others: readonly DoorEdge[] = hinge === 'left' ? ['top', 'left'] : ['right', 'bottom'];
  const bevelAt = (edge: DoorEdge | undefined) => leadingBevel(layout, edge === lock ? 'face-edge' : 'start');
  return [
    blockDraft(layout, {
      number: flatDoorNumbers.blocksHinge,
      name: 'Corner block, hinge edge',
      at: others,
      machining: [],
    }),
    blockDraft(layout, {
      number: flatDoorNumbers.blockLockTop,
      name: 'Corner block, lock edge, top',
      at: lockTop ? [lockTop] : [],
      machining: bevelAt(lockTop),
    }),
    blockDraft(layout, {
      number: flatDoorNumbers.blockLockFoot,
      name: 'Corner block, lock edge, foot',
      at: lockFoot ? [lockFoot] : [],
      machining: bevelAt(lockFoot),
    }),
  ];
}

interface Block {
  readonly number: number;
  readonly name: string;
  readonly at: readonly DoorEdge[];
  readonly machining: readonly Machining[];
}

function blockDraft(layout: DoorLayout, { number, name, at, machining }: Block): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const side = v('block');
  const blank: PartSize = {
    length: v('block_blank'),
    width: v('block_blank'),
    thickness: v('lip_rough_W'),
  };
  const rough = roughSize(blank, choices.stock.lipping);
  return {
    number,
    name,
    material: choices.stock.lipping,
    finished: { length: side, width: side, thickness: v('T') },
    cut: { length: side, width: side, thickness: v('lip_rough_W') },
    rough: { ...rough, thickness: v('lip_rough_W') },
    working: { length: 'block', width: 'block', thickness: 'T' },
    outline: blockOutline(side, v('r')),
    grain: 'any',
    machining,
    placements: at.map((edge) => edgePlacement(layout, edge, 0)),
    faceSide: 'face side to the knuckles of the hinges, the rounded corner outwards',
    notes: ['Grain at 45°, across the corner: mark the square corner to corner on its blank.'],
  };
}

const battenScrew = { diameter: 4.3, fromEnd: 40, spacing: 250 } as const; // 4 mm screw (joinery C1)

function battenDraft(layout: DoorLayout): PartDraft {
  const { book, choices } = layout;
  const v = book.value;
  const finished = { length: v('batten_L'), width: v('batten_W'), thickness: v('batten_T') };
  const place = (height: number) =>
    placeAt(
      { x: v('batten_in'), y: height - finished.width / 2, z: -v('T') - finished.thickness },
      towards.right,
      towards.up,
    );
  return {
    number: flatDoorNumbers.battens,
    name: 'Batten',
    material: choices.stock.lipping,
    finished,
    working: { length: 'batten_L', width: 'batten_W', thickness: 'batten_T' },
    machining: battenHoles(finished),
    placements: [place(v('batten_low')), place(v('batten_high'))],
    faceSide: 'face side away from the door',
    edges: [
      { edge: 'face-edge', treatment: 'rounded', amount: 3 },
      { edge: 'far-edge', treatment: 'rounded', amount: 3 },
    ],
    notes: [],
  };
}

function battenHoles({ length, width }: PartSize): readonly Machining[] {
  const end = Math.min(battenScrew.fromEnd, length / 4);
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / battenScrew.spacing));
  return Array.from({ length: gaps + 1 }, (_, i) => ({
    kind: 'hole',
    from: 'face',
    x: end + (i * (length - 2 * end)) / gaps,
    y: width / 2,
    diameter: battenScrew.diameter,
    depth: 'through',
    countersink: 8,
    note: 'into the core',
  }));
}
