import {
  buildPiece,
  requiredPieces,
  sayBuilt,
  withFrontFittings,
  withHingeBeds,
  withPairFigure,
  withStrike,
  type Board,
  type BuiltPiece,
  type Piece,
  type PieceId,
} from '#core/joinery';
import type { Problem } from '#core/problems';
import type { Project } from '#core/project';

import { userNames } from './say-findings.ts';
import { boardsAtHand } from './stock-fit.ts';
import type { ShapeOutcome, Understanding } from './types.ts';

/** A project and what it came to, so that what has not changed since need not be worked out again. */
export interface Understood {
  readonly project: Project;
  readonly understanding: Understanding;
}

/**
 * All pieces in the order of their letters; those that others take sizes from are made first, however long the chain. A
 * piece whose parameters, shape, materials, settings and givers are the very same as `before` is taken over from there.
 */
export function buildPieces(
  project: Project,
  shapes: readonly ShapeOutcome[],
  before?: Understood,
): readonly BuiltPiece[] {
  const made = new Map<PieceId, BuiltPiece>();
  const earlier = new Map(before?.understanding.pieces.map((built) => [built.piece, built]));
  const isSameGround =
    before?.project.materials === project.materials &&
    before.project.settings === project.settings &&
    before.project.units === project.units &&
    before.project.stock === project.stock &&
    before.project.tools.boardSaw === project.tools.boardSaw;
  const boards = boardsAtHand(project);
  const sources = sourcesOf(before);
  for (const piece of inOrderOfMaking(project.pieces)) {
    const outcome = shapes.find((each) => each.shape.id === piece.shape);
    const needed = requiredPieces(piece);
    const givers = needed.flatMap((id) => made.get(id) ?? []);
    const source = sources.get(piece.id);
    const old = earlier.get(piece.id);
    const isSame =
      old !== undefined &&
      isSameGround &&
      source?.piece === piece &&
      source.outcome === outcome &&
      source.givers.length === givers.length &&
      source.givers.every((giver, i) => giver === givers[i]);
    made.set(piece.id, isSame ? old : build(piece, project, { outcome, givers, boards }));
  }
  const names = userNames(project);
  return withBeds(byLetter(project.pieces), made).map((built) =>
    sameAs(earlier.get(built.piece), sayBuilt(built, project.units, names)),
  );
}

/** The earlier of two pieces that say the same: beds are cut and told anew each time, and what did not change stays the very same. */
function sameAs(earlier: BuiltPiece | undefined, now: BuiltPiece): BuiltPiece {
  if (!earlier || earlier === now) return now;
  return JSON.stringify(earlier) === JSON.stringify(now) ? earlier : now;
}

/** What is made, in the order of the pieces, the frames with beds for the hinges of their doors, strikes and bolt holes. */
function withBeds(pieces: readonly Piece[], made: ReadonlyMap<PieceId, BuiltPiece>): readonly BuiltPiece[] {
  const all = pieces.flatMap((piece) => {
    const built = made.get(piece.id);
    return built ? [{ piece, built }] : [];
  });
  return all.map((one) => {
    const { kind, parameters } = one.piece;
    if (kind === 'door-frame' || kind === 'free-frame') return withHingeBeds(one, all);
    if (kind === 'cabinet-front') return withFrontFittings(one, all);
    if (!('leaf' in parameters || 'hinged' in parameters)) return one.built;
    return withPairFigure({ ...one, built: withStrike(one, all) }, all);
  });
}

interface Source {
  readonly piece: Piece;
  readonly outcome: ShapeOutcome | undefined;
  readonly givers: readonly BuiltPiece[];
}

/** What each piece was built from. */
function sourcesOf(before: Understood | undefined): ReadonlyMap<PieceId, Source> {
  if (!before) return new Map();
  const { project, understanding } = before;
  return new Map(
    project.pieces.map((piece) => [
      piece.id,
      {
        piece,
        outcome: understanding.shapes.find((each) => each.shape.id === piece.shape),
        givers: requiredPieces(piece).flatMap(
          (id) => understanding.pieces.find((built) => built.piece === id) ?? [],
        ),
      },
    ]),
  );
}

function build(
  piece: Piece,
  project: Project,
  { outcome, givers, boards }: Pick<Source, 'outcome' | 'givers'> & { readonly boards: readonly Board[] },
): BuiltPiece {
  const built = buildPiece(piece, {
    shape: outcome?.adjusted ?? null,
    ...(outcome && { shapeName: outcome.shape.name }),
    materials: project.materials,
    settings: project.settings,
    units: project.units,
    boards,
    built: givers,
  });
  const round = requiredPieces(piece).filter((id) => !givers.some((giver) => giver.piece === id));
  return round.length === 0
    ? built
    : { ...built, findings: [...roundAbout(piece, project, round), ...built.findings] };
}

/** Givers before takers; pieces that go round in a ring come last, as they are. */
function inOrderOfMaking(pieces: readonly Piece[]): readonly Piece[] {
  const ordered: Piece[] = [];
  const placed = new Set<PieceId>();
  let waiting = byLetter(pieces);
  while (waiting.length > 0) {
    const ids = new Set(waiting.map(({ id }) => id));
    const ready = waiting.filter((piece) =>
      requiredPieces(piece).every((id) => placed.has(id) || !ids.has(id)),
    );
    const next = ready.length > 0 ? ready : waiting;
    next.forEach((piece) => placed.add(piece.id));
    ordered.push(...next);
    waiting = waiting.filter((piece) => !placed.has(piece.id));
  }
  return ordered;
}

function roundAbout(piece: Piece, project: Project, ids: readonly PieceId[]): readonly Problem[] {
  const others = project.pieces.filter(({ id }) => ids.includes(id));
  if (others.length === 0) return []; // a piece that does not exist is told by the check of the project
  return [
    {
      severity: 'stop',
      code: 'pieces-in-a-ring',
      about: piece.letter,
      message: `${piece.letter} ${piece.name} takes sizes from ${others.map(({ letter, name }) => `${letter} ${name}`).join(', ')}, which in turn takes its own from it.`,
      remedy: 'Enter the sizes of one of them instead.',
    },
  ];
}

/** A before B, Z before AA. */
function byLetter(pieces: readonly Piece[]): readonly Piece[] {
  return [...pieces].sort(
    (a, b) => a.letter.length - b.letter.length || (a.letter < b.letter ? -1 : a.letter > b.letter ? 1 : 0),
  );
}
