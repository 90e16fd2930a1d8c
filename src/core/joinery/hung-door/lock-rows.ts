import { rowsFor } from '../parameter-rows.ts';
import type { HungDoorParameters } from './types.ts';
import type { ParameterInfo } from '../piece-types.ts';

const cp = 'common practice, no source';
const { numberOf, choiceOf } = rowsFor<keyof HungDoorParameters>(cp);

const withCase = { key: 'lock', is: ['mortise-lock', 'rim-lock'] } as const;
const letIn = { key: 'lock', is: ['mortise-lock'] } as const;
const withHandle = { key: 'lock', is: ['mortise-lock', 'rim-lock', 'turn-button'] } as const;

/** Rows for the lock of a door. */
export const doorLockRows: readonly ParameterInfo[] = [
  choiceOf('Lock', 'lock', 'Held shut by', {
    choices: {
      'face-latch': 'A latch on the face',
      'mortise-lock': 'A mortise lock, let in from the edge',
      'rim-lock': 'A rim lock on the face',
      'turn-button': 'A finger hole and a turn button',
      none: 'Nothing',
    },
    help: 'A mortise lock gets its mortise here and its strike in the jamb. Afloat it must not open at heel.',
  }),
  numberOf('Lock', 'lockHeight', 'Handle above the lower edge', {
    from: 60,
    to: 1500,
    help: 'Left out: half way up, 1000 at most, clear of rails.',
    when: withHandle,
  }),
  numberOf('Lock', 'lockBackset', 'Backset', {
    from: 12,
    to: 90,
    help: 'From the lock edge to the middle of the handle. Left out: 25 in a stile, 40 in a sheet for a rim lock; a finger hole in the middle of the stile.',
    when: withHandle,
  }),
  numberOf('Lock', 'lockDepth', 'Case, depth', {
    from: 20,
    to: 90,
    help: 'From the lock edge, as the lock measures. Left out: backset and 15.',
    when: withCase,
  }),
  numberOf('Lock', 'lockCaseHeight', 'Case, height', { usual: 75, from: 30, to: 200, when: withCase }),
  numberOf('Lock', 'lockCaseThickness', 'Case, thickness', {
    usual: 8,
    from: 5,
    to: 20,
    help: 'Leave 5 of wood and a quarter of the door beside it.',
    when: letIn,
  }),
  numberOf('Lock', 'forendHeight', 'Forend and strike, height', {
    usual: 95,
    from: 40,
    to: 260,
    when: letIn,
  }),
  numberOf('Lock', 'forendWidth', 'Forend and strike, width', { usual: 14, from: 10, to: 30, when: letIn }),
  numberOf('Lock', 'forendThickness', 'Forend and strike, thickness', {
    usual: 2.5,
    from: 1,
    to: 5,
    when: letIn,
  }),
];

const ofTwo = { key: 'leaf', is: ['first', 'second'] } as const;

/** Rows for two doors that meet in one opening. */
export const doorLeafRows: readonly ParameterInfo[] = [
  choiceOf('Two doors', 'leaf', 'Doors in the opening', {
    choices: {
      whole: 'This one alone',
      first: 'Two: this one opens first',
      second: 'Two: this one is bolted',
    },
    help: 'Two doors are two pieces in one frame, hinged on either side; width and height are then those of both.',
  }),
  choiceOf('Two doors', 'meeting', 'Where they meet', {
    choices: {
      gap: 'A gap, edges square',
      rebate: 'Rebated, the first laps over the other',
    },
    help: 'Choose the same for both. A rebate keeps out draught and spray.',
    when: ofTwo,
  }),
  numberOf('Two doors', 'meetingGap', 'Gap between them', { usual: 3, from: 2, to: 6, when: ofTwo }),
  numberOf('Two doors', 'meetingRebate', 'Lap of the rebate', {
    usual: 10,
    from: 6,
    to: 15,
    when: { key: 'meeting', is: ['rebate'] },
  }),
];
