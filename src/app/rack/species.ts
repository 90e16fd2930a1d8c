import { speciesTable } from '#core/materials';

/** Timbers of the table as choices, by name, with an unknown one first. */
export const speciesChoices: readonly { readonly value: string; readonly label: string }[] = [
  { value: '', label: 'Not known' },
  ...[...speciesTable]
    .sort((a, b) => a.name.localeCompare(b.name, 'en'))
    .map((species) => ({ value: species.name, label: species.name })),
];
