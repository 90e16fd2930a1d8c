import { markSize } from '#core/units';
import { layFlat, rightwards } from '../flat/lay-flat.ts';
import { lineOf, step, wayTo } from '../flat/polygon.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part, PartEdge } from '../types.ts';
import { fiddleCuts } from './fiddle.ts';
import type { ShelfLayout } from './sizes.ts';

const right = { x: 1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };
const down = { x: 0, y: -1, z: 0 };
const forwards = { x: 0, y: 0, z: 1 };
const backwards = { x: 0, y: 0, z: -1 };
type Draft = Omit<PartDraft, 'number'>;

/**
 * The parts of a shelf. Frame of the piece: x along the front from the left, y = 0 at the underside of the shelf, z to the
 * viewer, z = 0 at the foremost face.
 */
export function shelfParts(piece: Piece, layout: ShelfLayout): readonly Part[] {
  const { plan } = layout.choices;
  const drafts = [
    shelfDraft(layout),
    ...frontFiddle(layout),
    ...endFiddles(layout),
    ...(plan.kind === 'outline' ? wallCleats(layout) : straightCleats(layout)),
  ];
  return drafts.map((draft, i) => makePart(piece, { ...draft, number: i + 1 }));
}

function shelfDraft({ book, choices, outline }: ShelfLayout): Draft {
  const v = book.value;
  const plane = { origin: { x: 0, y: v('T'), z: -v('before') }, right, up: backwards };
  const laid = layFlat(outline, rightwards, plane);
  const { plan } = choices;
  return {
    name: 'Shelf',
    material: choices.stock.shelf,
    flat: true,
    finished: { length: laid.length, width: laid.width, thickness: v('T') },
    working: { length: 'shelf_L', width: book.has('shelf_D') ? 'shelf_D' : 'Ds', thickness: 'T' },
    outline: laid.outline,
    faceSide: 'face side up, far edge to the front',
    placements: [laid.placement],
    notes: [
      'Grain along the span.',
      ...(plan.kind === 'hull'
        ? [`Its back is drawn as arcs and lines within ${markSize(0.1)}, ${v('c')} clear of the hull.`]
        : []),
    ],
  };
}

const rounded: readonly PartEdge[] = [{ edge: 'face-edge', treatment: 'rounded', amount: 4 }];

function frontFiddle(layout: ShelfLayout): readonly Draft[] {
  const { book, choices, outline } = layout;
  if (choices.fiddle === 'none') return [];
  const v = book.value;
  const start = (outline[0]?.x ?? 0) + v('open');
  const y = v('T') + v('f');
  return [
    {
      name: 'Fiddle',
      material: choices.stock.fiddle,
      finished: { length: v('fiddle_L'), width: v('fiddle_W'), thickness: v('tf') },
      working: { length: 'fiddle_L', width: 'fiddle_W', thickness: 'tf' },
      machining: fiddleCuts(layout),
      faceSide: 'face side to the cabin, face edge up',
      edges: rounded,
      placements: [placeAt({ x: start, y, z: 0 }, right, down)],
      notes: [`Upper edge rounded ${markSize(4)} or more; the lower inner corner so that it wipes clean.`],
    },
  ];
}

function endFiddles({ book, choices }: ShelfLayout): readonly Draft[] {
  if (!book.has('end_fiddle_L')) return [];
  const v = book.value;
  const y = v('T') + v('f');
  const back = -v('before') - v('D_end');
  const left = placeAt({ x: v('tf'), y, z: back + v('end_fiddle_L') }, backwards, down);
  const other = placeAt({ x: v('shelf_L') - v('tf'), y, z: back }, forwards, down);
  const placements = { left: [left], right: [other], both: [left, other], none: [] }[choices.endFiddles];
  return [
    {
      name: 'End fiddle',
      material: choices.stock.fiddle,
      finished: { length: v('end_fiddle_L'), width: v('f'), thickness: v('tf') },
      working: { length: 'end_fiddle_L', width: 'f', thickness: 'tf' },
      faceSide: 'face side over the shelf, face edge up',
      edges: rounded,
      placements,
    },
  ];
}

function straightCleats({ book, choices, backCleat }: ShelfLayout): readonly Draft[] {
  if (choices.plan.kind !== 'size') return [];
  const v = book.value;
  const [k, front] = [v('k'), -v('before')];
  const size = { width: k, thickness: k };
  const common = { material: choices.stock.cleats, faceSide: 'face side inwards, face edge up' };
  const back: Draft = {
    ...common,
    name: 'Back cleat',
    finished: { length: backCleat ? v('back_cleat_L') : 1, ...size },
    working: { length: 'back_cleat_L', width: 'k', thickness: 'k' },
    placements: [placeAt({ x: 10, y: 0, z: front - v('Ds') + k }, right, down)],
  };
  const ends: Draft = {
    ...common,
    name: 'End cleat',
    finished: { length: v('end_cleat_L'), ...size },
    working: { length: 'end_cleat_L', width: 'k', thickness: 'k' },
    placements: [
      placeAt({ x: k, y: 0, z: front }, backwards, down),
      placeAt({ x: v('shelf_L') - k, y: 0, z: front - v('end_cleat_L') }, forwards, down),
    ],
  };
  return [...(backCleat ? [back] : []), ends];
}

/** A cleat under every straight side but the front, clear of its neighbours in the corners. */
function wallCleats({ book, choices, outline }: ShelfLayout): readonly Draft[] {
  const { plan } = choices;
  if (plan.kind !== 'outline') return [];
  const [k, front] = [book.value('k'), -book.value('before')];
  return outline.slice(1).flatMap((from, i): readonly Draft[] => {
    const to = outline[(i + 2) % outline.length] ?? from;
    const name = `wall_cleat_${i + 2}`;
    if (!book.has(name)) return [];
    const length = book.value(name);
    const along = wayTo(from, to);
    const inner = step(lineOf(from, to, k).at, along, 2 * k);
    const axis = { x: along.x, y: 0, z: -along.y };
    return [
      {
        name: `Cleat, side ${i + 2}`,
        material: choices.stock.cleats,
        finished: { length, width: k, thickness: k },
        working: { length: name, width: 'k', thickness: 'k' },
        faceSide: 'face side inwards',
        placements: [placeAt({ x: inner.x, y: -k, z: front - inner.y }, axis, up)],
      },
    ];
  });
}
