import { ask, look } from './asked.ts';
import type { Topic } from './topic.ts';

/** Rows of table A10 for what is fitted into a room, against the hull or along an edge. */
export const roomTopics = {
  drawer: {
    opening: [],
    lines: [
      ask(
        'widths',
        'Width in front, in the middle, at the back',
        'Between the runners’ faces; the back is often the narrowest.',
        { blanks: 3, method: 'M3', parameters: ['openingWidth'] },
      ),
      ask('heights', 'Height left, middle, right', 'From the runner to what is above it.', {
        blanks: 3,
        method: 'M3',
        parameters: ['openingHeight'],
      }),
      ask(
        'depth',
        'Depth to the first obstacle',
        'From the front face inwards, at the height of the drawer.',
        { parameters: ['clearDepth'] },
      ),
      ask(
        'plan-diagonals',
        'Both diagonals of the plan',
        'Front left to back right, front right to back left.',
        { blanks: 2, method: 'M3' },
      ),
      ask('runners', 'Seats of the runners apart', 'In front and at the back: are they parallel?', {
        blanks: 2,
        method: 'M3',
      }),
      ask(
        'intrusion',
        'Hull at the low corner behind',
        'At the height of the drawer bottom, from the front face to the hull.',
      ),
    ],
  },
  carcase: {
    opening: [],
    lines: [
      ask('front-plane', 'Plane of the fronts', 'From a fixed mark to the plane, left and right.', {
        blanks: 2,
      }),
      ask(
        'sole',
        'Slope and camber of the sole',
        'Across and fore-and-aft, over the length of the carcase.',
        { blanks: 2, method: 'M6' },
      ),
    ],
  },
  shelf: {
    opening: [],
    lines: [
      ask('lengths', 'Width at the back and in front', 'Between the two ends, at the height of the shelf.', {
        blanks: 2,
        method: 'M3',
      }),
      ask('ends', 'Angle of both ends', 'Between the front and each end.', {
        blanks: 2,
        unit: '°',
        method: 'M12',
        stage: 'bevels',
      }),
      ask('back', 'Hull along the back', 'Every 100 from a straight batten, at the height of the shelf.', {
        blanks: 8,
        method: 'M9',
      }),
      ask('supports', 'Heights of the supports', 'From the sole, left and right.', { blanks: 2 }),
    ],
  },
  countertop: {
    opening: [],
    lines: [
      look(
        'template',
        'Template of the outline',
        'Strips glued together; mark face, up, forward and the joins.',
        { stage: 'templates', method: 'M14' },
      ),
      ask(
        'crosses',
        'Crosses on the template',
        'How far apart aboard, across and along; over 80 % of the size.',
        { stage: 'templates', blanks: 2 },
      ),
      ask('overhangs', 'Overhangs', 'Over the fronts and over the ends.', { blanks: 2 }),
      ask('appliances', 'Sink and cooker: cut-out and what must stay clear', 'From their own templates.', {
        blanks: 3,
      }),
      ask('plumbing', 'Pipes and drain', 'From the back and from one end.', { blanks: 2 }),
      ask('hatches', 'Lids and hatches in the top', 'From the front and from one end.', { blanks: 2 }),
    ],
  },
  trim: {
    opening: [],
    lines: [
      look('top', 'What the trim meets above and below', 'Gaps it must cover, and what it must leave free.'),
    ],
  },
  filler: {
    opening: [],
    lines: [
      ask('gaps', 'The gap at five places', 'Evenly along the edge, ends included.', {
        blanks: 5,
        method: 'M4',
      }),
      ask('bevel', 'Bevel of what it meets', 'Against the visible face.', {
        unit: '°',
        method: 'M12',
        stage: 'bevels',
      }),
      look('face', 'Which face shows', 'And which way the grain runs beside it.'),
    ],
  },
  step: {
    opening: [],
    lines: [
      ask('rise', 'Height from sole to landing', 'At both sides.', { blanks: 2 }),
      ask('sole', 'Slope and camber of the sole', 'Over the width and the depth of the step.', {
        blanks: 2,
        method: 'M6',
      }),
      ask('foot', 'Room for the foot', 'Depth and width on the tread.', { blanks: 2 }),
      ask('hatch', 'Hatch above', 'Headroom on the step.'),
    ],
  },
  tray: {
    opening: [],
    lines: [
      ask('widths', 'Inside width, three times', 'In front, in the middle, at the back.', {
        blanks: 3,
        method: 'M3',
      }),
      ask('depths', 'Inside depth, three times', 'Left, middle, right.', { blanks: 3, method: 'M3' }),
      ask('height', 'Inside height', 'At the lowest place.'),
      ask('rim', 'Rim of the bin', 'Length and width over all.', { blanks: 2 }),
      ask('base', 'Base of the bin', 'Length and width.', { blanks: 2 }),
      ask('bin', 'Height of the bin, room for the hand', 'Over all; beside or above its handles.', {
        blanks: 2,
      }),
    ],
  },
} as const satisfies Readonly<Record<string, Topic>>;
