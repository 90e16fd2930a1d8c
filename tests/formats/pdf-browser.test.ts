import { expect, test, vi } from 'vitest';
import { drawLabels, drawTemplate } from '#core/drawing';
import { writePdf } from '#formats/pdf';
import { nodeFonts } from '../../src/formats/pdf/node-fonts.ts';
import { sampleInfill, sampleLabels } from '../support/samples.ts';

// The app is bundled with the browser build of the PDF package; here it runs in Node in its place.
test('the browser build of the writer gives the same bytes', async () => {
  const info = { job: 'Curlew', piece: 'Saloon door frame', seenFrom: 'from the saloon, looking forward' };
  const pages = [...drawTemplate(sampleInfill, 'A4', info), ...drawLabels(sampleLabels, 'Letter')];
  const options = { title: 'Côté Ø8 ≥ 5', fonts: nodeFonts() };
  const inNode = await writePdf(pages, options);

  vi.resetModules();
  vi.doMock('pdfkit', () => import('../../node_modules/pdfkit/js/pdfkit.browser.mjs' as string));
  const browser = await import('#formats/pdf');
  expect(browser.writePdf).not.toBe(writePdf);
  const inBrowser = await browser.writePdf(pages, options);
  expect(Buffer.compare(inBrowser, inNode)).toBe(0);
  vi.doUnmock('pdfkit');
});
