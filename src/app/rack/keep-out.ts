import type { Rectangle } from '#core/cutting';
import { formatLength, type LengthSystem } from '#core/units';

/** A first bad spot on a stock of this size: a square of 50 mm at its lower left corner, or less where it is smaller. */
export function firstPlace(stock: { readonly length: number; readonly width: number }): Rectangle {
  return { x: 0, y: 0, length: Math.min(50, stock.length), width: Math.min(50, stock.width) };
}

/** What is odd about a bad spot, with the numbers; null when it lies on the stock. */
export function faultOfPlace(
  place: Rectangle,
  stock: { readonly length: number; readonly width: number },
  system: LengthSystem,
): string | null {
  const show = (value: number): string => formatLength(value, { system, unit: true });
  if (!(place.length > 0 && place.width > 0))
    return 'Length and width must be more than 0; remove the spot if nothing is wrong there.';
  const ends = [place.x + place.length - stock.length, place.y + place.width - stock.width];
  const [right = 0, top = 0] = ends;
  if (place.x < 0 || place.y < 0)
    return 'It begins outside the stock: x and y count from the lower left corner.';
  if (right > 0) return `It reaches ${show(right)} beyond the length of ${show(stock.length)}.`;
  return top > 0 ? `It reaches ${show(top)} beyond the width of ${show(stock.width)}.` : null;
}
