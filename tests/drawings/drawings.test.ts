import { describe, expect, test } from 'vitest';
import {
  boxOfMark,
  drawChecklist,
  drawElevation,
  drawExploded,
  drawLayout,
  drawPart,
  drawReadingSketch,
  drawRouterFiles,
  drawSurvey,
} from '#core/drawing';
import type { Drawing } from '#core/drawing';
import { adjustShape, viewShape } from '#core/pipeline';
import type { MeasuredShape } from '#core/project';
import { writeSvg } from '#formats/svg';
import { expectFile } from '../support/expected-file.ts';
import { bowLocker, galleyHull, saloonWalls, tracedHatch } from '../support/sample-shapes.ts';
import {
  sampleBatten,
  sampleHeadToTail,
  sampleDrawerSide,
  sampleFrame,
  sampleInfill,
  sampleJamb,
  sampleLayout,
  sampleReadings,
  sampleSurvey,
} from '../support/samples.ts';

const expected = (name: string) => new URL(`./expected/${name}`, import.meta.url).pathname;

/** The first drawing of a shape as it was measured. */
function shapeDrawing(shape: MeasuredShape): Drawing {
  const [drawing] = viewShape(adjustShape(shape), { width: 180 });
  if (!drawing) throw new Error(`nothing to draw of ${shape.name}`);
  return drawing;
}

const [checklistLine] = drawChecklist(
  {
    title: 'Door opening, for A Frame',
    subtitle: 'seen from the saloon',
    rows: [
      {
        ...{ text: 'Bottom width', where: 'Along the sill, from jamb to jamb.', note: 'mm · steel tape' },
        ...{ blanks: 1, again: true, isDone: true, values: ['641', '641.5'] },
        sketch: drawReadingSketch({ kind: 'distance', from: 'BL', to: 'BR' }, 13),
      },
    ],
  },
  180,
) as [Drawing];

const examples: Readonly<Record<string, Drawing>> = {
  'survey-with-suspect': drawSurvey(sampleSurvey),
  'survey-not-fixed': drawSurvey({ ...sampleSurvey, shape: null, readings: sampleReadings.slice(0, 5) }),
  'survey-outline': shapeDrawing(bowLocker),
  'survey-walls': shapeDrawing(saloonWalls),
  'survey-traced': shapeDrawing(tracedHatch),
  'hull-section': shapeDrawing(galleyHull),
  'checklist-line': checklistLine,
  'sketch-width': drawReadingSketch({ kind: 'width', left: ['BL', 'TL'], right: ['BR', 'TR'], at: 0.5 }),
  'sketch-plumb': drawReadingSketch({ kind: 'plumb', from: 'BL', to: 'TL' }),
  'frame-elevation': drawElevation(sampleFrame, { width: 180 }),
  'frame-exploded': drawExploded(sampleFrame, { width: 180 }),
  'part-long': drawPart(sampleJamb, { width: 180 }),
  'part-scribed': drawPart(sampleInfill, { width: 180 }),
  'part-drawer-side': drawPart(sampleDrawerSide, { width: 180 }),
  'layout-sheet': drawLayout(sampleLayout),
  'layout-phone': drawLayout({ ...sampleLayout, width: 120 }),
  'layout-batten': drawLayout(sampleBatten),
  'layout-head-to-tail': drawLayout(sampleHeadToTail),
};

describe.each(Object.entries(examples))('%s', (name, drawing) => {
  test('is drawn as before', () => {
    expectFile(expected(`${name}.svg`), writeSvg(drawing));
  });

  test('lies whole within its bounds', () => {
    const { minX, minY, maxX, maxY } = drawing.bounds;
    for (const box of drawing.marks.map(boxOfMark)) {
      expect(box.minX).toBeGreaterThanOrEqual(minX - 1e-9);
      expect(box.minY).toBeGreaterThanOrEqual(minY - 1e-9);
      expect(box.maxX).toBeLessThanOrEqual(maxX + 1e-9);
      expect(box.maxY).toBeLessThanOrEqual(maxY + 1e-9);
    }
  });

  test('holds no number that is none', () => {
    expect(JSON.stringify(drawing)).not.toMatch(/null/);
  });
});

test('router files are written as before', () => {
  for (const file of drawRouterFiles(sampleDrawerSide, { cutter: 6, passDepth: 4 })) {
    expectFile(expected(`${file.name}.dxf`), file.dxf);
    expectFile(expected(`${file.name}-router.svg`), file.svg);
  }
});
