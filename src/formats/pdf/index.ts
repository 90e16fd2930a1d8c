export { writePdf } from './write.ts';
export type { PdfFonts, PdfOptions } from './write.ts';
