import { ordinateId, type ShapeOutcome } from '#core/pipeline';
import type { HullSection, MeasuredSections } from '#core/project';
import { formatNumber } from '#core/units';
import type { SiteTask } from './task.ts';

/** Heights apart unless the user began otherwise, mm (joinery A10). */
const usualStep = 100;

/** The ordinates of each hull section from the lowest up, and the next one of it. */
export function sectionTasks(
  { ordinateSlips = [] }: ShapeOutcome,
  shape: MeasuredSections,
): readonly SiteTask[] {
  return shape.sections.flatMap((section) => {
    const slips = ordinateSlips.filter(({ item }) => item === section.id).flatMap(({ at }) => at);
    const taken = section.ordinates.map(({ height, depth }, place) =>
      depthTask(section, height, { values: [depth], isOff: slips.includes(place) }),
    );
    return [...taken, depthTask(section, nextHeight(section), { values: [], isOff: false })];
  });
}

function nextHeight({ ordinates }: HullSection): number {
  const [first, second] = ordinates;
  const last = ordinates.at(-1);
  if (!last) return 0;
  return last.height + (first && second ? second.height - first.height : usualStep);
}

/** The hull at a height of a section. */
export function depthTask(
  section: HullSection,
  height: number,
  state: Pick<SiteTask, 'values' | 'isOff'>,
): SiteTask {
  const level = formatNumber(height, 1);
  return {
    id: ordinateId(section.id, height),
    words: `${section.name}: hull at height ${level}`,
    where: `${level} mm up: from the plane of the fronts, square back to the bare hull.`,
    unit: 'mm',
    isSigned: true,
    place: null,
    goal: { kind: 'depth', section: section.id, height },
    ...{ reading: null, adjusted: null, suspect: null },
    ...state,
  };
}
