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
