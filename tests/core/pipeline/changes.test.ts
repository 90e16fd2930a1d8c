import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  asMade,
  checkCarrying,
  comparePieces,
  cutStockCommand,
  figuresOf,
  planGroups,
  understandProject,
} from '#core/pipeline';
import { loadGlpk } from '#solver/glpk';
import { applyCommand, type Command, type Project } from '#core/project';
import { drawerProject, frameProject } from '../../cli/sample-projects.ts';
import { expectCommand } from '../../support/expect-command.ts';
import { generateProject } from '../../support/generate-project.ts';

function after(project: Project, command: Command): Project {
  const next = applyCommand(project, command);
  if (!next.ok) throw new Error(next.problems.map(({ message }) => message).join('\n'));
  return next.value;
}

const drawers = drawerProject();
const [drawer] = drawers.pieces;
if (!drawer) throw new Error('no piece');
const wider: Command = { kind: 'set-parameter', id: drawer.id, key: 'openingWidth', value: 402 };

describe('what a change comes to', () => {
  test('always: working on from what was understood gives the same as starting afresh', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.nat(), (seed, pick) => {
        const project = generateProject(seed);
        const before = { project, understanding: understandProject(project) };
        const piece = project.pieces[pick % project.pieces.length];
        const [shape] = project.shapes;
        const reading = shape?.readings[pick % (shape.readings.length || 1)];
        const commands: Command[] = [
          { kind: 'change-settings', settings: { film: 0.2 } },
          ...(piece
            ? [{ kind: 'change-piece', id: piece.id, piece: { ...piece, name: 'Other' } } as const]
            : []),
          ...(shape && reading
            ? [
                {
                  kind: 'change-reading',
                  shape: shape.id,
                  id: reading.id,
                  reading: { ...reading, value: reading.value + 1 },
                } as const,
              ]
            : []),
        ];
        const command = commands[pick % commands.length] as Command;
        const next = after(project, command);
        expect(understandProject(next, before)).toEqual(understandProject(next));
      }),
      { numRuns: 40 },
    );
  });

  test('a piece that nothing touched is taken over as it is', () => {
    const before = { project: drawers, understanding: understandProject(drawers) };
    const renamed = after(drawers, { kind: 'set-name', name: 'Other' });
    expect(understandProject(renamed, before).pieces[0]).toBe(before.understanding.pieces[0]);
  });

  test('a wider opening changes the parts that run across, by as much', () => {
    const [old] = understandProject(drawers).pieces;
    const [now] = understandProject(after(drawers, wider)).pieces;
    const changes = comparePieces(old, now);
    const before = (drawer.parameters as { openingWidth: number }).openingWidth;
    const grown = changes.filter(({ kind }) => kind === 'size');
    expect(grown.length).toBeGreaterThan(1);
    for (const change of grown) {
      const by = [
        (change.after?.length ?? 0) - (change.before?.length ?? 0),
        (change.after?.width ?? 0) - (change.before?.width ?? 0),
      ];
      expect(
        by.some((each) => Math.abs(each - (402 - before)) < 0.5),
        change.part,
      ).toBe(true);
    }
    expect(comparePieces(old, old)).toEqual([]);
  });

  test('a piece that is new or gone changes all its parts', () => {
    const [built] = understandProject(drawers).pieces;
    expect(comparePieces(undefined, built).every(({ kind }) => kind === 'added')).toBe(true);
    expect(comparePieces(built, undefined).every(({ kind }) => kind === 'removed')).toBe(true);
    expect(comparePieces(built, undefined)).toHaveLength(built?.parts.length ?? 0);
  });

  test('the figures of a version add up its parts', () => {
    const [built] = understandProject(drawers).pieces;
    if (!built) throw new Error('no piece');
    const figures = figuresOf(built, drawers.materials);
    expect(figures.parts).toBe(built.parts.length);
    expect(figures.copies).toBe(built.parts.reduce((sum, part) => sum + part.quantity, 0));
    expect(figures.sheetArea).toBeGreaterThan(0);
    expect(figures.minutes).toBeGreaterThan(0);
  });
});

describe('a part that is cut', () => {
  const { pieces, groups } = understandProject(drawers);
  const part = pieces[0]?.parts[0];
  if (!part) throw new Error('no part');
  const made = asMade(part, part.quantity);
  const mark: Command = { kind: 'set-made', part: part.id, made };
  const marked = after(drawers, mark);
  const asked = (project: Project) =>
    understandProject(project).groups.flatMap((group) =>
      group.blanks.flatMap((blank) => blank.parts.map((inside) => inside.part)),
    );

  test('is kept in the project, and undone', () => {
    expectCommand(drawers, mark, (project) => ({ ...project, made: [made] }));
    expectCommand(marked, { kind: 'set-made', part: part.id, made: null }, (project) => ({
      ...project,
      made: [],
    }));
  });
  test('is cut no more, the others are', () => {
    expect(groups.flatMap((group) => group.blanks).length).toBeGreaterThan(0);
    expect(asked(drawers)).toContain(part.id);
    expect(asked(marked)).not.toContain(part.id);
    expect(asked(marked).length).toBeGreaterThan(0);
  });
  test('agrees with the plan as long as nothing changes', () => {
    expect(understandProject(marked).findings.filter(({ code }) => code.startsWith('made'))).toEqual([]);
  });
  test('says when it has become too small or too large, by how much', () => {
    const codeAt = (by: number) => {
      const size = { ...made.finished, length: made.finished.length + by };
      const project = after(drawers, { kind: 'set-made', part: part.id, made: { ...made, finished: size } });
      return understandProject(project).findings.find(({ code }) => code.startsWith('made'));
    };
    expect(codeAt(-2)).toMatchObject({ severity: 'stop', code: 'made-too-small', about: part.id });
    expect(codeAt(-2)?.message).toContain('length 2 too small');
    expect(codeAt(1.5)).toMatchObject({ severity: 'warn', code: 'made-too-large' });
    expect(codeAt(0.2)).toBeUndefined();
  });
  test('says when its joints have changed since, and when it is wanted no more', () => {
    const other = after(drawers, {
      kind: 'set-made',
      part: part.id,
      made: { ...made, form: 'before' },
    });
    expect(understandProject(other).findings.map(({ code }) => code)).toContain('made-differently');
    const gone = after(marked, { kind: 'remove-piece', id: drawer.id });
    expect(understandProject(gone).findings.map(({ code }) => code)).toContain('made-not-wanted');
  });
});

describe('carrying', () => {
  const [frame] = understandProject(frameProject()).pieces;
  test('a gate says how the first unit that does not pass it fares, not only the largest', () => {
    if (!frame) throw new Error('no piece');
    const box = (x: number, y: number, z: number) => ({ min: { x: 0, y: 0, z: 0 }, max: { x, y, z } });
    const gate = { kind: 'opening', id: 'g', name: 'the slot', width: 900, height: 100 } as const;
    const loads = [
      { name: 'board', box: box(850, 800, 20) },
      { name: 'block', box: box(300, 300, 300) },
    ];
    const { gates, findings } = checkCarrying({ ...frame, loads }, [gate]);
    expect(gates.map(({ passes }) => passes)).toEqual([false]);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toContain('block');
  });
  test('a frame that does not pass the route as a unit says which gate, and none says nothing', () => {
    if (!frame) throw new Error('no piece');
    const gate = { kind: 'opening', id: 'h', name: 'the hatch', width: 300, height: 300 } as const;
    const { order, findings } = checkCarrying(frame, [gate]);
    expect(order.found).toBe(true);
    expect(findings.map(({ code, about }) => [code, about])).toEqual([['route-too-narrow', frame.letter]]);
    expect(checkCarrying(frame, []).findings).toEqual([]);
    expectCommand(frameProject(), { kind: 'set-route', route: [gate] }, (project) => ({
      ...project,
      route: [gate],
    }));
  });
});

describe('a sheet that is sawn', () => {
  test('its parts are made, the line has one fewer, its leftovers lie in the rack, and the rest is planned without them', async () => {
    const understanding = understandProject(drawers);
    const planned = planGroups(understanding.groups, {
      solveLp: await loadGlpk(),
      clock: () => 0,
      work: 2000,
      seed: 1,
    });
    const [first] = planned;
    if (!first) throw new Error('nothing planned');
    const command = cutStockCommand(drawers, understanding, { ...first, index: 0 });
    if (!command) throw new Error('no layout');
    const [layout] = first.plan.layouts;
    const placed = layout?.placed.length ?? 0;
    expect(command.made.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThanOrEqual(placed);
    expect(command.leftovers).toHaveLength(layout?.leftovers.length ?? -1);
    const next = after(drawers, command);
    expect(next.stock).toHaveLength(drawers.stock.length + command.leftovers.length);
    const then = understandProject(next);
    const copies = (groups: typeof then.groups) =>
      groups.flatMap(({ job }) => job.parts).reduce((sum, part) => sum + (part.count ?? 1), 0);
    expect(copies(then.groups)).toBe(copies(understanding.groups) - placed);
    expect(then.findings.filter(({ code }) => code.startsWith('made'))).toEqual([]);
    expect(
      command.leftovers.every(
        ({ owned, count, material }) => owned && count === 1 && material === first.group.material,
      ),
    ).toBe(true);
    expectCommand(drawers, command, () => next);
  });
});
