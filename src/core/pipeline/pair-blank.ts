import type { Part } from '#core/joinery';

import { singleNeed, type Need } from './need.ts';

/**
 * The one blank that a pair comes out of side by side, so that both are of one board (joinery D3): two blanks and a kerf
 * wide, as long as the longer.
 */
export function pairBlank(first: Part, second: Part, kerf: number): Need {
  const [one, two] = [singleNeed(first), singleNeed(second)];
  const length = Math.max(one.length, two.length);
  const width = one.width + kerf + two.width;
  return {
    id: `${first.id}+${second.id}`,
    count: 1,
    length,
    width,
    thickness: Math.max(one.thickness, two.thickness),
    finished: { width, thickness: Math.max(one.finished.thickness, two.finished.thickness) },
    turn: false,
    set: `pair ${first.id}, ${second.id}`,
    isPair: true,
    parts: [
      { part: first.id, x: 0, y: 0, length: one.length, width: one.width },
      { part: second.id, x: 0, y: one.width + kerf, length: two.length, width: two.width },
    ],
    title: `the pair ${first.id}, ${second.id}`,
  };
}

/** The pairs among some parts: each with the one it is to lie beside. */
export function findPairs(parts: readonly Part[]): readonly (readonly [Part, Part])[] {
  return parts.flatMap((part) => {
    const beside = parts.find((other) => other.id === part.besideOf);
    const isPlain = (each: Part | undefined) => each?.quantity === 1 && !each.staves;
    return beside && isPlain(beside) && isPlain(part) ? [[beside, part] as const] : [];
  });
}
