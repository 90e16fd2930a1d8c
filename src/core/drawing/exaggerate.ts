import type { Point, Shape } from '#core/geometry';

const lean = 0.2; // an edge leaning less than this (ratio) counts as upright or level

/** The points of a shape with their offsets from the nearest upright, square shape multiplied; `times` 1 changes nothing. */
export function exaggeratePoints(shape: Shape, times: number): Readonly<Record<string, Point>> {
  if (times === 1) return shape.points;
  const upright = groupPoints(shape, 'x');
  const level = groupPoints(shape, 'y');
  return Object.fromEntries(
    Object.entries(shape.points).map(([name, p]) => {
      const x = upright.get(name) ?? p.x;
      const y = level.get(name) ?? p.y;
      return [name, { x: x + times * (p.x - x), y: y + times * (p.y - y) }];
    }),
  );
}

/** For each point the mean coordinate of all points joined to it by edges that should share it. */
function groupPoints(shape: Shape, axis: 'x' | 'y'): ReadonlyMap<string, number> {
  const groups = new Map(Object.keys(shape.points).map((name) => [name, new Set([name])]));
  for (const { from, to } of shape.edges) {
    const [a, b] = [shape.points[from], shape.points[to]];
    const [one, other] = [groups.get(from), groups.get(to)];
    if (!a || !b || !one || !other || one === other) continue;
    const [dx, dy] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
    if (axis === 'x' ? dx > lean * dy : dy > lean * dx) continue;
    for (const name of other) {
      one.add(name);
      groups.set(name, one);
    }
  }
  const mean = (names: ReadonlySet<string>) =>
    [...names].reduce((sum, name) => sum + (shape.points[name]?.[axis] ?? 0), 0) / names.size;
  return new Map([...groups].map(([name, group]) => [name, mean(group)]));
}
