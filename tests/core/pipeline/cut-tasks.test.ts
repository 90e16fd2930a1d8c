import { describe, expect, test } from 'vitest';

import type { Piece } from '#core/joinery';
import { listTasks, understandProject } from '#core/pipeline';
import { newProject, type Project } from '#core/project';
import { checkVisits, planVisits } from '#core/visits';

const sheet = { material: 'ply', form: 'sheet', length: 2440, width: 1220, thickness: 18 } as const;
const board = { material: 'oak', form: 'board', length: 2500, width: 600, thickness: 27 } as const;

function frontProject(fronts: 'ply' | 'oak'): Project {
  const parameters = {
    ...{ width: 500, height: 700, columns: 1, rows: 2, fronts: 'inset', cells: [['door'], ['door']] },
    materials: { frame: 'oak', fronts },
  };
  return {
    ...newProject('Fronts'),
    pieces: [{ id: 'front', letter: 'A', name: 'Front', kind: 'cabinet-front', parameters } as Piece],
    materials: [
      { id: 'ply', kind: 'sheet', name: 'Ply', thickness: 18, density: 680 },
      { id: 'oak', kind: 'solid', name: 'Oak', species: 'Oak, European', state: 'sawn' },
    ],
    stock: [
      { id: 'sheet', ...sheet, count: null, price: 60 },
      { id: 'board', ...board, count: null, price: 30 },
    ],
  };
}

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
    const { order } = orderOf(frontProject('ply'));
    expect(order.indexOf('cut:ply')).toBeGreaterThan(order.indexOf('step:A/measure-openings'));
    expect(order.indexOf('cut:oak-27')).toBeLessThan(order.indexOf('step:A/mill'));
    expect(order.indexOf('step:A/cut-fronts')).toBeGreaterThan(order.indexOf('cut:ply'));
  });

  test('where frame and fronts come out of the same boards, the boards are sawn in two goes', () => {
    const { tasks, order } = orderOf(frontProject('oak'));
    const makes = (id: string) => tasks.find((task) => task.id === id)?.makes;
    expect(makes('cut:oak-27')).toEqual(['A1', 'A2', 'A3', 'A4', 'A5', 'A8']); // A8: the spare to set joints on
    expect(makes('cut:oak-27/fitted')).toEqual(['A6', 'A7']);
    expect(order.indexOf('cut:oak-27')).toBeLessThan(order.indexOf('step:A/mill'));
    expect(order.indexOf('cut:oak-27/fitted')).toBeGreaterThan(order.indexOf('step:A/measure-openings'));
  });
});
