import { test } from 'vitest';
import { writeFileSync } from 'node:fs';
import * as D from '#core/drawing';
import { writeSvg, writePageSvg } from '#formats/svg';
import { writePdf } from '#formats/pdf';
import { nodeFonts } from '/work/main/src/formats/pdf/node-fonts.ts';
import * as S from '/work/main/tests/support/samples.ts';
test('look', async () => {
  const out: Record<string, D.Drawing> = {
    survey: D.drawSurvey(S.sampleSurvey),
    entered: D.drawSurvey({ ...S.sampleSurvey, shape: null, readings: S.sampleReadings.slice(0, 5) }),
    sketch: D.drawReadingSketch(S.sampleReadings[7]!),
    sketchpl: D.drawReadingSketch(S.sampleReadings[8]!),
    elevation: D.drawElevation(S.sampleFrame, { width: 180 }),
    exploded: D.drawExploded(S.sampleFrame, { width: 180 }),
    jamb: D.drawPart(S.sampleJamb, { width: 180 }),
    infill: D.drawPart(S.sampleInfill, { width: 180 }),
    side: D.drawPart(S.sampleDrawerSide, { width: 180 }),
    layout: D.drawLayout(S.sampleLayout),
    phone: D.drawLayout({ ...S.sampleLayout, width: 120 }),
    batten: D.drawLayout(S.sampleBatten),
  };
  for (const [k, d] of Object.entries(out)) writeFileSync(`/tmp/h4-look/${k}.svg`, writeSvg(d));
  for (const part of [S.sampleJamb, S.sampleInfill, S.sampleDrawerSide]) for (const f of D.drawRouterFiles(part, { cutter: 6, passDepth: 4 })) {
    writeFileSync(`/tmp/h4-look/${f.name}.dxf`, f.dxf); writeFileSync(`/tmp/h4-look/${f.name}-router.svg`, f.svg); console.log(f.name, f.layers, f.findings);
  }
  const fonts = nodeFonts();
  const info = { job: 'Curlew', piece: 'Saloon door frame', seenFrom: 'from the saloon, looking forward' };
  const save = async (name: string, pages: readonly D.Page[]) => { const t = performance.now(); const b = await writePdf(pages, { title: name, fonts }); console.log(name, pages.length, b.length, performance.now() - t); writeFileSync(`/tmp/h4-look/${name}.pdf`, b); };
  await save('template', D.drawTemplate(S.sampleInfill, 'A4', info));
  await save('template-jamb', D.drawTemplate(S.sampleJamb, 'A4', info));
  await save('labels', D.drawLabels(Array.from({ length: 16 }, (_, i) => S.sampleLabels[i % 2]!), 'A4'));
  await save('labels-stamp', D.drawLabels(S.sampleLabels, 'Letter', { stamp: 'DO NOT CUT' }));
  await save('pages', D.arrangePages([out.layout!, out.batten!, out.elevation!, out.exploded!, out.jamb!, out.side!, out.survey!], 'A4', 'Curlew, cutting'));
  await save('pages-stamp', D.arrangePages([out.layout!], 'A4', 'Curlew, cutting', { stamp: 'DO NOT CUT' }));
});
