/** Rows under fixed headings that name the unit; lengths in mm, amounts in the project's currency. */
export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}
