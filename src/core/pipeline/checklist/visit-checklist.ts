import type { Piece } from '#core/joinery';
import type { MeasuredShape, Project } from '#core/project';

import { ringOf } from '../view-shape.ts';
import { ask, look } from './asked.ts';
import { answerLine } from './line-status.ts';
import { openingLines } from './opening-lines.ts';
import { linesOfShape } from './shape-lines.ts';
import type { OpeningReadingKey } from './topic.ts';
import { topicOf, topics } from './topics.ts';
import { visitStages, type AskedLine, type VisitBlock, type VisitChecklist } from './types.ts';

/** Once, before anything is measured. Source: joinery A11b. */
const begin: readonly AskedLine[] = [
  look('trim', 'Take off the trim', 'And all that will not be there later; note what stays on.', {
    stage: 'clear',
  }),
  look(
    'datum',
    'Strike the boat’s datum',
    'A line fore-and-aft and one athwart that every plumb and level is read against.',
    {
      stage: 'datum',
    },
  ),
];

/** Once, before leaving. Source: joinery A10 row 1, A11b. */
const leave: readonly AskedLine[] = [
  ask('companionway', 'Route: companionway', 'Clear width and height, and the radii of its corners.', {
    stage: 'route',
    blanks: 4,
  }),
  ask('doorways', 'Route: each doorway on the way', 'Clear width and height of each.', {
    stage: 'route',
    blanks: 6,
  }),
  ask('route-headroom', 'Route: headroom', 'The lowest place, and the tightest turn.', {
    stage: 'route',
    blanks: 2,
  }),
  ask('moisture', 'Moisture of the timber aboard', 'Three places, away from the outside.', {
    stage: 'moisture',
    blanks: 3,
    unit: '%',
  }),
  look('temperature', 'Temperature and how the boat is heated', 'Wet or dry, lived in or laid up.', {
    stage: 'moisture',
  }),
  look('solve', 'Work it out aboard', 'Enter all readings; measure again what is marked, before you leave.', {
    stage: 'solve',
  }),
];

/**
 * What to measure for everything in the project, in the order of one visit, with what is done already. Usable before there is
 * any reading. Source: joinery A10, A11b.
 */
export function visitChecklist(project: Project): VisitChecklist {
  const shapes = project.shapes.map((shape) => shapeBlock(project, shape));
  const loose = project.pieces.filter((piece) => !project.shapes.some(({ id }) => id === piece.shape));
  const blocks: readonly VisitBlock[] = [
    commonBlock(project, 'begin', 'Before you begin', begin),
    ...shapes,
    ...loose.map((piece) => pieceBlock(project, piece)),
    commonBlock(project, 'leave', 'Before you leave', leave),
  ].filter((block) => block.lines.length > 0);
  const lines = blocks.flatMap((block) => block.lines);
  return { blocks, lines: lines.length, open: lines.filter(({ status }) => status !== 'done').length };
}

function commonBlock(
  project: Project,
  kind: 'begin' | 'leave',
  title: string,
  lines: readonly AskedLine[],
): VisitBlock {
  return { title, kind, lines: lines.map((line) => answerLine(line, project, { block: 'visit' })) };
}

function shapeBlock(project: Project, shape: MeasuredShape): VisitBlock {
  const pieces = project.pieces.filter((piece) => piece.shape === shape.id);
  const wanted: readonly OpeningReadingKey[] =
    pieces.length > 0 ? pieces.flatMap(({ kind }) => topicOf(kind).opening) : topics.general.opening;
  const photo = look('photo', 'Photograph', `With the side named: ${shape.seenFrom}.`, { stage: 'photo' });
  const asked = inOrder(distinct([photo, ...linesOfShape(shape, wanted), ...pieces.flatMap(linesOfPiece)]));
  const names = pieces.map(({ letter, name }) => `${letter} ${name}`);
  const lines = asked.map((line) => {
    const piece = pieces.find((each) => linesOfPiece(each).some(({ key }) => key === line.key));
    const answered = answerLine(line, project, { block: shape.id, shape, ...(piece && { piece }) });
    const hasPhoto = line.key === 'photo' && (shape.photos ?? []).length > 0;
    return hasPhoto ? { ...answered, status: 'done' as const } : answered;
  });
  return {
    title: names.length > 0 ? `${shape.name}, for ${names.join(', ')}` : shape.name,
    ...{ kind: 'shape', id: shape.id, seenFrom: shape.seenFrom, lines },
    ring: ringOf(shape),
  };
}

function pieceBlock(project: Project, piece: Piece): VisitBlock {
  const { opening, lines: own } = topicOf(piece.kind);
  const sizes = opening === topics.general.opening ? [] : openingLines(opening);
  const lines = inOrder([...sizes, ...own]).map((line) =>
    answerLine(line, project, { block: piece.id, piece }),
  );
  return { title: `${piece.letter} ${piece.name}`, kind: 'piece', id: piece.id, lines };
}

function linesOfPiece({ kind }: Piece): readonly AskedLine[] {
  return topicOf(kind).lines;
}

function distinct(lines: readonly AskedLine[]): readonly AskedLine[] {
  return lines.filter((line, at) => lines.findIndex(({ key }) => key === line.key) === at);
}

function inOrder(lines: readonly AskedLine[]): readonly AskedLine[] {
  return lines.toSorted((a, b) => visitStages.indexOf(a.stage) - visitStages.indexOf(b.stage));
}
