import type { Outline } from '#core/geometry';
import { markSize } from '#core/units';
import { mirrorAll } from '../joints/mirror.ts';
import { placeAt, type PartDraft } from '../parts.ts';
import { endCuts, uprightCuts, type Stand } from './joints.ts';
import type { StepLayout } from './sizes.ts';

const up = { x: 0, y: 1, z: 0 };
const down = { x: 0, y: -1, z: 0 };
const right = { x: 1, y: 0, z: 0 };
const front = { x: 0, y: 0, z: 1 };
const backwards = { x: 0, y: 0, z: -1 };

type Draft = Omit<PartDraft, 'number'>;

/** The parts of a box step: sides, treads from below, risers from below, kick. */
export function boxDrafts(layout: StepLayout): readonly Draft[] {
  const risers = levels(layout);
  const kick = layout.book.value('kick_h') > 0 ? [kickDraft(layout)] : [];
  return [
    sideDraft(layout, 'left'),
    sideDraft(layout, 'right'),
    ...risers.map((level) => treadDraft(layout, level)),
    ...risers.map((level) => riserDraft(layout, level)),
    ...kick,
  ];
}

const levels = ({ book }: StepLayout): readonly number[] =>
  Array.from({ length: book.value('k') }, (_, i) => i + 1);

/** What of the sole's fall a side reaches below the higher foot. */
function below({ book, choices }: StepLayout, side: 'left' | 'right'): number {
  return choices.fallsTo === side ? book.value('foot_diff') : 0;
}

/** The right side seen from outside: x up from its foot, y from its front edge backwards. */
function sideOutline(layout: StepLayout, foot: number): Outline {
  const { book } = layout;
  const v = book.value;
  const [k, going] = [v('k'), v('going')];
  const kick = v('kick_h') > 0;
  const stairs = levels(layout).flatMap((level) => {
    const top = foot + (level < k ? v('riser') * level + v('upstand') : v('side_h'));
    const from = (level - 1) * going;
    return [
      { x: top, y: from },
      { x: top, y: level < k ? level * going : v('side_d') },
    ];
  });
  const start = kick
    ? [
        { x: 0, y: v('kick_d') },
        { x: foot + v('kick_h'), y: v('kick_d') },
        { x: foot + v('kick_h'), y: 0 },
      ]
    : [{ x: 0, y: 0 }];
  return [...start, ...stairs, { x: 0, y: v('side_d') }];
}

/** What stands on the inside of the right side: lower treads, risers, kick. */
export function boxStands(layout: StepLayout, foot: number): readonly Stand[] {
  const { book } = layout;
  const v = book.value;
  const T = v('T');
  const riser = (name: string, [low, high]: readonly [number, number], front: number): Stand => ({
    ...{ name, what: 'riser', along: { x: 1, y: 0 }, across: { x: 0, y: -1 } },
    at: { x: foot + low, y: front + T / 2 },
    size: { length: v('riser_board_L'), width: high - low, thickness: T },
  });
  const rows = levels(layout).flatMap((level): readonly Stand[] => {
    const front = (level - 1) * v('going');
    const low = level === 1 ? v('kick_h') : v('riser') * (level - 1);
    const top = v('riser') * level;
    const board = riser(`riser ${level}`, [low, top - v('tt')], front);
    if (level === v('k')) return [board];
    const tread: Stand = {
      ...{ name: `tread ${level}`, what: 'tread', along: { x: 0, y: 1 }, across: { x: 1, y: 0 } },
      at: { x: foot + top - v('tt') / 2, y: front },
      size: { length: v('low_tread_L'), width: v('going') + T, thickness: v('tt') },
    };
    return [board, tread];
  });
  return v('kick_h') > 0 ? [...rows, riser('kick', [-foot, v('kick_h')], v('kick_d'))] : rows;
}

function sideDraft(layout: StepLayout, side: 'left' | 'right'): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const foot = below(layout, side);
  const low = choices.fallsTo === side;
  const length = low ? 'side_h_low' : 'side_h';
  const finished = { length: v(length), width: v('side_d'), thickness: v('T') };
  const outline = sideOutline(layout, foot);
  const cuts = uprightCuts(layout, boxStands(layout, foot), { size: finished, to: (point) => point });
  const isRight = side === 'right';
  const at = isRight ? v('W') - choices.overhang : choices.overhang;
  return {
    name: `Side, ${side}`,
    material: choices.stock.sides,
    finished,
    cut: { ...finished, length: v('side_cut_h') },
    working: { length, width: 'side_d', thickness: 'T' },
    hand: side,
    outline: isRight ? outline : outline.map(({ x, y }) => ({ x, y: finished.width - y })).reverse(),
    machining: isRight ? cuts : mirrorAll(cuts, 'y', finished),
    edges: [{ edge: 'start', treatment: 'scribed', amount: v('side_cut_h') - finished.length }],
    faceSide: 'face side outwards, start down',
    placements: [
      isRight
        ? placeAt({ x: at, y: -foot, z: 0 }, up, backwards)
        : placeAt({ x: at, y: -foot, z: -finished.width }, up, front),
    ],
    notes: ['Front edges of plywood: lip or round and fill them.'],
  };
}

function treadDraft(layout: StepLayout, level: number): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const isTop = level === v('k');
  const names = isTop
    ? { length: 'top_tread_L', width: 'depth', thickness: 'tt' }
    : { length: 'low_tread_L', width: 'low_tread_d', thickness: 'tt' };
  const finished = { length: v(names.length), width: v(names.width), thickness: v('tt') };
  const nose = -(level - 1) * v('going') + v('over');
  const x = isTop ? 0 : v('over') + v('T') - v('house');
  return {
    name: isTop ? 'Top tread' : `Tread ${level}`,
    material: choices.stock.treads,
    flat: true,
    finished,
    working: names,
    machining: isTop ? [] : endCuts(layout, { what: 'tread', size: finished }, v('over')),
    edges: [{ edge: 'far-edge', treatment: 'rounded', amount: 6 }],
    faceSide: 'face side up, far edge to the front',
    placements: [placeAt({ x, y: v('riser') * level, z: nose - finished.width }, right, front)],
    notes: [`Non-slip strip ${markSize(30)} behind the nosing.`],
  };
}

function riserDraft(layout: StepLayout, level: number): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const names = { length: 'riser_board_L', width: level === 1 ? 'riser_1_h' : 'riser_h', thickness: 'T' };
  const finished = { length: v(names.length), width: v(names.width), thickness: v('T') };
  const at = {
    x: v('over') + v('T') - v('house_r'),
    y: v('riser') * level - v('tt'),
    z: -(level - 1) * v('going'),
  };
  return {
    name: `Riser ${level}`,
    material: choices.stock.sides,
    finished,
    working: names,
    machining: endCuts(layout, { what: 'riser', size: finished }),
    faceSide: 'face side to the front, face edge up',
    placements: [placeAt(at, right, down)],
    notes: [],
  };
}

/** The kick follows the fall of the sole. */
function kickDraft(layout: StepLayout): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const names = { length: 'riser_board_L', width: 'kick_board_h', thickness: 'T' };
  const finished = { length: v(names.length), width: v(names.width), thickness: v('T') };
  const slope = v('foot_diff') / (v('W') - 2 * v('over'));
  const inset = v('T') - v('house_r');
  // the sole below the left and the right end of the kick, from its top
  const fallen = (fromHigh: number) => v('kick_h') + slope * fromHigh;
  const far = v('W') - 2 * v('over') - inset;
  const [atLeft, atRight] =
    choices.fallsTo === 'right' ? [fallen(inset), fallen(far)] : [fallen(far), fallen(inset)];
  return {
    name: 'Kick',
    material: choices.stock.sides,
    finished,
    cut: { ...finished, width: finished.width + v('S') },
    working: names,
    machining: endCuts(layout, {
      what: 'riser',
      size: finished,
      widths: (['left', 'right'] as const).map((side) => v('kick_h') + below(layout, side)),
    }),
    outline: [
      { x: 0, y: 0 },
      { x: finished.length, y: 0 },
      { x: finished.length, y: atRight },
      { x: 0, y: atLeft },
    ],
    edges: [{ edge: 'far-edge', treatment: 'scribed', amount: v('S') }],
    faceSide: 'face side to the front, face edge up',
    placements: [placeAt({ x: v('over') + inset, y: v('kick_h'), z: -v('kick_d') }, right, down)],
    notes: [],
  };
}
