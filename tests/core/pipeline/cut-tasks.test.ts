import { describe, expect, test } from 'vitest';

import { listTasks, understandProject } from '#core/pipeline';
import type { Project } from '#core/project';
import { checkVisits, planVisits } from '#core/visits';
import { makeFront } from './made-up.ts';

/** The tasks in the order in which the planned visits do them. */
function orderOf(project: Project) {
  const tasks = listTasks(project, understandProject(project));
  const plan = planVisits(tasks);
  expect(checkVisits(tasks, plan)).toEqual([]);
  return { tasks, order: plan.visits.flatMap((visit) => visit.tasks) };
}

// joinery B6, order: "fronts cut to the measured openings"
describe('sawing of what is fitted', () => {
  test('fronts are not sawn before the openings of the fixed frame are measured', () => {
    const { order } = orderOf(makeFront('ply', { price: 60 }));
    expect(order.indexOf('cut:ply')).toBeGreaterThan(order.indexOf('step:A/measure-openings'));
    expect(order.indexOf('cut:oak-27')).toBeLessThan(order.indexOf('step:A/mill'));
    expect(order.indexOf('step:A/cut-fronts')).toBeGreaterThan(order.indexOf('cut:ply'));
  });

  test('where frame and fronts come out of the same boards, the boards are sawn in two goes', () => {
    const { tasks, order } = orderOf(makeFront('oak', { price: 60 }));
    const makes = (id: string) => tasks.find((task) => task.id === id)?.makes;
    expect(makes('cut:oak-27')).toEqual(['A1', 'A2', 'A3', 'A4', 'A5', 'A8']); // A8: the spare to set joints on
    expect(makes('cut:oak-27/fitted')).toEqual(['A6', 'A7']);
    expect(order.indexOf('cut:oak-27')).toBeLessThan(order.indexOf('step:A/mill'));
    expect(order.indexOf('cut:oak-27/fitted')).toBeGreaterThan(order.indexOf('step:A/measure-openings'));
  });
});
