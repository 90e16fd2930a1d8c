import type { Drawing } from '#core/drawing';
import { boxOfOutline } from '#core/geometry';
import { chooseOutline, type DrawnFile, type OutlineCandidate } from '#core/pipeline';
import { fail, type Result } from '#core/problems';
import type { CheckBar, TracedOutline } from '#core/project';
import { readDxfDrawing } from '#formats/dxf';
import { readSvgDrawing } from '#formats/svg';
import { omit } from '../omit.ts';

/** The lines of a drawing by the ending of its name. Fails with a sentence when it is neither DXF nor SVG. */
export function readDrawingFile(name: string, text: string): Result<DrawnFile> {
  const ending = name.toLowerCase().split('.').at(-1);
  if (ending === 'dxf') return readDxfDrawing(text);
  if (ending === 'svg') return readSvgDrawing(text);
  return fail({
    severity: 'stop',
    code: 'drawing-unknown',
    message: `"${name}" is neither a DXF nor an SVG file.`,
    remedy: 'Save the drawing as DXF (text) or as SVG.',
  });
}

/** Units a drawing may have been made in, mm each. */
export const drawingUnits = [
  { value: '1', label: 'millimetres' },
  { value: '10', label: 'centimetres' },
  { value: '25.4', label: 'inches' },
  { value: '1000', label: 'metres' },
] as const;

/** A length in the drawing that can be measured aboard too. */
export interface Bar {
  readonly way: 'x' | 'y';
  readonly label: string;
  /** mm in the drawing. */
  readonly drawn: number;
}

/** Straight lines drawn by themselves, the longest first, then the contour's own width and height. */
export function barsOf(file: DrawnFile, candidate: OutlineCandidate, unit: number): readonly Bar[] {
  const lines = file.paths.flatMap(({ points, closed, layer }): readonly Bar[] => {
    const [a, b, more] = points;
    if (closed || !a || !b || more || a.bulge) return [];
    const [across, up] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
    const way = across >= up ? 'x' : 'y';
    return [{ way, drawn: Math.hypot(across, up) * unit, label: `the line on the layer "${layer}"` }];
  });
  return [
    ...lines.sort((a, b) => b.drawn - a.drawn),
    { way: 'x', drawn: candidate.width, label: 'the whole width' },
    { way: 'y', drawn: candidate.height, label: 'the whole height' },
  ];
}

/** The first bar of each way with what was measured aboard; nothing where nothing was. */
export function checkBars(
  bars: readonly Bar[],
  real: Readonly<Partial<Record<Bar['way'], number>>>,
): NonNullable<TracedOutline['bars']> {
  const barOf = (way: Bar['way']): CheckBar | undefined => {
    const drawn = bars.find((bar) => bar.way === way)?.drawn;
    const length = real[way];
    return drawn === undefined || length === undefined ? undefined : { drawn, real: length };
  };
  const [x, y] = [barOf('x'), barOf('y')];
  return { ...(x && { x }), ...(y && { y }) };
}

/** The check bar of one way as it is kept, or the whole size of the drawing where there is none yet. */
export function tracedBar(
  { points, bars }: TracedOutline,
  way: Bar['way'],
): { readonly drawn: number; readonly real?: number; readonly isWhole: boolean } {
  const bar = bars?.[way];
  if (bar) return { ...bar, isWhole: false };
  const box = boxOfOutline(points);
  return { drawn: way === 'x' ? box.maxX - box.minX : box.maxY - box.minY, isWhole: true };
}

/** The drawing with what a bar measures aboard; null forgets the bar. */
export function withBar(traced: TracedOutline, way: Bar['way'], real: number | null): TracedOutline {
  const { bars = {}, ...plain } = traced;
  const { drawn } = tracedBar(traced, way);
  const others = omit(bars, way);
  const next = real === null ? others : { ...others, [way]: { drawn, real } };
  return Object.keys(next).length === 0 ? plain : { ...plain, bars: next };
}

/** mm of paper. */
const sketchSize = 40;

/** A contour as a small drawing to choose by. */
export function sketchContour({ outline, width, height, number }: OutlineCandidate): Drawing {
  const scale = sketchSize / Math.max(width, height, 1);
  const points = outline.map((point) => ({ ...point, x: point.x * scale, y: point.y * scale }));
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const margin = 2;
  return {
    title: `Contour ${number + 1}`,
    scale,
    bounds: {
      minX: Math.min(...xs) - margin,
      maxX: Math.min(...xs) + width * scale + margin,
      minY: Math.min(...ys) - margin,
      maxY: Math.min(...ys) + height * scale + margin,
    },
    marks: [{ kind: 'path', points, closed: true, pen: 'cut', fill: 'paper' }],
  };
}

/** The contours of a drawing to choose from. */
export const contoursOf = chooseOutline;
