import { makeLoad } from './load.ts';
import type { Load, Lying } from './load.ts';
import { fitsRectangle, fitsStock } from './model.ts';
import type { Bin, Model } from './model.ts';

/** A column of parts being filled on a sheet: where the grown boxes of the last column end, and of the last part. */
interface Column {
  readonly bin: Bin;
  x: number;
  y: number;
  end: number;
}

/** Parts in columns by their boxes, the widest first: a load at once, whatever the number. */
export function layColumns(model: Model): Load {
  const items = listParts(model).map((source) => ({ source, pose: narrowPose(model, source) }));
  items.sort((a, b) => model.shapes.width[b.pose]! - model.shapes.width[a.pose]! || a.source - b.source);
  const columns: Column[] = [];
  const parts: Lying[] = [];
  const left: number[] = [];
  for (const { source } of items) {
    let place = columns.length > 0 ? stack(model, columns.at(-1)!, source) : null;
    if (!place) {
      const bin = chooseBin(
        model,
        source,
        columns.map((column) => column.bin.index),
      );
      if (bin) columns.push({ bin, x: -Infinity, y: -Infinity, end: -Infinity });
      place = bin ? stack(model, columns.at(-1)!, source) : null;
    }
    if (place) parts.push({ ...place, source, sheet: columns.length - 1 });
    else left.push(source);
  }
  return makeLoad(
    model,
    columns.map((column) => column.bin.index),
    parts,
    left,
  );
}

/** Kinds of all parts that fit some stock, each as often as it is wanted. */
export function listParts(model: Model): number[] {
  return model.kinds.flatMap((kind) =>
    fitsStock(model, kind.index) ? new Array<number>(kind.count).fill(kind.index) : [],
  );
}

function narrowPose({ shapes }: Model, source: number): number {
  let best = shapes.firstPose[source]!;
  for (let p = best; p < shapes.firstPose[source + 1]!; p++)
    if (shapes.width[p]! < shapes.width[best]!) best = p;
  return best;
}

/** The next place in the column, or in a new one; null when the sheet is full. */
function stack(model: Model, column: Column, source: number): { pose: number; x: number; y: number } | null {
  const { shapes } = model;
  const first = shapes.firstPose[source]!;
  const poses = Array.from({ length: shapes.firstPose[source + 1]! - first }, (_, k) => first + k)
    .filter((p) => shapes.height[p]! <= column.bin.width)
    .sort((a, b) => shapes.width[a]! - shapes.width[b]!);
  const pose = poses[0];
  if (pose === undefined) return null;
  const { box, width, height } = shapes;
  for (let tries = 0; tries < 200; tries++) {
    const x = Math.max(0, column.x - box[4 * pose]!);
    const y = Math.max(0, column.y - box[4 * pose + 1]!);
    if (x + width[pose]! > column.bin.length) return null;
    if (y + height[pose]! > column.bin.width) {
      if (column.y === -Infinity) return null;
      column.x = column.end;
      column.y = -Infinity;
      continue;
    }
    const over = zoneAbove(model, column.bin, { pose, x, y });
    column.y = over ?? y + box[4 * pose + 3]!;
    column.end = Math.max(column.end, x + box[4 * pose + 2]!);
    if (over === null) return { pose, x, y };
  }
  return null;
}

/** Where the keep-out ends that a part at a place would meet; null when it meets none. */
function zoneAbove(
  { shapes }: Model,
  bin: Bin,
  { pose, x, y }: { readonly pose: number; readonly x: number; readonly y: number },
): number | null {
  const { box } = shapes;
  for (const zone of bin.zones) {
    const p = 4 * shapes.firstPose[zone.source]!;
    const isAside =
      zone.x + box[p]! >= x + box[4 * pose + 2]! ||
      zone.x + box[p + 2]! <= x + box[4 * pose]! ||
      zone.y + box[p + 1]! >= y + box[4 * pose + 3]! ||
      zone.y + box[p + 3]! <= y + box[4 * pose + 1]!;
    if (!isAside) return zone.y + box[p + 3]!;
  }
  return null;
}

/** The sheet with the best rate per area that takes the part and is still there; null when none is. */
export function chooseBin(model: Model, source: number, used: readonly number[]): Bin | null {
  const fitting = model.bins.filter(
    (bin) =>
      fitsRectangle(model, source, bin.length, bin.width) &&
      used.filter((each) => each === bin.index).length < bin.count,
  );
  const rate = (bin: Bin) => (bin.area === Infinity ? 0 : bin.cost / (bin.length * bin.width));
  fitting.sort((a, b) => rate(a) - rate(b) || b.area - a.area);
  return fitting[0] ?? null;
}
