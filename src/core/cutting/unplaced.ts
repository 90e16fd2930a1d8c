import type { Problem } from '#core/problems';
import { toMm } from './emit-layout.ts';
import type { Bin, Kind, Model } from './model.ts';

/** Stop findings for parts without a place: too large for every stock, or the stock runs out. */
export function tellUnplaced(model: Model, left: ArrayLike<number>): readonly Problem[] {
  return model.kinds.flatMap((kind) => {
    const count = left[kind.index] ?? 0;
    if (count === 0) return [];
    return [fitsSomewhere(model, kind) ? tellShort(model, kind, count) : tellTooLarge(model, kind, count)];
  });
}

/** Whether a kind fits a free piece of some stock that exists. */
export function fitsSomewhere(model: Model, kind: Kind): boolean {
  return model.bins.some((bin) => bin.count > 0 && fitsBin(bin, kind));
}

function fitsBin(bin: Bin, kind: Kind): boolean {
  return bin.pieces.some((way) =>
    way.pieces.some(
      (piece) =>
        (kind.length <= piece.length && kind.width <= piece.width) ||
        (kind.turn && kind.width <= piece.length && kind.length <= piece.width),
    ),
  );
}

function sizeOf(model: Model, size: { readonly length: number; readonly width: number }): string {
  const length = toMm(model, size.length - model.kerfX);
  return model.style === 'length'
    ? `${length} mm`
    : `${length} x ${toMm(model, size.width - model.kerfY)} mm`;
}

function tellTooLarge(model: Model, kind: Kind, count: number): Problem {
  const largest = [...model.bins].sort((a, b) => b.area - a.area)[0];
  const usable = largest
    ? `the largest usable stock, "${largest.id}", is ${sizeOf(model, largest)} inside its trims${largest.hasKeepOut ? ' and less around its keep-outs' : ''}`
    : 'there is no stock';
  const turning = kind.turn ? ' even turned' : model.style === 'length' ? '' : ' as its grain lies';
  return {
    severity: 'stop',
    code: model.style === 'length' ? 'part-longer-than-stock' : 'part-larger-than-stock',
    about: kind.id,
    message: `Part "${kind.id}" (${sizeOf(model, kind)}${count > 1 ? `, ${count} wanted` : ''}) fits no stock${turning}: ${usable}.`,
    remedy: `Add larger stock, reduce the trims, allow turning, or join the part from two.`,
  };
}

function tellShort(model: Model, kind: Kind, count: number): Problem {
  return {
    severity: 'stop',
    code: 'stock-runs-out',
    about: kind.id,
    message: `${count} of ${kind.count} of part "${kind.id}" (${sizeOf(model, kind)}) find no place: the stock named runs out.`,
    remedy: 'Add stock or raise its count.',
  };
}
