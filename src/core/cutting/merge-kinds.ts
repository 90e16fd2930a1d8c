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

/** The kind that takes the count of a part in the merged job: the first one alike; -1 when there is no such part. */
export function findMergedKind(model: Model, id: string): number {
  const part = model.kinds.find((kind) => kind.id === id);
  return part ? model.kinds.findIndex((kind) => keyOf(kind) === keyOf(part)) : -1;
}

function keyOf({ length, width, turn }: Kind): string {
  return `${length}x${width}${turn ? ' turn' : ''}`;
}

/** Answers for each part of a merged kind, one after the other, the kind that the job counts it to. */
export function makeNamer(model: Model): (kind: number) => number {
  const rest = model.kinds.map((kind) => kind.count);
  const groups = new Map<string, number[]>();
  for (const kind of model.kinds) {
    const group = groups.get(keyOf(kind));
    if (group) group.push(kind.index);
    else groups.set(keyOf(kind), [kind.index]);
  }
  return (merged) => {
    const group = groups.get(keyOf(model.kinds[merged] as Kind)) ?? [];
    while (group.length > 1 && (rest[group[0] as number] as number) === 0) group.shift();
    const kind = group[0] as number;
    rest[kind] = (rest[kind] as number) - 1;
    return kind;
  };
}

/** The sheets of a load of the merged job with every part named as the job names it. */
export function nameParts(model: Model, load: Load): readonly Sheet[] {
  const nameOf = makeNamer(model);
  return load.sheets.map((sheet) => {
    const copy = cloneSheet(sheet, null);
    for (const node of copy.parts) node.kind = nameOf(node.kind);
    return copy;
  });
}
