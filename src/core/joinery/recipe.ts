import { hasStop, type Problem } from '#core/problems';
import { markSize } from '#core/units';
import { describeBuilt } from './built-piece.ts';
import { checkParameters } from './parameter-checks.ts';
import { envelopeOf, nothing } from './parts.ts';
import { checkExtent } from './piece-findings.ts';
import { checkSmallParts } from './small-parts.ts';
import type { ParameterInfo, Piece } from './piece-types.ts';
import type { BuiltPiece, Part } from './types.ts';
import type { WorkingBook } from './working.ts';

/** How a piece is made of its choices, each function called only when the ones before found nothing that forbids it. */
export interface Recipe<Layout extends { readonly book: WorkingBook }> {
  readonly piece: Piece;
  /** What it is in a message: `door`. */
  readonly what: string;
  readonly seenFrom: string;
  readonly table: readonly ParameterInfo[];
  /** What was found while filling in the choices. */
  readonly found: readonly Problem[];
  /** What is missing for any size to be worked out: nothing is built. */
  readonly lacking: readonly Problem[];
  readonly workOut: () => Layout;
  /** Steps of the working that must come out above nothing, and the source of the rule. */
  readonly positive: { readonly names: readonly string[]; readonly source: string };
  /** Reasons found in the sizes why it cannot be made. */
  readonly refuse?: (layout: Layout) => readonly Problem[];
  readonly parts: (layout: Layout) => readonly Part[];
  readonly finish: (
    layout: Layout,
    parts: readonly Part[],
  ) => Omit<Partial<BuiltPiece>, 'parts' | 'working' | 'envelope'>;
}

/** The built piece of a recipe, or its name with the findings that forbid it. */
export function buildFrom<Layout extends { readonly book: WorkingBook }>(recipe: Recipe<Layout>): BuiltPiece {
  const { piece, seenFrom, table } = recipe;
  const limits = [
    ...checkParameters(piece.parameters, table, piece.letter),
    ...checkExtent(piece.parameters, table, piece.letter),
    ...checkCounts(piece, table),
  ];
  const early = [...limits, ...recipe.found, ...recipe.lacking];
  if (hasStop(limits) || recipe.lacking.length > 0) return describeBuilt(piece, seenFrom, early);
  const layout = recipe.workOut();
  const working = layout.book.steps();
  const impossible = [...findNothing(recipe, layout), ...(recipe.refuse?.(layout) ?? [])];
  if (impossible.length > 0) return describeBuilt(piece, seenFrom, [...early, ...impossible], { working });
  const parts = recipe.parts(layout);
  const made = recipe.finish(layout, parts);
  const findings = [...early, ...(made.findings ?? []), ...checkSmallParts(parts)];
  return describeBuilt(piece, seenFrom, findings, {
    ...made,
    parts,
    working,
    envelope: envelopeOf(parts) ?? nothing,
  });
}

/** The first size that came out at nothing. */
function findNothing<Layout extends { readonly book: WorkingBook }>(
  { what, positive }: Recipe<Layout>,
  { book }: Layout,
): readonly Problem[] {
  const bad = book
    .steps()
    .find(({ name, value }) => positive.names.includes(name) && !(value > 0 && Number.isFinite(value)));
  if (!bad) return [];
  const size = Number.isFinite(bad.value) ? markSize(bad.value) : 'nothing';
  const inputs = bad.inputs.map(({ name, value }) => `${name} ${markSize(value)}`).join(', ');
  return [
    {
      severity: 'stop',
      code: `${what.replaceAll(' ', '-')}-impossible`,
      message: `No ${what} comes of it: ${bad.label} comes out at ${size}${inputs && ` (${inputs})`}.`,
      remedy: 'Check the unit of the sizes, or choose smaller members in it.',
      source: positive.source,
    },
  ];
}

const mostCounted = 200; // more of anything in one piece is a slip of the keys

/** Numbers of things that are no whole numbers. */
function checkCounts(piece: Piece, table: readonly ParameterInfo[]): readonly Problem[] {
  const given = piece.parameters as unknown as Readonly<Record<string, unknown>>;
  return table.flatMap((info): readonly Problem[] => {
    const value = given[info.key];
    if (info.type !== 'whole' || typeof value !== 'number' || !(value > 0) || !Number.isFinite(value))
      return [];
    if (Number.isInteger(value) && value <= mostCounted) return [];
    return [
      {
        severity: 'stop',
        code: 'count-not-whole',
        about: piece.letter,
        message: `${info.label}: ${value} were asked for.`,
        remedy: `Enter a whole number, ${mostCounted} at most.`,
      },
    ];
  });
}
