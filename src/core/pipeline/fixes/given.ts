import type { Material, Piece } from '#core/joinery';

/** What the user gave for a parameter, by its key as `gap` or `materials.frame`; undefined when it stands at its usual. */
export function given(piece: Piece, key: string): unknown {
  const [first = '', second] = key.split('.');
  const values = piece.parameters as unknown as Readonly<Record<string, unknown>>;
  return second === undefined
    ? values[first]
    : (values[first] as Readonly<Record<string, unknown>> | undefined)?.[second];
}

/** The material a parameter names; null when it names none of the project. */
export function materialOf(piece: Piece, key: string, materials: readonly Material[]): Material | null {
  return materials.find(({ id }) => id === given(piece, key)) ?? null;
}
