import type { MeasuredShape } from '#core/project';

/** A kind of thing to measure, as chosen by its picture; `traced` is an outline taken from a drawing. */
export type ShapeChoice = MeasuredShape['kind'] | 'traced';

export interface ShapeWords {
  readonly name: string;
  readonly purpose: string;
  /** What a new one is called. */
  readonly first: string;
}

/** The kinds in the order they are offered. */
export const shapeChoices: readonly ShapeChoice[] = ['opening', 'outline', 'sections', 'walls', 'traced'];

/** What each kind is called and is for. */
export const shapeWords: Readonly<Record<ShapeChoice, ShapeWords>> = {
  opening: {
    name: 'Opening',
    purpose: 'Four corners: a doorway, a hatch, a locker mouth, an alcove.',
    first: 'Door opening',
  },
  outline: {
    name: 'Outline',
    purpose: 'Any number of corners, edges curved or straight: a berth front, a worktop, a V-berth.',
    first: 'Berth front',
  },
  sections: {
    name: 'Hull sections',
    purpose: 'How the hull, or a wall that leans, runs away behind a piece, at one or more stations.',
    first: 'Hull behind the galley',
  },
  walls: {
    name: 'Run of walls',
    purpose: 'Walls in plan with their corner angles: trim, fiddles, a top against a bulkhead.',
    first: 'Saloon walls',
  },
  traced: {
    name: 'From a drawing',
    purpose: 'A traced outline from a DXF or SVG file, checked by a bar of known length.',
    first: 'Traced outline',
  },
};

/** A new shape of a kind with nothing measured yet; corners of an outline are named A, B, C, … */
export function newShape(
  kind: MeasuredShape['kind'],
  about: Pick<MeasuredShape, 'id' | 'name' | 'seenFrom'>,
  corners: number,
): MeasuredShape {
  const base = { ...about, readings: [] };
  switch (kind) {
    case 'opening':
      return { ...base, kind };
    case 'outline':
      return { ...base, kind, corners: Array.from({ length: corners }, (_, at) => cornerName(at, [])) };
    case 'sections':
      return { ...base, kind, sections: [] };
    case 'walls':
      return { ...base, kind, walls: [] };
  }
}

/** The next free name of a corner: A to Z, then A1, B1, … */
export function cornerName(at: number, taken: readonly string[]): string {
  const round = Math.floor(at / 26);
  const name = `${String.fromCharCode(65 + (at % 26))}${round > 0 ? round : ''}`;
  return taken.includes(name) ? cornerName(at + 1, taken) : name;
}
