import type { Problem } from '#core/problems';
import type { Load } from './load.ts';
import { fitsStock, stripId } from './model.ts';
import type { Model } from './model.ts';
import type { NestPlan } from './types.ts';

/** A load as the answer of the contract (DESIGN section 6). `bound`: cost on sheets, length on a strip. */
export function emitNest(model: Model, load: Load, bound: number, seconds: number): NestPlan {
  const { kinds, shapes, margin } = model;
  const isStrip = model.strip !== null;
  const counts = kinds.map((kind) => load.parts.filter((part) => part.source === kind.index).length);
  const unplaced = kinds
    .map((kind, k) => ({ id: kind.id, count: kind.count - counts[k]! }))
    .filter((each) => each.count > 0);
  const cost = isStrip ? load.reach : tidyCost(load.cost);
  const least = unplaced.length > 0 ? null : Math.min(cost, isStrip ? bound : tidyCost(bound));
  return {
    sheets: load.bins.map((bin) => ({ stock: model.bins[bin]!.id })),
    placements: [...load.parts]
      .sort((a, b) => a.sheet - b.sheet || a.source - b.source || a.x - b.x || a.y - b.y)
      .map(({ source, sheet, pose, x, y }) => ({
        id: kinds[source]!.id,
        sheet,
        angle: shapes.angle[pose]!,
        x: margin + x + shapes.originX[pose]!,
        y: margin + y + shapes.originY[pose]!,
      })),
    stockUsed: model.bins
      .map((bin) => ({ id: bin.id, count: load.bins.filter((each) => each === bin.index).length }))
      .filter((each) => each.count > 0),
    length: isStrip ? load.reach : null,
    cost,
    bound: least,
    proven: least !== null && cost - least <= 1e-6 * Math.max(1, cost),
    density: densityOf(model, load),
    unplaced,
    seconds,
    findings: tellUnplaced(model, counts),
  };
}

/** A sum of prices without the tail of binary fractions. */
function tidyCost(cost: number): number {
  return Number(cost.toFixed(9));
}

/** Net area of the parts laid over the full area of the sheets used, or of the strip as long as it is used. */
function densityOf(model: Model, load: Load): number {
  const net = load.parts.reduce((sum, part) => sum + model.kinds[part.source]!.area, 0);
  const full =
    model.strip === null
      ? load.bins.reduce((sum, bin) => sum + model.bins[bin]!.area, 0)
      : model.strip * load.reach;
  return full > 0 ? Math.min(1, net / full) : 0;
}

function tellUnplaced(model: Model, placed: readonly number[]): readonly Problem[] {
  return model.kinds.flatMap((kind, k): Problem[] => {
    const count = kind.count - placed[k]!;
    if (count === 0) return [];
    const size = `"${kind.id}" (${sizeOf(model, k)}${kind.count > 1 ? `, ${kind.count} wanted` : ''})`;
    if (fitsStock(model, k))
      return [
        {
          severity: 'stop',
          code: 'stock-runs-out',
          about: kind.id,
          message: `${count} of part ${size} find no place: the stock named runs out, or its keep-outs are in the way.`,
          remedy: 'Add stock or raise its count.',
        },
      ];
    return [
      {
        severity: 'stop',
        code: 'part-larger-than-stock',
        about: kind.id,
        message: `Part ${size} fits no stock at any angle it may be turned to: ${largestOf(model)}.`,
        remedy: 'Add larger stock, reduce the margin, allow more angles, or join the part from two.',
      },
    ];
  });
}

/** A length as a person writes it, mm. */
function say(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function sizeOf({ shapes }: Model, kind: number): string {
  const pose = shapes.firstPose[kind]!;
  return `${say(shapes.width[pose]!)} x ${say(shapes.height[pose]!)} mm`;
}

function largestOf(model: Model): string {
  if (model.strip !== null) return `the ${stripId} is ${say(model.strip)} mm wide`;
  const bin = [...model.bins].sort((a, b) => b.area - a.area)[0];
  if (!bin) return 'there is no stock';
  return `the largest, "${bin.id}", is ${say(bin.length)} x ${say(bin.width)} mm inside its margin`;
}

/** The plan for a job that is refused: nothing is laid. */
export function refuseNest(
  parts: readonly { readonly id: string; readonly count?: number }[],
  findings: readonly Problem[],
): NestPlan {
  return {
    sheets: [],
    placements: [],
    stockUsed: [],
    length: null,
    cost: 0,
    bound: null,
    proven: false,
    density: 0,
    unplaced: parts.map((part) => ({ id: part.id, count: part.count ?? 1 })),
    seconds: 0,
    findings,
  };
}
