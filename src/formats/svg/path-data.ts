import { arcBetween } from '#core/geometry';
import type { PathPoint } from '#core/geometry';
import type { Mark } from '#core/drawing';

/** A number to 0.001, short. */
export function formatNumber(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}

const pair = (x: number, y: number) => `${formatNumber(x)} ${formatNumber(-y)}`;

/** The `d` of an SVG path for a mark, y turned to point down; arcs stay arcs; empty for text. */
export function pathData(mark: Mark): string {
  if (mark.kind === 'text') return '';
  const [first] = mark.points;
  if (!first) return '';
  const count = mark.points.length;
  const steps: string[] = [`M${pair(first.x, first.y)}`];
  for (let i = 1; i < count; i++)
    steps.push(step(mark.points[i - 1] as PathPoint, mark.points[i] as PathPoint));
  if (!mark.closed) return steps.join('');
  const last = mark.points[count - 1] as PathPoint;
  if (last.bulge) steps.push(step(last, first));
  return `${steps.join('')}Z`;
}

function step(from: PathPoint, to: PathPoint): string {
  const arc = arcBetween(from, to, from.bulge ?? 0);
  if (!arc) return `L${pair(to.x, to.y)}`;
  const radius = formatNumber(arc.radius);
  const large = Math.abs(arc.sweep) > Math.PI ? 1 : 0;
  return `A${radius} ${radius} 0 ${large} ${arc.sweep > 0 ? 0 : 1} ${pair(to.x, to.y)}`;
}
