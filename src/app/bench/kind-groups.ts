import { pieceKinds, shapeNeeds, type PieceKind } from '#core/joinery';
import type { Project } from '#core/project';

/** Pieces offered under one heading. */
export interface KindGroup {
  readonly name: string;
  /** For a key that leads to it. */
  readonly short: string;
  readonly kinds: readonly PieceKind[];
}

const shortNames = {
  'Doors and frames': 'Doors',
  'Cabinets and drawers': 'Cabinets',
  'Tops, shelves and lids': 'Tops, shelves',
  'Linings, trim and filling': 'Linings, trim',
  'Steps and hatches': 'Steps, hatches',
  'Any shape of your own': 'Your own shape',
} as const;
type GroupName = keyof typeof shortNames;
const names = Object.keys(shortNames) as readonly GroupName[];

const groupOfKind: Readonly<Record<PieceKind, GroupName>> = {
  'door-frame': 'Doors and frames',
  'flat-door': 'Doors and frames',
  'framed-door': 'Doors and frames',
  'louvred-door': 'Doors and frames',
  'curved-head': 'Doors and frames',
  run: 'Cabinets and drawers',
  carcase: 'Cabinets and drawers',
  'cabinet-front': 'Cabinets and drawers',
  drawer: 'Cabinets and drawers',
  dividers: 'Cabinets and drawers',
  countertop: 'Tops, shelves and lids',
  shelf: 'Tops, shelves and lids',
  lids: 'Tops, shelves and lids',
  'slat-lining': 'Linings, trim and filling',
  'trim-run': 'Linings, trim and filling',
  infill: 'Linings, trim and filling',
  'access-panel': 'Linings, trim and filling',
  step: 'Steps and hatches',
  'hatch-surround': 'Steps and hatches',
  'free-panel': 'Any shape of your own',
  'free-frame': 'Any shape of your own',
};

/** All kinds of piece by what they are for. */
export const kindGroups: readonly KindGroup[] = names.map((name) => ({
  name,
  short: shortNames[name],
  kinds: pieceKinds.filter((kind) => groupOfKind[kind] === name),
}));

const shapeWords = {
  opening: 'an opening with four corners',
  outline: 'an outline',
  sections: 'hull sections',
  walls: 'walls in plan',
} as const;

/** What a kind of piece can be fitted to, as `an outline or hull sections`; empty when to nothing. */
export function shapesInWords(kind: PieceKind): string {
  return shapeNeeds(kind)
    .kinds.map((each) => shapeWords[each])
    .join(' or ');
}

/** Whether a kind of piece takes its sizes from a measured shape and the project has none that fits. */
export function lacksShape(kind: PieceKind, project: Project): boolean {
  const needs = shapeNeeds(kind);
  return needs.required && !project.shapes.some((shape) => needs.kinds.includes(shape.kind));
}
