import { buildModel } from './model.ts';
import { pricedSizes } from './pricing.ts';
import { findPositions } from './positions.ts';
import { plateValue, valuePlates } from './plate-values.ts';
import type { CuttingPart } from './types.ts';

/** A part and what one of it is worth. */
export interface ValuedPart extends CuttingPart {
  readonly value: number;
}

/**
 * The greatest value that guillotine cuts get out of one sheet when each part may be cut any number of times: the
 * pricing of the column generation, open to tests against published values. No kerf, no trims.
 */
export function valuePattern(
  sheet: { readonly length: number; readonly width: number },
  parts: readonly ValuedPart[],
): number {
  const stock = [{ id: 'sheet', length: sheet.length, width: sheet.width }];
  const model = buildModel({ stock, parts: parts.map((part) => ({ ...part, count: 1e6 })) });
  const [bin] = model.bins;
  if (!bin) return 0;
  const sizes = pricedSizes(
    model,
    Float64Array.from(parts, (part) => part.value),
  );
  const positions = (side: 'length' | 'width', limit: number) =>
    findPositions(
      sizes.map((size) => ({ size: size[side], count: limit })),
      limit,
    );
  const plates = valuePlates(positions('length', bin.length), positions('width', bin.width), sizes);
  return plateValue(plates, bin.length, bin.width);
}
