import { markSize } from '#core/units';
import { circleOutline, type Outline } from '#core/geometry';
import { layFlat, rightwards, upwards, type LaidFlat } from '../flat/lay-flat.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';
import { endCuts, railEnds, shelfCuts } from './joints.ts';
import { gaugeNotes } from './gauge-notes.ts';
import { sides, sideName, type Side } from './sides.ts';
import type { CarcaseLayout } from './sizes.ts';

const right = { x: 1, y: 0, z: 0 };
const up = { x: 0, y: 1, z: 0 };
const down = { x: 0, y: -1, z: 0 };
const forwards = { x: 0, y: 0, z: 1 };
const backwards = { x: 0, y: 0, z: -1 };
/** Less than this a bevel is not sawn, mm over the thickness. */
const worthBevel = 0.5;

/** Numbers of the parts of a carcase; each shelf is followed by its cleats. */
export const carcaseNumbers = { l: 1, r: 2, rails: 3 } as const;

/** The number of a shelf, counted from 0. */
export function shelfNumber({ choices }: CarcaseLayout, i: number): number {
  return 4 + i * (choices.cleats ? 3 : 1);
}

/**
 * The parts of a carcase. Frame of the piece: x from the outside of the left end, y from the level that the hull was
 * measured from, z to the viewer, z = 0 at the plane of the front.
 */
export function carcaseParts(piece: Piece, layout: CarcaseLayout): readonly Part[] {
  const drafts = [
    ...sides.map((side) => endDraft(layout, side)),
    railDraft(layout),
    ...layout.shelves.flatMap((outline, i) => [
      shelfDraft(layout, outline, i),
      ...(layout.choices.cleats ? sides.map((side) => cleatDraft(layout, side, i)) : []),
    ]),
  ];
  return drafts.map((draft) => makePart(piece, draft));
}

function endDraft(layout: CarcaseLayout, side: Side): PartDraft {
  const { book, choices } = layout;
  const laid = layEnd(layout, side);
  const bevel = book.value(`bevel_${side}`);
  const bevelled = choices.endBack === 'bevelled' && Math.abs(book.value(`fall_${side}`)) > worthBevel;
  return {
    number: carcaseNumbers[side],
    name: `End, ${sideName[side]}`,
    material: choices.stock.panel,
    finished: { length: book.value('H'), width: laid.width, thickness: book.value('T') },
    working: { length: 'H', width: `end_${side}_D`, thickness: 'T' },
    outline: laid.outline,
    holes: layout.vents[side].map(({ x, y }) =>
      laid.toPart(circleOutline({ x: toPlane(side, x), y }, choices.ventDiameter / 2)),
    ),
    hand: side === 'l' ? 'left' : 'right',
    faceSide: `face side inwards, face edge to the front, ${side === 'l' ? 'start' : 'end'} down`,
    machining: [
      ...endCuts(layout, laid, side),
      ...(bevelled
        ? [
            {
              kind: 'bevel',
              edge: 'far-edge',
              degrees: bevel,
              note: 'the bevel of the hull at half height',
            } as const,
          ]
        : []),
    ],
    placements: [laid.placement],
    notes: [
      'Its curve is its own: the two ends are no mirrored pair.',
      `The curve is drawn as arcs and lines within ${markSize(0.1)}; it stays ${book.value('c')} clear of the hull.`,
      ...gaugeNotes(choices, side, bevelled),
    ],
  };
}

const toPlane = (side: Side, depth: number) => (side === 'l' ? depth : -depth);

/** An end where it stands, its face side inwards. */
function layEnd({ book, left, right: other }: CarcaseLayout, side: Side): LaidFlat {
  const z = -book.value('Tfr');
  if (side === 'l')
    return layFlat(left, upwards, { origin: { x: book.value('T'), y: 0, z }, right: backwards, up });
  const origin = { x: book.value('W') - book.value('T'), y: 0, z };
  return layFlat(mirrored(other), { x: 0, y: -1 }, { origin, right: forwards, up });
}

/** The outline seen from its other face, still counter-clockwise. */
function mirrored(outline: Outline): Outline {
  return outline
    .map(({ x, y }, i) => {
      const bulge = outline[(i + outline.length - 1) % outline.length]?.bulge;
      return bulge === undefined ? { x: -x, y } : { x: -x, y, bulge };
    })
    .toReversed();
}

function railDraft(layout: CarcaseLayout): PartDraft {
  const { book, choices, backRail } = layout;
  const [y, w] = [book.value('top'), book.value('rail_W')];
  const x = (book.value('W') - book.value('rail_L')) / 2;
  const finished = { length: book.value('rail_L'), width: w, thickness: book.value('T') };
  const front = -book.value('Tfr');
  const behind = backRail ? [front - w, front - book.value('rail_back')] : [front - w];
  return {
    number: carcaseNumbers.rails,
    name: 'Top rail',
    material: choices.stock.panel,
    finished,
    working: { length: 'rail_L', width: 'rail_W', thickness: 'T' },
    machining: railEnds(layout, finished),
    faceSide: 'face side up, flush with the upper edge of the ends',
    placements: behind.map((z) => placeAt({ x, y, z }, right, forwards)),
  };
}

function shelfDraft(layout: CarcaseLayout, outline: Outline, i: number): PartDraft {
  const { book, choices } = layout;
  const n = i + 1;
  const x = (book.value('W') - book.value('shelf_L')) / 2;
  const y = book.value(`y_${n}`) + book.value('Ts');
  const plane = { origin: { x, y, z: -book.value('Tfr') }, right, up: backwards };
  const laid = layFlat(outline, rightwards, plane);
  const slope = (book.value(`beta_l_${n}`) + book.value(`beta_r_${n}`)) / 2;
  const bevel = { kind: 'bevel', edge: 'face-edge', degrees: -slope } as const;
  const finished = { length: book.value('shelf_L'), width: laid.width, thickness: book.value('Ts') };
  const bevelled = choices.shelfBack === 'bevelled' && Math.abs(slope) > 2;
  return {
    number: shelfNumber(layout, i),
    name: `Shelf ${n}`,
    material: choices.stock.shelf,
    finished,
    working: { length: 'shelf_L', width: `shelf_D_${n}`, thickness: 'Ts' },
    outline: laid.outline,
    faceSide: 'face side up, far edge to the front',
    machining: [
      ...shelfCuts(layout, n, finished),
      ...(bevelled ? [{ ...bevel, note: 'the bevel of the hull, mean of both ends' }] : []),
    ],
    placements: [laid.placement],
    notes: ['Face grain along the span, from end to end.'],
  };
}

function cleatDraft(layout: CarcaseLayout, side: Side, i: number): PartDraft {
  const { book, choices } = layout;
  const [k, y] = [book.value('k'), book.value(`y_${i + 1}`)];
  const z = -book.value('Tfr') - 20;
  const name = `cleat_${side}_${i + 1}`;
  const placement =
    side === 'l'
      ? placeAt({ x: book.value('T') + k, y, z }, backwards, down)
      : placeAt({ x: book.value('W') - book.value('T') - k, y: y - k, z }, backwards, up);
  return {
    number: shelfNumber(layout, i) + (side === 'l' ? 1 : 2),
    name: `Cleat, shelf ${i + 1}, ${sideName[side]}`,
    material: choices.stock.cleats,
    finished: { length: book.value(name), width: k, thickness: k },
    working: { length: name, width: 'k', thickness: 'k' },
    faceSide: 'face side inwards, 20 behind the front',
    placements: [placement],
  };
}
