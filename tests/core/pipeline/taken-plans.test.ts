import { describe, expect, test } from 'vitest';
import { checkPlan, type CuttingPlan } from '#core/cutting';
import {
  cutStockCommand,
  planGroups,
  takePlanCommand,
  understandProject,
  type CuttingGroup,
} from '#core/pipeline';
import { applyCommand, type Command, type Project } from '#core/project';
import { readProject, writeJson } from '#formats/json';
import { loadGlpk } from '#solver/glpk';
import { drawerProject } from '../../cli/sample-projects.ts';
import { expectCommand } from '../../support/expect-command.ts';

const solveLp = await loadGlpk();

function after(project: Project, command: Command): Project {
  const next = applyCommand(project, command);
  if (!next.ok) throw new Error(next.problems.map(({ message }) => message).join(' '));
  return next.value;
}

function planOf(group: CuttingGroup, seed: number): CuttingPlan {
  const [planned] = planGroups([group], { solveLp, clock: () => 0, work: 300, seed });
  if (!planned) throw new Error('nothing planned');
  return planned.plan;
}

/** Of a project the first group with a plan for it that is chosen. */
function withChosen(project: Project) {
  const [group] = understandProject(project).groups;
  if (!group) throw new Error('no group');
  const plan = planOf(group, 7);
  const command = takePlanCommand(group, plan);
  return { group, plan, command, project: after(project, command) };
}

const plain = drawerProject();
const chosen = withChosen(plain);
const groupOf = (project: Project) =>
  understandProject(project).groups.find(({ id }) => id === chosen.group.id);
const outdated = (project: Project) =>
  understandProject(project).findings.filter(({ code }) => code === 'taken-plan-outdated');

describe('a plan that was chosen', () => {
  test('is kept in the project, undone and done again', () => {
    expectCommand(plain, chosen.command, () => chosen.project);
    expectCommand(chosen.project, { kind: 'release-plan', group: chosen.group.id }, (project) => ({
      ...project,
      taken: [],
    }));
  });

  test('is there again when the project is written and read', () => {
    const read = readProject(writeJson(chosen.project));
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '));
    expect(groupOf(read.value)?.taken).toEqual(chosen.plan);
  });

  test('is the plan of its group: nothing else is sought', () => {
    const groups = understandProject(chosen.project).groups;
    const sought = planGroups(groups, { solveLp, clock: () => 0, work: 300, seed: 99 });
    const plan = sought.find(({ group }) => group.id === chosen.group.id)?.plan;
    expect(plan?.layouts).toEqual(chosen.plan.layouts);
    expect(outdated(chosen.project)).toEqual([]);
  });

  test('is left aside with a sentence when the saw cuts wider, and comes back with the old saw', () => {
    const { sheetSaw, boardSaw } = plain.tools;
    const wider = after(chosen.project, {
      kind: 'change-tools',
      tools: {
        sheetSaw: { ...sheetSaw, kerf: sheetSaw.kerf + 1 },
        boardSaw: { ...boardSaw, kerf: boardSaw.kerf + 1 },
      },
    });
    expect(groupOf(wider)?.taken).toBeUndefined();
    expect(outdated(wider)).toMatchObject([{ severity: 'note', about: chosen.group.id }]);
    const back = after(wider, { kind: 'change-tools', tools: { sheetSaw, boardSaw } });
    expect(groupOf(back)?.taken).toEqual(chosen.plan);
    expect(outdated(back)).toEqual([]);
  });

  test('that is no plan of its job is none, whatever its mark says', () => {
    const [layout, ...others] = chosen.plan.layouts;
    if (!layout) throw new Error('no layout');
    const shifted = { ...layout, placed: layout.placed.map((part) => ({ ...part, x: part.x + 5 })) };
    const forged = takePlanCommand(chosen.group, { ...chosen.plan, layouts: [shifted, ...others] });
    const project = after(plain, forged);
    expect(groupOf(project)?.taken).toBeUndefined();
    expect(outdated(project)).toHaveLength(1);
  });

  test('goes on with what is left when one of its sheets is cut, until all are', () => {
    let project = chosen.project;
    let cut = 0;
    for (;;) {
      const understanding = understandProject(project);
      const group = understanding.groups.find(({ id }) => id === chosen.group.id);
      if (!group) break;
      const plan = group.taken;
      if (!plan) throw new Error(`not gone on after ${cut} sheets`);
      expect(checkPlan(group.job, plan)).toEqual([]);
      const command = cutStockCommand(project, understanding, { group, plan, index: 0 });
      if (!command) throw new Error('no layout');
      project = after(project, command);
      expect(outdated(project)).toEqual([]);
      cut++;
    }
    expect(cut).toBe(chosen.plan.layouts.reduce((sum, { times }) => sum + times, 0));
    expect(project.taken).toEqual([]);
  });
});
