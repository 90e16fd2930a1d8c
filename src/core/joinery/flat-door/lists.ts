import { formatNumber, markSize } from '#core/units';
import { flatDoorNumbers } from './parts.ts';
import type { DoorLayout } from './sizes.ts';
import { hangingFixings } from '../hung-door/lists.ts';
import { partAddress } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Fixing, Joint, Part } from '../types.ts';

const show = markSize;

type Key = keyof typeof flatDoorNumbers;

/** The glued edges and corners of a door with the settings for them (joinery C17, C20). */
export function flatDoorJoints(piece: Piece, layout: DoorLayout): readonly Joint[] {
  const { choices } = layout;
  const address = (key: Key) => partAddress(piece, flatDoorNumbers[key]);
  const joint = (
    kind: string,
    [one, other]: readonly [Key, Key],
    settings: readonly string[],
    count = 1,
  ): Joint => ({
    kind,
    between: [address(one), address(other)],
    count,
    settings,
  });
  const lips = ['top', 'bottom', 'hinge', 'lock'] as const;
  const corners = ['hinge', 'lock'].flatMap((side) =>
    ['top', 'bottom'].map((end) => [side, end] as readonly [Key, Key]),
  );
  const blocks = ['blocksHinge', 'blockLockTop', 'blockLockFoot'] as const;
  const corner = choices.lipJoint === 'mitre' ? 'mitre' : 'butt';
  return [
    ...lips.map((lip) => joint('lipping', ['core', lip], lippingSettings(layout, lip))),
    ...(choices.blocks
      ? blocks.map((block, i) =>
          joint('corner block', ['core', block], blockSettings(layout), i === 0 ? 2 : 1),
        )
      : corners.map((pair) => joint(corner, pair, cornerSettings(layout, pair)))),
    ...(layout.battens
      ? [joint('batten', ['core', 'battens'], ['Glue and screw from the batten into the core.'], 2)]
      : []),
  ];
}

function lippingSettings({ book }: DoorLayout, lip: 'top' | 'bottom' | 'hinge' | 'lock'): readonly string[] {
  const v = book.value;
  const blank = v(lip === 'hinge' || lip === 'lock' ? `lip_${lip}_rough_T` : 'lip_rough_T');
  return [
    `Strip ${show(blank)} × ${show(v('lip_rough_W'))} from the edge of a board planed to ${show(v('lip_rough_W'))}: fence ${show(blank)}, push stick, riving knife on.`,
    `${show(1)} proud of each face, flushed with the router or a plane when the glue is hard.`,
  ];
}

function cornerSettings({ book, choices }: DoorLayout, [side]: readonly [Key, Key]): readonly string[] {
  if (choices.lipJoint !== 'mitre') return ['The upright lipping runs through over the end of the other.'];
  const v = book.value;
  const [upright, level] = [v(side === 'hinge' ? 'a_hinge' : 'a_lock'), v('a')];
  const angle = (Math.atan2(level, upright) * 180) / Math.PI;
  return [
    `Mitre ${formatNumber(angle)}° between edge and cut on the top and bottom lipping, ${formatNumber(90 - angle)}° on the upright one.`,
  ];
}

function blockSettings({ book }: DoorLayout): readonly string[] {
  const v = book.value;
  return [
    `Core notched ${show(v('notch_v'))} up, ${show(v('notch_hinge'))} across at the hinge edge and ${show(v('notch_lock'))} at the lock edge; inner corner square.`,
    `Block ${show(v('block'))} square, grain across the corner; round it after gluing, radius ${show(v('r'))}.`,
  ];
}

/** What to buy for a door; what its frame already lists for the door is not listed twice. */
export function flatDoorFixings(
  { book, choices, battens }: DoorLayout,
  parts: readonly Part[],
): readonly Fixing[] {
  const v = book.value;
  const hook: Fixing = { item: 'Hook-back', quantity: 1, use: 'door, held open', source: 'joinery B2' };
  return [
    ...hangingFixings(book, choices, [hook]),
    ...(battens ? [battenScrews(v('batten_T') + v('T'), parts)] : []),
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'lippings', source: 'joinery C17' },
  ];
}

/** Screws of the battens: never nearer than 3 to the far face (joinery C1). */
function battenScrews(through: number, parts: readonly Part[]): Fixing {
  const quantity = parts
    .flatMap((part) => part.machining.map((one) => ({ one, times: part.quantity })))
    .filter(({ one }) => one.kind === 'hole' && one.note === 'into the core')
    .reduce((sum, { times }) => sum + times, 0);
  const length = Math.max(10, Math.floor((through - 3) / 5) * 5);
  return {
    item: `Screw 4 × ${length}, countersunk, stainless A4`,
    quantity,
    use: 'battens, into the core',
    source: 'joinery C1',
  };
}
