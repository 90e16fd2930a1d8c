import { cellRows } from '../front-cell.ts';
import { hangingKinds } from './frame.ts';
import { rowsFor } from '../parameter-rows.ts';
import type { HungDoorParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const { numberOf, choiceOf } = rowsFor<keyof HungDoorParameters>('joinery B2');

/** The usual gaps of a kind of door, mm, and what to say of the one below. */
export interface UsualGaps {
  readonly gap: number;
  readonly below: number;
  readonly belowHelp: string;
}

const unframed = { key: 'frame', given: false } as const;

/** Rows of the parameter table for the size and gaps of a hung door. */
export const doorSizeRows = ({ gap, below, belowHelp }: UsualGaps): readonly ParameterInfo[] => [
  {
    key: 'frame',
    label: 'Hangs in',
    help: 'A door frame of this project, size and gaps come from it; or a free frame, whose opening less the gaps below is filled. Left out: from the numbers below.',
    type: 'piece',
    group: 'Size',
    pieceKind: hangingKinds,
    source: 'joinery B1',
  },
  ...cellRows.map((info) => ({ ...info, group: 'Size' })),
  numberOf('Size', 'width', 'Door width', {
    from: 150,
    to: 1100,
    help: 'Clear width less both gaps; of two doors that meet, of both.',
    when: unframed,
  }),
  numberOf('Size', 'height', 'Door height', {
    from: 200,
    to: 2200,
    help: 'Clear height less both gaps.',
    when: unframed,
  }),
  numberOf('Size', 'gapSide', 'Gap, sides', {
    usual: gap,
    from: 2,
    to: 12,
    help: 'Passage door 3, locker door 2.5.',
  }),
  numberOf('Size', 'gapTop', 'Gap, top', { usual: gap, from: 2, to: 12 }),
  numberOf('Size', 'gapBottom', 'Gap, bottom', {
    usual: below,
    from: 2,
    to: 12,
    help: belowHelp,
  }),
  choiceOf('Size', 'hinged', 'Hinges', {
    choices: { left: 'On the left', right: 'On the right' },
    help: 'Seen from the side of the knuckles.',
  }),
];

/** Gaps of a locker door. */
export const lockerGaps: UsualGaps = { gap: 2.5, below: 2.5, belowHelp: '10 where air is wanted.' };

/** Gaps of a passage door. */
export const passageGaps: UsualGaps = {
  gap: 3,
  below: 10,
  belowHelp: '3 above a sill, 10 without one for air.',
};

/** Rows for its hinges and leading edge. */
export const doorHingeRows: readonly ParameterInfo[] = [
  numberOf('Hinges', 'bevelDegrees', 'Bevel of the leading edge', {
    usual: 2.5,
    from: 0,
    to: 4,
    type: 'number',
    help: 'Degrees; the back is the narrower face.',
  }),
  numberOf('Hinges', 'pivotBeyond', 'Pivot beyond the edge', {
    usual: 0,
    from: 0,
    to: 20,
    help: 'Centre of the hinge pin, sideways from the hinge edge.',
  }),
  numberOf('Hinges', 'pivotProud', 'Pivot proud of the face', {
    usual: 4,
    from: 0,
    to: 20,
    help: 'Half the knuckle of a butt hinge.',
  }),
  numberOf('Hinges', 'hingeLength', 'Hinge length', { usual: 50, from: 40, to: 120 }),
];
