import type { ParameterInfo } from './piece-types.ts';
import type { WorkingStep } from './types.ts';
import type { WorkingBook } from './working.ts';

/** The parameters of a piece over the defaults of their table, and the keys the user gave. */
export function fillDefaults(
  parameters: object,
  infos: readonly ParameterInfo[],
): { readonly values: Readonly<Record<string, unknown>>; readonly given: ReadonlySet<string> } {
  const defaults = infos.filter((info) => info.default !== undefined).map((info) => [info.key, info.default]);
  const given = Object.entries(parameters).filter(([, value]) => value !== undefined);
  return {
    values: Object.fromEntries([...defaults, ...given]),
    given: new Set(given.map(([key]) => key)),
  };
}

/** Puts parameters in under the names formulas use, each with its label of the table and whether the user gave it. */
export function putParameters(
  book: WorkingBook,
  from: {
    readonly infos: readonly ParameterInfo[];
    readonly values: object;
    readonly given: ReadonlySet<string>;
  },
  names: Readonly<Record<string, string>>,
  unit?: WorkingStep['unit'],
): void {
  const { infos, values, given } = from;
  for (const [key, name] of Object.entries(names)) {
    const info = infos.find((one) => one.key === key);
    const value = (values as Readonly<Record<string, unknown>>)[key];
    if (!info || typeof value !== 'number') throw new Error(`no number among the parameters: ${key}`);
    const usual = info.type === 'whole' ? 'count' : 'mm';
    const label = info.label.charAt(0).toLowerCase() + info.label.slice(1);
    book.putChoice(
      key,
      name,
      value,
      label,
      given.has(key) ? 'you' : (info.source ?? 'common practice, no source'),
      unit ?? usual,
    );
  }
}
