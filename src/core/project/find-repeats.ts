import type { Problem } from '#core/problems';

/** A finding for each item whose id an earlier one of the list has; `noun` names the items in the sentence. */
export function findRepeats(
  list: readonly { readonly id: string }[],
  path: string,
  noun: string,
): readonly Problem[] {
  const firsts = new Map<string, number>();
  return list.flatMap((item, index): Problem[] => {
    const first = firsts.get(item.id);
    if (first === undefined) {
      firsts.set(item.id, index);
      return [];
    }
    return [
      {
        severity: 'stop',
        code: 'id-twice',
        about: `${path}[${index}].id`,
        message: `Two items have the id "${item.id}": ${noun} ${first + 1} and ${index + 1}.`,
        remedy: 'Give one of them another id.',
      },
    ];
  });
}
