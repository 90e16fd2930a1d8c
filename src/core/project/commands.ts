import type { Gate, JoinerySettings, Material, PartId, Piece } from '#core/joinery';
import type { Reading } from '#core/measuring';

import type { MeasuredShape, ShapeChange, ShapeItem } from './shape-types.ts';
import type { MadePart, Project, StockLine, TakenPlan, Tools } from './types.ts';

/** Settings that may be left out: they then stand at the usual. */
export type ClearedSetting =
  'finish' | 'coatsShown' | 'coatsHidden' | 'widestFlat' | 'spares' | 'glue' | 'wet';

/** Changes of what the project has once. */
export type WholeCommand =
  | { readonly kind: 'set-name'; readonly name: string }
  | { readonly kind: 'set-currency'; readonly currency: string; readonly pricesIncludeTax: boolean }
  | { readonly kind: 'set-paper'; readonly paper: Project['paper'] }
  | { readonly kind: 'set-units'; readonly units: Project['units'] }
  /** `cleared` settings go back to the usual. */
  | {
      readonly kind: 'change-settings';
      readonly settings: Partial<JoinerySettings>;
      readonly cleared?: readonly ClearedSetting[];
    }
  | { readonly kind: 'change-tools'; readonly tools: Partial<Tools> }
  | { readonly kind: 'set-done'; readonly mark: string; readonly done: boolean }
  /** How many of a part are cut, and as what; null: none. */
  | { readonly kind: 'set-made'; readonly part: PartId; readonly made: MadePart | null }
  | { readonly kind: 'set-routed'; readonly part: PartId; readonly routed: boolean }
  | { readonly kind: 'take-plan'; readonly taken: TakenPlan }
  /** The group is planned afresh. */
  | { readonly kind: 'release-plan'; readonly group: string }
  | { readonly kind: 'set-route'; readonly route: readonly Gate[] }
  /** `price` null forgets it. */
  | { readonly kind: 'set-fixing-price'; readonly item: string; readonly price: number | null };

/** Changes of the measured shapes. `at` is the place in the list, at the end when left out. */
export type ShapeCommand =
  | { readonly kind: 'add-shape'; readonly shape: MeasuredShape; readonly at?: number }
  | { readonly kind: 'change-shape'; readonly id: string; readonly change: ShapeChange }
  | { readonly kind: 'remove-shape'; readonly id: string };

/** Changes of the lists of one shape: photos, obstructions, curves, sections, walls. */
export type ShapeItemCommand =
  | ({ readonly kind: 'add-item'; readonly shape: string; readonly at?: number } & ShapeItem)
  /** The item as it shall be, in the place of the one with this id. */
  | ({ readonly kind: 'change-item'; readonly shape: string; readonly id: string } & ShapeItem)
  | {
      readonly kind: 'remove-item';
      readonly shape: string;
      readonly list: ShapeItem['list'];
      readonly id: string;
    }
  /** Another name for a corner of an outline, wherever it is named. */
  | { readonly kind: 'rename-corner'; readonly shape: string; readonly from: string; readonly to: string };

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
  | { readonly kind: 'remove-stock'; readonly id: string }
  /** One piece of a stock line has been sawn: its parts are made, its leftovers lie in the rack. */
  | {
      readonly kind: 'cut-stock';
      readonly stock: string;
      readonly made: readonly MadePart[];
      readonly leftovers: readonly StockLine[];
      /** The plans chosen, as they hold from now on: one of them goes on with what it has left to cut. */
      readonly taken?: readonly TakenPlan[];
    };

/** A value of a parameter as its field gives it. */
export type ParameterValue = number | string | boolean | readonly number[] | readonly (readonly string[])[];

/** One act of the user; plain data, so that it can be kept, sent and done again. */
export type Command =
  WholeCommand | ShapeCommand | ShapeItemCommand | ReadingCommand | PieceCommand | RackCommand;
