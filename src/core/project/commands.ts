import type { JoinerySettings, Material, Piece } from '#core/joinery';
import type { Reading } from '#core/measuring';

import type { MeasuredShape, Project, StockLine, Tools } from './types.ts';

/** Changes of what the project has once. */
export type WholeCommand =
  | { readonly kind: 'set-name'; readonly name: string }
  | { readonly kind: 'set-currency'; readonly currency: string; readonly pricesIncludeTax: boolean }
  | { readonly kind: 'set-paper'; readonly paper: Project['paper'] }
  | { readonly kind: 'set-units'; readonly units: Project['units'] }
  | { readonly kind: 'change-settings'; readonly settings: Partial<JoinerySettings> }
  | { readonly kind: 'change-tools'; readonly tools: Partial<Tools> }
  | { readonly kind: 'set-done'; readonly mark: string; readonly done: boolean }
  /** `price` null forgets it. */
  | { readonly kind: 'set-fixing-price'; readonly item: string; readonly price: number | null };

/** Changes of the measured shapes. `at` is the place in the list, at the end when left out. */
export type ShapeCommand =
  | { readonly kind: 'add-shape'; readonly shape: MeasuredShape; readonly at?: number }
  | {
      readonly kind: 'change-shape';
      readonly id: string;
      readonly change: Partial<Pick<MeasuredShape, 'name' | 'seenFrom' | 'note'>>;
    }
  | { readonly kind: 'remove-shape'; readonly id: string };

/** Changes of the readings of one shape. */
export type ReadingCommand =
  | { readonly kind: 'add-reading'; readonly shape: string; readonly reading: Reading; readonly at?: number }
  /** The reading as it shall be, in the place of the one with this id. */
  | {
      readonly kind: 'change-reading';
      readonly shape: string;
      readonly id: string;
      readonly reading: Reading;
    }
  | { readonly kind: 'remove-reading'; readonly shape: string; readonly id: string }
  /** A second look at the same reading, mm. */
  | { readonly kind: 'add-repeat'; readonly shape: string; readonly id: string; readonly value: number }
  | { readonly kind: 'remove-repeat'; readonly shape: string; readonly id: string; readonly index: number };

/** Changes of what is to be made. */
export type PieceCommand =
  | { readonly kind: 'add-piece'; readonly piece: Piece; readonly at?: number }
  /** The piece as it shall be, in the place of the one with this id. */
  | { readonly kind: 'change-piece'; readonly id: string; readonly piece: Piece }
  /** One parameter of a piece by its key, as `jambThickness` or `materials.frame`; `value` null goes back to its default. */
  | {
      readonly kind: 'set-parameter';
      readonly id: string;
      readonly key: string;
      readonly value: ParameterValue | null;
    }
  | { readonly kind: 'remove-piece'; readonly id: string };

/** Changes of the rack. */
export type RackCommand =
  | { readonly kind: 'add-material'; readonly material: Material; readonly at?: number }
  | { readonly kind: 'change-material'; readonly id: string; readonly material: Material }
  | { readonly kind: 'remove-material'; readonly id: string }
  | { readonly kind: 'add-stock'; readonly stock: StockLine; readonly at?: number }
  | { readonly kind: 'change-stock'; readonly id: string; readonly stock: StockLine }
  | { readonly kind: 'remove-stock'; readonly id: string };

/** A value of a parameter as its field gives it. */
export type ParameterValue = number | string | boolean | readonly number[] | readonly (readonly string[])[];

/** One act of the user; plain data, so that it can be kept, sent and done again. */
export type Command = WholeCommand | ShapeCommand | ReadingCommand | PieceCommand | RackCommand;
