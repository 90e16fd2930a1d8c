import type { Part } from '#core/joinery';

/** Parts that are made alike, in order; drawn once with all their addresses. */
export type PartGroup = readonly [Part, ...Part[]];

/** The parts with those that are the same but for address, name and place brought together under the first of them. */
export function groupSameParts(parts: readonly Part[]): readonly PartGroup[] {
  const groups = new Map<string, [Part, ...Part[]]>();
  for (const part of parts) {
    const key = keyOf(part);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return [...groups.values()];
}

/** All that is drawn or said of a part; sizes to a hundredth, finer than any saw. */
function keyOf(part: Part): string {
  const { hand, material, finished, outline, holes, grain, faceSide, edges, machining, notes } = part;
  return JSON.stringify(
    { hand, material, finished, outline, holes, grain, faceSide, edges, machining, notes },
    (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 100) / 100 + 0 : value),
  );
}
