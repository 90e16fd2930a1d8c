import { requiredPieces } from '#core/joinery';
import type { Problem } from '#core/problems';

import { checkShapes } from './check-shapes.ts';
import { checkValues } from './check-values.ts';
import { findRepeats } from './find-repeats.ts';
import { isPieceLetter } from './letters.ts';
import type { Project } from './types.ts';

/**
 * What is wrong with the document in itself: ids given twice, references that lead nowhere, values out of range; each
 * with its path, as `pieces[2].shape`. Empty for a sound project; whether it can be built is not asked here.
 */
export function checkProject(project: Project): readonly Problem[] {
  return [
    ...checkIds(project),
    ...checkLetters(project),
    ...checkReferences(project),
    ...checkShapes(project.shapes),
    ...checkValues(project),
  ];
}

function checkIds(project: Project): readonly Problem[] {
  return [
    ...findRepeats(project.shapes, 'shapes', 'shape'),
    ...findRepeats(project.pieces, 'pieces', 'piece'),
    ...findRepeats(project.materials, 'materials', 'material'),
    ...findRepeats(project.stock, 'stock', 'stock line'),
    ...findRepeats(project.route ?? [], 'route', 'gate'),
  ];
}

function checkLetters(project: Project): readonly Problem[] {
  return project.pieces.flatMap((piece, index): Problem[] => {
    const path = `pieces[${index}].letter`;
    if (!isPieceLetter(piece.letter))
      return [
        stop(
          'letter-unfit',
          path,
          `"${piece.letter}" cannot be the letter of piece "${piece.name}".`,
          'Use one or two capitals; I and O are left out because they read as 1 and 0 on a part.',
        ),
      ];
    const other = project.pieces.findIndex((each) => each.letter === piece.letter);
    if (other === index) return [];
    return [
      stop(
        'letter-twice',
        path,
        `Pieces "${project.pieces[other]?.name}" and "${piece.name}" both have the letter ${piece.letter}, so their parts could not be told apart.`,
        'Give one of them another letter.',
      ),
    ];
  });
}

function checkReferences(project: Project): readonly Problem[] {
  const shapes = { noun: 'shape', ids: project.shapes.map((shape) => shape.id) };
  const pieces = { noun: 'piece', ids: project.pieces.map((piece) => piece.id) };
  const materials = { noun: 'material', ids: project.materials.map((material) => material.id) };
  return [
    ...project.pieces.flatMap((piece, index): Problem[] => {
      const path = `pieces[${index}]`;
      const subject = `Piece ${piece.letter} "${piece.name}"`;
      const uses: [string, string | undefined][] = Object.entries(piece.parameters.materials);
      return [
        ...findMissing(shapes, piece.shape, `${path}.shape`, subject),
        ...uses.flatMap(([use, id]) =>
          findMissing(materials, id, `${path}.parameters.materials.${use}`, subject),
        ),
        ...requiredPieces(piece).flatMap((id) =>
          findMissing(pieces, id, `${path}.parameters.frame`, subject),
        ),
      ];
    }),
    ...project.stock.flatMap((line, index) =>
      findMissing(materials, line.material, `stock[${index}].material`, `Stock line "${line.id}"`),
    ),
  ];
}

function findMissing(
  known: { readonly noun: string; readonly ids: readonly string[] },
  id: string | undefined,
  about: string,
  subject: string,
): readonly Problem[] {
  if (id === undefined || known.ids.includes(id)) return [];
  const choice =
    known.ids.length > 0 ? `There are: ${known.ids.join(', ')}.` : `There is no ${known.noun} yet.`;
  return [
    stop(
      `${known.noun}-missing`,
      about,
      `${subject} names the ${known.noun} "${id}", which does not exist.`,
      `${choice} Choose one or add it.`,
    ),
  ];
}

function stop(code: string, about: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, about, message, remedy };
}
