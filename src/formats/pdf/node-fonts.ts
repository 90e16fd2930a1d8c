import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PdfFonts } from './write.ts';

/** The fonts that `writePdf` embeds, read from their package; for Node only (the browser fetches them as assets). */
export function nodeFonts(): PdfFonts {
  const require = createRequire(import.meta.url);
  const read = (name: string) =>
    new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
  return { regular: read('DejaVuSansCondensed'), bold: read('DejaVuSansCondensed-Bold') };
}
