import PDFDocument from 'pdfkit';
import { sizePerHeight } from '#core/drawing';
import type { Mark, Page } from '#core/drawing';
import { strokePath } from './paths.ts';
import { pdfColours, points, withPage } from './space.ts';

export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface PdfOptions {
  readonly title: string;
  readonly fonts: PdfFonts;
}

type Document = PDFKit.PDFDocument;

/** Pages as one PDF of true size (1 mm = 72 / 25.4 points), fonts embedded; the same pages give the same bytes in Node and browser. */
export async function writePdf(pages: readonly Page[], options: PdfOptions): Promise<Uint8Array> {
  // A fixed date: the bytes must not depend on when they are written.
  const fixed = new Date(Date.UTC(2000, 0, 1));
  const document = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    info: {
      Title: options.title,
      Creator: 'Joggle',
      Producer: 'Joggle',
      CreationDate: fixed,
      ModDate: fixed,
    },
    // none of the standard fonts: the browser build has none, and a font given here would be opened anew for every text
    font: null as unknown as string,
  });
  const finished = collectBytes(document);
  document.registerFont('regular', options.fonts.regular as unknown as string);
  document.registerFont('bold', options.fonts.bold as unknown as string);
  for (const page of pages) drawPage(document, page);
  document.end();
  return finished;
}

function collectBytes(document: Document): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => resolve(joinBytes(chunks)));
  });
}

function joinBytes(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function drawPage(document: Document, page: Page): void {
  document.addPage({ size: [page.width * points, page.height * points], margin: 0 });
  for (const { drawing, at, clip } of page.items) {
    const space = withPage(page.height, {
      x: at.x - drawing.bounds.minX,
      y: at.y - drawing.bounds.minY,
    });
    document.save();
    if (clip) {
      const top = page.height - clip.maxY;
      document
        .rect(
          clip.minX * points,
          top * points,
          (clip.maxX - clip.minX) * points,
          (clip.maxY - clip.minY) * points,
        )
        .clip();
    }
    for (const { image, box } of drawing.pictures ?? []) {
      const corner = space({ x: box.minX, y: box.maxY });
      const size = { width: (box.maxX - box.minX) * points, height: (box.maxY - box.minY) * points };
      document.image(image, corner.x, corner.y, size);
    }
    for (const mark of drawing.marks) {
      if (mark.kind === 'text') drawText(document, mark, space(mark.at));
      else strokePath(document, mark, space);
    }
    document.restore();
  }
}

function drawText(
  document: Document,
  mark: Extract<Mark, { kind: 'text' }>,
  at: { readonly x: number; readonly y: number },
): void {
  if (mark.text === '') return;
  document.font(mark.weight === 'bold' ? 'bold' : 'regular').fontSize(mark.height * sizePerHeight * points);
  const width = document.widthOfString(mark.text);
  const back = mark.align === 'start' ? 0 : mark.align === 'middle' ? width / 2 : width;
  document.save();
  if (mark.turn) document.rotate((-mark.turn * 180) / Math.PI, { origin: [at.x, at.y] });
  document
    .fillColor(pdfColours[mark.tone ?? 'ink'])
    .text(mark.text, at.x - back, at.y, { lineBreak: false, baseline: 'alphabetic' });
  document.restore();
}
