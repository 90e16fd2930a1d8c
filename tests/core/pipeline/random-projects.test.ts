import {
  expandLayout,
  listTasks,
  makePlanFile,
  planGroups,
  summarise,
  understandProject,
} from '#core/pipeline';
import type { Piece } from '#core/joinery';
import type { Project } from '#core/project';
import { checkVisits, planVisits } from '#core/visits';
import { loadGlpk } from '#solver/glpk';
import { readPlanFile, writeJson } from '#formats/json';
import fc from 'fast-check';
import { expect, test } from 'vitest';

import { drawerProject, frameProject, frontProject, readOpening } from '../../cli/sample-projects.ts';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const skew = size(-10, 10);

const opening = fc
  .record({ width: size(300, 1200), height: size(300, 2100), a: skew, b: skew, c: skew, d: skew })
  .map(({ width, height, a, b, c, d }) =>
    readOpening({ BR: [width, a / 2], TR: [width + b, height], TL: [c, height + d] }),
  );

const frames = fc
  .record({
    readings: opening,
    corner: fc.constantFrom('rebate', 'tongue', 'housing-over', 'half-lap', 'mitre', 'butt'),
    sill: fc.boolean(),
    covers: fc.constantFrom('both', 'near', 'none'),
  })
  .map(({ readings, ...choices }) => change(frameProject(), choices, readings));

const drawers = fc
  .record({
    openingWidth: size(150, 850),
    openingHeight: size(60, 310),
    clearDepth: size(200, 600),
    corner: fc.constantFrom('box', 'through-dovetail', 'rebate', 'housed-back', 'butt'),
    front: fc.constantFrom('overlay', 'inset', 'none'),
    count: fc.integer({ min: 1, max: 4 }),
  })
  .map((choices) => change(drawerProject(), choices));

const fronts = fc
  .record({
    readings: opening,
    columns: fc.integer({ min: 1, max: 4 }),
    rows: fc.integer({ min: 1, max: 4 }),
    continuous: fc.constantFrom('none', 'tight', 'true'),
    grain: fc.constantFrom('vertical', 'horizontal'),
  })
  .map(({ readings, ...choices }) => change(frontProject(), choices, readings));

/** The project with these choices in all its pieces, its shape read anew. */
function change(
  project: Project,
  choices: object,
  readings?: Project['shapes'][number]['readings'],
): Project {
  return {
    ...project,
    pieces: project.pieces.map(
      (piece) => ({ ...piece, parameters: { ...piece.parameters, ...choices } }) as Piece,
    ),
    shapes: readings ? project.shapes.map((shape) => ({ ...shape, readings })) : project.shapes,
  };
}

test('always: a project of any sizes is planned soundly from readings to visits', async () => {
  const solveLp = await loadGlpk();
  fc.assert(
    fc.property(fc.oneof(frames, drawers, fronts), (project) => {
      const understanding = understandProject(project);
      // a plan that its checker refuses throws here
      const planned = planGroups(understanding.groups, { solveLp, clock: () => 0, work: 10 });
      const cut = new Map<string, number>();
      for (const { group, plan } of planned)
        for (const layout of plan.layouts)
          for (const { part } of expandLayout(group, layout))
            cut.set(part, (cut.get(part) ?? 0) + layout.times);
      const findings = [...understanding.findings, ...planned.flatMap(({ plan }) => plan.findings)];
      const isStopped = findings.some((finding) => finding.severity === 'stop');
      for (const part of understanding.pieces.flatMap((piece) => piece.parts)) {
        const times = cut.get(part.id) ?? 0;
        if (isStopped) expect(times).toBeLessThanOrEqual(part.quantity);
        else expect([part.id, times]).toEqual([part.id, part.quantity]);
      }
      const tasks = listTasks(project, understanding, planned);
      const visits = planVisits(tasks);
      expect(visits.undone).toEqual([]);
      expect(checkVisits(tasks, visits)).toEqual([]);
      const summary = summarise(project, understanding, planned, { findings, withheld: [], routed: [] });
      expect(summary).not.toMatch(/NaN|undefined|Infinity|\[object/);
      const file = makePlanFile(project, understanding, planned, { findings, routed: [] });
      expect(readPlanFile(writeJson(file)).ok).toBe(true);
    }),
    { numRuns: 40 },
  );
});
