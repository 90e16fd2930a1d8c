import { fail, succeed, type Problem, type Result } from '#core/problems';

interface WithId {
  readonly id: string;
}

/** The list with `item` at place `at`, or at the end; fails when its id is taken. `noun` names the item in the sentence. */
export function addItem<T extends WithId>(
  list: readonly T[],
  item: T,
  noun: string,
  at = list.length,
): Result<readonly T[]> {
  if (list.some((each) => each.id === item.id))
    return fail({
      severity: 'stop',
      code: 'id-taken',
      about: item.id,
      message: `There is already a ${noun} with the id "${item.id}".`,
      remedy: 'Give the new one another id.',
    });
  return succeed(list.toSpliced(Math.max(0, Math.min(at, list.length)), 0, item));
}

/** The list with the item `id` put through `change`; the same list when nothing changed; fails when there is none. */
export function changeItem<T extends WithId>(
  list: readonly T[],
  id: string,
  noun: string,
  change: (item: T) => Result<T>,
): Result<readonly T[]> {
  const index = list.findIndex((each) => each.id === id);
  const item = list[index];
  if (!item) return fail(missingItem(id, noun));
  const changed = change(item);
  if (!changed.ok) return changed;
  if (isSame(changed.value, item)) return succeed(list);
  if (changed.value.id !== id && list.some((each) => each.id === changed.value.id))
    return addItem(list, changed.value, noun);
  return succeed(list.with(index, changed.value));
}

/** The list without the item `id`; fails when there is none. */
export function removeItem<T extends WithId>(
  list: readonly T[],
  id: string,
  noun: string,
): Result<readonly T[]> {
  const index = list.findIndex((each) => each.id === id);
  return index < 0 ? fail(missingItem(id, noun)) : succeed(list.toSpliced(index, 1));
}

/** True when two plain values say the same, whatever the order of their keys; a key without a value counts as absent. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = Object.entries(a).filter(([, value]) => value !== undefined);
  const right = new Map(Object.entries(b).filter(([, value]) => value !== undefined));
  return (
    left.length === right.size &&
    left.every(([key, value]) => right.has(key) && isSame(value, right.get(key)))
  );
}

function missingItem(id: string, noun: string): Problem {
  return {
    severity: 'stop',
    code: 'not-found',
    about: id,
    message: `There is no ${noun} with the id "${id}".`,
    remedy: 'It may have been removed meanwhile; choose another.',
  };
}
