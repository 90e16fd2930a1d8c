/** The six places, in the order of the work. */
export type PlaceName = 'site' | 'bench' | 'rack' | 'saw' | 'paper' | 'trips';

export interface Place {
  readonly name: PlaceName;
  readonly label: string;
  readonly path: string;
  /** What is done there, in a few words. */
  readonly purpose: string;
}

export const places: readonly Place[] = [
  { name: 'site', label: 'Site', path: '/', purpose: 'Measure the place' },
  { name: 'bench', label: 'Bench', path: '/bench/', purpose: 'Design the pieces' },
  { name: 'rack', label: 'Rack', path: '/rack/', purpose: 'Materials, stock and tools' },
  { name: 'saw', label: 'Saw', path: '/saw/', purpose: 'Cut the parts' },
  { name: 'paper', label: 'Paper', path: '/paper/', purpose: 'Print and save' },
  { name: 'trips', label: 'Trips', path: '/trips/', purpose: 'Plan the visits' },
];

/** Where a path leads; null for pages outside the six places. */
export function placeAt(path: string): PlaceName | null {
  return places.find((place) => place.path === path)?.name ?? null;
}
