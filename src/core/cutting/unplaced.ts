import type { Problem } from '#core/problems';
import { across, along } from './direction.ts';
import { toMm } from './emit-layout.ts';
import { hasLimits, mayPlace } from './limits.ts';
import type { Bin, Kind, Model } from './model.ts';
import { makeFree } from './tree.ts';

interface Size {
  readonly length: number;
  readonly width: number;
}

/** Stop findings for parts without a place: too large for every stock or for the saw, or the stock runs out. */
export function tellUnplaced(model: Model, left: ArrayLike<number>): readonly Problem[] {
  return model.kinds.flatMap((kind) => {
    const count = left[kind.index] ?? 0;
    if (count === 0) return [];
    if (!fitsSomewhere(model, kind)) return [tellNowhere(model, kind, count)];
    return [canBeSawn(model, kind) ? tellShort(model, kind, count) : tellBeyondSaw(model, kind, count)];
  });
}

/** Whether a kind fits a free piece of some stock that exists. */
export function fitsSomewhere(model: Model, kind: Kind): boolean {
  return model.bins.some((bin) => bin.count > 0 && fitsBin(bin, kind));
}

function fitsBin(bin: Bin, kind: Kind): boolean {
  return bin.pieces.some((way) => way.pieces.some((piece) => fitsIn(piece, kind)));
}

function fitsIn(piece: Size, kind: Kind): boolean {
  return (
    (kind.length <= piece.length && kind.width <= piece.width) ||
    (kind.turn && kind.width <= piece.length && kind.length <= piece.width)
  );
}

/** What hinders a kind that fits no free piece of the stock there is: bad places, stock of count 0, or its size. */
function tellNowhere(model: Model, kind: Kind, count: number): Problem {
  const whole = model.bins.filter((bin) => fitsIn(bin, kind));
  const spoilt = whole.filter((bin) => bin.count > 0);
  if (spoilt.length > 0) return tellNoRoom(model, kind, count, spoilt);
  return whole.some((bin) => fitsBin(bin, kind))
    ? tellShort(model, kind, count)
    : tellTooLarge(model, kind, count);
}

/** Whether a kind can be sawn out of some stock by itself, in two cuts that the saw can make (joinery G23). */
function canBeSawn(model: Model, kind: Kind): boolean {
  if (model.style !== 'guillotine' || !hasLimits(model)) return true;
  const ways = [
    { length: kind.length, width: kind.width },
    ...(kind.turn ? [{ length: kind.width, width: kind.length }] : []),
  ];
  const pieces = model.bins.filter(({ count }) => count > 0).flatMap((bin) => bin.pieces);
  return pieces
    .flatMap((way) => way.pieces)
    .some((piece) =>
      ways.some((size) => {
        if (size.length > piece.length || size.width > piece.width) return false;
        const leaf = makeFree(piece.length, piece.width, 0, 0);
        return ([along, across] as const).some((first) => mayPlace(model, leaf, size, first));
      }),
    );
}

function sizeOf(model: Model, size: Size): string {
  const length = toMm(model, size.length - model.kerfX);
  return model.style === 'length'
    ? `${length} mm`
    : `${length} × ${toMm(model, size.width - model.kerfY)} mm`;
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

function tellNoRoom(model: Model, kind: Kind, count: number, spoilt: readonly Bin[]): Problem {
  const where = spoilt
    .slice(0, 3)
    .map((bin) => `"${bin.id}" (${bin.blocks.length} keep-out${bin.blocks.length === 1 ? '' : 's'})`)
    .join(', ');
  const others = spoilt.length > 3 ? ` and ${spoilt.length - 3} more` : '';
  const sawn = model.style === 'guillotine' ? ' that the saw can free' : '';
  return {
    severity: 'stop',
    code: 'keep-outs-leave-no-room',
    about: kind.id,
    message: `Part "${kind.id}" (${sizeOf(model, kind)}${count > 1 ? `, ${count} wanted` : ''}) finds no room${sawn} between the keep-outs of stock ${where}${others}, though the stock is large enough.`,
    remedy: `Add stock without bad places, or check the keep-outs${kind.turn || model.style === 'length' ? '' : ', or allow turning'}.`,
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

function tellBeyondSaw(model: Model, kind: Kind, count: number): Problem {
  const { maxRip, maxCut, maxStages, firstCut } = model.limits;
  const reach = [
    ...(maxRip < Infinity ? [`its fence reaches ${toMm(model, maxRip)} mm`] : []),
    ...(maxCut < Infinity ? [`its longest cut is ${toMm(model, maxCut)} mm`] : []),
    ...(maxStages < Infinity ? [`${maxStages} stages of cuts are allowed`] : []),
    ...(firstCut === null ? [] : [`its first cut has to run ${firstCut === along ? 'along' : 'across'}`]),
  ];
  return {
    severity: 'stop',
    code: 'cannot-be-sawn',
    about: kind.id,
    message: `Part "${kind.id}" (${sizeOf(model, kind)}${count > 1 ? `, ${count} wanted` : ''}) cannot be sawn as drawn: the stock is large enough, but the saw does not free it with two cuts; ${reach.join(', ')}.`,
    remedy:
      'Make the first cuts with a saw on a longer rail, have the stock cut down, or enter the true reach of the saw.',
    source: 'joinery E2, G23',
  };
}
