import type { MatchedSet, Part } from '#core/joinery';

import { alongGrain, type Need } from './need.ts';

/**
 * The one blank that a matched set comes out of (joinery B6): in the direction of the strip the fronts as cut, what is
 * thrown away between them and the trim at both ends; square to it the largest blank.
 */
export function stripOfSet(set: MatchedSet, parts: readonly Part[]): Need {
  const isAlong = set.direction === 'along';
  const sizes = parts.map((part) => {
    const cut = alongGrain(part, part.cut);
    const rough = alongGrain(part, part.rough);
    return isAlong ? { ahead: cut.length, beside: rough.width } : { ahead: cut.width, beside: rough.length };
  });
  const beside = Math.max(...sizes.map((size) => size.beside));
  let at = set.trim;
  const places = parts.map((part, index) => {
    const size = sizes[index] ?? { ahead: 0, beside: 0 };
    const start = at;
    at += size.ahead + (index < parts.length - 1 ? (set.between[index] ?? 0) : set.trim);
    return isAlong
      ? { part: part.id, x: start, y: 0, length: size.ahead, width: size.beside }
      : { part: part.id, x: 0, y: start, length: size.beside, width: size.ahead };
  });
  return {
    id: parts.map((part) => part.id).join('+'),
    count: Math.min(...parts.map((part) => part.quantity)),
    length: isAlong ? at : beside,
    width: isAlong ? beside : at,
    thickness: Math.max(...parts.map((part) => part.rough.thickness)),
    finished: {
      width: isAlong ? beside : at,
      thickness: Math.max(...parts.map((part) => part.cut.thickness)),
    },
    turn: false,
    set: set.id,
    parts: places,
    title: `the strip of ${parts.map((part) => part.id).join(', ')}`,
  };
}
