import type { Point3 } from '#core/geometry';

/** From where a part comes, as seen from the front of the piece: x right, y up, z to the viewer. */
export function wayWords({ x, y, z }: Point3): string {
  const words = [
    ...(Math.abs(y) > 0.3 ? [y > 0 ? 'above' : 'below'] : []),
    ...(Math.abs(x) > 0.3 ? [x > 0 ? 'the right' : 'the left'] : []),
    ...(Math.abs(z) > 0.3 ? [z > 0 ? 'the front' : 'behind'] : []),
  ];
  return `comes from ${words.join(' and ')}`;
}
