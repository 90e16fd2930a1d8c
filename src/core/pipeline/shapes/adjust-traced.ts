import { flattenOutline, type Point, type Shape, type ShapeEdge } from '#core/geometry';
import { hangShape, methods, sigmaOf, type Reading } from '#core/measuring';
import type { Problem } from '#core/problems';
import type { CheckBar, MeasuredOutline, TracedOutline } from '#core/project';
import { formatNumber } from '#core/units';

import type { ShapeOutcome } from '../types.ts';
import { findSelfCrossing } from './outline-shape.ts';
import { shapeFinding } from './shape-findings.ts';
import { obstructionsOf, plainAdjustment, pointsOf, withUncertainty } from './shape-parts.ts';

/** Arcs of a drawing stray at most this far from the lines drawn for them, mm. */
const flatness = 0.05;
/** A scale off by more is worth a word, or makes the drawing useless (joinery A9). */
const scaleLimits = { warn: 0.002, stop: 0.01 } as const;

/** An outline from a drawing, brought to scale by its check bars; readings between its corners only check it. Joinery A9. */
export function adjustTraced(shape: MeasuredOutline, traced: TracedOutline): ShapeOutcome {
  const { bars } = traced;
  const scale = { x: scaleOf(bars?.x ?? bars?.y), y: scaleOf(bars?.y ?? bars?.x) };
  const findings = findScale(shape.name, traced);
  const edges = edgesOf(shape.corners, traced, scale);
  if (!edges) return { shape, adjustment: plainAdjustment(shape.seenFrom, findings), adjusted: null };
  const sigma = traced.sigma ?? methods.M13.sigma(0);
  const order = shape.corners.flatMap((corner) => [`${corner}.x`, `${corner}.y`]);
  const drawn: Shape = {
    kind: 'outline',
    seenFrom: shape.seenFrom,
    points: Object.fromEntries(edges.map((edge) => [edge.from, edge.curve?.[0] ?? { x: 0, y: 0 }])),
    edges,
    order,
    covariance: order.map((_, i) => order.map((__, j) => (i === j ? sigma ** 2 : 0))),
    tilt: 0,
  };
  const [first = '', second = ''] = shape.corners;
  const hung = withUncertainty(hangShape(drawn, first, second));
  const adjusted = { ...hung, edges: hung.edges.map(straighten) };
  const checks = shape.readings.flatMap((reading) => checkReading(reading, adjusted, sigma));
  const adjustment = plainAdjustment(shape.seenFrom, [
    ...findings,
    ...findSelfCrossing(shape.name, adjusted),
    ...checks,
  ]);
  return {
    shape,
    adjustment: { ...adjustment, ...pointsOf(adjusted, adjustment) },
    adjusted: { ...adjusted, ...obstructionsOf(shape.obstructions) },
  };
}

function scaleOf(bar: CheckBar | undefined): number {
  return bar ? bar.real / bar.drawn : 1;
}

/** The edges with the whole way of each, in true size; null when the corners and the points do not go together. */
function edgesOf(
  corners: readonly string[],
  { points, cornersAt }: TracedOutline,
  scale: Point,
): readonly ShapeEdge[] | null {
  if (corners.length < 2 || cornersAt.length !== corners.length) return null;
  const ways = cornersAt.map((start, place) => {
    const end = cornersAt[(place + 1) % cornersAt.length] ?? start;
    const count = end > start ? end - start : end - start + points.length;
    const run = Array.from({ length: count + 1 }, (_, k) => points[(start + k) % points.length]);
    return run.every((point) => point !== undefined) ? run : [];
  });
  if (ways.some((way) => way.length < 2)) return null;
  return ways.map((way, place): ShapeEdge => {
    const last = way.at(-1) ?? { x: 0, y: 0 };
    // the way back from the last point is no part of the edge
    const flat = flattenOutline([...way.slice(0, -1), { x: last.x, y: last.y }], flatness);
    const [from, to] = [corners[place] ?? '', corners[(place + 1) % corners.length] ?? ''];
    const curve = flat.map(({ x, y }) => ({ x: x * scale.x, y: y * scale.y }));
    return { name: `${from}–${to}`, from, to, curve };
  });
}

/** An edge of two points is straight. */
function straighten(edge: ShapeEdge): ShapeEdge {
  if (!edge.curve || edge.curve.length > 2) return edge;
  const { name, from, to, sigma } = edge;
  return { name, from, to, ...(sigma !== undefined && { sigma }) };
}

function findScale(name: string, { bars }: TracedOutline): readonly Problem[] {
  const known = Object.entries(bars ?? {});
  if (known.length === 0)
    return [
      shapeFinding('warn', 'scale-unchecked', undefined, {
        message: `Nothing checks the scale of the drawing of ${name}.`,
        remedy:
          'Enter how far apart two marks lie in the drawing and how far apart they are aboard; both ways if paper shrinks.',
        source: 'joinery A9',
      }),
    ];
  return known.flatMap(([way, bar]: [string, CheckBar]): Problem[] => {
    const off = scaleOf(bar) - 1;
    if (Math.abs(off) <= scaleLimits.warn) return [];
    const message =
      `The drawing of ${name} is out of scale ${way === 'x' ? 'across' : 'upwards'}: ${formatNumber(bar.drawn)} in it are ` +
      `${formatNumber(bar.real)} aboard, ${formatNumber(Math.abs(off) * 100, 2)} % ${off > 0 ? 'more' : 'less'}.`;
    const isUseless = Math.abs(off) > scaleLimits.stop;
    return [
      shapeFinding(isUseless ? 'stop' : 'warn', 'scale-off', undefined, {
        message,
        remedy: isUseless
          ? 'Look at the unit of the drawing and at the two marks; draw it again if they are right.'
          : 'It has been corrected; look at the two marks once more.',
        source: 'joinery A9',
      }),
    ];
  });
}

/** A normal error stays within this many of its standard deviations 999 times in 1000 (joinery A4). */
const limit = 3.29;

/** What the tape says between two corners of a drawing that it does not agree with. */
function checkReading(reading: Reading, shape: Shape, sigma: number): readonly Problem[] {
  if (reading.kind !== 'distance') return [];
  const [from, to] = [shape.points[reading.from], shape.points[reading.to]];
  if (!from || !to) return [];
  const drawn = Math.hypot(to.x - from.x, to.y - from.y);
  const off = reading.value - drawn;
  const spread = Math.hypot(sigmaOf(reading), sigma * Math.SQRT2);
  if (Math.abs(off) <= limit * spread) return [];
  return [
    shapeFinding('stop', 'drawing-contradicts-tape', reading.id, {
      message: `From ${reading.from} to ${reading.to} the tape says ${formatNumber(reading.value)}, the drawing ${formatNumber(drawn)}: ${formatNumber(Math.abs(off))} ${off > 0 ? 'less' : 'more'}.`,
      remedy: 'Measure it again; if it stands, the drawing is wrong or its check bar is.',
      source: 'joinery A9',
    }),
  ];
}
