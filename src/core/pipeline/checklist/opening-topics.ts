import { ask, look } from './asked.ts';
import type { Topic } from './topic.ts';

const six = ['wb', 'wt', 'hl', 'hr', 'd1', 'd2'] as const;
const seven = ['wb', 'wm', 'wt', 'hl', 'hr', 'd1', 'd2'] as const;
const plumbs = ['pl', 'pr', 'ls', 'lh'] as const;
const twelve = ['wb', 'w13', 'w23', 'wt', 'hl', 'hr', 'd1', 'd2', ...plumbs] as const;

const swing = ask(
  'swing',
  'Obstacle in the swing',
  'From the hinge line to the nearest thing a door could strike.',
);

/** Rows of table A10 for what is fitted to an opening. */
export const openingTopics = {
  'door frame': {
    opening: [...twelve, 'bows', 'twist', 'thickness'],
    lines: [
      ask(
        'faces',
        'Layers that come off or come on',
        'Trim, lining, covering of the sole: thickness of each.',
        { stage: 'clear', blanks: 2 },
      ),
      ask(
        'clear-depth',
        'Clear depth in front and behind',
        'Square to the bulkhead: room to slide the frame in.',
        { blanks: 2 },
      ),
      ask(
        'headroom',
        'Headroom above the opening',
        'From the head up to the deckhead, left, middle and right.',
        { blanks: 3 },
      ),
      swing,
    ],
  },
  door: {
    opening: [...seven, 'twist'],
    lines: [
      ask('stop', 'Depth of the stop', 'From the face of the frame to the stop, top and bottom.', {
        blanks: 2,
        method: 'M4',
      }),
      look(
        'hinges',
        'Hinge side and swing',
        'Seen from the named side: hinges left or right, towards you or away.',
      ),
      swing,
      ask('lock', 'Backset of lock and of latch', 'From the edge of the door to the middle of the spindle.', {
        blanks: 2,
        method: 'M4',
      }),
    ],
  },
  front: {
    opening: [...six, 'twist'],
    lines: [
      look('abuts', 'What it meets on each side', 'Lining, hull, worktop: which edges will be scribed?'),
    ],
  },
  lid: {
    opening: ['wb', 'wm', 'wt', 'hl', 'hm', 'hr', 'd1', 'd2'],
    lines: [
      ask('under', 'Depth under the cleats', 'From the bearing down to the first obstacle, front and back.', {
        blanks: 2,
      }),
      ask('mattress', 'Line of the mattress edge', 'From the front edge, left and right.', { blanks: 2 }),
    ],
  },
  'access panel': {
    opening: [...six],
    lines: [
      ask('surround', 'Surround all round', 'Room for the turn buttons: left, right, above, below.', {
        blanks: 4,
        method: 'M4',
      }),
      ask('behind', 'Depth behind', 'To the first thing behind the hole.'),
      ask('pipe', 'Nearest pipe or wire', 'From the edge of the hole.', { method: 'M4' }),
    ],
  },
  hatch: {
    opening: ['wb', 'wm', 'wt', 'hl', 'hm', 'hr'],
    lines: [
      ask('radii', 'Radii of the corners', 'With coins or a radius gauge, all four.', {
        blanks: 4,
        method: 'M4',
      }),
      ask('deck', 'Deck and lining together', 'Thickness at eight places round the aperture.', {
        blanks: 8,
        stage: 'strings',
        method: 'M5',
      }),
      ask('camber', 'Camber', 'Under a straightedge across the aperture.', {
        stage: 'strings',
        method: 'M7',
      }),
    ],
  },
  'curved head': {
    opening: ['wb', 'wt', 'hl', 'hr', 'd1', 'd2', 'thickness'],
    lines: [
      ask('span', 'Span and rise', 'Between the springings, and from their line to the crown.', {
        blanks: 2,
      }),
      ask('face-line', 'Face line', 'From the straight line of the springings, every 50.', {
        blanks: 8,
        method: 'M9',
      }),
    ],
  },
  general: {
    opening: [...twelve, 'bows', 'twist'],
    lines: [look('meets', 'What it meets on each side', 'Which edges are scribed, covered or free?')],
  },
} as const satisfies Readonly<Record<string, Topic>>;
