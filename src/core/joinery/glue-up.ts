import { sortBySeverity, type Problem } from '#core/problems';
import { formatNumber } from '#core/units';
import { glueUp } from './rules.ts';
import { glueUpSteps } from './glue-up-steps.ts';
import { openWorkingBook, type WorkingBook } from './working.ts';
import type { JoinerySettings, Material } from './piece-types.ts';
import type { Board, BuildContext, BuiltPiece, Part, PartSize } from './types.ts';

const source = 'joinery D4, C16';

/** A part that is to be glued up: what lies along and across the grain, and the widest board its staves can come from. */
interface Panel {
  readonly part: Part;
  readonly state: 'sawn' | 'planed';
  readonly length: number;
  readonly width: number;
  /** Widest board for a stave, null when any width can be had. */
  readonly board: number | null;
  /** Widest stave that stays flat, null when it need not. */
  readonly flat: number | null;
}

/**
 * A piece with its wide solid parts glued up edge to edge (joinery D3, D4, C16): those wider than every board at hand, and
 * those that must lie flat and are wider than a flat-sawn board may be. The parts stay as they are; their blanks become
 * those of the staves, with working, notes and a step for the gluing.
 */
export function withGlueUps(built: BuiltPiece, context: BuildContext): BuiltPiece {
  const known = built.findings.filter((finding) => !isSettled(finding, built.parts, context));
  const found = built.parts.flatMap((part) => findPanel(part, context) ?? []);
  const panels = found.filter(({ board }) => board === null || board > glueUp.narrow / 2);
  const wide = found.filter((panel) => !panels.includes(panel) && panel.flat !== null).flatMap(sayUnjointed);
  if (panels.length === 0)
    return wide.length === 0 && known.length === built.findings.length
      ? built
      : { ...built, findings: sortBySeverity([...known, ...wide]) };
  const book = openWorkingBook();
  for (const step of built.working) book.put(step.name, step.value, step.label, step.source, step.unit);
  const made = panels.map((panel) => makeUp(panel, book));
  const parts = built.parts.map((part) => made.find((one) => one.id === part.id) ?? part);
  const isMade = ({ code, about }: Problem) => code === tooWide && made.some(({ id }) => id === about);
  return {
    ...built,
    parts,
    working: [...built.working, ...book.steps().slice(built.working.length)],
    steps: glueUpSteps(built.steps, made),
    findings: sortBySeverity([
      ...known.filter((finding) => !isMade(finding)),
      ...wide,
      ...made.flatMap(checkStaves),
    ]),
  };
}

/** What a piece says of solid parts wider than stays flat as a rule (joinery D3). */
const tooWide = 'solid-too-wide';

/** A part called too wide that is not by what the project allows. */
function isSettled({ code, about }: Problem, parts: readonly Part[], { settings }: BuildContext): boolean {
  const part = parts.find(({ id }) => id === about);
  return code === tooWide && part !== undefined && part.finished.width <= mostFlat(settings);
}

function findPanel(part: Part, context: BuildContext): Panel | null {
  const material = context.materials.find(({ id }) => id === part.material);
  if (part.kind !== 'solid' || material?.kind !== 'solid' || part.placements.length === 0) return null;
  const { length, width } = withGrain(part, part.cut);
  const staveSize = { length: length + glueUp.length, thickness: staveThickness(part.cut, material) };
  const board = widestFor(staveSize, part, context.boards);
  const whole = widestFor(
    { length: withGrain(part, part.rough).length, thickness: part.rough.thickness },
    part,
    context.boards,
  );
  const most = mostFlat(context.settings);
  const flat = part.flat && width > most ? most : null;
  const isTooWide = whole !== null && withGrain(part, part.rough).width > whole;
  if (!(flat !== null || isTooWide)) return null;
  return { part, state: material.state, length, width, board, flat };
}

/** Widest flat-sawn board in a part that must lie flat unless the project says another, mm (joinery D3). */
export const widestFlat: number = glueUp.widestFlat;

function mostFlat({ widestFlat: wanted }: JoinerySettings): number {
  return wanted !== undefined && wanted > 0 ? wanted : widestFlat;
}

/** Width of the widest board at hand for a blank; 0 when none is long and thick enough, null when any can be had. */
function widestFor(
  blank: { readonly length: number; readonly thickness: number },
  { material }: Part,
  boards: readonly Board[] | undefined,
): number | null {
  const own = boards?.filter((board) => board.material === material) ?? [];
  if (own.length === 0) return null; // an empty rack is told of, and the part left as it is
  const able = own.filter((board) => board.length >= blank.length && board.thickness >= blank.thickness);
  return Math.floor(Math.max(0, ...able.map(({ width }) => width)));
}

function staveThickness(cut: PartSize, material: Extract<Material, { kind: 'solid' }>): number {
  return cut.thickness + (material.state === 'sawn' ? glueUp.thickness : 0);
}

/** The part with its staves; the book gets how many, and their size. */
function makeUp(panel: Panel, book: WorkingBook): Part {
  const { part, state, board, flat } = panel;
  const names = namesOf(part, book);
  const about = (what: string) => `${part.name}: ${what}`;
  const name = (what: string) => `glue_${part.id.replace(/^\D+/, '')}_${what}`;
  const [length, width] = [
    nameSize(book, [names.length, name('length')], panel.length, about('length leaving the saw')),
    nameSize(book, [names.width, name('width')], panel.width, about('width leaving the saw')),
  ];
  const rules = [
    ...(board === null ? [] : [`up((${width} + 4)/(${name('board')} - 2), 1)`]),
    ...(flat === null ? [] : [`up(${width}/${name('flat')}, 1)`]),
  ];
  if (board !== null) book.put(name('board'), board, about('widest board for its staves, trimmed'), 'rack');
  if (flat !== null)
    book.put(name('flat'), flat, about('widest flat-sawn board in it'), 'setting, joinery D3');
  const rule = rules.length > 1 ? `max(${rules.join(', ')})` : (rules[0] ?? '2');
  const count = book.work(name('n'), rule, about('staves'), source, 'count');
  const size = {
    length: book.work(name('stave_L'), `up(${length} + 25, 1)`, about('stave, length'), source),
    width: book.work(
      name('stave_W'),
      `up((${width} + 6 + 2*(${name('n')} - 1))/${name('n')}, 1)`,
      about('stave, width'),
      source,
    ),
    thickness: book.work(
      name('stave_T'),
      state === 'sawn' ? `${names.thickness} + 5` : names.thickness,
      about('stave, thickness'),
      source,
    ),
  };
  const isAcross = part.grain === 'along-width';
  return {
    ...part,
    rough: isAcross ? { ...size, length: size.width, width: size.length } : size,
    staves: { count, width: panel.width / count },
    notes: [...part.notes.filter((note) => !note.startsWith('Jointed from boards')), markNote(count)],
  };
}

function markNote(count: number): string {
  return `Glued up of ${formatNumber(count)} staves edge to edge, rings up and down in turn; a triangle is drawn across the joints of the face side.`;
}

interface Names {
  readonly length: string;
  readonly width: string;
  readonly thickness: string;
}

/** The working steps behind its length along the grain, its width and its thickness. */
function namesOf({ grain, working, cut, id, name }: Part, book: WorkingBook): Names {
  const [length, width] =
    grain === 'along-width' ? [working.width, working.length] : [working.length, working.width];
  const thickness = `glue_${id.replace(/^\D+/, '')}_T`;
  return {
    length,
    width,
    thickness: nameSize(book, [working.thickness, thickness], cut.thickness, `${name}: thickness`),
  };
}

/** The name of a size in the working: the known one where it says the same, else a new one for what leaves the saw. */
function nameSize(
  book: WorkingBook,
  [known, fresh]: readonly [string, string],
  value: number,
  label: string,
): string {
  if (book.has(known) && Math.abs(book.value(known) - value) < 1e-9) return known;
  book.put(fresh, value, label, 'joinery D4');
  return fresh;
}

/** A size with its length along the grain. */
function withGrain(part: Part, size: PartSize): { readonly length: number; readonly width: number } {
  return part.grain === 'along-width'
    ? { length: size.width, width: size.length }
    : { length: size.length, width: size.width };
}

/** It ought to be glued up, but no board is long and thick enough for staves: it stays one board, or the stock tells. */
function sayUnjointed({ part, width, flat }: Panel): readonly Problem[] {
  return [
    {
      severity: 'note',
      code: 'wide-board-unjointed',
      about: part.id,
      message: `${part.id} ${part.name} is ${formatNumber(width, 1)} wide from one board, which stays flat up to ${formatNumber(flat ?? 0)}; no board at hand is long and thick enough for the staves of a glued-up panel.`,
      remedy: `Take a quarter-sawn board, or put boards ${formatNumber(part.cut.length + glueUp.length)} long and ${formatNumber(part.cut.thickness + glueUp.thickness)} thick on the rack.`,
      source: 'joinery D3',
    },
  ];
}

function checkStaves({ id, name, staves }: Part): readonly Problem[] {
  if (!staves || staves.width >= glueUp.narrow) return [];
  return [
    {
      severity: 'warn',
      code: 'staves-narrow',
      about: id,
      message: `${id} ${name} would be glued up of ${staves.count} staves only ${formatNumber(staves.width, 1)} wide: more joints than a panel wants, and each can go wrong.`,
      remedy: `Put boards on the rack from which staves of ${glueUp.narrow} or more can be ripped, or make the part of a sheet.`,
      source: 'joinery C16, common practice',
    },
  ];
}
