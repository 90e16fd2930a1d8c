import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The fonts that go into PDF files, from their package. */
export function readFonts(): { readonly regular: Uint8Array; readonly bold: Uint8Array } {
  const require = createRequire(import.meta.url);
  const read = (name: string): Uint8Array =>
    new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
  return { regular: read('DejaVuSansCondensed'), bold: read('DejaVuSansCondensed-Bold') };
}
