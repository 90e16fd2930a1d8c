import type { Problem } from '#core/problems';

import { longestImage, type Photo } from './shape-types.ts';

/** What is wrong with a photo: too large to keep, no picture, drawn on outside itself. */
export function checkPhoto({ caption, image, strokes }: Photo, path: string): readonly Problem[] {
  const outside = strokes
    .flatMap(({ points }) => points)
    .some(({ x, y }) => !(x >= 0 && x <= 1 && y >= 0 && y <= 1));
  return [
    ...(image.length > longestImage
      ? [
          stop(
            'photo-too-large',
            `${path}.image`,
            `The photo "${caption}" takes ${image.length} characters; at most ${longestImage} are kept.`,
            'Make the picture smaller: a screen full is enough.',
          ),
        ]
      : []),
    ...(/^data:image\/(?:png|jpeg|webp|gif);base64,/.test(image)
      ? []
      : [
          stop(
            'photo-unreadable',
            `${path}.image`,
            `The photo "${caption}" is no picture kept in the file.`,
            'Choose a JPEG, PNG or WebP picture.',
          ),
        ]),
    ...(outside
      ? [
          stop(
            'stroke-outside',
            `${path}.strokes`,
            `A stroke drawn on the photo "${caption}" leaves the picture.`,
            'Places on a photo go from 0 to 1 both ways.',
          ),
        ]
      : []),
  ];
}

function stop(code: string, about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, about, message, remedy };
}
