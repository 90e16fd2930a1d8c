/** Sizes of paper, mm. A4: ISO 216; Letter: 8.5 by 11 inches. */
export type Paper = 'A4' | 'Letter';

export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

const sizes: Readonly<Record<Paper, PaperSize>> = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
};

/** Left white round the sheet, mm: home printers cannot print nearer to the edge (common practice). */
export const paperMargin = 10;

/** Width and height of a sheet, mm. */
export function paperSize(paper: Paper, landscape = false): PaperSize {
  const { width, height } = sizes[paper];
  return landscape ? { width: height, height: width } : { width, height };
}
