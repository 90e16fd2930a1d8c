import { describe, expect, test } from 'vitest';
import { solveCutting } from '#core/cutting';
import { drawNest, drawRouterSheet } from '#core/drawing';
import { boxOfOutline, flattenOutline, isInside } from '#core/geometry';
import { solveNesting } from '#core/nesting';
import {
  listParts,
  listShopping,
  listTasks,
  makePlanFile,
  partsOnSheet,
  planEverything,
  summarise,
  understandProject,
  viewNest,
} from '#core/pipeline';
import { applyCommand, type Project } from '#core/project';
import { checkDxf } from '#formats/dxf';
import { readPlanFile, writeJson } from '#formats/json';
import { loadGlpk } from '#solver/glpk';
import { drawerProject } from '../../cli/sample-projects.ts';
import { expectCommand } from '../../support/expect-command.ts';

const plain = drawerProject();
const sheetParts = understandProject(plain)
  .pieces.flatMap((piece) => piece.parts)
  .filter((part) => part.kind === 'sheet');
const chosen = sheetParts.slice(0, 3).map((part) => part.id);

function withRouted(project: Project): Project {
  return chosen.reduce((now, part) => {
    const next = applyCommand(now, { kind: 'set-routed', part, routed: true });
    if (!next.ok) throw new Error(next.problems.map(({ message }) => message).join(' '));
    return next.value;
  }, project);
}

describe('parts cut by their outlines on the router', async () => {
  const project = withRouted(plain);
  const understanding = understandProject(project);
  const solveLp = await loadGlpk();
  const tools = { solveLp, clock: () => 0, work: 3000, seed: 1 };
  const { planned, routed } = await planEverything(understanding, {
    clock: tools.clock,
    cut: (job) => Promise.resolve(solveCutting(job, tools)),
    nest: (job) => Promise.resolve(solveNesting(job, tools)),
  });
  const [first] = routed;
  if (!first) throw new Error('nothing laid');

  test('the choice is kept in the project and undone', () => {
    const part = chosen[0] ?? '';
    expectCommand(plain, { kind: 'set-routed', part, routed: true }, (before) => ({
      ...before,
      routed: [part],
    }));
  });

  test('leave the saw and are all laid, as often as they are made', () => {
    const sawn = understanding.groups.flatMap((group) => group.blanks.flatMap((blank) => blank.parts));
    expect(sawn.filter(({ part }) => chosen.includes(part))).toEqual([]);
    const laid = routed.flatMap(({ plan }) => plan.placements.map(({ id }) => id));
    for (const id of chosen) {
      const part = sheetParts.find((each) => each.id === id);
      expect(laid.filter((each) => each === id)).toHaveLength(part?.quantity ?? 0);
    }
    expect(routed.flatMap(({ plan }) => plan.unplaced)).toEqual([]);
  });

  test('lie inside their sheet and clear of each other, with grain along it', () => {
    for (const [sheet] of first.plan.sheets.entries()) {
      const view = viewNest(understanding, first, sheet, { width: 200 });
      const boxes = view.parts.map(({ outline }) => boxOfOutline(outline));
      for (const box of boxes) {
        expect(box.minX).toBeGreaterThanOrEqual(view.margin - 0.01);
        expect(box.maxX).toBeLessThanOrEqual(view.stock.length - view.margin + 0.01);
        expect(box.maxY).toBeLessThanOrEqual(view.stock.width - view.margin + 0.01);
      }
      for (const one of view.parts)
        for (const other of view.parts)
          if (one !== other)
            for (const corner of flattenOutline(one.outline))
              expect(isInside(corner, other.outline)).toBe(false);
      expect(drawNest(view).marks.length).toBeGreaterThan(view.parts.length);
    }
    const turned = first.plan.placements.filter(({ id, angle }) => {
      const part = sheetParts.find((each) => each.id === id);
      return part?.grain === 'along-length' && !part.turn && angle % 180 !== 0;
    });
    expect(turned).toEqual([]);
  });

  test('come out in one file a sheet, with closed contours on the usual layers', () => {
    const view = viewNest(understanding, first, 0, { width: 200 });
    const placed = partsOnSheet(understanding, first, 0);
    const file = drawRouterSheet({ title: view.title, stock: view.stock, placed }, project.tools.router);
    expect(checkDxf(file.dxf).filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(file.layers.some((layer) => layer.startsWith('OUTLINE'))).toBe(true);
    for (const { part } of placed) expect(file.dxf).toContain(part.id);
  });

  test('are bought, listed, summed up and arranged like all others', () => {
    const lines = listShopping(project, understanding, planned, routed);
    const used = [...planned, ...routed].flatMap(({ plan }) =>
      plan.stockUsed.filter(({ count }) => count > 0),
    );
    const stock = lines.filter(({ kind }) => kind !== 'fixing');
    expect(stock.reduce((sum, { count }) => sum + count, 0)).toBe(
      used.reduce((sum, { count }) => sum + count, 0),
    );
    const { header, rows } = listParts(project, understanding, planned, routed);
    const from = header.indexOf('cut from');
    for (const row of rows.filter(([id]) => chosen.includes(String(id))))
      expect(row[from]).toContain('(router)');
    const findings = understanding.findings;
    expect(summarise(project, understanding, planned, { findings, withheld: [], routed })).toContain(
      'by their outlines',
    );
    expect(
      readPlanFile(writeJson(makePlanFile(project, understanding, planned, { findings, routed }))).ok,
    ).toBe(true);
    const tasks = listTasks(project, understanding, planned);
    const cut = tasks.find(({ id }) => id === `cut:${first.group.id}`);
    expect(cut?.makes).toEqual(expect.arrayContaining(first.group.job.parts.map(({ id }) => id)));
    expect(tasks.some(({ after }) => after.includes(`cut:${first.group.id}`))).toBe(true);
  });

  test('a material without a sheet stops them with a sentence', () => {
    const bare = {
      ...project,
      stock: project.stock.filter((line) => line.material !== first.group.material),
    };
    const found = understandProject(bare).findings.filter(({ about }) => about === first.group.id);
    expect(found.map(({ severity, code }) => [severity, code])).toEqual([['stop', 'part-without-stock']]);
  });
});
