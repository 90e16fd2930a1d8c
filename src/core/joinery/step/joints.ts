import type { Point } from '#core/geometry';
import type { Problem } from '#core/problems';
import { addUp } from '../add-up.ts';
import { carryCuts, type Carried } from '../joints/carry.ts';
import { workOutRebate, type Standing } from '../joints/case-joints.ts';
import { workOutEndOnFace, type EndOnFaceJoint } from '../joints/end-on-face.ts';
import type { EndOnFace } from '../joints/joint-kinds.ts';
import { mirrorAll } from '../joints/mirror.ts';
import type { Fixing, Machining, PartSize } from '../types.ts';
import type { StepLayout } from './sizes.ts';

/** Length of the plain board that a joint is worked out on; the joint is half way along it. */
const plain = 1000;

/** A board whose end stands on the inside of a side or string. */
export interface Stand {
  readonly name: string;
  readonly what: 'tread' | 'riser';
  /** The middle of its thickness at the beginning of its width, and the ways of both, in the plane of the upright. */
  readonly at: Point;
  readonly along: Point;
  readonly across: Point;
  readonly size: PartSize;
}

/** How a tread or a riser is joined: the joint chosen, but only risers of a box lie in rebates. */
export function jointOf({ choices }: StepLayout, what: Stand['what']): EndOnFace | 'rebate' {
  if (choices.joint !== 'rebate') return choices.joint;
  return what === 'riser' && choices.form === 'box' ? 'rebate' : 'housing';
}

/** The joint of one end, worked out on a plain upright. */
export function standJoint(layout: StepLayout, stand: Pick<Stand, 'size' | 'what'>): EndOnFaceJoint {
  const { book, choices } = layout;
  const kind = jointOf(layout, stand.what);
  const { sides, treads } = choices.stock;
  const of = stand.what === 'tread' ? treads : sides;
  const standing: Standing = {
    male: stand.size,
    other: { length: plain, width: stand.size.width, thickness: book.value('T') },
    ...(choices.glue !== undefined && { glue: choices.glue }),
  };
  const sheet = of.kind === 'sheet';
  if (kind !== 'rebate') return workOutEndOnFace(standing, { kind, housing: book.value('house'), sheet });
  const depth = book.value('house_r');
  const rebate = workOutRebate(standing, { lip: book.value('T') - depth });
  const screws = workOutEndOnFace(standing, { kind: 'butt', housing: 0, sheet });
  const inside = mirrorAll(rebate.cuts.other, 'z', standing.other);
  // the rebate at the end of the plain board comes to its middle, where the screws are
  const half = (plain - stand.size.thickness) / 2;
  const moved = carryCuts(inside, {
    face: 'face',
    size: standing.other,
    to: ({ x, y }) => ({ x: x - half, y }),
  });
  return {
    ...rebate,
    cuts: { male: [], other: [...moved, ...screws.cuts.other] },
    settings: [...rebate.settings, ...screws.settings],
    enters: depth,
    takes: screws.takes,
  };
}

/** What the boards take from an upright, its inside being its back; `to` brings the plane of the upright into the part. */
export function uprightCuts(
  layout: StepLayout,
  stands: readonly Stand[],
  part: Pick<Carried, 'size' | 'to'>,
): readonly Machining[] {
  return stands.flatMap((stand) => {
    const middle = plain / 2;
    const to = ({ x, y }: Point): Point =>
      part.to({
        x: stand.at.x + stand.along.x * y + stand.across.x * (x - middle),
        y: stand.at.y + stand.along.y * y + stand.across.y * (x - middle),
      });
    const cuts = standJoint(layout, stand).cuts.other.map((one) => ({ ...one, note: noteOf(one, stand) }));
    return carryCuts(cuts, { face: 'back', size: part.size, to });
  });
}

function noteOf(one: Machining, { name }: Stand): string {
  return one.kind === 'recess' && one.name === 'mortise' ? `${name}, for a loose tenon` : name;
}

/** Cuts at both ends of a board; `beyond`: how much of it stands out before the upright at its far edge. */
export function endCuts(
  layout: StepLayout,
  board: { readonly what: Stand['what']; readonly size: PartSize; readonly widths?: readonly number[] },
  beyond = 0,
): readonly Machining[] {
  const [left, right] = board.widths ?? [board.size.width - beyond, board.size.width - beyond];
  const at = (width: number): readonly Machining[] => {
    const { cuts } = standJoint(layout, { what: board.what, size: { ...board.size, width } });
    return mirrorAll(cuts.male, 'y', { ...board.size, width });
  };
  return [...at(right ?? 1), ...mirrorAll(at(left ?? 1), 'x', board.size)];
}

/** What all ends of these boards take: screws through the sides hold glued housings too (joinery B-H). */
export function endTakes(layout: StepLayout, stands: readonly Stand[]): readonly Fixing[] {
  return addUp(
    stands.flatMap((stand): readonly Fixing[] => {
      const use = 'treads and risers';
      const takes = standJoint(layout, stand).takes.map((one) => ({
        ...one,
        use,
        quantity: 2 * one.quantity,
      }));
      return jointOf(layout, stand.what) === 'housing'
        ? [{ ...throughScrew(layout), quantity: 4, use }]
        : takes;
    }),
  );
}

/** The screw through a side into what is housed in it. */
export function throughScrew({ book }: StepLayout): Pick<Fixing, 'item' | 'source'> {
  return {
    item: `Screw 4 × ${Math.ceil((book.value('T') + 28) / 5) * 5}, countersunk, stainless A4`,
    source: 'joinery C1',
  };
}

/** What the joints themselves have to say, once each. */
export function standFindings(layout: StepLayout, stands: readonly Stand[]): readonly Problem[] {
  const found = stands.flatMap((stand) => standJoint(layout, stand).findings);
  return [...new Map(found.map((one) => [one.message, one])).values()];
}
