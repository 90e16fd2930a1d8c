import { test } from 'vitest';
import { readFileSync, writeFileSync } from 'node:fs';
import { visitChecklist, viewChecklist } from '#core/pipeline';
import { arrangePages, drawChecklist, roomOnPage } from '#core/drawing';
import { writePageSvg } from '#formats/svg';
import { readProject } from '#formats/json';
import { sampleShapes } from '../../support/sample-shapes.ts';
test('x', () => {
  const r = readProject(readFileSync('static/projects/curlew.json', 'utf8')); if (!r.ok) throw new Error('no');
  const project = { ...r.value, shapes: [...r.value.shapes, ...sampleShapes] };
  const { width } = roomOnPage('A4', false);
  const pages = arrangePages(viewChecklist(visitChecklist(project)).flatMap((b) => drawChecklist(b, width)), 'A4', 'Curlew · to measure');
  console.log(pages.length, visitChecklist(project).lines, visitChecklist(project).open);
  pages.forEach((p, i) => writeFileSync(`/tmp/chk-${i}.svg`, writePageSvg(p)));
});
