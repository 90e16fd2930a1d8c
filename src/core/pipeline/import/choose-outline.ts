import { boxOfOutline, isInside, outlineArea, reverseOutline, type Outline } from '#core/geometry';
import type { Problem } from '#core/problems';
import { formatNumber } from '#core/units';

import { countWords } from '../words.ts';
import { joinPaths } from './join-paths.ts';
import type { DrawnFile, OutlineCandidate, OutlineChoice } from './types.ts';

/** Lines that end nearer to each other than this are meant to meet, mm (common practice, no source). */
const reach = 0.5;
/** Gaps up to this are the rounding of the file, mm. */
const unnoticed = 0.01;
/** Smaller than this is no locker and no door, mm (common practice, no source). */
const smallest = 5;

/**
 * The closed contours of a drawing, the largest first; `unit` is mm for one unit of the file, where the user knows better than
 * the file. No candidate when nothing in it is closed: the findings then say why.
 */
export function chooseOutline(file: DrawnFile, unit: number = file.unit ?? 1): OutlineChoice {
  const { closed, open } = joinPaths(file.paths, reach / unit);
  const scaled = closed
    .map(({ layer, points, gap }) => ({ layer, outline: scale(points, unit), gap: gap * unit }))
    .map((each) => ({ ...each, area: Math.abs(outlineArea(each.outline)), box: boxOfOutline(each.outline) }))
    .filter(({ box }) => Math.max(box.maxX - box.minX, box.maxY - box.minY) >= smallest)
    .sort((a, b) => b.area - a.area);
  const candidates = scaled.map(({ layer, outline, gap, area, box }, number): OutlineCandidate => {
    const inside = scaled.slice(number + 1).filter((other) => lies(other.outline, outline)).length;
    return {
      ...{ number, layer, outline, area, inside, gap },
      width: box.maxX - box.minX,
      height: box.maxY - box.minY,
    };
  });
  return { candidates, findings: [...file.findings, ...findUnit(file, unit), ...findOpen(candidates, open)] };
}

/** Counter-clockwise, in mm. */
function scale(points: Outline, unit: number): Outline {
  const scaled = points.map(({ x, y, bulge }) => ({ x: x * unit, y: y * unit, ...(bulge && { bulge }) }));
  return outlineArea(scaled) < 0 ? reverseOutline(scaled) : scaled;
}

function lies(inner: Outline, outer: Outline): boolean {
  const [first] = inner;
  return first !== undefined && isInside(first, outer);
}

function findUnit({ unit }: DrawnFile, used: number): readonly Problem[] {
  if (unit !== null) return [];
  return [
    {
      severity: 'warn',
      code: 'unit-unknown',
      message: `The drawing does not say in what unit it is; one unit is taken as ${formatNumber(used, 3)} mm.`,
      remedy: 'Compare a size that you know, or give the unit.',
    },
  ];
}

function findOpen(candidates: readonly OutlineCandidate[], open: number): readonly Problem[] {
  const gaps = candidates
    .filter(({ gap }) => gap > unnoticed)
    .map(({ gap, layer }): Problem => ({
      severity: 'note',
      code: 'gap-closed',
      message: `Lines of a contour on the layer "${layer}" ended ${formatNumber(gap, 2)} mm apart and were joined.`,
      remedy: 'Look whether the contour is as you drew it.',
    }));
  if (candidates.length > 0) return gaps;
  const message =
    open === 0
      ? 'The drawing holds no closed contour.'
      : `The drawing holds no closed contour: ${countWords(open, 'line')} ${open === 1 ? 'does' : 'do'} not lead back to ${open === 1 ? 'its' : 'their'} beginning.`;
  return [
    {
      severity: 'stop',
      code: 'no-contour',
      message,
      remedy: `Draw the outline as one closed line, or let its lines end within ${formatNumber(reach)} mm of each other.`,
    },
  ];
}
