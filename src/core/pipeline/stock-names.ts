import type { Project, StockLine } from '#core/project';

import { showSizeIn } from './words.ts';

/** A line of the rack as one speaks of it, `Birch plywood 12, sheet 2440 × 1220`; its id where the project has no such line. */
export function nameStock(project: Project, id: string): string {
  const line = project.stock.find((each) => each.id === id);
  if (!line) return id;
  const name = plainName(project, line);
  const isTwin = project.stock.some((other) => other !== line && plainName(project, other) === name);
  return isTwin && line.owned === true ? `${name}, from the rack` : name;
}

function plainName(project: Project, line: StockLine): string {
  const material = project.materials.find((each) => each.id === line.material);
  // the thickness of a sheet is said by the name of its material
  const sizes = [line.length, line.width, ...(material?.kind === 'solid' ? [line.thickness] : [])];
  return `${material?.name ?? line.material}, ${line.form} ${showSizeIn(project.units, ...sizes)}`;
}
