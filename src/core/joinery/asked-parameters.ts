import { parametersOf } from './kinds.ts';
import type { ParameterInfo, Piece } from './piece-types.ts';

/** The parameters that matter for a piece as it stands: those that hang on another choice only when it was made. */
export function askedParameters(piece: Piece): readonly ParameterInfo[] {
  const table = parametersOf(piece.kind);
  const given = piece.parameters as unknown as Readonly<Record<string, unknown>>;
  return table.filter(({ when }) => {
    if (!when) return true;
    if ('fitted' in when) return piece.shape === undefined;
    const value = given[when.key];
    if ('given' in when) return (value !== undefined) === when.given;
    const now = value ?? table.find(({ key }) => key === when.key)?.default;
    return when.is.some((one) => one === now);
  });
}
