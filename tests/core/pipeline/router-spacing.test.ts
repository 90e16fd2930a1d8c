import { expect, test } from 'vitest';
import { understandProject } from '#core/pipeline';
import { drawerProject } from '../../cli/sample-projects.ts';

// As printed in the trade rulebook's calculated example (joinery E, rule E7): a cutter of 8 and a web of 2.
test('parts on the router lie 10 apart for a cutter of 8', () => {
  const plain = drawerProject();
  const part = understandProject(plain)
    .pieces.flatMap(({ parts }) => parts)
    .find(({ kind }) => kind === 'sheet');
  const { routing } = understandProject({
    ...plain,
    tools: { ...plain.tools, router: { ...plain.tools.router, cutter: 8 } },
    routed: [part?.id ?? ''],
  });
  expect(routing.map(({ job }) => job.gap)).toEqual([10]);
});
