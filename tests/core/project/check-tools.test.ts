import { describe, expect, test } from 'vitest';
import { checkProject, newProject } from '#core/project';
import type { Project } from '#core/project';

const plain = newProject('Saws');
const withKerf = (kerf: number): Project => ({
  ...plain,
  tools: { ...plain.tools, sheetSaw: { ...plain.tools.sheetSaw, kerf } },
});
const withRouter = (cutter: number, passDepth: number): Project => ({
  ...plain,
  tools: { ...plain.tools, router: { cutter, passDepth } },
});
const refusals = (project: Project) =>
  checkProject(project).filter(({ code }) => code === 'value-out-of-range');

describe('tools that cannot be', () => {
  test('a kerf of 300 is refused with the value and the limits', () => {
    expect(refusals(withKerf(300))[0]?.message).toMatch(/is 300; it must be between 0 and 20/);
    expect(refusals(withKerf(-1))).toHaveLength(1);
    expect(refusals(withKerf(3.2))).toEqual([]);
  });

  test('a router pass of a millionth would never end', () => {
    expect(refusals(withRouter(6, 1e-6))[0]?.about).toBe('tools.router.passDepth');
    expect(refusals(withRouter(6, 3))).toEqual([]);
  });
});
