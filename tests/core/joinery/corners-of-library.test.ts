import { describe, expect, test } from 'vitest';
import {
  buildPiece,
  mirrorMachining,
  workOutBoxJoint,
  workOutDovetailJoint,
  workOutLockRebate,
  workOutRebate,
} from '#core/joinery';
import type { BuiltPiece, DrawerParameters, Machining, Part, PartSize, WorkedJoint } from '#core/joinery';
import { boxContext, drawer, worked } from '../../support/joinery-boxes.ts';

type DrawerCorner = NonNullable<DrawerParameters['corner']>;
type JointCuts = WorkedJoint['cuts'];

/** A corner as the library is asked for it. */
interface Corner {
  readonly side: PartSize;
  readonly front: PartSize;
  /** The groove that must lie in one finger or tail. */
  readonly keep: readonly [number, number];
  readonly v: (name: string) => number;
}

const pins = { slope: 7, halfPin: 5, pin: 5 } as const; // joinery C12

const partNamed = (built: BuiltPiece, name: RegExp): Part => {
  const found = built.parts.find((part) => name.test(part.name));
  if (!found) throw new Error(`no part ${name}: ${built.findings.map(({ message }) => message).join(' ')}`);
  return found;
};

/** The numbers of a cut, to be compared. */
function figuresOf(one: Machining): readonly number[] {
  if (one.kind === 'recess') {
    const { min, max } = one.box;
    return [min.x, min.y, min.z, max.x, max.y, max.z];
  }
  if (one.kind === 'prism') return [one.depth, ...one.outline.flatMap(({ x, y }) => [x, y])];
  return one.kind === 'hole' ? [one.x, one.y, one.diameter] : [one.degrees];
}

/** Each cut of the library is on the part, to a millionth. */
function expectCuts(part: Part, cuts: readonly Machining[]): void {
  for (const cut of cuts) {
    const wanted = figuresOf(cut);
    const found = part.machining.some((one) => {
      const own = figuresOf(one);
      return (
        one.kind === cut.kind &&
        own.length === wanted.length &&
        own.every((value, i) => Math.abs(value - (wanted[i] ?? NaN)) < 1e-6)
      );
    });
    expect(found, `${part.name}: ${JSON.stringify(cut)}`).toBe(true);
  }
}

const build = (parameters: Partial<DrawerParameters>): BuiltPiece =>
  buildPiece(
    drawer({
      ...{ runner: 'side-rail', frontThickness: 14, sideThickness: 12 },
      materials: { box: 'ash', bottom: 'ply6', runners: 'ash' },
      ...parameters,
    }),
    boxContext(),
  );

describe('the front corners of a drawer are those of the library', () => {
  const corners = {
    box: ({ side, front, keep }) => workOutBoxJoint({ male: side, other: front }, keep).cuts,
    'through-dovetail': ({ side, front, keep }) =>
      workOutDovetailJoint({ male: side, other: front }, { ...pins, keep }).cuts,
    'lapped-dovetail': ({ side, front, keep, v }) =>
      workOutDovetailJoint({ male: side, other: front }, { ...pins, keep, lap: v('lap') }).cuts,
    rebate: ({ side, front, v }) => workOutRebate({ male: side, other: front }, { lip: v('lip_f') }).cuts,
    'lock-rebate': ({ side, front }) => {
      const { male, other } = workOutLockRebate({ male: front, other: side }).cuts;
      return { male: other, other: male };
    },
  } as const satisfies Partial<Record<DrawerCorner, (of: Corner) => JointCuts>>;
  test.each(Object.keys(corners) as readonly (keyof typeof corners)[])('%s', (corner) => {
    // lapped dovetails want a thicker front; fingers suit the thicker of the two
    const built = build({ corner, frontThickness: corner === 'box' ? 12 : 14 });
    const [side, front] = [partNamed(built, /^Side, left/), partNamed(built, /^Box front/)];
    const v = (name: string) => worked(built, name);
    const low = v('h') - v('yg');
    const keep = [low - v('groove_W'), low] as const;
    const cuts = corners[corner]({ side: side.finished, front: front.finished, keep, v });
    expect(cuts.male.length + cuts.other.length).toBeGreaterThan(0);
    expectCuts(front, cuts.other);
    // the front end of a side is its start
    expectCuts(
      side,
      cuts.male.map((one) => mirrorMachining(one, 'x', side.finished)),
    );
  });
});
