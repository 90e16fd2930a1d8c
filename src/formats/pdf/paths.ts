import { arcBetween, boxOfOutline } from '#core/geometry';
import type { PathPoint } from '#core/geometry';
import { fillLook, penLook } from '#core/drawing';
import type { Hatch, Mark } from '#core/drawing';
import { pdfColours, points } from './space.ts';
import type { Space } from './space.ts';

type PathMark = Extract<Mark, { kind: 'path' }>;
type Document = PDFKit.PDFDocument;

/** Draws a path: its ground, its hatching as real lines clipped to the area, and its line. */
export function strokePath(document: Document, mark: PathMark, space: Space): void {
  if (mark.points.length === 0) return;
  const { ground, hatch } = fillLook(mark.fill ?? 'none');
  if (ground) {
    tracePath(document, mark, space);
    document.fillColor(pdfColours[ground]).fill();
  }
  if (hatch) drawHatch(document, mark, hatch, space);
  const pen = penLook(mark.pen);
  if (pen.width === 0) return;
  tracePath(document, mark, space);
  setDash(document, pen.dash);
  document
    .lineJoin('round')
    .lineWidth(pen.width * points)
    .strokeColor(pdfColours[pen.tone])
    .stroke();
}

function setDash(document: Document, dash: readonly number[]): void {
  if (dash.length === 0) document.undash();
  else document.dash(dash.map((d) => d * points) as unknown as number, {});
}

function tracePath(document: Document, mark: PathMark, space: Space): void {
  const { points: corners, closed } = mark;
  const first = corners[0] as PathPoint;
  const start = space(first);
  document.moveTo(start.x, start.y);
  for (let i = 1; i < corners.length; i++)
    traceSide(document, corners[i - 1] as PathPoint, corners[i] as PathPoint, space);
  if (!closed) return;
  const last = corners.at(-1) as PathPoint;
  if (last.bulge) traceSide(document, last, first, space);
  document.closePath();
}

/** A line, or an arc as curves of at most a quarter turn (within 0.03 % of the radius; from memory). */
function traceSide(document: Document, from: PathPoint, to: PathPoint, space: Space): void {
  const arc = arcBetween(from, to, from.bulge ?? 0);
  if (!arc) {
    const end = space(to);
    document.lineTo(end.x, end.y);
    return;
  }
  const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / (Math.PI / 2) - 1e-9));
  const step = arc.sweep / pieces;
  const handle = (4 / 3) * Math.tan(step / 4) * arc.radius;
  for (let i = 0; i < pieces; i++) {
    const [a, b] = [arc.start + i * step, arc.start + (i + 1) * step];
    const at = (angle: number, along: number) =>
      space({
        x: arc.centre.x + arc.radius * Math.cos(angle) - along * Math.sin(angle),
        y: arc.centre.y + arc.radius * Math.sin(angle) + along * Math.cos(angle),
      });
    const [p, q, end] = [at(a, handle), at(b, -handle), at(b, 0)];
    document.bezierCurveTo(p.x, p.y, q.x, q.y, end.x, end.y);
  }
}

function drawHatch(document: Document, mark: PathMark, hatch: Hatch, space: Space): void {
  document.save();
  tracePath(document, mark, space);
  document.clip();
  setDash(document, hatch.dash);
  document.lineWidth(hatch.width * points).strokeColor(pdfColours[hatch.tone]);
  for (const angle of hatch.cross ? [hatch.angle, hatch.angle + 90] : [hatch.angle]) {
    traceHatchLines(document, mark, { ...hatch, angle }, space);
  }
  document.stroke().restore();
}

/** Parallel lines over the box of the path, at whole multiples of the gap from the origin so that neighbours line up. */
function traceHatchLines(document: Document, mark: PathMark, hatch: Hatch, space: Space): void {
  const box = boxOfOutline(mark.points);
  const angle = (hatch.angle * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const corners = [box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => ({ x, y })));
  const along = corners.map((p) => p.x * c + p.y * s);
  const across = corners.map((p) => p.y * c - p.x * s);
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const first = Math.ceil(Math.min(...across) / hatch.gap);
  const last = Math.floor(Math.max(...across) / hatch.gap);
  for (let k = first; k <= last; k++) {
    const off = k * hatch.gap;
    const a = space({ x: low * c - off * s, y: low * s + off * c });
    const b = space({ x: high * c - off * s, y: high * s + off * c });
    document.moveTo(a.x, a.y).lineTo(b.x, b.y);
  }
}
