import { newProject, type Project } from '#core/project';
import { findBlocked, listTasks, understandProject } from '#core/pipeline';
import { checkVisits, planVisits } from '#core/visits';
import { describe, expect, test } from 'vitest';

import { drawerProject, frameProject } from '../../cli/sample-projects.ts';
import { freezeDeep } from '../../support/freeze-deep.ts';

describe('understanding a project', () => {
  test('an empty project has nothing to it', () => {
    expect(understandProject(newProject('New'))).toEqual({
      shapes: [],
      pieces: [],
      groups: [],
      routing: [],
      fits: [],
      findings: [],
    });
  });

  test('the project is left as it is, and the same project is understood the same', () => {
    const project = freezeDeep(frameProject());
    expect(understandProject(project)).toEqual(understandProject(project));
  });

  test('pieces come in the order of their letters, Z before AA', () => {
    const project = drawerProject();
    const [first] = project.pieces;
    if (!first) throw new Error('no piece');
    const pieces = ['AA', 'C', 'Z'].map((letter) => ({ ...first, id: letter, letter }));
    const { pieces: built } = understandProject({ ...project, pieces });
    expect(built.map((piece) => piece.letter)).toEqual(['C', 'Z', 'AA']);
  });

  test('pieces that take their sizes from each other in a ring are stopped, and each says from whom', () => {
    const project = drawerProject();
    const drawer = project.pieces.find((piece) => piece.kind === 'drawer');
    if (!drawer) throw new Error('no drawer');
    const pointing = (letter: string, id: string, to: string) => ({
      ...{ ...drawer, id, letter, name: `Drawer ${letter}` },
      parameters: { ...drawer.parameters, cabinetFront: to },
    });
    const ring = [pointing('A', 'one', 'two'), pointing('B', 'two', 'three'), pointing('C', 'three', 'one')];
    const { pieces, findings } = understandProject({ ...project, pieces: ring });
    const told = findings.filter(({ code }) => code === 'pieces-in-a-ring');
    expect(pieces.map(({ letter }) => letter)).toEqual(['A', 'B', 'C']);
    expect(told.length).toBeGreaterThan(0);
    expect(told.every(({ severity }) => severity === 'stop')).toBe(true);
    expect(told[0]?.message).toBe(
      'A Drawer A takes sizes from B Drawer B, which in turn takes its own from it.',
    );
    const chain = understandProject({
      ...project,
      pieces: [pointing('A', 'one', 'gone'), ...ring.slice(1, 2)],
    });
    expect(chain.findings.map(({ code }) => code)).not.toContain('pieces-in-a-ring');
  });

  test('findings of readings are addressed by shape and reading, the stops come first', () => {
    const { findings } = understandProject(frameProject());
    expect(findings[0]).toMatchObject({ severity: 'stop', about: 'shed/hr', code: 'readings-contradict' });
    const ranks = findings.map((finding) => ['stop', 'warn', 'note'].indexOf(finding.severity));
    expect(ranks).toEqual([...ranks].sort());
  });

  test('every part of every piece is asked of some job, as often as it is made', () => {
    for (const project of [frameProject(), drawerProject()]) {
      const { pieces, groups } = understandProject(project);
      const asked = new Map<string, number>();
      for (const group of groups)
        for (const blank of group.blanks)
          for (const { part } of blank.parts) {
            const count = group.job.parts.find((each) => each.id === blank.id)?.count ?? 0;
            asked.set(part, (asked.get(part) ?? 0) + count);
          }
      for (const part of pieces.flatMap((piece) => piece.parts))
        expect([part.id, asked.get(part.id)]).toEqual([part.id, part.quantity]);
    }
  });

  test('a batten or board is never asked for less than the part as cut', () => {
    const { pieces, groups } = understandProject(frameProject());
    for (const part of pieces.flatMap((piece) => piece.parts)) {
      const group = groups.find((each) =>
        each.blanks.some((blank) => blank.parts.some((inside) => inside.part === part.id)),
      );
      const share = group?.blanks.flatMap((blank) => blank.parts).find((inside) => inside.part === part.id);
      expect(share?.length).toBeGreaterThanOrEqual(part.cut.length);
      expect(group?.form === 'batten' ? Infinity : share?.width).toBeGreaterThanOrEqual(part.cut.width);
      expect(group?.section.thickness).toBeGreaterThanOrEqual(part.cut.thickness);
    }
  });
});

describe('what must not be cut', () => {
  test('contradicting readings stop the piece fitted to that shape, and no other', () => {
    const frame = frameProject();
    const drawers = drawerProject();
    const project: Project = {
      ...frame,
      pieces: [...frame.pieces, ...drawers.pieces],
      materials: [...frame.materials, ...drawers.materials],
      stock: [...frame.stock, ...drawers.stock],
    };
    const blocked = findBlocked(project, understandProject(project), []);
    expect(blocked.get('B1')?.code).toBe('readings-contradict');
    expect([...blocked.keys()].every((id) => id.startsWith('B'))).toBe(true);
  });

  test('a part without stock is stopped alone', () => {
    const project = drawerProject();
    const bare = { ...project, stock: project.stock.filter((line) => line.material !== 'ply-6') };
    const understanding = understandProject(bare);
    const blocked = [...findBlocked(bare, understanding, []).keys()];
    const bottoms = understanding.pieces
      .flatMap((piece) => piece.parts)
      .filter((part) => part.material === 'ply-6');
    expect(blocked).toEqual(bottoms.map((part) => part.id));
  });
});

describe('tasks of a project', () => {
  test('the reading in doubt is taken again before anything is bought, buying comes before cutting', () => {
    const project = frameProject();
    const tasks = listTasks(project, understandProject(project));
    const plan = planVisits(tasks);
    expect(checkVisits(tasks, plan)).toEqual([]);
    expect(plan.proven).toBe(true);
    const order = plan.visits.flatMap((visit) => visit.tasks);
    expect(order[0]).toBe('measure:shed');
    expect(order.indexOf('measure:shed')).toBeLessThan(order.indexOf('buy:stock'));
    expect(order.indexOf('buy:stock')).toBeLessThan(order.findIndex((id) => id.startsWith('cut:')));
    expect(plan.visits.map((visit) => visit.place)).toEqual(['boat', 'shop', 'workshop', 'boat']);
  });

  test('what is ticked off in the project is done', () => {
    const project = { ...frameProject(), done: ['buy:stock', 'step:B/check-aboard'] };
    const tasks = listTasks(project, understandProject(project));
    expect(tasks.filter((task) => task.done).map((task) => task.id)).toEqual([
      'buy:stock',
      'step:B/check-aboard',
    ]);
  });

  test('two pieces share their visits', () => {
    const frame = frameProject();
    const drawers = drawerProject();
    const both: Project = {
      ...frame,
      pieces: [...frame.pieces, ...drawers.pieces],
      materials: [...frame.materials, ...drawers.materials],
      stock: [...frame.stock, ...drawers.stock],
    };
    const visits = (project: Project): number =>
      planVisits(listTasks(project, understandProject(project))).visits.length;
    expect(visits(both)).toBeLessThan(visits(frame) + visits(drawers));
  });
});
