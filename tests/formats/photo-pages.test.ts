import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { boxOfMark, drawPhoto, readPictureSize } from '#core/drawing';
import { understandProject } from '#core/pipeline';
import { newProject, type Photo } from '#core/project';
import { drawPages } from '#formats/bundle';
import { writePdf } from '#formats/pdf';
import { writePageSvg } from '#formats/svg';
import { nodeFonts } from '../../src/formats/pdf/node-fonts.ts';
import { haveTool, runTool } from '../support/outside-tools.ts';
import { bowLocker, samplePhoto } from '../support/sample-shapes.ts';

/** A picture of 60 by 40 dots from red to blue, made with ImageMagick. */
const picture =
  'data:image/jpeg;base64,/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAMCAgICAgMCAgIDAwMDBAYEBAQEBAgGBgUGCQgKCgkICQkKDA8MCgsOCwkJDRENDg8QEBEQCgwSExIQEw8QEBD/2wBDAQMDAwQDBAgEBAgQCwkLEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBD/wAARCAAoADwDAREAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAUI/8QAGRAAAgMBAAAAAAAAAAAAAAAAABQBUWJh/8QAFgEBAQEAAAAAAAAAAAAAAAAAAAcJ/8QAFhEAAwAAAAAAAAAAAAAAAAAAABVh/9oADAMBAAIRAxEAPwDNTZNUsNMG9DYSwN6Gwlgb0NhLA3obCWBvQ2EsDehsJYG9DYSwN6RW9FdSQl7ehvQSQN6G9BJA3ob0EkDehvQSQN6G9BJA3ob0EkDehvQSQN6RW9FeSwlrehvQSwN6G9BLA3ob0EsDehvQSwN6G9BLA3ob0EsDehvQSwN6RW5srqSEub0NzYSQN6G5sJIG9Dc2EkDehubCSBvQ3NhJA3obmwkgb0NzYSQN6RXOyV1JCXN6HOyEkDehzshJA3oc7ISQN6HOyEkDehzshJA3oc7ISQN6HOyEkDen/9k=';
const photo: Photo = {
  ...{ id: 'bow', caption: 'The stringer behind the lining', image: picture },
  strokes: [
    {
      points: [
        { x: 0, y: 0 },
        { x: 1, y: 0.5 },
      ],
    },
  ],
};
const project = { ...newProject('Photos'), shapes: [{ ...bowLocker, photos: [photo, samplePhoto] }] };
const fonts = nodeFonts();
const source = { project, understanding: understandProject(project), planned: [], routed: [], fonts };
const pages = drawPages(source).checklists;
const folder = mkdtempSync(join(tmpdir(), 'joggle-photo-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a photo on paper', () => {
  test('keeps its shape, and what was drawn on it stands where it was drawn', () => {
    const { pictures, marks } = drawPhoto(photo, { width: 150, height: 118 });
    const { box } = pictures![0]!;
    expect((box.maxX - box.minX) / (box.maxY - box.minY)).toBeCloseTo(60 / 40, 6);
    const stroke = marks.find((mark) => mark.kind === 'path' && !mark.closed)!;
    expect(boxOfMark(stroke)).toEqual({
      minX: 0,
      maxX: 150,
      minY: expect.closeTo(50, 6),
      maxY: expect.closeTo(100, 6),
    });
  });

  test('its size is read from the head of a JPEG and of a PNG; of anything else nothing is known', () => {
    expect(readPictureSize(picture)).toEqual({ width: 60, height: 40, format: 'jpeg' });
    expect(readPictureSize(samplePhoto.image)).toEqual({ width: 1, height: 1, format: 'png' });
    expect(readPictureSize('data:image/webp;base64,UklGRiQAAABXRUJQ')).toBeNull();
    expect(readPictureSize('no picture')).toBeNull();
    expect(readPictureSize(picture.slice(0, 60))).toBeNull();
  });

  test('a picture that cannot be printed is said to be one', () => {
    const drawing = drawPhoto(
      { ...photo, image: 'data:image/webp;base64,UklG' },
      { width: 150, height: 118 },
    );
    expect(drawing.pictures).toBeUndefined();
    expect(JSON.stringify(drawing.marks)).toContain('neither JPEG nor PNG');
  });
});

describe('the checklists of a project with photos', () => {
  test('end with them, each with its caption', () => {
    const printed = pages.flatMap((page) => page.items).filter(({ drawing }) => drawing.pictures);
    expect(printed.map(({ drawing }) => drawing.title)).toEqual([photo.caption, samplePhoto.caption]);
    const page = pages.find(({ items }) => items.some(({ drawing }) => drawing.pictures))!;
    expect(writePageSvg(page)).toContain('<image ');
  });

  const pdfimages = haveTool('pictures in a PDF listed by pdfimages', 'pdfimages', ['-v']);
  test.skipIf(!pdfimages)('hold the picture as it was taken', async () => {
    const file = join(folder, 'photos.pdf');
    writeFileSync(file, await writePdf(pages, { title: 'x', fonts }));
    expect(runTool('pdfimages', ['-list', file])).toMatch(/image +60 +40 +\S+ +3 +8 +jpeg/);
  });

  test('are the same bytes in Node and in the browser', async () => {
    const inNode = await writePdf(pages, { title: 'x', fonts });
    vi.resetModules();
    vi.doMock('pdfkit', () => import('../../node_modules/pdfkit/js/pdfkit.browser.mjs' as string));
    const browser = await import('#formats/pdf');
    expect(browser.writePdf).not.toBe(writePdf);
    expect(Buffer.compare(await browser.writePdf(pages, { title: 'x', fonts }), inNode)).toBe(0);
    vi.doUnmock('pdfkit');
  });
});
