import type { Point } from '#core/geometry';
import { carryCuts } from '../joints/carry.ts';
import { workOutRebate, type Standing } from '../joints/case-joints.ts';
import { workOutEndOnFace, type EndOnFaceJoint } from '../joints/end-on-face.ts';
import { mirrorAll } from '../joints/mirror.ts';
import { figureOf } from '../joints/worked-joint.ts';
import { addUp } from '../add-up.ts';
import type { LaidFlat } from '../flat/lay-flat.ts';
import type { Fixing, Machining, PartSize } from '../types.ts';
import type { CarcaseChoices } from './choices.ts';
import type { CarcaseLayout } from './sizes.ts';
import type { Side } from './sides.ts';

type Sized = Pick<CarcaseLayout, 'book' | 'choices'>;

const glued = ({ glue }: CarcaseChoices) => (glue === undefined ? {} : { glue });

/** The end panel as a plain board on which shelves stand. */
const endBoard = ({ book }: Sized, side: Side) => ({
  length: book.value('H'),
  width: book.value(`end_${side}_D`),
  thickness: book.value('T'),
});

/** The joint of a shelf, counted from 1, with an end; null when it only lies on its cleats. */
export function shelfJoint(layout: Sized, side: Side, n: number): EndOnFaceJoint | null {
  const { book, choices } = layout;
  const depth = book.value('g');
  if (choices.joint === 'housing' && depth === 0) return null;
  const standing: Standing = {
    male: {
      length: book.value('shelf_L'),
      width: book.value(`depth_${side}_${n}`),
      thickness: book.value('Ts'),
    },
    other: endBoard(layout, side),
    ...glued(choices),
  };
  const sheet = choices.stock.shelf.kind === 'sheet';
  return workOutEndOnFace(standing, { kind: choices.joint, housing: depth, sheet });
}

/** The joint of a top rail with an end. */
export function railJoint(layout: Sized, side: Side): EndOnFaceJoint {
  const { book, choices } = layout;
  const [T, width] = [book.value('T'), book.value('rail_W')];
  const male = { length: book.value('Wi'), width, thickness: T };
  const standing: Standing = { male, other: endBoard(layout, side), ...glued(choices) };
  if (choices.railJoint !== 'rebate')
    return workOutEndOnFace(standing, { kind: choices.railJoint, housing: 0, sheet: true });
  const rebate = workOutRebate(standing);
  const screws = workOutEndOnFace(standing, { kind: 'butt', housing: 0, sheet: true });
  return {
    ...rebate,
    // worked from inside, which is the face side
    cuts: {
      male: [],
      other: [...mirrorAll(rebate.cuts.other, 'z', standing.other), ...screws.cuts.other],
    },
    settings: [...rebate.settings, ...screws.settings],
    enters: figureOf(rebate, 'depth'),
    takes: screws.takes,
  };
}

const toPlane = (side: Side, depth: number) => (side === 'l' ? depth : -depth);

/** What shelves and rails take from an end where it lies. */
export function endCuts(layout: CarcaseLayout, laid: LaidFlat, side: Side): readonly Machining[] {
  const { book, choices } = layout;
  const size = { length: laid.length, width: laid.width, thickness: book.value('T') };
  const middle = endBoard(layout, side).length / 2;
  const on = (level: number, start: number) => ({
    face: 'face' as const,
    size,
    to: ({ x, y }: Point): Point => {
      const seen = { x: toPlane(side, start + y), y: level + x - middle };
      return laid.toPart([seen])[0] ?? seen;
    },
  });
  const shelves = choices.shelves.flatMap((underside, i) => {
    const cuts = shelfJoint(layout, side, i + 1)?.cuts.other ?? [];
    const noted = cuts.map((one) =>
      one.kind === 'recess' && one.name === 'housing' ? { ...one, note: `for shelf ${i + 1}` } : one,
    );
    return carryCuts(noted, on(underside + book.value('Ts') / 2, 0));
  });
  return [...shelves, ...railCuts(layout, side, on)];
}

function railCuts(
  layout: CarcaseLayout,
  side: Side,
  on: (level: number, start: number) => Parameters<typeof carryCuts>[1],
): readonly Machining[] {
  const { book, backRail } = layout;
  const level = book.value('top') - book.value('T') / 2;
  const { other } = railJoint(layout, side).cuts;
  const rebates = other.filter(({ kind }) => kind === 'recess' && layout.choices.railJoint === 'rebate');
  const rest = other.filter((one) => !rebates.includes(one));
  const starts = backRail ? [0, book.value('rail_back') - book.value('rail_W')] : [0];
  // a rebate runs along the whole of the upper edge, once for both rails
  const whole = carryCuts(rebates, on(book.value('y0') + endBoard(layout, side).length / 2, 0));
  return [...whole, ...starts.flatMap((start) => carryCuts(rest, on(level, start)))];
}

/** Cuts at both ends of a shelf, its front at its far edge. */
export function shelfCuts(layout: Sized, n: number, size: PartSize): readonly Machining[] {
  const at = (side: Side) => mirrorAll(shelfJoint(layout, side, n)?.cuts.male ?? [], 'y', size);
  return [...at('r'), ...mirrorAll(at('l'), 'x', size)];
}

/** Cuts at both ends of a rail. */
export function railEnds(layout: Sized, size: PartSize): readonly Machining[] {
  const cuts = railJoint(layout, 'r').cuts.male;
  return [...cuts, ...mirrorAll(cuts, 'x', size)];
}

/** Screws, dowels or tenons of all shelves and rails. */
export function jointTakes(layout: CarcaseLayout): readonly Fixing[] {
  const sides = ['l', 'r'] as const;
  const shelves = layout.choices.shelves.flatMap((_, i) =>
    sides.flatMap((side) =>
      (shelfJoint(layout, side, i + 1)?.takes ?? []).map((one) => ({ ...one, use: 'shelves to the ends' })),
    ),
  );
  const rails = sides.flatMap((side) =>
    railJoint(layout, side).takes.map((one) => ({
      ...one,
      use: 'top rails',
      quantity: one.quantity * (layout.backRail ? 2 : 1),
    })),
  );
  return addUp([...rails, ...shelves]);
}
