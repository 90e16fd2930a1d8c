import { boxOfPoints, circleOutline, outlineArea, type Outline, type Point } from '#core/geometry';
import { markSize } from '#core/units';
import { layHoles } from './holes.ts';
import type { LaidLid, LidsLayout } from './layout.ts';
import { bearerOutline, cleatRing } from './sizes.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';

const right = { x: 1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };

type Draft = Omit<PartDraft, 'number'>;

/** Shortest straight side that gets a cleat of its own, mm. */
export const shortestCleat = 60;

/**
 * The parts of a row of lids (joinery B10). Frame of the piece, seen from above: origin at the lower left of the aperture,
 * x along the row, y from front to back, z up, z = 0 on the upper face of the lids.
 */
export function lidsParts(piece: Piece, layout: LidsLayout): readonly Part[] {
  const drafts = [
    ...layout.lids.map((lid, i) => lidDraft(layout, lid, i)),
    ...layout.bearers.map((at, i) => bearerDraft(layout, at, i)),
    ...blockDrafts(layout),
    ...cleatDrafts(layout),
  ];
  return joinAlike(drafts).map((draft, i) => makePart(piece, { ...draft, number: i + 1 }));
}

/** Parts of one name and form as one part with several places. */
function joinAlike(drafts: readonly Draft[]): readonly Draft[] {
  const groups = new Map<string, Draft>();
  for (const draft of drafts) {
    const { length, width, thickness } = draft.finished;
    const form = [{ x: length, y: width }, { x: thickness, y: 0 }, ...(draft.outline ?? [])];
    const key = `${draft.name} ${form.map(({ x, y }) => `${x.toFixed(3)} ${y.toFixed(3)}`).join(' ')}`;
    const known = groups.get(key);
    groups.set(key, known ? { ...known, placements: [...known.placements, ...draft.placements] } : draft);
  }
  const all = [...groups.values()];
  const counts = (name: string) => all.filter((draft) => draft.name === name).length;
  return all.map((draft, i) => {
    if (counts(draft.name) < 2) return draft;
    const number = all.slice(0, i + 1).filter(({ name }) => name === draft.name).length;
    return { ...draft, name: `${draft.name} ${number}` };
  });
}

/** Seen from above, turned so that x runs from front to back: the part frame of lids, bearers and blocks. */
const toPart = (outline: Outline, left: number, foot: number): Outline =>
  outline.map(({ x, y }) => ({ x: y - foot, y: x - left })).reverse();

function lidDraft(layout: LidsLayout, lid: LaidLid, i: number): Draft {
  const { book, choices } = layout;
  const v = book.value;
  const holes = layHoles(layout, lid);
  return {
    name: 'Lid',
    material: choices.stock.lids,
    flat: true,
    finished: { length: v(`lid${i + 1}_W`), width: v(`lid${i + 1}_L`), thickness: v('T') },
    working: { length: `lid${i + 1}_W`, width: `lid${i + 1}_L`, thickness: 'T' },
    outline: toPart(lid.corners, lid.left, lid.foot),
    holes: holes.map(({ at, r }) => circleOutline({ x: at.y - lid.foot, y: at.x - lid.left }, r)),
    grain: 'along-length',
    edges: (['face-edge', 'far-edge', 'start', 'end'] as const).map((edge) => ({ edge, treatment: 'bare' })),
    placements: [placeAt({ x: lid.left, y: lid.foot, z: 0 }, up, right)],
    faceSide: 'face side up, face grain from cleat to cleat',
    notes: [`Edges and holes sealed, all edges eased ${markSize(2)}; numbered underneath, front marked.`],
  };
}

function bearerDraft({ book, choices }: LidsLayout, at: number, i: number): Draft {
  const v = book.value;
  const outline = bearerOutline(cleatRing(choices, v('cw')), at, v('bw'));
  const { minX, minY } = boxOfPoints(outline);
  return {
    name: 'Cross bearer',
    material: choices.stock.cleats,
    finished: { length: v(`bearer${i + 1}_L`), width: v('bw'), thickness: v('ct') },
    working: { length: `bearer${i + 1}_L`, width: 'bw', thickness: 'ct' },
    outline: toPart(outline, minX, minY),
    placements: [placeAt({ x: minX, y: minY, z: -v('T') }, up, right)],
    faceSide: 'face side up',
  };
}

function blockDrafts({ book, choices, bearers }: LidsLayout): readonly Draft[] {
  const v = book.value;
  const inside = cleatRing(choices, v('cw'));
  const z = -v('T') - v('ct');
  return bearers.flatMap((at) => {
    const strip = bearerOutline(inside, at, v('bw'));
    const middle = strip.reduce((sum, { y }) => sum + y, 0) / strip.length;
    const low = Math.max(...strip.filter(({ y }) => y < middle).map(({ y }) => y));
    const high = Math.min(...strip.filter(({ y }) => y >= middle).map(({ y }) => y));
    const draft = (y: number): Draft => ({
      name: 'Block',
      material: choices.stock.cleats,
      finished: { length: v('block_L'), width: v('bw'), thickness: v('ct') },
      working: { length: 'block_L', width: 'bw', thickness: 'ct' },
      grain: 'any',
      placements: [placeAt({ x: at - v('bw') / 2, y, z }, up, right)],
      faceSide: 'face side up, under the end of a cross bearer',
    });
    return [draft(low - v('cw')), draft(high - v('cw'))];
  });
}

/** Cleats along the straight sides, mitred where they meet. */
function cleatDrafts({ book, choices }: LidsLayout): readonly Draft[] {
  const v = book.value;
  const corners = cleatRing(choices, 0);
  const inside = cleatRing(choices, v('cw'));
  return corners.flatMap((from, i): readonly Draft[] => {
    const next = (i + 1) % corners.length;
    const [to, a, b] = [corners[next], inside[i], inside[next]];
    const long = v(`cleat${i + 1}_L`);
    if (!to || !a || !b || long < shortestCleat) return [];
    const along = { x: (from.x - to.x) / long, y: (from.y - to.y) / long, z: 0 };
    const inwards = { x: along.y, y: -along.x, z: 0 };
    const own = (point: Point): Point => ({
      x: (point.x - to.x) * along.x + (point.y - to.y) * along.y,
      y: (point.x - to.x) * inwards.x + (point.y - to.y) * inwards.y,
    });
    const outline = [{ x: 0, y: 0 }, { x: long, y: 0 }, own(a), own(b)];
    if (outlineArea(outline) <= 0 || outline.some(({ x }) => x < -1e-6 || x > long + 1e-6)) return [];
    return [
      {
        name: 'Cleat',
        material: choices.stock.cleats,
        finished: { length: long, width: v('cw'), thickness: v('ct') },
        working: { length: `cleat${i + 1}_L`, width: 'cw', thickness: 'ct' },
        outline,
        placements: [placeAt({ x: to.x, y: to.y, z: -v('T') }, along, inwards)],
        faceSide: 'face side up, face edge to the side of the aperture',
        machining: cleatScrews(long, v('cw'), v('ct')),
      },
    ];
  });
}

/** Clearance holes from the aperture's inside into its side (joinery C1): 250 apart at most. */
function cleatScrews(length: number, width: number, depth: number): PartDraft['machining'] {
  const end = Math.min(width + 20, length / 4);
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / 250));
  return Array.from({ length: gaps + 1 }, (_, i) => ({
    kind: 'hole' as const,
    from: 'far-edge' as const,
    x: end + (i * (length - 2 * end)) / gaps,
    y: depth / 2,
    diameter: 4.3,
    depth: 'through' as const,
    countersink: 8,
    note: 'into the side of the aperture',
  }));
}
