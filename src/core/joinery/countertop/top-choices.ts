import type { ChosenSides } from '../flat/choose-sides.ts';
import type { Material } from '../piece-types.ts';
import type { CountertopParameters } from './types.ts';

type Lists = 'openSides' | 'fiddleSides' | 'cutouts' | 'supports';

/** Every choice of a countertop with its default filled in; sides counted from 0. */
export interface TopChoices extends Required<
  Omit<CountertopParameters, 'materials' | 'width' | 'depth' | 'corners' | 'radii' | Lists>
> {
  readonly radii: readonly number[] | null;
  readonly openSides: ReadonlySet<number>;
  readonly fiddleSides: ReadonlySet<number>;
  readonly cutouts: readonly number[];
  readonly supports: readonly number[] | null;
  readonly stock: { readonly top: Material; readonly lipping: Material; readonly doubler: Material };
  readonly given: ReadonlySet<string>;
  readonly chosen: ChosenSides | null;
}
