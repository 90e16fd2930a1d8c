import { drawLine, drawRectangle, drawText, lettering } from './marks.ts';
import { readPictureSize } from './picture-size.ts';
import { wrapText } from './text-width.ts';
import type { Drawing, Mark } from './types.ts';

/** A photo and what was drawn on it; places from 0 to 1 to the right and down. */
export interface MarkedPhoto {
  readonly caption: string;
  /** A data URL. */
  readonly image: string;
  readonly strokes: readonly { readonly points: readonly { readonly x: number; readonly y: number }[] }[];
}

const linePitch = 4;

/** A photo with the strokes drawn on it and its caption below; a frame that says why where the picture cannot be printed. */
export function drawPhoto(
  { caption, image, strokes }: MarkedPhoto,
  room: { readonly width: number; readonly height: number },
): Drawing {
  const dots = readPictureSize(image);
  const ratio = dots ? dots.width / dots.height : 3 / 2;
  const width = Math.min(room.width, room.height * ratio);
  const height = width / ratio;
  const box = { minX: 0, maxX: width, minY: 0, maxY: height };
  const place = (p: { readonly x: number; readonly y: number }) => ({
    x: p.x * width,
    y: (1 - p.y) * height,
  });
  const lines = strokes
    .filter(({ points }) => points.length > 1)
    .map(({ points }) => drawLine(points.map(place), 'fault'));
  const words = wrapText(caption, lettering.small, width);
  const missing = 'This picture is neither JPEG nor PNG and is not printed.';
  const marks: readonly Mark[] = [
    drawRectangle(box, 'thin'),
    ...(dots ? [] : [drawText({ x: 2, y: height / 2 }, missing, { height: lettering.small, tone: 'soft' })]),
    ...lines,
    ...words.map((text, i) => drawText({ x: 0, y: -linePitch * (i + 1) }, text, { height: lettering.small })),
  ];
  return {
    title: caption,
    scale: 1,
    bounds: { ...box, minY: -linePitch * words.length - 1.5 },
    marks,
    ...(dots && { pictures: [{ image, box }] }),
  };
}
