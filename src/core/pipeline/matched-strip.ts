import type { MatchedSet, Part } from '#core/joinery';

import { alongGrain, type Need } from './need.ts';

/**
 * The one blank that a matched set comes out of (joinery B6): in the direction of the strip the fronts as cut, what is
 * thrown away between them and the trim at both ends; square to it the largest blank. The strip lies face side up, as the
 * saw wants it: x to the right a part's y then runs down, so a set across the grain begins at the top of the strip.
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
    return { part: part.id, start, size };
  });
  const laid = places.map(({ part, start, size: { ahead, beside: width } }) =>
    isAlong
      ? { part, x: start, y: 0, length: ahead, width }
      : { part, x: 0, y: at - start - ahead, length: width, width: ahead },
  );
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
    parts: laid,
    title: `the strip of ${parts.map((part) => part.id).join(', ')}`,
  };
}
