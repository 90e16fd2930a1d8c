import { expect } from 'vitest';
import { outlineArea } from '#core/geometry';
import { buildPiece, defaultSettings } from '#core/joinery';
import type { BuildContext, BuiltPiece, Material, Part, Piece, PieceKind } from '#core/joinery';

/** Timber and sheets for the smaller kinds of piece; thicknesses as if measured. */
export const usualMaterials: readonly Material[] = [
  { id: 'oak', kind: 'solid', name: 'Oak, sawn', species: 'Oak, European', state: 'sawn', density: 680 },
  { id: 'ply18', kind: 'sheet', name: 'Marine ply 18', thickness: 18, density: 550 },
  { id: 'ply9', kind: 'sheet', name: 'Marine ply 9', thickness: 9, density: 550 },
  { id: 'ply6', kind: 'sheet', name: 'Marine ply 6', thickness: 5.8, density: 550 },
];

/** A piece of any kind built with these parameters, letter P. */
export function buildKind<Kind extends PieceKind>(
  kind: Kind,
  parameters: Extract<Piece, { kind: Kind }>['parameters'],
  more: Partial<BuildContext> = {},
): BuiltPiece {
  const piece = { kind, id: 'piece', letter: 'P', name: 'Sample', parameters } as unknown as Piece;
  return buildPiece(piece, { shape: null, materials: usualMaterials, settings: defaultSettings, ...more });
}

/** The part with this number. Throws when there is none. */
export function partOf(built: BuiltPiece, number: number): Part {
  const found = built.parts.find((part) => part.id === `P${number}`);
  if (!found) throw new Error(`no part P${number}`);
  return found;
}

/** Area of the parts' outlines less their holes, mm². */
export function areaOf(parts: readonly Part[]): number {
  return parts.reduce(
    (sum, part) =>
      sum +
      part.quantity *
        (outlineArea(part.outline) - part.holes.reduce((less, hole) => less + outlineArea(hole), 0)),
    0,
  );
}

/** Words hold no number that is none, and what bounds wood runs counter-clockwise. */
export function expectWords(built: BuiltPiece): void {
  for (const part of built.parts) expect(outlineArea(part.outline), part.name).toBeGreaterThan(0);
  const texts = [
    ...built.findings.map(({ message, remedy }) => `${message} ${remedy}`),
    ...built.steps.map(({ text }) => text),
    ...built.joints.flatMap(({ settings }) => settings),
    ...built.fixings.map(({ item }) => item),
  ];
  // a number the user gave is repeated to him as it is
  const own = (text: string) => text.replace(/: (NaN|-?Infinity)( mm)? is (not|more).*$/, '');
  for (const text of texts) expect(own(text)).not.toMatch(/NaN|undefined|Infinity/);
}
