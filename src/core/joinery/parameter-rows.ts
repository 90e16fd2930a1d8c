import type { AskedWhen, ParameterInfo } from './piece-types.ts';

/** A number of a parameter table: its usual value and limits; without `usual` it may be left out or must be entered. */
export interface NumberRow {
  readonly usual?: number;
  readonly from: number;
  readonly to: number;
  readonly help?: string;
  readonly type?: 'number' | 'whole';
  readonly required?: boolean;
  readonly when?: AskedWhen;
}

/** A choice of a parameter table; the first is the default unless `noDefault`. */
export interface ChoiceRow {
  readonly choices: Readonly<Record<string, string>>;
  readonly help?: string;
  readonly noDefault?: boolean;
  readonly when?: AskedWhen;
}

/** The row of a material that a piece is made of; it must be chosen unless it is said to be left out. */
export function materialRow(
  key: string,
  label: string,
  materialKind: 'sheet' | 'solid' | 'either',
  row: { readonly help?: string; readonly required?: false } = {},
): ParameterInfo {
  return {
    ...{ key: `materials.${key}`, label, help: row.help ?? '', type: 'material', group: 'Material' },
    ...{ materialKind, ...(row.required !== false && { required: true }) },
  };
}

/** Makers of the rows of one parameter table, whose keys and source they carry. */
export function rowsFor<Key extends string>(source: string) {
  return {
    numberOf: (group: string, key: Key, label: string, row: NumberRow): ParameterInfo => ({
      key,
      label,
      help: row.help ?? '',
      type: row.type ?? 'length',
      group,
      ...(row.usual !== undefined && { default: row.usual }),
      min: row.from,
      max: row.to,
      ...(row.required && { required: true }),
      ...(row.when && { when: row.when }),
      source,
    }),
    choiceOf: (group: string, key: Key, label: string, row: ChoiceRow): ParameterInfo => ({
      key,
      label,
      help: row.help ?? '',
      type: 'choice',
      group,
      ...(!row.noDefault && { default: Object.keys(row.choices)[0] ?? '' }),
      choices: Object.entries(row.choices).map(([value, name]) => ({ value, label: name })),
      ...(row.when && { when: row.when }),
      source,
    }),
  };
}
