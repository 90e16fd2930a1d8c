export { checkDxf } from './check.ts';
export { readEntities, readGroups } from './read.ts';
export type { Entity, Group } from './read.ts';
export { readDxfDrawing } from './read-drawing.ts';
