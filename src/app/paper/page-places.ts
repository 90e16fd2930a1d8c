import type { Page } from '#core/drawing';

type Item = Page['items'][number];

/** Moves a drawing to its place on the page, where y points down. */
export function shiftOf(page: Page, { drawing, at }: Item): string {
  return `translate(${at.x - drawing.bounds.minX} ${page.height - at.y + drawing.bounds.minY})`;
}

/** The part of the page a drawing is shown in; null when all of it is. */
export function clipOf(
  page: Page,
  { clip }: Item,
): { readonly x: number; readonly y: number; readonly width: number; readonly height: number } | null {
  if (!clip) return null;
  return {
    x: clip.minX,
    y: page.height - clip.maxY,
    width: clip.maxX - clip.minX,
    height: clip.maxY - clip.minY,
  };
}

/** The form of a page as the printer knows it, as `A4-lying`; by its longer side. */
export function formOf(page: Page): string {
  const isLetter = Math.abs(Math.max(page.width, page.height) - 279.4) < 1; // mm; A4 is 17.6 longer
  return `${isLetter ? 'Letter' : 'A4'}-${page.width > page.height ? 'lying' : 'upright'}`;
}
