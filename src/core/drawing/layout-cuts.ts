import type { Box } from '#core/geometry';
import { boxesOverlap, drawCircle, drawLine, drawRectangle, drawText, lettering } from './marks.ts';
import type { LayoutCut, LayoutView } from './layout-view.ts';
import { textWidth } from './text-width.ts';
import type { Mark } from './types.ts';

const leastKerf = 0.2; // mm on paper; a kerf drawn thinner than this would not print

/** Saw lines as dark bars as wide as the kerf, each with its label at the margin where the saw enters. */
export function drawCuts(view: LayoutView, scale: number): readonly Mark[] {
  const taken: Box[] = [];
  const bars = view.cuts.map((cut) => drawKerf(cut, view.kerf * scale, scale));
  const labels = [...view.cuts]
    .sort((a, b) => a.order - b.order)
    .flatMap((cut) => drawCutLabel(cut, view, scale, taken));
  return [...bars, ...labels];
}

function drawKerf(cut: LayoutCut, kerf: number, scale: number): Mark {
  const half = Math.max(kerf, leastKerf) / 2;
  const along = Math.abs(cut.x2 - cut.x1) >= Math.abs(cut.y2 - cut.y1);
  const box = {
    minX: Math.min(cut.x1, cut.x2) * scale - (along ? 0 : half),
    maxX: Math.max(cut.x1, cut.x2) * scale + (along ? 0 : half),
    minY: Math.min(cut.y1, cut.y2) * scale - (along ? half : 0),
    maxY: Math.max(cut.y1, cut.y2) * scale + (along ? half : 0),
  };
  return drawRectangle(box, 'none', 'kerf', `cut:${cut.label}`);
}

/** A rip is labelled in a circle at the left margin, a crosscut by a flag at the top or in its strip; none cover another. */
function drawCutLabel(cut: LayoutCut, view: LayoutView, scale: number, taken: Box[]): readonly Mark[] {
  const along = Math.abs(cut.x2 - cut.x1) >= Math.abs(cut.y2 - cut.y1);
  const height = lettering.small;
  const link = `cut:${cut.label}`;
  const half = Math.max(textWidth(cut.label, height, 'bold') / 2 + 0.7, height * 0.85);
  const entry = { x: cut.x1 * scale, y: cut.y1 * scale };
  const atEdge = along
    ? Math.min(entry.x, view.stock.length * scale - entry.x) < 12
    : view.stock.width * scale - Math.max(entry.y, cut.y2 * scale) < 8;
  const outward = along ? (cut.x1 <= cut.x2 ? -1 : 1) : 1;
  for (let step = 0; step < 40; step++) {
    const at = along
      ? {
          x:
            (atEdge ? (outward < 0 ? 0 : view.stock.length * scale) : entry.x) +
            outward * (half + 1.5 + step * 2),
          y: entry.y,
        }
      : atEdge
        ? { x: entry.x, y: view.stock.width * scale + half + 1.2 + step * 2 }
        : {
            x: entry.x + (step % 2 ? -1 : 1) * Math.ceil(step / 2) * 0.8,
            y: Math.max(entry.y, cut.y2 * scale) - half - 0.3 - step * 0.4,
          };
    const patch = { minX: at.x - half, maxX: at.x + half, minY: at.y - half, maxY: at.y + half };
    if (taken.some((box) => boxesOverlap(box, patch))) continue;
    taken.push(patch);
    const leader = atEdge && step > 0 ? [drawLine([entry, at], 'thin', link)] : [];
    const text = drawText({ x: at.x, y: at.y - height / 2 }, cut.label, {
      height,
      align: 'middle',
      weight: 'bold',
      link,
    });
    return along
      ? [...leader, drawCircle(at, half, 'thin', 'paper'), text]
      : [...leader, drawRectangle(patch, 'thin', 'paper', link), text];
  }
  return [];
}
