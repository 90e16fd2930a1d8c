import type { ShapeSection } from '#core/geometry';
import { adjustSurvey, fitOrdinates, methods } from '#core/measuring';
import { readSpline } from '#core/numerics';
import type { Problem } from '#core/problems';
import type { HullSection, MeasuredSections } from '#core/project';
import { formatNumber } from '#core/units';

import type { OrdinateSlip, ShapeOutcome } from '../types.ts';
import { saidOf, shapeFinding } from './shape-findings.ts';
import { asidesOf, obstructionsOf, plainAdjustment } from './shape-parts.ts';

/** Steps up a section, mm; its ordinates are among them. */
const step = 10;
const mostSteps = 400;
/** Further apart than this the hull between two sections is guessed, mm (joinery A10, row 7). */
const widestGap = 900;

/** The hull behind a piece: each section a spline through its ordinates. Null when no section makes a line. Joinery A6. */
export function adjustSections(shape: MeasuredSections): ShapeOutcome {
  const sections = shape.sections.toSorted((a, b) => a.at - b.at);
  const start = sections[0]?.at ?? 0;
  const made = sections.map((section) => makeSection(section, start));
  const lines = made.flatMap(({ line }) => line ?? []);
  const adjustment = adjustAside(shape, [
    ...findSpread(shape.name, sections),
    ...made.flatMap(({ findings }) => findings),
  ]);
  const slips = made.flatMap((each) => each.slips);
  const none = { points: {}, edges: [], order: [], covariance: [], tilt: 0 };
  return {
    shape,
    adjustment,
    adjusted:
      lines.length === 0
        ? null
        : {
            ...{ kind: 'sections', seenFrom: shape.seenFrom, ...none, sections: lines },
            ...asidesOf(adjustment),
            ...obstructionsOf(shape.obstructions?.map((each) => nameSection(each, sections))),
          },
    ...(slips.length > 0 && { ordinateSlips: slips }),
  };
}

/** Readings beside the sections, as thicknesses, are adjusted as ever; without any there is no network. */
function adjustAside({ seenFrom, readings }: MeasuredSections, findings: readonly Problem[]) {
  if (readings.length === 0) return plainAdjustment(seenFrom, findings);
  const { adjustment } = adjustSurvey({ seenFrom, readings });
  return { ...adjustment, findings: [...findings, ...adjustment.findings] };
}

/** An obstruction with the name of its section, by which the shape knows it. */
function nameSection<T extends { readonly section?: string }>(each: T, sections: readonly HullSection[]): T {
  const name = sections.find(({ id }) => id === each.section)?.name;
  return name === undefined ? each : { ...each, section: name };
}

function findSpread(name: string, sections: readonly HullSection[]): readonly Problem[] {
  if (sections.length === 0)
    return [
      shapeFinding('warn', 'sections-none', undefined, {
        message: `${name} has no section yet.`,
        remedy:
          'Take the hull from the plane of the fronts at both ends of the piece, every 100 mm of height.',
        source: 'joinery A10',
      }),
    ];
  if (sections.length === 1)
    return [
      shapeFinding('warn', 'sections-one', undefined, {
        message: `${name} has one section only, so the hull is taken to be the same all along.`,
        remedy: 'Take another at the other end of the piece.',
        source: 'joinery A10',
      }),
    ];
  return sections.slice(1).flatMap((section, at) => {
    const before = sections[at] ?? section;
    const gap = section.at - before.at;
    if (gap <= widestGap) return [];
    return [
      shapeFinding('warn', 'sections-far-apart', section.id, {
        message: `Between the sections "${before.name}" and "${section.name}" the hull is guessed over ${formatNumber(gap)} mm.`,
        remedy: `Take one more between them; at most ${widestGap} mm apart.`,
        source: 'joinery A10',
      }),
    ];
  });
}

interface Made {
  readonly line: ShapeSection | null;
  readonly slips: readonly OrdinateSlip[];
  readonly findings: readonly Problem[];
}

function makeSection(section: HullSection, start: number): Made {
  const { id, name, ordinates } = section;
  const sigma = section.sigma ?? methods.M9.sigma(0);
  const heights = ordinates.map(({ height }) => height);
  const fitted = fitOrdinates({ stations: heights, ordinates: ordinates.map(({ depth }) => depth), sigma });
  const subject = `Section "${name}"`;
  if (!fitted.ok) return { line: null, slips: [], findings: saidOf(subject, id, fitted.problems) };
  const { spline, doubts, findings } = fitted.value;
  return {
    line: {
      name,
      at: section.at - start,
      line: sampleHeights(heights).map((y) => ({ x: readSpline(spline, y).value, y })),
      bevels: (section.bevels ?? []).map(({ height, degrees }) => ({
        height,
        angle: (degrees * Math.PI) / 180,
      })),
      sigma,
    },
    slips: doubts.map(({ at, slip }) => ({ item: id, at, slip })),
    findings: saidOf(subject, id, findings),
  };
}

/** The ordinates' own heights and steps between them, rising. */
function sampleHeights(heights: readonly number[]): readonly number[] {
  const total = (heights.at(-1) ?? 0) - (heights[0] ?? 0);
  const size = Math.max(step, total / mostSteps);
  return heights.flatMap((from, at) => {
    const to = heights[at + 1];
    if (to === undefined) return [from];
    const count = Math.max(1, Math.ceil((to - from) / size));
    return Array.from({ length: count }, (_, k) => from + ((to - from) * k) / count);
  });
}
