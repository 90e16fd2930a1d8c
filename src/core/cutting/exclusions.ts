import type { Bin, Kind, Model } from './model.ts';

/** Parts of a kind, none of which can share a piece of stock with any other of the choice. */
export interface Excluding {
  readonly kind: Kind;
  readonly count: number;
}

/**
 * Many parts of which no two go on one piece of stock, whatever the size: the largest first, as many as agree. Their
 * number is a bound on the pieces needed. Valid for every style.
 */
export function excludeParts(model: Model): readonly Excluding[] {
  const kinds = model.kinds.filter((kind) => kind.count > 0).sort((a, b) => sizeOf(b) - sizeOf(a));
  let best: readonly Excluding[] = [];
  let most = 0;
  for (let first = 0; first < Math.min(kinds.length, mostStarts); first++) {
    const chosen = growFrom(model, kinds, kinds[first] as Kind);
    const count = chosen.reduce((sum, each) => sum + each.count, 0);
    if (count > most) [best, most] = [chosen, count];
  }
  return best;
}

/** Beginnings tried: beyond the largest parts little excludes. */
const mostStarts = 30;

function growFrom(model: Model, kinds: readonly Kind[], first: Kind): readonly Excluding[] {
  const chosen: Excluding[] = [];
  for (const kind of [first, ...kinds.filter((each) => each !== first)]) {
    if (!chosen.every((each) => excludes(model, each.kind, kind))) continue;
    chosen.push({ kind, count: excludes(model, kind, kind) ? kind.count : 1 });
  }
  return chosen;
}

function sizeOf(kind: Kind): number {
  return Math.max(kind.length, kind.width) * 1e3 + Math.min(kind.length, kind.width);
}

function excludes(model: Model, a: Kind, b: Kind): boolean {
  return model.bins.every((bin) => bin.count === 0 || !bothFit(bin, a, b));
}

/** Two rectangles share a larger one exactly when they fit beside or above each other. */
function bothFit(bin: Bin, a: Kind, b: Kind): boolean {
  return waysOf(a).some(([la, wa]) =>
    waysOf(b).some(
      ([lb, wb]) =>
        (la + lb <= bin.length && Math.max(wa, wb) <= bin.width) ||
        (wa + wb <= bin.width && Math.max(la, lb) <= bin.length),
    ),
  );
}

function waysOf({ length, width, turn }: Kind): readonly (readonly [number, number])[] {
  const straight = [length, width] as const;
  return turn ? [straight, [width, length] as const] : [straight];
}
