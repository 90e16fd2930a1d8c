import type { Photo } from '#core/project';
import { longestImage } from '#core/project';

/** The longer side of a kept picture, px. */
const longestSide = 1280;
/** JPEG qualities tried until the picture is small enough to keep. */
const qualities = [0.82, 0.7, 0.55, 0.4] as const;

/** A picture as a JPEG data URL, at most 1280 px long and small enough to be kept; null when it is no picture. */
export async function shrinkPicture(file: Blob): Promise<string | null> {
  const bitmap = await createImageBitmap(file).catch(() => null);
  if (!bitmap) return null;
  const { width, height } = fitSize(bitmap);
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  for (const quality of qualities) {
    const image = canvas.toDataURL('image/jpeg', quality);
    if (image.length <= longestImage) return image;
  }
  return null;
}

/** The size in px a picture is kept at: never larger than it is, its longer side 1280 at most. */
export function fitSize({ width, height }: { readonly width: number; readonly height: number }): {
  readonly width: number;
  readonly height: number;
} {
  const scale = Math.min(1, longestSide / Math.max(width, height, 1));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

type Stroke = Photo['strokes'][number];

/** A stroke as the path of an SVG whose view box is one wide and one high; a dot where the finger did not move. */
export function strokePath({ points }: Stroke): string {
  const [first, ...rest] = points.map(({ x, y }) => `${shorten(x)} ${shorten(y)}`);
  if (first === undefined) return '';
  return `M${first} ${rest.length === 0 ? `L${first}` : rest.map((at) => `L${at}`).join(' ')}`;
}

/** The stroke with one more place, kept inside the picture and without places that lie on the one before. */
export function addToStroke({ points }: Stroke, place: { readonly x: number; readonly y: number }): Stroke {
  const inside = { x: clamp(place.x), y: clamp(place.y) };
  const last = points.at(-1);
  if (last && Math.hypot(last.x - inside.x, last.y - inside.y) < leastMove) return { points };
  return { points: [...points, inside] };
}

/** Share of the picture; nearer places say nothing more. */
const leastMove = 0.004;

function clamp(share: number): number {
  return Math.round(Math.min(1, Math.max(0, share)) * 10_000) / 10_000;
}

function shorten(share: number): string {
  return String(Math.round(share * 10_000) / 10_000);
}
