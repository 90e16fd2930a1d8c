import type { MatchedSet, Part } from '#core/joinery';
import { groupParts } from '#core/pipeline';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { makePart, makePiece, makeProject, makeStock } from './made-up.ts';

function solid(id: string, rough: readonly [number, number, number], more: Partial<Part> = {}): Part {
  return makePart(id, rough, { kind: 'solid', material: 'oak', ...more });
}
const board = (id: string, thickness: number, more = {}) =>
  makeStock(id, { material: 'oak', form: 'board', length: 2500, width: 180, thickness, price: 30, ...more });

describe('grouping of sheet parts', () => {
  test('the parts of one material make one job on the sheet saw, with its kerf and trim', () => {
    const project = makeProject([makeStock('full')]);
    const { groups } = groupParts(project, [makePiece([makePart('A1', [700, 300, 9], { quantity: 2 })])]);
    expect(groups).toHaveLength(1);
    expect(groups[0]).toMatchObject({ id: 'ply', form: 'sheet', saw: { id: 'track-saw' } });
    expect(groups[0]?.job).toMatchObject({
      kerf: 2.2,
      trim: { left: 10, bottom: 10 },
      stock: [{ id: 'full', length: 2440, width: 1220, cost: 60, count: null }],
      parts: [{ id: 'A1', length: 700, width: 300, count: 2, turn: false }],
    });
  });

  test('a part with its grain along its width lies with the width along the sheet', () => {
    const project = makeProject([makeStock('full')]);
    const part = makePart('A1', [700, 300, 9], { grain: 'along-width' });
    const { groups } = groupParts(project, [makePiece([part])]);
    expect(groups[0]?.job.parts[0]).toMatchObject({ length: 300, width: 700, turn: false });
    expect(groups[0]?.blanks[0]?.parts).toEqual([{ part: 'A1', x: 0, y: 0, length: 300, width: 700 }]);
  });

  test('a part without grain may be turned', () => {
    const project = makeProject([makeStock('full')]);
    const { groups } = groupParts(project, [makePiece([makePart('A1', [700, 300, 9], { grain: 'any' })])]);
    expect(groups[0]?.job.parts[0]?.turn).toBe(true);
  });

  test('what is owned costs nothing and is there once when no count is given', () => {
    const project = makeProject([
      makeStock('full'),
      makeStock('rest', { form: 'offcut', length: 900, width: 500, owned: true, price: 10 }),
    ]);
    const { groups } = groupParts(project, [makePiece([makePart('A1', [700, 300, 9])])]);
    expect(groups[0]?.job.stock).toMatchObject([
      { id: 'full', cost: 60, count: null },
      { id: 'rest', cost: 0, count: 1 },
    ]);
  });

  test('where nothing can be bought the rack counts at its price, so that little of it is used', () => {
    const project = makeProject([makeStock('mine', { owned: true, count: 4 })]);
    const { groups } = groupParts(project, [makePiece([makePart('A1', [700, 300, 9])])]);
    expect(groups[0]?.job.stock[0]).toMatchObject({ cost: 60, count: 4 });
  });

  test('a part larger than every sheet is named once, with its size, the rack and what to buy', () => {
    const project = makeProject([makeStock('full'), makeStock('small', { length: 1220, width: 610 })]);
    const { groups, findings } = groupParts(project, [
      makePiece([makePart('A1', [2435, 300, 9]), makePart('A2', [300, 300, 9])]),
    ]);
    const found = [...findings, ...groups.flatMap((group) => group.findings)];
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: 'stop', code: 'part-without-stock', about: 'A1' });
    expect(found[0]?.message).toContain('2435 × 300');
    expect(found[0]?.message).toContain('2440 × 1220');
    expect(found[0]?.remedy).toContain('2445 × 310');
    expect(groups[0]?.job.parts.map((part) => part.id)).toEqual(['A2']);
  });

  test('a material without any stock is a stop for each of its parts and makes no job', () => {
    const { groups, findings } = groupParts(makeProject([]), [makePiece([makePart('A1', [700, 300, 9])])]);
    expect(groups).toEqual([]);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toContain('the rack has no Birch plywood 9 at all');
  });

  test('where no part of a material fits the stock, that is all that is said: no empty job is complained of', () => {
    const { groups, findings } = groupParts(makeProject([makeStock('small', { length: 600, width: 400 })]), [
      makePiece([makePart('A1', [700, 300, 9])]),
    ]);
    expect(groups).toEqual([]);
    expect(findings.map(({ code }) => code)).toEqual(['part-without-stock']);
  });

  test('a sheet that is 0.6 thinner than the parts are planned for is said, one of 12 mm is left out', () => {
    const project = makeProject([
      makeStock('full', { thickness: 8.4 }),
      makeStock('thick', { thickness: 12 }),
    ]);
    const { groups } = groupParts(project, [makePiece([makePart('A1', [700, 300, 9])])]);
    expect(groups[0]?.job.stock.map((stock) => stock.id)).toEqual(['full']);
    expect(groups[0]?.findings.map((finding) => finding.about)).toEqual(['full', 'thick']);
  });
});

describe('matched sets', () => {
  const fronts = [111, 126, 141, 156].map((height, index) =>
    makePart(`A${index + 1}`, [396, height, 9], { matched: { set: 's', index } }),
  );
  const set = (more: Partial<MatchedSet>): MatchedSet => ({
    id: 's',
    parts: fronts.map((part) => part.id),
    direction: 'across',
    between: [14, 14, 14],
    trim: 5,
    ...more,
  });

  test('four fronts that run through are one strip of 586, three cut tight one of 553 (joinery calc B6)', () => {
    const project = makeProject([makeStock('full')]);
    const through = groupParts(project, [makePiece(fronts, [set({})])]).groups[0];
    expect(through?.job.parts).toMatchObject([{ length: 396, width: 586, count: 1, turn: false }]);
    const tight = groupParts(project, [makePiece(fronts, [set({ between: [3, 3, 3] })])]).groups[0];
    expect(tight?.job.parts[0]?.width).toBe(553);
  });

  test('the fronts lie in the strip from its top in order, face side up, with the distances between them', () => {
    const project = makeProject([makeStock('full')]);
    const blank = groupParts(project, [makePiece(fronts, [set({})])]).groups[0]?.blanks[0];
    expect(blank?.set).toBe('s');
    expect(blank?.parts.map((part) => [part.part, part.x, part.y])).toEqual([
      // 586 in all: 5 and 111 from the top, then 14 and the next
      ['A1', 0, 470],
      ['A2', 0, 330],
      ['A3', 0, 175],
      ['A4', 0, 5],
    ]);
  });

  test('a set that no sheet takes in one strip is cut one by one, and said', () => {
    const project = makeProject([makeStock('low', { width: 400 })]);
    const group = groupParts(project, [makePiece(fronts, [set({})])]).groups[0];
    expect(group?.job.parts.map((part) => part.id)).toEqual(['A1', 'A2', 'A3', 'A4']);
    expect(group?.findings[0]).toMatchObject({ severity: 'warn', code: 'set-not-in-one-strip' });
    expect(group?.findings[0]?.message).toContain('396 × 586');
  });

  test('always: parts of a strip neither overlap nor leave it, and its size adds up', () => {
    const sizes = fc.array(fc.integer({ min: 40, max: 300 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(
        sizes,
        fc.nat({ max: 20 }),
        fc.constantFrom('along', 'across'),
        (heights, gap, direction) => {
          const parts = heights.map((height, index) => makePart(`A${index + 1}`, [height, 200, 9]));
          const isAlong = direction === 'along';
          const own: MatchedSet = {
            id: 's',
            parts: parts.map((part) => part.id),
            direction: isAlong ? 'along' : 'across',
            between: heights.slice(1).map(() => gap),
            trim: 5,
          };
          const project = makeProject([makeStock('huge', { length: 9000, width: 9000 })]);
          const group = groupParts(project, [makePiece(parts, [own])]).groups[0];
          const [need] = group?.job.parts ?? [];
          const inOrder = group?.blanks[0]?.parts ?? [];
          // across the grain a set begins at the top of its strip
          const places = isAlong ? inOrder : inOrder.toReversed();
          const ahead = (place: (typeof places)[number]): readonly [number, number] =>
            isAlong ? [place.x, place.length] : [place.y, place.width];
          const sum = places.reduce((total, place) => total + ahead(place)[1], 0);
          expect(isAlong ? need?.length : need?.width).toBe(sum + gap * (heights.length - 1) + 10);
          places.slice(1).forEach((place, index) => {
            const before = places[index];
            if (!before) throw new Error('no part before');
            expect(ahead(place)[0]).toBe(ahead(before)[0] + ahead(before)[1] + gap);
          });
        },
      ),
    );
  });
});

describe('grouping of solid parts', () => {
  test('a part goes to the thinnest boards that take its rough thickness, and to battens of its section', () => {
    const project = makeProject([
      board('thick', 38),
      board('thin', 27),
      makeStock('batten', {
        material: 'oak',
        form: 'batten',
        width: 50,
        thickness: 32,
        length: 2000,
        price: 8,
      }),
    ]);
    const { groups } = groupParts(project, [
      makePiece([solid('A1', [1800, 90, 24]), solid('A2', [900, 46, 29]), solid('A3', [600, 100, 30])]),
    ]);
    expect(groups.map((group) => [group.id, group.form, group.job.parts.map((part) => part.id)])).toEqual([
      ['oak-50x32', 'batten', ['A2']],
      ['oak-27', 'board', ['A1']],
      ['oak-38', 'board', ['A3']],
    ]);
    expect(groups[0]?.job.cuts?.style).toBe('length');
    expect(groups[0]?.job.parts[0]).toEqual({ id: 'A2', length: 900, count: 1 });
    expect(groups[1]?.job.parts[0]?.turn).toBe(false);
  });

  test('a batten much larger than the part is left to others when boards will do', () => {
    const project = makeProject([
      board('thin', 27),
      makeStock('post', { material: 'oak', form: 'batten', width: 90, thickness: 90, length: 2000 }),
    ]);
    const { groups } = groupParts(project, [makePiece([solid('A1', [900, 40, 20])])]);
    expect(groups.map((group) => group.id)).toEqual(['oak-27']);
  });

  test('a planed batten is used at its own faces', () => {
    const project = makeProject([
      makeStock('b', { material: 'deal', form: 'batten', width: 45, thickness: 20, length: 2400, price: 5 }),
    ]);
    const part = makePart('A1', [920, 49, 20], {
      kind: 'solid',
      material: 'deal',
      cut: { length: 900, width: 45, thickness: 20 },
    });
    expect(groupParts(project, [makePiece([part])]).groups.map((group) => group.id)).toEqual(['deal-45x20']);
  });

  test('parts beyond what lies in the rack go to the boards that can be bought', () => {
    const project = makeProject([
      board('mine', 27, { owned: true, count: 1, length: 1100, width: 120 }),
      board('shop', 32),
    ]);
    const { groups } = groupParts(project, [
      makePiece([solid('A1', [1000, 90, 24]), solid('A2', [900, 90, 24]), solid('A3', [800, 90, 24])]),
    ]);
    expect(groups.map((group) => [group.id, group.job.parts.length])).toEqual([
      ['oak-27', 1],
      ['oak-32', 2],
    ]);
  });

  test('a part thicker than every board says so and names the thickness to buy', () => {
    const { findings } = groupParts(makeProject([board('thin', 27)]), [
      makePiece([solid('A1', [900, 90, 44])]),
    ]);
    expect(findings[0]).toMatchObject({ severity: 'stop', code: 'part-without-stock', about: 'A1' });
    expect(findings[0]?.message).toContain('900 × 90 × 44');
    expect(findings[0]?.message).toContain('board 2500 × 180 × 27');
    expect(findings[0]?.remedy).toContain('50 mm thick');
  });

  test('short parts are ganged into mother blanks that can be planed (joinery D4, D5)', () => {
    const cut = { length: 60, width: 40, thickness: 20 };
    const part = solid('A1', [300, 46, 23], { cut, finished: cut, quantity: 7 });
    const group = groupParts(makeProject([board('thin', 27)]), [makePiece([part])]).groups[0];
    expect(group?.job.parts.map((each) => [each.id, each.count, each.length, each.width])).toEqual([
      ['A1x4', 1, 300, 46],
      ['A1x3', 1, 300, 46],
    ]);
    expect(group?.blanks.flatMap((blank) => blank.parts)).toHaveLength(7);
    expect(group?.blanks[0]?.parts.map((each) => each.x)).toEqual([0, 63, 126, 189]);
  });

  test('short parts of one section and several addresses share mother blanks, the longest first', () => {
    const short = (id: string, length: number, quantity: number) => {
      const cut = { length, width: 40, thickness: 20 };
      return solid(id, [300, 46, 23], { cut, finished: cut, quantity });
    };
    const parts = [short('A1', 60, 2), short('A2', 100, 1), short('A3', 80, 2)];
    const { groups, findings } = groupParts(makeProject([board('thin', 27)]), [makePiece(parts)]);
    // 100 + 80 + 80, two kerfs of 3 and 25 at the ends are 291; 60 + 60, a kerf and 25 are 148, at least 300
    expect(groups[0]?.job.parts.map(({ id, count, length }) => [id, count, length])).toEqual([
      ['A2+A3x2', 1, 300],
      ['A1x2', 1, 300],
    ]);
    expect(groups[0]?.blanks[0]?.parts.map(({ part, x }) => [part, x])).toEqual([
      ['A2', 0],
      ['A3', 103],
      ['A3', 186],
    ]);
    const note = findings.find(({ code }) => code === 'cut-from-mother-blank');
    expect(note?.message).toContain('the 5 lie behind each other');
  });

  test('narrow strips lie five side by side: 52 of wood and kerfs for strips of 8 (joinery calc D)', () => {
    const cut = { length: 500, width: 8, thickness: 12 };
    const part = solid('A1', [525, 14, 15], { cut, finished: cut, quantity: 5 });
    const group = groupParts(makeProject([board('thin', 19)]), [makePiece([part])]).groups[0];
    expect(group?.job.parts[0]).toMatchObject({ id: 'A1x5', count: 1, width: 52 + 6 });
  });

  test('always: every copy of every part is asked for once', () => {
    const parts = fc.array(
      fc.record({
        length: fc.oneof(fc.integer({ min: 20, max: 2300 }), fc.integer({ min: 20, max: 140 })),
        width: fc.oneof(fc.integer({ min: 6, max: 150 }), fc.constantFrom(8, 40)),
        quantity: fc.integer({ min: 1, max: 9 }),
      }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(parts, (items) => {
        const made = items.map((item, index) =>
          solid(`A${index + 1}`, [Math.max(300, item.length + 25), item.width + 6, 24], {
            cut: { length: item.length, width: item.width, thickness: 20 },
            quantity: item.quantity,
          }),
        );
        const { groups, findings } = groupParts(makeProject([board('thin', 27)]), [makePiece(made)]);
        const asked = (id: string): number =>
          groups
            .flatMap((group) =>
              group.blanks.map(
                (blank) =>
                  (group.job.parts.find((part) => part.id === blank.id)?.count ?? 0) *
                  blank.parts.filter((part) => part.part === id).length,
              ),
            )
            .reduce((sum, each) => sum + each, 0);
        for (const part of made) {
          const isMissing = findings.some(
            (each) => each.code === 'part-without-stock' && each.about === part.id,
          );
          expect(asked(part.id)).toBe(isMissing ? 0 : part.quantity);
        }
      }),
    );
  });
});
