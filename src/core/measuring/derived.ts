import type { Point, Shape } from '#core/geometry';

/** A sum of coordinates times factors, by `point.axis` as in the order of a shape: `{ 'TR.x': 1, 'TL.x': -1 }`. */
export type LinearForm = Readonly<Record<string, number>>;

/** A size worked out from the points of a shape, mm. */
export type DerivedSize = (points: Readonly<Record<string, Point>>) => number;

/** One standard deviation of a sum of coordinates, mm, in the shape's own datum; coordinates the shape lacks count nothing. */
export function sigmaOfForm(shape: Shape, form: LinearForm): number {
  return Math.sqrt(Math.max(0, covarianceOfForms(shape, [form])[0]?.[0] ?? 0));
}

/** Covariance of several sums of coordinates, mm²: sizes cut from one survey err together. */
export function covarianceOfForms(
  shape: Shape,
  forms: readonly LinearForm[],
): readonly (readonly number[])[] {
  const rows = forms.map((form) =>
    shape.order.flatMap((name, k) => (form[name] ? [[k, form[name]] as const] : [])),
  );
  return rows.map((a) =>
    rows.map((b) =>
      a.reduce(
        (sum, [i, p]) =>
          sum + b.reduce((inner, [j, q]) => inner + p * q * (shape.covariance[i]?.[j] ?? 0), 0),
        0,
      ),
    ),
  );
}

/** The step by which a coordinate is moved to see what a size makes of it, mm: far above rounding, far below any bend. */
const step = 1e-3;

/** How a derived size changes with each coordinate, by central differences: exact for sums, and for sizes that bend over metres. */
export function formOfSize(shape: Shape, size: DerivedSize): LinearForm {
  const entries = shape.order.flatMap((name): (readonly [string, number])[] => {
    const [point, axis] = [name.slice(0, -2), name.endsWith('.x') ? 'x' : 'y'] as const;
    const at = shape.points[point];
    if (!at) return [];
    const moved = (by: number) => size({ ...shape.points, [point]: { ...at, [axis]: at[axis] + by } });
    const slope = (moved(step) - moved(-step)) / (2 * step);
    return Math.abs(slope) > 1e-12 ? [[name, slope]] : [];
  });
  return Object.fromEntries(entries);
}

/** One standard deviation of a size worked out from a shape, mm, as far as it comes from the survey. */
export function sigmaOfSize(shape: Shape, size: DerivedSize): number {
  return sigmaOfForm(shape, formOfSize(shape, size));
}
