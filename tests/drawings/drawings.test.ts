import { describe, expect, test } from 'vitest';
import {
  boxOfMark,
  drawElevation,
  drawExploded,
  drawLayout,
  drawPart,
  drawReadingSketch,
  drawRouterFiles,
  drawSurvey,
} from '#core/drawing';
import type { Drawing } from '#core/drawing';
import { writeSvg } from '#formats/svg';
import { expectFile } from '../support/expected-file.ts';
import {
  sampleBatten,
  sampleDrawerSide,
  sampleFrame,
  sampleInfill,
  sampleJamb,
  sampleLayout,
  sampleReadings,
  sampleSurvey,
} from '../support/samples.ts';

const expected = (name: string) => new URL(`./expected/${name}`, import.meta.url).pathname;

const examples: Readonly<Record<string, Drawing>> = {
  'survey-with-suspect': drawSurvey(sampleSurvey),
  'survey-not-fixed': drawSurvey({ ...sampleSurvey, shape: null, readings: sampleReadings.slice(0, 5) }),
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
