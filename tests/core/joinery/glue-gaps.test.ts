import { describe, expect, test } from 'vitest';
import { buildPiece, defaultSettings } from '#core/joinery';
import type { BuiltPiece, CurvedHeadParameters, FreeFrameParameters, FrameCorner, Part } from '#core/joinery';
import { buildKind } from '../../support/flat-pieces.ts';
import { contextFor, doorFrame, openingShape } from '../../support/joinery-samples.ts';

/** Gaps on each glued face (joinery C): the middle of what a glue fills; nothing said, the gap there always was. */
const gaps = { pva: 0.075, epoxy: 0.2, polyurethane: 0.075 } as const;
type Chosen = keyof typeof gaps;
const chosen = Object.keys(gaps) as readonly Chosen[];
const withGlue = (glue: Chosen | undefined) => ({
  settings: { ...defaultSettings, ...(glue && { glue }) },
});

/** How thick the slots and pockets of a part are, through its thickness. */
const thickOf = ({ machining }: Part, name: string): readonly number[] =>
  machining.flatMap((one) => {
    if (one.kind === 'recess') return one.name === name ? [one.box.max.z - one.box.min.z] : [];
    return one.kind === 'prism' && (one.name === name || one.note === name)
      ? [one.depth - (one.below ?? 0)]
      : [];
  });
const all = (built: BuiltPiece, name: string) => built.parts.flatMap((part) => thickOf(part, name));
const expectEach = (found: readonly number[], wanted: number) => {
  expect(found.length).toBeGreaterThan(0);
  for (const one of found) expect(one).toBeCloseTo(wanted, 9);
};

describe('the gap of the glue', () => {
  const frame = (joint: FreeFrameParameters['joint'], glue?: Chosen) =>
    buildKind(
      'free-frame',
      { width: 500, height: 900, ...(joint && { joint }), jointThickness: 8, materials: { frame: 'oak' } },
      withGlue(glue),
    );
  test.each(chosen)('%s, on each cheek in a free frame', (glue) => {
    expectEach(all(frame('bridle', glue), 'slot'), 8 + 2 * gaps[glue]);
    expectEach(all(frame('loose-tenon', glue), 'mortise'), 8 + 2 * gaps[glue]);
    expect(frame('bridle', glue).joints[0]?.settings.join(' ')).toContain(`${8 + 2 * gaps[glue]} wide`);
    // a spline is fitted to its slot
    expectEach(all(frame('spline', glue), 'slot'), 8);
  });
  test('in a free frame is as it always was when none is chosen', () => {
    expectEach(all(frame('bridle'), 'slot'), 8.2);
    expectEach(all(frame('loose-tenon'), 'mortise'), 8);
  });

  const head = (more: Partial<CurvedHeadParameters>, glue?: Chosen) =>
    buildKind(
      'curved-head',
      {
        span: 540,
        rise: 60,
        method: 'sawn',
        segments: 'two',
        depth: 60,
        ...more,
        materials: { head: 'oak', mould: 'ply18' },
      },
      withGlue(glue),
    );
  const heights = (built: BuiltPiece) =>
    built.parts.flatMap(({ machining }) =>
      machining.flatMap((one) =>
        one.kind === 'prism' && one.note === 'housing of the head'
          ? one.outline.map(({ x, y }) => ({ x, y }))
          : [],
      ),
    );
  test.each([undefined, ...chosen])('%s, in the pockets at the crown of a sawn head', (glue) => {
    const gap = glue ? gaps[glue] : 0.1;
    // depth 60: a loose tenon of 12, the thickest there is (joinery C3)
    const found = all(head({}, glue), 'pocket of the loose tenon, worked from the end');
    expect(found).toHaveLength(2);
    expectEach(found, 12 + 2 * gap);
  });
  test('widens the housings of a head in its jambs', () => {
    const high = (glue?: Chosen) => {
      const at = heights(head({ springing: 'housed', jambLength: 800 }, glue));
      return Math.max(...at.map(({ x }) => x)) - Math.min(...at.map(({ x }) => x));
    };
    const more = high('epoxy') - high();
    // 0.1 more above and below, square to the head, which leans here: a little more along the jamb
    expect(more).toBeGreaterThan(0.2);
    expect(more).toBeLessThan(0.25);
  });

  const opening = openingShape({ BL: [0, 0], BR: [700, 0], TR: [700, 1800], TL: [0, 1800] });
  const door = (corner: FrameCorner, glue?: Chosen) =>
    buildPiece(doorFrame({ corner, ...(corner === 'bridle' && { jambThickness: 42, headThickness: 48 }) }), {
      ...contextFor(opening),
      ...withGlue(glue),
    });
  test.each(chosen)('%s, at the corners of a door frame', (glue) => {
    const [usual, glued] = [door('loose-tenon'), door('loose-tenon', glue)];
    const ends = (built: BuiltPiece) =>
      built.parts.filter(({ name }) => name === 'Head').flatMap((part) => thickOf(part, 'mortise'));
    const [before] = ends(usual);
    expectEach(ends(glued), (before ?? NaN) - 0.2 + 2 * gaps[glue]);
    const third = all(door('bridle'), 'slot')[0] ?? NaN;
    expectEach(all(door('bridle', glue), 'slot'), third + 2 * gaps[glue]);
  });
  test('of the project and of the piece are the same', () => {
    const own = buildKind('free-frame', {
      width: 500,
      height: 900,
      joint: 'bridle',
      glue: 'epoxy',
      materials: { frame: 'oak' },
    });
    const project = buildKind(
      'free-frame',
      { width: 500, height: 900, joint: 'bridle', materials: { frame: 'oak' } },
      withGlue('epoxy'),
    );
    expect(own).toEqual(project);
  });
});
