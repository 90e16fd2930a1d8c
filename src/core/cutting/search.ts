import type { Random } from '#core/numerics';
import { hasLimits } from './limits.ts';
import type { Bin, Model } from './model.ts';
import { chooseSpot, makeScorer, placeAt } from './insert.ts';
import type { Scorer } from './insert.ts';
import { cloneSheet, openSheet } from './sheet.ts';
import type { Sheet } from './sheet.ts';
import { ruin } from './ruin.ts';

/** A set of sheets with parts in them, and how many parts of each kind are not in any. */
export interface Load {
  readonly sheets: Sheet[];
  readonly left: Int32Array;
  leftCount: number;
  leftArea: number;
  cost: number;
}
