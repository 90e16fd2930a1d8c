import type { MeasuredOutline, MeasuredSections, MeasuredShape, MeasuredWalls, Photo } from '#core/project';

/** A point of one pixel, the smallest PNG there is to draw on. */
export const samplePhoto: Photo = {
  id: 'before',
  caption: 'Before the lining came off',
  image:
    'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==',
  strokes: [
    {
      points: [
        { x: 0.1, y: 0.2 },
        { x: 0.5, y: 0.9 },
      ],
    },
  ],
};

const tape = (id: string, from: string, to: string, value: number) =>
  ({ id, kind: 'distance', from, to, value, sigma: 0.5 }) as const;

/** The V of the bow as a locker bottom: three corners, the hull side curved. */
export const bowLocker: MeasuredOutline = {
  id: 'bow',
  name: 'Bow locker',
  kind: 'outline',
  seenFrom: 'from above, the bow to the right',
  corners: ['aft port', 'stem', 'aft starboard'],
  readings: [
    tape('s1', 'aft port', 'stem', 1000),
    tape('s2', 'stem', 'aft starboard', 1000),
    tape('s3', 'aft starboard', 'aft port', 800),
  ],
  curves: [
    {
      id: 'port',
      from: 'aft port',
      to: 'stem',
      ordinates: [100, 200, 300, 400, 500, 600, 700, 800, 900].map((at) => ({
        at,
        value: Math.round((10 * 60 * at * (1000 - at)) / 250_000) / 10,
      })),
    },
  ],
  obstructions: [{ id: 'pipe', name: 'Waste pipe', x: 200, y: 100, width: 40, height: 60 }],
};

/** The hull behind a galley carcase; ordinates of joinery B7. */
export const galleyHull: MeasuredSections = {
  id: 'hull',
  name: 'Hull behind the galley',
  kind: 'sections',
  seenFrom: 'standing at the galley, looking to port',
  readings: [],
  sections: [
    {
      id: 'left',
      name: 'Left end',
      at: 0,
      ordinates: [182, 236, 281, 318, 347, 369].map((depth, place) => ({ height: 150 * place, depth })),
      bevels: [{ height: 300, degrees: 4 }],
    },
    {
      id: 'right',
      name: 'Right end',
      at: 620,
      ordinates: [205, 262, 309, 347, 377, 399].map((depth, place) => ({ height: 150 * place, depth })),
    },
  ],
  obstructions: [
    { id: 'stringer', name: 'Stringer', x: 250, y: 410, width: 60, height: 30, section: 'left' },
  ],
};

/** Two walls that meet at 91.5°, and a post beyond. */
export const saloonWalls: MeasuredWalls = {
  id: 'walls',
  name: 'Saloon corner',
  kind: 'walls',
  seenFrom: 'in the saloon, facing aft',
  readings: [],
  walls: [
    { id: 'w1', name: 'Bulkhead', length: 900, corner: { degrees: 91.5 } },
    { id: 'w2', name: 'Side', length: 1200, bow: 4, corner: { degrees: 268 } },
    { id: 'w3', name: 'Post', length: 80 },
  ],
};

/** A drawing of a hatch: a rectangle with one rounded corner, drawn 1 in 1000 too small. */
export const tracedHatch: MeasuredOutline = {
  id: 'hatch',
  name: 'Hatch',
  kind: 'outline',
  seenFrom: 'from below, looking up',
  corners: ['A', 'B', 'C', 'D', 'E'],
  readings: [],
  traced: {
    points: [
      { x: 0, y: 0 },
      { x: 500, y: 0 },
      { x: 500, y: 350, bulge: Math.tan(Math.PI / 8) },
      { x: 450, y: 400 },
      { x: 0, y: 400 },
    ],
    cornersAt: [0, 1, 2, 3, 4],
    bars: { x: { drawn: 499.5, real: 500 } },
    source: 'hatch.dxf',
  },
};

export const sampleShapes: readonly MeasuredShape[] = [bowLocker, galleyHull, saloonWalls, tracedHatch];
