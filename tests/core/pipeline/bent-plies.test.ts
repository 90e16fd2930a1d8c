import { expect, test } from 'vitest';
import { newPiece } from '#core/joinery';
import { understandProject } from '#core/pipeline';
import { newProject } from '#core/project';
import { writeRouterFiles } from '#formats/bundle';
import { nodeFonts } from '../../../src/formats/pdf/node-fonts.ts';
import { usualMaterials } from '../../support/flat-pieces.ts';

test('plies are sawn as flat strips: no router file cuts them to the shape they are bent to', () => {
  const head = newPiece('curved-head', { id: 'h', letter: 'H', name: 'Head', materials: usualMaterials });
  const project = { ...newProject('Curlew'), materials: usualMaterials, pieces: [head] };
  const understanding = understandProject(project);
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  const plies = parts.filter(({ bent }) => bent);
  expect(plies.length).toBeGreaterThan(1);
  for (const { cut, finished } of plies) expect(cut.thickness).toBeLessThan(finished.thickness);
  const source = { project, understanding, planned: [], routed: [], fonts: nodeFonts() };
  const paths = writeRouterFiles({ ...source, blocked: new Map() }).files.map(({ path }) => path);
  for (const { id } of plies) expect(paths.filter((path) => path.startsWith(`router/${id}-`))).toEqual([]);
  const mould = parts.find(({ name }) => name.startsWith('Mould'));
  expect(paths).toContain(`router/${mould?.id}-face.dxf`);
});
