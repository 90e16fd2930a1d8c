import { markSize } from '#core/units';
import type { Point } from '#core/geometry';
import { screwRows, screwStations } from './fixings.ts';
import { doorRebate, infillGrooves, jointMachining } from './corners.ts';
import type { FrameLayout } from './layout.ts';
import type { FrameNumbers, Member } from './members.ts';
import type { FrameSide } from './plane.ts';
import { pluggedCuts } from './plugged.ts';
import { lengthName } from './trim-sizes.ts';
import { makePart, roughSize } from '../parts.ts';
import { sawable } from '../rules.ts';
import type { Material, Piece } from '../piece-types.ts';
import type { Machining, Part, PartSize } from '../types.ts';

/** Fixed numbers of the parts of a door frame, so that an address never moves to another part. */
export const partNumbers = {
  left: 1,
  right: 2,
  head: 3,
  sill: 4,
  stopLeft: 5,
  stopRight: 6,
  stopHead: 7,
  coverNear: 8,
  coverFar: 11,
  infill: 14,
} as const;

const names: Readonly<Record<FrameSide, string>> = {
  left: 'Jamb, left',
  right: 'Jamb, right',
  head: 'Head',
  sill: 'Sill',
};

/** What the members of a frame are made from and fitted with. */
export interface MemberStock {
  readonly material: Material;
  /** Width of the groove for the panel above the head, mm. */
  readonly groove: number;
  readonly seenFrom: string;
}

/** A jamb, head or sill as a part, with its joints, rebates, grooves, holes and bevels. */
export function makeMember(
  piece: Piece,
  layout: FrameLayout,
  member: Member,
  made: { readonly numbers: FrameNumbers; readonly stock: MemberStock },
): Part {
  const { numbers, stock } = made;
  const { laid, flat, side } = member;
  const finished = { length: laid.length, width: member.width, thickness: member.thickness };
  const ends = layout.choices.corner === 'bridle' ? 1 : 0;
  const cut = {
    ...finished,
    length: finished.length + ends * (side === 'head' || layout.choices.sill ? 2 : 1),
  };
  const machining = [
    ...jointMachining(layout, numbers, member),
    ...doorRebate(layout, numbers, member),
    ...infillGrooves(layout, numbers, member, stock.groove),
    ...(flat ? [] : endBevels(laid.figure, member.thickness)),
    ...fixingHoles(layout, member),
    ...cornerHoles(layout, numbers, member),
    ...pluggedCuts(layout, member, headCentre(numbers, member)),
  ];
  return makePart(piece, {
    number: partNumbers[side],
    name: names[side],
    material: stock.material,
    finished,
    cut,
    rough: roughMember(layout, member, cut, stock.material),
    hand: side === 'left' || side === 'right' ? side : 'none',
    ...(side === 'right' && stock.material.kind === 'solid' && { besideOf: partNumbers.left }),
    working: workingOf(layout, member),
    placements: [laid.placement],
    faceSide: flat ? 'face side to the viewer' : 'face side to the door opening, face edge to the viewer',
    ...(flat && { outline: laid.figure }),
    edges: [],
    machining,
    notes: notesOf(side, stock.seenFrom, ends),
  });
}

function notesOf(side: FrameSide, seenFrom: string, ends: number): readonly string[] {
  return [
    `Seen ${seenFrom}.`,
    ...(side === 'left' || side === 'right'
      ? [
          `Straightest grain, no knots within ${markSize(30)} of a joint; both jambs from one board, side by side.`,
        ]
      : []),
    ...(ends ? ['1 left on at each jointed end, to flush off.'] : []),
  ];
}

function workingOf(layout: FrameLayout, { side, flat, nosing }: Member): Part['working'] {
  const stock = side === 'head' ? layout.head : side === 'sill' ? 'ts' : layout.jamb;
  const through = side === 'sill' && nosing ? 'sill_W' : 'Ld';
  return {
    length: lengthName(layout, side),
    width: flat ? stock : through,
    thickness: flat ? 'Ld' : stock,
  };
}

/** One width and thickness of blank for jambs and head; a sill has its own. */
function roughMember(layout: FrameLayout, member: Member, cut: PartSize, material: Material): PartSize {
  const rough = roughSize(cut, material);
  if (material.kind === 'sheet' || member.side === 'sill') return rough;
  return {
    length: rough.length,
    width: layout.book.value('lining_rough_W'),
    thickness: layout.book.value('lining_rough_T'),
  };
}

/** Ends sawn at an angle across the thickness, from the part's figure along its length. */
export function endBevels(figure: readonly Point[], thickness: number): readonly Machining[] {
  const xs = (back: boolean) => figure.filter((p) => p.y > thickness / 2 === back).map((p) => p.x);
  const more = {
    start: Math.min(...xs(false)) - Math.min(...xs(true)),
    end: Math.max(...xs(true)) - Math.max(...xs(false)),
  };
  return (['start', 'end'] as const)
    .filter((edge) => Math.abs(more[edge]) >= sawable)
    .map((edge) => ({
      kind: 'bevel',
      edge,
      degrees: (Math.atan2(more[edge], thickness) * 180) / Math.PI,
    }));
}

/** Holes through the jambs for the screws into the bulkhead. */
function fixingHoles({ choices, book }: FrameLayout, member: Member): readonly Machining[] {
  if (member.side === 'head' || member.side === 'sill') return [];
  const cut = choices.stop === 'rebated' ? choices.doorThickness + 1 : 0;
  const across = member.flat ? member.thickness / 2 : (cut + member.width) / 2;
  const start = book.has(`run_${member.side}`) ? book.value(`run_${member.side}`) : 0;
  const offset = member.side === 'right' ? start : 0;
  return screwStations(member.laid.length - start).map((x) => ({
    kind: 'hole',
    from: member.flat ? 'face-edge' : 'face',
    x: x + offset,
    y: across,
    diameter: 4.8,
    depth: 'through',
    countersink: 9,
    note: 'into the bulkhead, through the packing',
  }));
}

/** Clearance holes of the corner screws: down through the head, or through the jamb into the end of the head. */
function cornerHoles({ choices }: FrameLayout, numbers: FrameNumbers, member: Member): readonly Machining[] {
  const down = choices.corner === 'rebate' || choices.corner === 'housing-over';
  const across = choices.corner === 'butt' || choices.corner === 'housing-between';
  const { length } = member.laid;
  const horn = choices.corner === 'housing-over' ? choices.horn : 0;
  const middle = numbers.jamb / 2 + horn;
  const fromTop = member.laid.toPart(headCentre(numbers, member)).x;
  const stations =
    member.side === 'head'
      ? down
        ? [middle, length - middle]
        : []
      : member.side !== 'sill' && across
        ? [fromTop]
        : [];
  return stations.flatMap((x) =>
    screwRows(member.width).map((y) => ({
      kind: 'hole' as const,
      from: 'back' as const,
      x,
      y,
      diameter: 4.8,
      depth: 'through' as const,
      countersink: 9,
      note: 'corner screw',
    })),
  );
}

/** A point at mid height of the head, on the outside of this member. */
function headCentre(numbers: FrameNumbers, member: Member): Point {
  const line = numbers.lines[member.side];
  const head = numbers.lines.head;
  const drop = (numbers.headStart + numbers.headInside) / 2;
  const top = { x: head.at.x - head.direction.y * drop, y: head.at.y + head.direction.x * drop };
  const turn = line.direction.x * head.direction.y - line.direction.y * head.direction.x;
  if (Math.abs(turn) < 1e-9) return top;
  const along = ((top.x - line.at.x) * head.direction.y - (top.y - line.at.y) * head.direction.x) / turn;
  return { x: line.at.x + line.direction.x * along, y: line.at.y + line.direction.y * along };
}
