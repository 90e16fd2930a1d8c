import { machineBoard, machineLeftSide, type DrawerCorners } from './boards.ts';
import { boardSize, sideSize } from './corners.ts';
import type { DrawerLayout } from './sizes.ts';
import { proudEnds } from '../joints/fingers.ts';
import { mirrorAll } from '../joints/mirror.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part, PartEdge, PartSize } from '../types.ts';

/** Numbers of the parts of a drawer in their addresses. */
export const drawerNumbers = {
  left: 1,
  right: 2,
  front: 3,
  back: 4,
  bottom: 5,
  falseFront: 6,
  runner: 7,
  kicker: 8,
  guide: 9,
} as const;

const right = { x: 1, y: 0, z: 0 };
const down = { x: 0, y: -1, z: 0 };
const backwards = { x: 0, y: 0, z: -1 };
const forwards = { x: 0, y: 0, z: 1 };

/** Height of the lower edge of the sides above the lower edge of the opening, closed. */
export function lowerEdge({ book, notched }: DrawerLayout): number {
  return notched ? -book.value('n') : book.value('c_bot');
}

/**
 * The parts of the box and its false front. Frame of the piece: origin at the lower left corner of the opening, x right,
 * y up, z to the viewer, z = 0 at the face of the opening; the drawer closed. Copies of a drawer are placed once.
 */
export function drawerParts(piece: Piece, layout: DrawerLayout, corners: DrawerCorners): readonly Part[] {
  const drafts = [
    ...sideDrafts(layout, corners),
    boardDraft(layout, corners, 'front'),
    boardDraft(layout, corners, 'back'),
    bottomDraft(layout),
    ...falseFrontDraft(layout),
  ];
  return drafts.map((draft) => makePart(piece, { ...draft, quantity: layout.choices.count }));
}

function sideDrafts(layout: DrawerLayout, corners: DrawerCorners): readonly PartDraft[] {
  const v = layout.book.value;
  const finished = sideSize(layout);
  const left = machineLeftSide(layout, corners);
  const top = lowerEdge(layout) + v('h');
  const start = -v('setback') - corners.front.set;
  const common = {
    material: layout.choices.stock.box,
    finished,
    cut: cutLength(layout, finished, 'side'),
    working: { length: lengthStep(layout, 'side'), width: 'h', thickness: 'ts' },
    faceSide: 'face side inside the drawer, face edge up',
    edges: boardEdges(layout),
    notes: ['The two sides are a pair: mark them face to face.'],
  } as const;
  const atLeft = { x: v('c_side') + v('ts'), y: top, z: start };
  const atRight = { x: v('c_side') + v('Wb') - v('ts'), y: top, z: start - finished.length };
  return [
    {
      ...common,
      number: drawerNumbers.left,
      name: 'Side, left',
      hand: 'left',
      machining: left,
      placements: [placeAt(atLeft, backwards, down)],
    },
    {
      ...common,
      number: drawerNumbers.right,
      name: 'Side, right',
      hand: 'right',
      machining: mirrorAll(left, 'x', finished),
      placements: [placeAt(atRight, forwards, down)],
    },
  ];
}

function boardDraft(layout: DrawerLayout, corners: DrawerCorners, end: 'front' | 'back'): PartDraft {
  const v = layout.book.value;
  const finished = boardSize(layout, end);
  const atFront = end === 'front';
  const machining = machineBoard(layout, end, corners[end]);
  const depth = atFront ? 0 : v('Lb') - v('behind') - v('tback');
  const origin = {
    x: v('c_side') + (v('Wb') - finished.length) / 2,
    y: lowerEdge(layout) + v('h'),
    z: -v('setback') - depth,
  };
  return {
    number: drawerNumbers[end],
    name: atFront ? 'Box front' : 'Back',
    material: layout.choices.stock.box,
    finished,
    cut: cutLength(layout, finished, end),
    working: {
      length: lengthStep(layout, end),
      width: atFront ? 'boxfront_h' : 'back_h',
      thickness: atFront ? 'tf' : 'tback',
    },
    faceSide: atFront ? 'face side to the front, face edge up' : 'face side inside the drawer, face edge up',
    edges: boardEdges(layout),
    machining: atFront ? machining : mirrorAll(machining, 'z', finished),
    placements: [placeAt(origin, right, down)],
  };
}

function boardEdges(layout: DrawerLayout): readonly PartEdge[] {
  return [{ edge: 'face-edge', treatment: 'rounded', amount: 1 }, ...(boxJointed(layout) ? proudEnds : [])];
}

const boxJointed = ({ choices }: DrawerLayout) => choices.corner === 'box';

function lengthStep(layout: DrawerLayout, name: string): string {
  return `${name}_L${boxJointed(layout) ? '_cut' : ''}`;
}

function cutLength(layout: DrawerLayout, finished: PartSize, name: string): PartSize {
  return { ...finished, length: layout.book.value(lengthStep(layout, name)) };
}

function bottomDraft(layout: DrawerLayout): PartDraft {
  const v = layout.book.value;
  const depth = v('bottom_D');
  const origin = {
    x: v('c_side') + v('ts') - v('gdr') + 0.5,
    y: lowerEdge(layout) + v('yg') + v('tbt'),
    z: -v('setback') - (v('tf') - v('gdr') + 0.5 + depth),
  };
  return {
    number: drawerNumbers.bottom,
    name: 'Bottom',
    material: layout.choices.stock.bottom,
    finished: { length: v('bottom_W'), width: depth, thickness: v('tbt') },
    working: { length: 'bottom_W', width: 'bottom_D', thickness: 'tbt' },
    faceSide: 'face side up',
    placements: [placeAt(origin, right, forwards)],
    notes: ['Face grain across the drawer.'],
  };
}

function falseFrontDraft(layout: DrawerLayout): readonly PartDraft[] {
  const { choices, book } = layout;
  if (choices.front === 'none') return [];
  const v = book.value;
  const beyond = choices.front === 'overlay' ? v('o') : -v('g');
  const origin = { x: -beyond, y: v('Ho') + beyond, z: choices.front === 'overlay' ? v('tff') : 0 };
  const sheet = choices.stock.front.kind === 'sheet';
  return [
    {
      number: drawerNumbers.falseFront,
      name: 'False front',
      material: choices.stock.front,
      finished: { length: v('false_W'), width: v('false_H'), thickness: v('tff') },
      working: { length: 'false_W', width: 'false_H', thickness: 'tff' },
      faceSide: 'face side to the cabin',
      placements: [placeAt(origin, right, down)],
      notes: ['Grain along the width.', ...(sheet ? ['Its edges are seen: lip, veneer or paint them.'] : [])],
    },
  ];
}
