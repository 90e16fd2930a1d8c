import type { Material } from '#core/joinery';
import { fail, succeed, unreachable, type Result } from '#core/problems';

import type { RackCommand } from './commands.ts';
import { addItem, changeItem, removeItem } from './lists.ts';
import type { Project, StockLine } from './types.ts';

/** The project after a change of its materials or stock; a material in use is not removed. */
export function applyRackCommand(project: Project, command: RackCommand): Result<Project> {
  const { materials, stock } = project;
  switch (command.kind) {
    case 'add-material':
      return withMaterials(project, addItem(materials, command.material, 'material', command.at));
    case 'change-material':
      return withMaterials(
        project,
        changeItem(materials, command.id, 'material', () => succeed(command.material)),
      );
    case 'remove-material':
      return removeMaterial(project, command.id);
    case 'add-stock':
      return withStock(project, addItem(stock, command.stock, 'stock line', command.at));
    case 'change-stock':
      return withStock(
        project,
        changeItem(stock, command.id, 'stock line', () => succeed(command.stock)),
      );
    case 'remove-stock':
      return withStock(project, removeItem(stock, command.id, 'stock line'));
    default:
      return unreachable(command);
  }
}

function removeMaterial(project: Project, id: string): Result<Project> {
  const pieces = project.pieces.filter((piece) => Object.values(piece.parameters.materials).includes(id));
  const lines = project.stock.filter((line) => line.material === id);
  const users = [
    ...pieces.map((piece) => `piece ${piece.letter} ${piece.name}`),
    ...lines.map((line) => `stock line "${line.id}"`),
  ];
  if (users.length > 0)
    return fail({
      severity: 'stop',
      code: 'material-in-use',
      about: id,
      message: `Material "${id}" is used by ${users.join(', ')}.`,
      remedy: 'Give these another material or remove them first.',
    });
  return withMaterials(project, removeItem(project.materials, id, 'material'));
}

function withMaterials(project: Project, materials: Result<readonly Material[]>): Result<Project> {
  return materials.ok ? succeed({ ...project, materials: materials.value }) : materials;
}

function withStock(project: Project, stock: Result<readonly StockLine[]>): Result<Project> {
  return stock.ok ? succeed({ ...project, stock: stock.value }) : stock;
}
