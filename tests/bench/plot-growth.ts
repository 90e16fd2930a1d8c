/** One job of the run on large jobs. */
export interface GrowthPoint {
  readonly parts: number;
  /** Milliseconds until the first plan. */
  readonly firstPlan: number;
  /** Cost over the bound. */
  readonly ratio: number;
}

const size = { width: 640, height: 300, left: 60, right: 60, top: 30, bottom: 70 };

/** The time to a first plan (log) and the cost over the bound, over the number of parts (log), as one SVG drawing. */
export function plotGrowth(points: readonly GrowthPoint[]): string {
  const x = scale(
    points.map(({ parts }) => Math.log10(parts)),
    size.left,
    size.width - size.right,
  );
  const time = points.map(({ firstPlan }) => Math.log10(firstPlan));
  const y = scale(
    [Math.floor(Math.min(...time)), Math.ceil(Math.max(...time))],
    size.height - size.bottom,
    size.top,
  );
  const most = Math.max(1.01, ...points.map(({ ratio }) => ratio));
  const z = scale([1, most], size.height - size.bottom, size.top);
  const at = (point: GrowthPoint) => x(Math.log10(point.parts));
  const marks = points.flatMap((point) => [
    text(at(point), size.height - 30, String(point.parts)),
    circle(at(point), y(Math.log10(point.firstPlan)), '#00665e'),
    circle(at(point), z(point.ratio), '#b4231a'),
    text(at(point), y(Math.log10(point.firstPlan)) - 8, `${point.firstPlan.toFixed(0)} ms`),
    text(at(point), z(point.ratio) + 16, `+${(100 * (point.ratio - 1)).toFixed(1)} %`),
  ]);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size.width} ${size.height}" font-family="sans-serif" font-size="11">`,
    `<rect width="${size.width}" height="${size.height}" fill="#fff"/>`,
    `<text x="10" y="16" fill="#00665e">first plan, ms (log)</text>`,
    `<text x="${size.width - 10}" y="16" text-anchor="end" fill="#b4231a">cost over the bound</text>`,
    line(
      points.map((point) => [at(point), y(Math.log10(point.firstPlan))]),
      '#00665e',
    ),
    line(
      points.map((point) => [at(point), z(point.ratio)]),
      '#b4231a',
    ),
    ...marks,
    text(size.width / 2, size.height - 10, 'parts (log)'),
    '</svg>',
  ].join('\n');
}

function scale(values: readonly number[], from: number, to: number): (value: number) => number {
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  return (value) => from + ((value - low) / span) * (to - from);
}

const line = (points: readonly (readonly [number, number])[], colour: string) =>
  `<polyline fill="none" stroke="${colour}" stroke-width="1.5" points="${points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')}"/>`;

const circle = (x: number, y: number, colour: string) =>
  `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="3" fill="${colour}"/>`;

const text = (x: number, y: number, words: string) =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="middle">${words}</text>`;
