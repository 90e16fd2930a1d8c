import type { Material } from '#core/joinery';
import { fail, succeed, unreachable, type Result } from '#core/problems';

import type { RackCommand } from './commands.ts';
import { addItem, changeItem, removeItem } from './lists.ts';
import type { MadePart, Project, StockLine } from './types.ts';

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
    case 'cut-stock':
      return cutStock(project, command);
    default:
      return unreachable(command);
  }
}

/** One piece fewer of the line, its parts added to those made, what is left of it put on the rack. */
function cutStock(project: Project, command: Extract<RackCommand, { kind: 'cut-stock' }>): Result<Project> {
  const line = project.stock.find(({ id }) => id === command.stock);
  if (line?.count === 0)
    return fail({
      severity: 'stop',
      code: 'stock-used-up',
      about: command.stock,
      message: `Nothing is left of stock line "${command.stock}".`,
      remedy: 'Enter how many there are on the rack, then mark it as cut.',
    });
  const less = changeItem(project.stock, command.stock, 'stock line', (each) =>
    succeed(each.count === null ? each : { ...each, count: each.count - 1 }),
  );
  if (!less.ok) return less;
  const made = command.made.reduce(addMade, project.made ?? []);
  return succeed({
    ...project,
    stock: [...less.value, ...command.leftovers],
    made,
    ...(command.taken && { taken: command.taken }),
  });
}

/** Copies cut in another sheet are counted together; the size is that of the latest. */
function addMade(made: readonly MadePart[], more: MadePart): readonly MadePart[] {
  const before = made.find(({ part }) => part === more.part);
  const others = made.filter(({ part }) => part !== more.part);
  return [...others, { ...more, count: more.count + (before?.count ?? 0) }];
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
