import { textWidth, type Drawing } from '#core/drawing';

import { stamp } from './bundle-context.ts';

/** The drawing with `DO NOT CUT` across its middle. */
export function stampDrawing(drawing: Drawing): Drawing {
  const { minX, minY, maxX, maxY } = drawing.bounds;
  const span = Math.min(maxX - minX, 3 * (maxY - minY)) * 0.7;
  const height = (10 * span) / textWidth(stamp, 10, 'bold');
  return {
    ...drawing,
    title: `${stamp}: ${drawing.title}`,
    marks: [
      ...drawing.marks,
      {
        kind: 'text',
        at: { x: (minX + maxX) / 2, y: (minY + maxY - height) / 2 },
        text: stamp,
        height,
        align: 'middle',
        weight: 'bold',
        tone: 'fault',
      },
    ],
  };
}
