import type { CuttingPlan, CutRules, Rectangle, Trim } from '#core/cutting';
import type { Gate, JoinerySettings, Material, MaterialId, PartId, PartSize, Piece } from '#core/joinery';

import type { MeasuredShape } from './shape-types.ts';

/**
 * One line of the rack. `count` null: can be bought as needed at `price`; that left out: not known, which is not free. `owned`:
 * lies in the rack already, costs nothing more.
 */
export interface StockLine {
  readonly id: string;
  readonly material: MaterialId;
  readonly form: 'sheet' | 'board' | 'batten' | 'offcut';
  /** Along the grain. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly count: number | null;
  readonly price?: number;
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

/** A part that has been cut: it stays as it is, and the rest is planned round it. */
export interface MadePart {
  readonly part: PartId;
  /** How many of it are cut. */
  readonly count: number;
  /** Of one that is glued up of several: how many staves of a further copy are cut. */
  readonly staves?: number;
  /** What it was to be when it was cut, or as measured since; mm. */
  readonly finished: PartSize;
  /** Of its outline and joints when it was cut, to tell whether they have changed since. */
  readonly form: string;
}

/** A plan the user has chosen for a cutting group: it holds for as long as the job is the same. */
export interface TakenPlan {
  readonly group: string;
  /** A mark of the job it belongs to. */
  readonly job: string;
  readonly plan: CuttingPlan;
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
  /** Tasks ticked off: `step:A/dry-fit`. */
  readonly done: readonly string[];
  readonly made?: readonly MadePart[];
  /** Sheet parts that the router cuts by their outlines, by address; the others are sawn as blanks. */
  readonly routed?: readonly PartId[];
  /** Plans chosen, at most one a group. */
  readonly taken?: readonly TakenPlan[];
  /** What pieces are carried through from the workshop to their place, in order. */
  readonly route?: readonly Gate[];
}
