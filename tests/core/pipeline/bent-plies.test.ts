import { expect, test } from 'vitest';
import { newPiece } from '#core/joinery';
import { understandProject } from '#core/pipeline';
import { newProject } from '#core/project';
import { drawPages, writeRouterFiles } from '#formats/bundle';
import { nodeFonts } from '../../../src/formats/pdf/node-fonts.ts';
import { usualMaterials } from '../../support/flat-pieces.ts';

function bentHead() {
  const head = newPiece('curved-head', { id: 'h', letter: 'H', name: 'Head', materials: usualMaterials });
  const project = { ...newProject('Curlew'), materials: usualMaterials, pieces: [head] };
  const understanding = understandProject(project);
  const parts = understanding.pieces.flatMap((piece) => piece.parts);
  const plies = parts.filter(({ bent }) => bent);
  const mould = parts.find(({ name }) => name.startsWith('Mould'));
  const source = { project, understanding, planned: [], routed: [], fonts: nodeFonts() };
  return { plies, mould, source };
}

test('what is bent has no full-size template, as its strip is a plain rectangle, and says so; its mould has one', () => {
  const { plies, mould, source } = bentHead();
  const titles = drawPages(source).templates.map(({ title }) => title);
  const hasPages = (id: string | undefined): boolean => titles.some((title) => title.startsWith(`${id} `));
  expect(plies.map(({ id }) => hasPages(id))).toEqual(plies.map(() => false));
  expect(hasPages(mould?.id)).toBe(true);
  for (const { notes } of plies)
    expect(notes.join(' ')).toContain('without a full-size template: the mould has the curve');
});

test('plies are sawn as flat strips: no router file cuts them to the shape they are bent to', () => {
  const { plies, mould, source } = bentHead();
  expect(plies.length).toBeGreaterThan(1);
  for (const { cut, finished } of plies) expect(cut.thickness).toBeLessThan(finished.thickness);
  const paths = writeRouterFiles({ ...source, blocked: new Map() }).files.map(({ path }) => path);
  for (const { id } of plies) expect(paths.filter((path) => path.startsWith(`router/${id}-`))).toEqual([]);
  expect(paths).toContain(`router/${mould?.id}-face.dxf`);
});
