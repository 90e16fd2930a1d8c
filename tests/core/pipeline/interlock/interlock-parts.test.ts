import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawLayout } from '#core/drawing';
import { boxOfOutline, offsetOutline, outlineArea, subtractOutlines, type Outline } from '#core/geometry';
import type { Part } from '#core/joinery';
import {
  expandLayout,
  groupParts,
  planGroups,
  understandProject,
  viewLayout,
  type CuttingGroup,
} from '#core/pipeline';
import type { Project } from '#core/project';
import { loadGlpk } from '#solver/glpk';
import { makePart, makePiece, makeProject, makeStock } from '../made-up.ts';

const solveLp = await loadGlpk();

function shaped(id: string, outline: Outline, more: Partial<Part> = {}): Part {
  const { maxX, maxY } = boxOfOutline(outline);
  return makePart(id, [maxX, maxY, 9], { outline, ...more });
}

const project = makeProject([makeStock('s', { length: 2440, width: 1220 })]);
const gap = project.tools.router.cutter + 2;

function groupOf(parts: readonly Part[], of: Project = project): CuttingGroup {
  const [group] = groupParts(of, [makePiece(parts)]).groups;
  if (!group) throw new Error('no group');
  return group;
}

const sharedOf = (group: CuttingGroup) =>
  group.blanks.filter((blank) => blank.parts.some(({ outline }) => outline));

/** By clipping, which knows nothing of how they were laid: inside the blank, and the gap apart. */
function expectSound(group: CuttingGroup): void {
  for (const { id, parts } of sharedOf(group)) {
    const asked = group.job.parts.find((part) => part.id === id);
    const [one, two] = parts.map(({ outline }) => outline ?? []);
    if (!one || !two || !asked) throw new Error(`no pair ${id}`);
    for (const outline of [one, two]) {
      const box = boxOfOutline(outline);
      expect(Math.min(box.minX, box.minY)).toBeGreaterThan(-0.01);
      expect(box.maxX).toBeLessThan(asked.length + 0.01);
      expect(box.maxY).toBeLessThan((asked.width ?? 0) + 0.01);
    }
    const areaOf = (outlines: readonly Outline[]) =>
      outlines.reduce((sum, each) => sum + outlineArea(each), 0);
    const left = subtractOutlines([two], offsetOutline(one, gap - 0.02));
    expect(areaOf(subtractOutlines([two], [])) - areaOf(left)).toBeLessThan(0.5);
  }
}

const triangle: Outline = [
  { x: 0, y: 0 },
  { x: 600, y: 0 },
  { x: 0, y: 300 },
];

describe('shaped parts head to tail', () => {
  test('two right triangles take one rectangle and the gap along their long sides', () => {
    const group = groupOf([shaped('A1', triangle, { quantity: 2 })]);
    expect(group.job.parts).toHaveLength(1);
    const [pair] = group.job.parts;
    // worked by hand: apart by the gap they move along one leg by gap · hypotenuse / other leg, here 10 · 670.8 / 300
    const exact = (600 + (gap * Math.hypot(600, 300)) / 300) * 300;
    const area = (pair?.length ?? 0) * (pair?.width ?? 0);
    expect(area).toBeGreaterThan(exact * 0.999);
    expect(area).toBeLessThan(exact * 1.02);
    expectSound(group);
    expect(group.findings.map(({ code }) => code)).toContain('pair-head-to-tail');
  });

  test('of five two pairs are sawn and one on its own', () => {
    const group = groupOf([shaped('A1', triangle, { quantity: 5 })]);
    expect(group.job.parts.map(({ id, count }) => [id, count])).toEqual([
      ['A1/A1', 2],
      ['A1', 1],
    ]);
  });

  test('two different shapes pair as well', () => {
    const low: Outline = triangle.map(({ x, y }) => ({ x: x * 0.9, y: y * 0.8 }));
    const group = groupOf([shaped('A1', triangle), shaped('A2', low)]);
    expect(sharedOf(group)).toHaveLength(1);
    expect(
      sharedOf(group)
        .flatMap(({ parts }) => parts.map(({ part }) => part))
        .sort(),
    ).toEqual(['A1', 'A2']);
    expectSound(group);
  });

  test('rectangles, and shapes that save next to nothing, stay on their own', () => {
    const notched: Outline = [
      { x: 0, y: 0 },
      { x: 600, y: 0 },
      { x: 600, y: 280 },
      { x: 580, y: 300 },
      { x: 0, y: 300 },
    ];
    const group = groupOf([
      makePart('A1', [600, 300, 9], { quantity: 2 }),
      shaped('A2', notched, { quantity: 2 }),
    ]);
    expect(sharedOf(group)).toEqual([]);
    expect(group.job.parts.map(({ id, count }) => [id, count])).toEqual([
      ['A1', 2],
      ['A2', 2],
    ]);
  });

  test('a pair that fits no sheet is cut singly', () => {
    const small = makeProject([makeStock('s', { length: 640, width: 305 })]);
    const tools = { ...small.tools, sheetSaw: { ...small.tools.sheetSaw, trim: {} } };
    const group = groupOf([shaped('A1', triangle, { quantity: 2 })], {
      ...small,
      tools: { ...tools, router: { ...tools.router, cutter: 30 } },
    });
    expect(group.job.parts.map(({ id, count }) => [id, count])).toEqual([['A1', 2]]);
  });

  test('a part whose grain runs along its width lies so in the pair too', () => {
    const group = groupOf([shaped('A1', triangle, { quantity: 2, grain: 'along-width' })]);
    const [pair] = sharedOf(group);
    for (const { outline = [] } of pair?.parts ?? []) {
      const box = boxOfOutline(outline);
      expect(box.maxX - box.minX).toBeCloseTo(300, 6);
      expect(box.maxY - box.minY).toBeCloseTo(600, 6);
    }
    expectSound(group);
  });

  test('always: whatever their shapes, they lie in the blank and the gap apart, and the blank is smaller than two', () => {
    const corner = fc.tuple(fc.integer({ min: 20, max: 100 }), fc.integer({ min: -40, max: 40 }));
    const star = fc.array(corner, { minLength: 3, maxLength: 9 }).map((corners): Outline => {
      const points = corners.map(([radius, bulge], i) => {
        const angle = (2 * Math.PI * i) / corners.length;
        return { x: 4 * radius * Math.cos(angle), y: 3 * radius * Math.sin(angle), bulge: bulge / 100 };
      });
      const { minX, minY } = boxOfOutline(points);
      return points.map((point) => ({ ...point, x: point.x - minX, y: point.y - minY }));
    });
    let pairs = 0;
    fc.assert(
      fc.property(star, star, (one, two) => {
        fc.pre([one, two].every((each) => boxOfOutline(each).maxX > 120 && isSimple(each)));
        const group = groupOf([shaped('A1', one, { quantity: 2 }), shaped('A2', two, { quantity: 1 })]);
        expectSound(group);
        pairs += sharedOf(group).length;
        const alone = [one, one, two].reduce((sum, each) => {
          const { maxX, maxY } = boxOfOutline(each);
          return sum + maxX * maxY;
        }, 0);
        const asked = group.job.parts.reduce(
          (sum, part) => sum + part.length * (part.width ?? 0) * (part.count ?? 1),
          0,
        );
        expect(asked).toBeLessThan(alone + 3 * 2000);
      }),
      { numRuns: 25 },
    );
    expect(pairs).toBeGreaterThan(5);
  });
});

/** Whether the clipper leaves an outline as it is: it does not cross itself. */
function isSimple(outline: Outline): boolean {
  const [clean, ...more] = offsetOutline(outline, 0.001);
  return (
    more.length === 0 &&
    clean !== undefined &&
    Math.abs(outlineArea(clean) - outlineArea(outline)) < 5 + 0.001 * Math.abs(outlineArea(outline))
  );
}

describe('a pair on the saw', () => {
  const group = groupOf([shaped('A1', triangle, { quantity: 4, turn: true })]);
  const [planned] = planGroups([group], { solveLp, clock: () => 0, work: 200 });
  if (!planned) throw new Error('nothing planned');
  const { plan } = planned;

  test('comes out of the sheet with both outlines where they lie, turned blanks too', () => {
    const turned = {
      ...plan,
      layouts: plan.layouts.map((layout) => ({
        ...layout,
        placed: layout.placed.map((part) => ({
          ...part,
          length: part.width ?? 0,
          width: part.length,
          turned: true,
        })),
      })),
    };
    for (const each of [plan, turned])
      for (const layout of each.layouts) {
        const parts = expandLayout(group, layout);
        expect(parts.every(({ outline }) => outline)).toBe(true);
        for (const { outline = [], x, y, length, width } of parts) {
          const box = boxOfOutline(outline);
          expect([box.minX, box.minY]).toEqual([expect.closeTo(x, 6), expect.closeTo(y, 6)]);
          expect(box.maxX).toBeCloseTo(x + length, 6);
          expect(box.maxY).toBeCloseTo(y + width, 6);
          expect(outlineArea(outline)).toBeCloseTo(outlineArea(triangle), 3);
        }
      }
  });

  test('is drawn with its outlines, no saw line through them', () => {
    const understanding = {
      ...understandProject(project),
      pieces: [makePiece([shaped('A1', triangle, { quantity: 4 })])],
    };
    const view = viewLayout(understanding, planned, 0, { width: 190 });
    expect(view.shared?.length).toBeGreaterThan(0);
    expect(view.parts.every(({ outline }) => outline)).toBe(true);
    expect(view.cuts).toHaveLength(
      viewLayout(
        understanding,
        {
          group: {
            ...group,
            blanks: group.blanks.map((blank) => ({ ...blank, parts: blank.parts.slice(0, 1) })),
          },
          plan,
        },
        0,
        { width: 190 },
      ).cuts.length,
    );
    const areas = drawLayout(view).marks.filter((mark) => mark.kind === 'path' && mark.points.length === 3);
    expect(areas.length).toBeGreaterThanOrEqual(view.parts.length);
  });

  test('outlines that clash are refused before anything is handed on', () => {
    const clashing: CuttingGroup = {
      ...group,
      blanks: group.blanks.map((blank) => ({
        ...blank,
        parts: blank.parts.map((part) => ({ ...part, outline: blank.parts[0]?.outline })),
      })),
    };
    expect(() => planGroups([clashing], { solveLp, clock: () => 0, work: 10 })).toThrow(/nearer/);
  });
});
