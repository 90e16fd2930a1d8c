// Advance widths of the printing face, thousandths of the type size, characters 32 to 126.
// Read from DejaVu Sans Condensed 2.37 (its horizontal metrics).
const normal =
  '286 360 414 754 572 855 702 247 351 351 450 754 286 325 286 303 572 572 572 572 572 572 572 572 572 572 303 303 754 754 754 478 900 615 617 628 693 568 518 697 677 265 265 590 501 776 673 708 542 708 625 571 549 659 615 890 616 549 616 351 303 351 754 450 450 551 571 495 571 554 316 571 570 250 250 521 250 876 570 550 571 571 370 469 353 570 532 736 532 532 472 572 303 572 754'
    .split(' ')
    .map(Number);
const usual = 600;
const boldWider = 1.11;

/** Type size for figures of a height: digits of the printing face stand 0.729 of the size (measured on its outlines). */
export const sizePerHeight = 1 / 0.729;

/** Width of a line of text in the printing face, mm, good to some percent; characters beyond ASCII count as wide ones. */
export function textWidth(text: string, height: number, weight: 'normal' | 'bold' = 'normal'): number {
  let sum = 0;
  for (const character of text) sum += normal[character.charCodeAt(0) - 32] ?? usual;
  return (sum / 1000) * height * sizePerHeight * (weight === 'bold' ? boldWider : 1);
}

/** The text, or as much of its beginning as fits into a width, ending in an ellipsis. */
export function shortenText(
  text: string,
  height: number,
  room: number,
  weight: 'normal' | 'bold' = 'normal',
): string {
  if (textWidth(text, height, weight) <= room) return text;
  let kept = text;
  while (kept.length > 1 && textWidth(`${kept}…`, height, weight) > room) kept = kept.slice(0, -1);
  return `${kept.trimEnd()}…`;
}

/** The text broken at spaces into lines no wider than a width; a single longer word stays whole. */
export function wrapText(text: string, height: number, room: number): readonly string[] {
  const rows: string[] = [];
  for (const word of text.split(' ')) {
    const last = rows.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(joined, height) <= room) rows[rows.length - 1] = joined;
    else rows.push(word);
  }
  return rows;
}
