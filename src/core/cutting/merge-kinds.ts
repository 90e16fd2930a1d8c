import type { Load } from './load.ts';
import type { Kind, Model } from './model.ts';
import { cloneSheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';

/** Parts of one size that lie alike are one to the solver: the first of them takes the count of all. */
export function mergeKinds(model: Model): Model {
  const totals = new Map<string, number>();
  for (const kind of model.kinds) totals.set(keyOf(kind), (totals.get(keyOf(kind)) ?? 0) + kind.count);
  const kinds = model.kinds.map((kind) => {
    const count = totals.get(keyOf(kind)) ?? 0;
    totals.set(keyOf(kind), 0);
    return { ...kind, count };
  });
  return { ...model, kinds };
}

function keyOf({ length, width, turn }: Kind): string {
  return `${length}x${width}${turn ? ' turn' : ''}`;
}

/** The sheets of a load of the merged job with every part named as the job names it; `counts` of each kind at most. */
export function nameParts(model: Model, load: Load, counts: readonly number[]): readonly Sheet[] {
  const rest = [...counts];
  const groups = new Map<string, number[]>();
  for (const kind of model.kinds) {
    const group = groups.get(keyOf(kind));
    if (group) group.push(kind.index);
    else groups.set(keyOf(kind), [kind.index]);
  }
  return load.sheets.map((sheet) => {
    const copy = cloneSheet(sheet, null);
    for (const node of copy.parts) {
      const group = groups.get(keyOf(model.kinds[node.kind] as Kind)) ?? [];
      while (group.length > 1 && (rest[group[0] as number] as number) === 0) group.shift();
      node.kind = group[0] as number;
      rest[node.kind] = (rest[node.kind] as number) - 1;
    }
    return copy;
  });
}
