import { drawerNumbers, lowerEdge } from './parts.ts';
import type { DrawerLayout } from './sizes.ts';
import { makePart, placeAt, type PartDraft } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { Part } from '../types.ts';

const right = { x: 1, y: 0, z: 0 };
const left = { x: -1, y: 0, z: 0 };
const down = { x: 0, y: -1, z: 0 };
const backwards = { x: 0, y: 0, z: -1 };
const forwards = { x: 0, y: 0, z: 1 };

const kickerFromFront = 60; // so that the drawer can be lifted out (joinery B5)

/** Runners, kickers and guides, or side rails; none for metal runners, which are bought. */
export function runnerParts(piece: Piece, layout: DrawerLayout): readonly Part[] {
  const { choices } = layout;
  const drafts =
    choices.runner === 'metal' ? [] : choices.runner === 'side-rail' ? sideRails(layout) : strips(layout);
  return drafts.map((draft) =>
    makePart(piece, { ...draft, material: choices.stock.runners, quantity: 2 * choices.count }),
  );
}

type StripDraft = Omit<PartDraft, 'material'>;

function strips(layout: DrawerLayout): readonly StripDraft[] {
  const v = layout.book.value;
  const level = lowerEdge(layout);
  const width = v('runner_W');
  const inner = width - v('guide_T');
  const notes = ['Straight and hard; wax it.'];
  return [
    {
      number: drawerNumbers.runner,
      name: 'Runner',
      finished: { length: v('runner_L'), width, thickness: v('runner_T') },
      working: { length: 'runner_L', width: 'runner_W', thickness: 'runner_T' },
      faceSide: 'face side up',
      placements: [-v('guide_T'), v('Wo') - inner].map((x) =>
        placeAt({ x, y: level, z: -v('tr') }, backwards, right),
      ),
      notes,
    },
    {
      number: drawerNumbers.kicker,
      name: 'Kicker',
      finished: { length: v('kicker_L'), width, thickness: v('runner_T') },
      working: { length: 'kicker_L', width: 'runner_W', thickness: 'runner_T' },
      faceSide: 'face side down, to the drawer',
      placements: [inner, v('Wo') + v('guide_T')].map((x) =>
        placeAt({ x, y: v('Ho'), z: -kickerFromFront }, backwards, left),
      ),
      notes: [...notes, 'Underside level with the underside of the rail above.'],
    },
    {
      number: drawerNumbers.guide,
      name: 'Guide',
      finished: { length: v('runner_L'), width: v('runner_T'), thickness: v('guide_T') },
      working: { length: 'runner_L', width: 'runner_T', thickness: 'guide_T' },
      faceSide: 'face side to the drawer',
      placements: againstSides(layout, { inset: 0, top: level + v('runner_T'), start: v('tr') }),
      notes,
    },
  ];
}

function sideRails(layout: DrawerLayout): readonly StripDraft[] {
  const v = layout.book.value;
  const top = lowerEdge(layout) + v('rail_up') + 0.5 + v('rail_H');
  return [
    {
      number: drawerNumbers.runner,
      name: 'Side rail',
      finished: { length: v('runner_L'), width: v('rail_H'), thickness: v('rail_T') },
      working: { length: 'runner_L', width: 'rail_H', thickness: 'rail_T' },
      faceSide: 'face side to the drawer',
      placements: againstSides(layout, { inset: v('rail_T'), top, start: v('setback') + v('tf') + 10 }),
      notes: ['Straight and hard; wax it.'],
    },
  ];
}

/** Strips on both sides of the opening, their faces `inset` into it, looking at the drawer. */
function againstSides(
  layout: DrawerLayout,
  at: { readonly inset: number; readonly top: number; readonly start: number },
) {
  const v = layout.book.value;
  const { inset, top, start } = at;
  return [
    placeAt({ x: inset, y: top, z: -start }, backwards, down),
    placeAt({ x: v('Wo') - inset, y: top, z: -start - v('runner_L') }, forwards, down),
  ];
}
