import { frontPlane, layFlat } from '../flat/lay-flat.ts';
import { leftOf, step, wayTo } from '../flat/polygon.ts';
import { makePart, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';
import { cutsOf, memberOutline, tongueAt, type Tongue } from './members.ts';
import { usesDepth, type FreeFrameLayout } from './sizes.ts';

const rectangleNames = ['Bottom', 'Right', 'Top', 'Left'] as const;

/** Name of a member as seen: by its place in a rectangle, else by its number. */
export function memberName({ choices, points }: FreeFrameLayout, i: number): string {
  const place = points.length === 4 ? rectangleNames[i] : undefined;
  const side = choices.chosen?.sides[i]?.name;
  return place ? `${place} member` : `Member ${i + 1}${side && !side.startsWith('side') ? `, ${side}` : ''}`;
}

/** Members and tongues of a free frame. Frame of the piece: origin at the lower left of what it fills, z = 0 on its face. */
export function frameParts(piece: Piece, layout: FreeFrameLayout): readonly Part[] {
  const members = layout.points.map((_, i) => memberDraft(layout, i));
  return [...members, ...tongueDrafts(layout)].map((draft) => makePart(piece, draft));
}

function memberDraft(layout: FreeFrameLayout, i: number): PartDraft {
  const { book, choices, points } = layout;
  const [from, to] = [points[i], points[(i + 1) % points.length]];
  const outline = memberOutline(layout, i);
  const laid = layFlat(outline, wayTo(from ?? { x: 0, y: 0 }, to ?? { x: 1, y: 0 }), frontPlane());
  const names = { length: `L_${i + 1}`, width: `w_${i + 1}`, thickness: 'T' };
  return {
    number: i + 1,
    name: memberName(layout, i),
    material: choices.material,
    finished: {
      length: book.value(names.length),
      width: book.value(names.width),
      thickness: book.value('T'),
    },
    working: names,
    outline: laid.outline,
    machining: cutsOf(layout, i).map(({ figure, make }) => make(laid.toPart(figure))),
    placements: [laid.placement],
    faceSide: 'face side to the viewer, face edge to the inside of the frame',
    notes: [],
  };
}

/** Tongues of one size as one part, in the order of the corners. */
export function tongueGroups(layout: FreeFrameLayout): readonly (readonly Tongue[])[] {
  if (!usesDepth(layout.choices)) return [];
  const groups = new Map<string, Tongue[]>();
  layout.points.forEach((_, i) => {
    const tongue = tongueAt(layout, i);
    const key = tongue.width.toFixed(6);
    const known = groups.get(key);
    if (known) known.push(tongue);
    else groups.set(key, [tongue]);
  });
  return [...groups.values()];
}

/** Puts the sizes of the splines or tenons into the working. */
export function sizeTongues(layout: FreeFrameLayout): FreeFrameLayout {
  const { book, choices } = layout;
  if (!usesDepth(choices) || !layout.inner) return layout;
  const isSpline = choices.joint === 'spline';
  const [what, source] = isSpline ? ['spline', 'joinery C14'] : ['loose tenon', 'joinery C3'];
  book.work('tongue_L', isSpline ? '2*d - 1' : '2*d - 2', `${what}, length across the joint`, source);
  tongueGroups(layout).forEach((group, i) => {
    const corners = group.map(({ corner }) => corner + 1).join(', ');
    book.put(
      `tongue_W_${i + 1}`,
      group[0]?.width ?? 0,
      `${what} at corner ${corners}, along the joint`,
      source,
    );
  });
  return layout;
}

function tongueDrafts(layout: FreeFrameLayout): readonly PartDraft[] {
  const { book, choices, points } = layout;
  const isSpline = choices.joint === 'spline';
  return tongueGroups(layout).map((group, i) => {
    const names = { length: 'tongue_L', width: `tongue_W_${i + 1}`, thickness: 't' };
    const finished = {
      length: book.value(names.length),
      width: book.value(names.width),
      thickness: book.value('t'),
    };
    return {
      number: points.length + i + 1,
      name: isSpline ? 'Spline' : 'Loose tenon',
      material: choices.material,
      finished,
      working: names,
      placements: group.map(({ middle, along }) => {
        const across = leftOf(along);
        const at = (x: number, y: number) =>
          step(step(middle, across, x * (finished.length / 2)), along, y * (finished.width / 2));
        const corners = [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)];
        return layFlat(corners, across, frontPlane(-(book.value('T') - book.value('t')) / 2)).placement;
      }),
      faceSide: 'any',
      notes: [
        isSpline
          ? 'Grain across the mitre. Longer along the mitre than shown, flushed when the glue is hard.'
          : 'Ends rounded to the slot.',
      ],
    };
  });
}
