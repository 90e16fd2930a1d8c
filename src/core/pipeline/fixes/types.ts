import type { BuiltPiece, Piece } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { Command, ParameterValue, Project } from '#core/project';

/** What can be done about a finding with one touch: an act that was tried and clears it, or values only the user knows. */
export type Fix =
  | { readonly kind: 'act'; readonly label: string; readonly command: Command }
  | {
      readonly kind: 'ask';
      readonly label: string;
      readonly piece: string;
      /** Keys of the parameters to enter. */
      readonly keys: readonly string[];
    };

/** New values of parameters by their keys; null goes back to the usual. */
export type Change = Readonly<Record<string, ParameterValue | null>>;

/** A finding of a piece with what it rests on. */
export interface Ailing {
  readonly finding: Problem;
  readonly piece: Piece;
  readonly built: BuiltPiece;
  readonly project: Project;
}
