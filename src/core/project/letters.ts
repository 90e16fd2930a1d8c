import type { Project } from './types.ts';

/** Letters of pieces; I and O are left out because they read as 1 and 0 on a part. */
const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** The letter for the next piece: the one after the highest in use, so that a letter on cut parts is not given again; after Z comes AA. */
export function nextLetter(project: Project): string {
  const highest = Math.max(-1, ...project.pieces.map((piece) => letterToIndex(piece.letter)));
  return indexToLetter(highest + 1);
}

/** True for `A`, `AB`, … without I and O. */
export function isPieceLetter(letter: string): boolean {
  return letter.length > 0 && letter.length <= 2 && [...letter].every((each) => letters.includes(each));
}

function letterToIndex(letter: string): number {
  if (!isPieceLetter(letter)) return -1;
  return [...letter].reduce((index, each) => index * letters.length + letters.indexOf(each) + 1, 0) - 1;
}

function indexToLetter(index: number): string {
  const last = letters.charAt(index % letters.length);
  return index < letters.length ? last : indexToLetter(Math.floor(index / letters.length) - 1) + last;
}
