import type { Shape, ShapeEdge } from '#core/geometry';
import { adjustSurvey, hangShape, mirrorShape, type Adjustment, type Reading } from '#core/measuring';
import type { Problem } from '#core/problems';
import type { MeasuredCurve, MeasuredOutline } from '#core/project';

import type { OrdinateSlip, ShapeOutcome } from '../types.ts';
import { countWords, listWords } from '../words.ts';
import { curveEdge } from './curved-edge.ts';
import { findSelfCrossing, signedArea } from './outline-shape.ts';
import { shapeFinding } from './shape-findings.ts';
import { asidesOf, obstructionsOf, pointsOf, withUncertainty } from './shape-parts.ts';

/** An outline by readings between its corners: one adjustment for any number of them, then its curved edges. */
export function adjustOutline(shape: MeasuredOutline): ShapeOutcome {
  const { corners, seenFrom, readings } = shape;
  const faults = findFaults(shape);
  const { adjustment, shape: found } = adjustSurvey({
    seenFrom,
    readings,
    ...(faults.length === 0 && { corners }),
  });
  const missing = faults.length > 0 ? faults : findUnmeasured(shape, found);
  if (missing.length > 0 || !found) {
    const findings = [...missing, ...adjustment.findings];
    return { shape, adjustment: { ...beginOutline(shape, adjustment), findings }, adjusted: null };
  }
  const turned = turnAround(found, shape);
  const [first = '', second = ''] = corners;
  const hung = hangShape(turned.shape, first, second);
  const edges = edgesOf(corners, readings, adjustment);
  const bent = bendEdges(withUncertainty({ ...hung, edges }), shape.curves ?? []);
  const crossing = findSelfCrossing(shape.name, bent.shape);
  const findings = [...turned.findings, ...bent.findings, ...crossing, ...adjustment.findings];
  return {
    shape,
    adjustment: { ...adjustment, ...pointsOf(hung, adjustment), findings },
    adjusted: {
      ...bent.shape,
      kind: 'outline',
      ...asidesOf(adjustment),
      ...obstructionsOf(shape.obstructions),
    },
    ...(bent.slips.length > 0 && { ordinateSlips: bent.slips }),
  };
}

/** Why these corners are no outline, whatever was read. */
function findFaults({ name, corners, curves }: MeasuredOutline): readonly Problem[] {
  const least = (curves ?? []).length > 0 ? 2 : 3;
  const twice = corners.find((corner, at) => corners.indexOf(corner) !== at);
  if (twice !== undefined)
    return [
      shapeFinding('stop', 'corners-alike', undefined, {
        message: `${name} cannot be worked out while two of its corners are called "${twice}".`,
        remedy: 'Give one of them another name.',
      }),
    ];
  if (corners.length >= least) return [];
  return [
    shapeFinding('warn', 'corners-few', undefined, {
      message: `${name} has ${countWords(corners.length, 'corner')}; an outline needs ${least} at least.`,
      remedy: 'Name its corners counter-clockwise as you see it.',
    }),
  ];
}

/** Corners that no reading that can be used touches. */
function findUnmeasured(
  { name, corners, readings }: MeasuredOutline,
  found: Shape | null,
): readonly Problem[] {
  const named = JSON.stringify(readings);
  const idle = corners.filter((corner) =>
    found ? !Object.hasOwn(found.points, corner) : !named.includes(JSON.stringify(corner)),
  );
  if (idle.length === 0) return [];
  return [
    shapeFinding('warn', 'corner-unmeasured', undefined, {
      message: `No reading of ${name} touches ${listWords(idle.map((corner) => `the corner ${corner}`))} yet.`,
      remedy: 'Measure from there to two other corners.',
    }),
  ];
}

/** An outline has no sill to begin with. */
function beginOutline({ corners, readings }: MeasuredOutline, adjustment: Adjustment): Adjustment {
  const [from, to] = corners;
  if (readings.length > 0 || from === undefined || to === undefined) return adjustment;
  return { ...adjustment, advice: `Measure from ${from} to ${to} first.` };
}

interface Turned {
  readonly shape: Shape;
  readonly findings: readonly Problem[];
}

/** The hand of distances is that of the corners, which go round counter-clockwise; readings that tell it have the last word. */
function turnAround(shape: Shape, { corners, readings }: MeasuredOutline): Turned {
  const area = signedArea(corners.flatMap((corner) => shape.points[corner] ?? []));
  if (area >= 0) return { shape, findings: [] };
  if (!tellsHand(readings)) return { shape: mirrorShape(shape), findings: [] };
  const finding = shapeFinding('stop', 'corners-clockwise', undefined, {
    message: `By the readings the corners ${corners.join(', ')} go round clockwise as seen.`,
    remedy:
      'List them the other way round; or look whether a side, an angle or left and right were exchanged.',
    source: 'joinery 0.1, A5 E11',
  });
  return { shape, findings: [finding] };
}

/** True when readings tell an outline from its mirror image: signed ones, or plumb and level together. */
function tellsHand(readings: readonly Reading[]): boolean {
  const has = (...kinds: readonly Reading['kind'][]) => readings.some(({ kind }) => kinds.includes(kind));
  return has('offset', 'angle', 'ordinate', 'tick') || (has('plumb') && has('level'));
}

function edgesOf(
  corners: readonly string[],
  readings: readonly Reading[],
  { readings: adjusted }: Adjustment,
): readonly ShapeEdge[] {
  return corners.map((from, at) => {
    const to = corners[(at + 1) % corners.length] ?? from;
    const bow = readings.find(
      (reading) =>
        reading.kind === 'bow' && [from, to].includes(reading.from) && [from, to].includes(reading.to),
    );
    const value = adjusted.find(({ id }) => id === bow?.id)?.adjusted;
    return { name: `${from}–${to}`, from, to, ...(value !== undefined && { bow: value }) };
  });
}

interface Bent {
  readonly shape: Shape;
  readonly slips: readonly OrdinateSlip[];
  readonly findings: readonly Problem[];
}

/** The shape with its curved edges; an edge whose ordinates make no curve stays straight, and a finding says so. */
function bendEdges(shape: Shape, curves: readonly MeasuredCurve[]): Bent {
  const bent = shape.edges.map((edge) => {
    const curve = curves.find(({ from, to }) => from === edge.from && to === edge.to);
    const [from, to] = [shape.points[edge.from], shape.points[edge.to]];
    if (!curve || !from || !to) return { edge, slips: [], findings: [] };
    const made = curveEdge(curve, from, to);
    const sigma = Math.hypot(edge.sigma ?? 0, made.sigma);
    return {
      edge: made.curve ? { ...edge, curve: made.curve, sigma } : edge,
      slips: made.slips,
      findings: made.findings,
    };
  });
  return {
    shape: { ...shape, edges: bent.map(({ edge }) => edge) },
    slips: bent.flatMap(({ slips }) => slips),
    findings: bent.flatMap(({ findings }) => findings),
  };
}
