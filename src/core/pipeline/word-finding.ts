import type { Problem } from '#core/problems';
import type { Project } from '#core/project';

import { nameStock } from './stock-names.ts';

/** A finding as one or more sentences, led by what it concerns unless they begin with that; by its name where the project is given. */
export function wordFinding(finding: Problem, project?: Project): string {
  const { about, message, remedy } = finding;
  const name = about !== undefined && project ? nameThing(project, about) : about;
  const lead = name === undefined || message.startsWith(name) ? '' : `${name}: `;
  return `${lead}${message}${remedy === undefined ? '' : ` ${remedy}`}`;
}

/** A stock line, a material, a shape or a reading of it by the names they have; addresses stay as they are. */
function nameThing(project: Project, about: string): string {
  if (project.stock.some(({ id }) => id === about)) return nameStock(project, about);
  const material = project.materials.find(({ id }) => id === about);
  if (material) return material.name;
  const [first = '', ...rest] = about.split('/');
  const shape = project.shapes.find(({ id }) => id === first);
  return shape ? [shape.name, ...rest].join(', ') : about;
}
