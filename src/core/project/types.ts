import type { CutRules, Rectangle, Trim } from '#core/cutting';
import type { JoinerySettings, Material, MaterialId, Piece } from '#core/joinery';
import type { Reading } from '#core/measuring';

/** A measured shape of the project: readings as entered; the shape itself is worked out, never stored. */
export interface MeasuredShape {
  readonly id: string;
  readonly name: string;
  readonly kind: 'opening';
  readonly seenFrom: string;
  readonly readings: readonly Reading[];
  readonly note?: string;
}

/** One line of the rack. `count` null: can be bought as needed at `price`. `owned`: lies in the rack already, costs nothing more. */
export interface StockLine {
  readonly id: string;
  readonly material: MaterialId;
  readonly form: 'sheet' | 'board' | 'batten' | 'offcut';
  /** Along the grain. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly count: number | null;
  readonly price: number;
  readonly owned?: boolean;
  readonly keepOut?: readonly Rectangle[];
  readonly note?: string;
}

/** A saw with what it can do. mm. */
export interface SawProfile {
  readonly id: string;
  readonly name: string;
  readonly kerf: number;
  readonly trim: Trim;
  readonly cuts: CutRules;
}

export interface RouterProfile {
  readonly cutter: number;
  readonly passDepth: number;
}

export interface Tools {
  readonly sheetSaw: SawProfile;
  readonly boardSaw: SawProfile;
  readonly router: RouterProfile;
  /** Leftovers at least this large are kept. */
  readonly keepLeftover: { readonly minLength: number; readonly minWidth: number };
}

export interface FixingPrice {
  readonly item: string;
  readonly price: number;
}

/** The saved document, version 1: everything the user entered and nothing derived. */
export interface Project {
  readonly version: 1;
  readonly name: string;
  /** ISO 4217 code, as `EUR`. */
  readonly currency: string;
  readonly pricesIncludeTax: boolean;
  readonly paper: 'A4' | 'Letter';
  readonly units: 'mm' | 'inch';
  readonly settings: JoinerySettings;
  readonly shapes: readonly MeasuredShape[];
  readonly pieces: readonly Piece[];
  readonly materials: readonly Material[];
  readonly stock: readonly StockLine[];
  readonly tools: Tools;
  /** What fixings and finish cost, by the name on the shopping list. */
  readonly fixingPrices?: readonly FixingPrice[];
  /** Tasks and parts ticked off: `step:A/dry-fit`, `part:C4/2`. */
  readonly done: readonly string[];
}
