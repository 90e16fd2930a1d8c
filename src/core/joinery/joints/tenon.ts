import type { JointCuts } from './fingers.ts';
import type { Meeting } from './frame.ts';
import { makeRecess, type Range } from '../parts.ts';
import type { Machining } from '../types.ts';

/**
 * A tenon as it stands on the end of the male member (joinery C4): where it lies across the width and in the thickness,
 * how far it reaches. `gap` is on each glued cheek. mm.
 */
export interface PlacedTenon {
  readonly reach: number;
  readonly y: Range;
  readonly z: Range;
  readonly gap: number;
  /** A short part of the tenon that stays beside it and fills the groove (joinery C4). */
  readonly haunch?: {
    readonly y: Range;
    readonly z: Range;
    readonly reach: number;
    readonly inGroove?: boolean;
  };
}

const play = 0.25; // half of what a mortise is longer than its tenon is wide (joinery C4)
const glueWell = 1.5; // past the end of a stub tenon (joinery C4)

/** A mortise and tenon, stub, haunched or right through (joinery C4, C-COORD). `through`: the reach is the width of the other. */
export function cutPlacedTenon({ male, other, centre }: Meeting, tenon: PlacedTenon): JointCuts {
  const { reach, y, z, gap, haunch } = tenon;
  const through = reach >= other.width - 1e-9;
  const along = (range: Range, more: number): Range => [
    Math.max(0, centre - male.width / 2 + range[0] - more),
    Math.min(other.length, centre - male.width / 2 + range[1] + more),
  ];
  const bottom = through ? 0 : other.width - reach - glueWell;
  const mortise = makeRecess('mortise', 'far-edge', {
    x: along(y, play),
    y: [bottom, other.width],
    z: [z[0] - gap, z[1] + gap],
  });
  const pocket =
    haunch &&
    !haunch.inGroove &&
    makeRecess('mortise', 'far-edge', {
      x: along(haunch.y, play),
      y: [other.width - haunch.reach, other.width],
      z: [haunch.z[0] - gap, haunch.z[1] + gap],
    });
  return { male: cutShoulders(male, tenon), other: [mortise, ...(pocket ? [pocket] : [])] };
}

/** What is sawn off the end of a member so that a tenon stays. */
function cutShoulders(male: Meeting['male'], { reach, y, z, haunch }: PlacedTenon): readonly Machining[] {
  const x: Range = [male.length - reach, male.length];
  const whole: Range = [0, male.width];
  const beside = (range: Range): readonly Machining[] => {
    if (!haunch || haunch.y[0] < range[0] - 1e-9 || haunch.y[1] > range[1] + 1e-9)
      return shoulder(x, range, z);
    const past: Range = [x[0] + haunch.reach, x[1]];
    const thin: Range = [x[0], past[0]];
    return [
      ...shoulder(past, range, z),
      ...shoulder(thin, haunch.y, [z[0], haunch.z[0]]),
      ...shoulder(thin, haunch.y, [haunch.z[1], z[1]]),
      ...shoulder(thin, [range[0], haunch.y[0]], z),
      ...shoulder(thin, [haunch.y[1], range[1]], z),
    ];
  };
  return [
    makeRecess('shoulder', 'face', { x, y: whole, z: [0, z[0]] }),
    makeRecess('shoulder', 'back', { x, y: whole, z: [z[1], male.thickness] }),
    ...beside([0, y[0]]),
    ...beside([y[1], male.width]),
  ];
}

function shoulder(x: Range, y: Range, z: Range): readonly Machining[] {
  const empty = [x, y, z].some(([from, to]) => to - from < 1e-9);
  return empty ? [] : [makeRecess('shoulder', y[0] > 0 ? 'far-edge' : 'face-edge', { x, y, z })];
}

/** A corner bridle (joinery C5): the male member's tongue in an open slot at the end of the other. */
export function cutBridle({ male, other }: Meeting, z: Range, gap: number, atStart: boolean): JointCuts {
  const x: Range = [male.length - other.width, male.length];
  const whole: Range = [0, male.width];
  return {
    male: [
      makeRecess('shoulder', 'face', { x, y: whole, z: [0, z[0]] }),
      makeRecess('shoulder', 'back', { x, y: whole, z: [z[1], male.thickness] }),
    ],
    other: [
      makeRecess('slot', atStart ? 'start' : 'end', {
        x: atStart ? [0, male.width] : [other.length - male.width, other.length],
        y: [0, other.width],
        z: [z[0] - gap, z[1] + gap],
      }),
    ],
  };
}

/** A tongue across the end that enters the groove of the other (joinery B3, C10); the other has nothing but its groove. */
export function cutGrooveTongue({ male }: Pick<Meeting, 'male'>, z: Range, reach: number): JointCuts {
  const x: Range = [male.length - reach, male.length];
  const whole: Range = [0, male.width];
  return {
    male: [
      makeRecess('shoulder', 'face', { x, y: whole, z: [0, z[0]] }),
      makeRecess('shoulder', 'back', { x, y: whole, z: [z[1], male.thickness] }),
    ],
    other: [],
  };
}

/**
 * End scribed over the moulding of the other, with a tongue for its groove (joinery C18). The moulding is drawn as its
 * step: `step` deep from the face over `reach`; the matched cutters give both members the same profile in it.
 */
export function cutScribedEnd(
  { male }: Pick<Meeting, 'male'>,
  profile: { readonly step: number; readonly tongue: Range; readonly reach: number },
): JointCuts {
  const { step, tongue, reach } = profile;
  const x: Range = [male.length - reach, male.length];
  const whole: Range = [0, male.width];
  return {
    male: [
      makeRecess(
        'shoulder',
        'end',
        { x, y: whole, z: [step, tongue[0]] },
        'scribed to the moulding, matched cutters',
      ),
      makeRecess('shoulder', 'back', { x, y: whole, z: [tongue[1], male.thickness] }),
    ],
    other: [],
  };
}

/** Pockets for a loose tenon in the end of one and the edge of the other (joinery C3), `depth` into each. */
export function cutLoosePockets(
  { male, other, centre }: Meeting,
  tenon: { readonly depth: number; readonly y: Range; readonly z: Range; readonly gap: number },
): JointCuts {
  const { depth, y, gap } = tenon;
  const z: Range = [tenon.z[0] - gap, tenon.z[1] + gap];
  return {
    male: [makeRecess('mortise', 'end', { x: [male.length - depth, male.length], y, z })],
    other: [
      makeRecess('mortise', 'far-edge', {
        x: [centre - male.width / 2 + y[0], centre - male.width / 2 + y[1]],
        y: [other.width - depth, other.width],
        z,
      }),
    ],
  };
}
