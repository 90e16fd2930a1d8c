import { boardForTwoLeaves } from '#core/materials';
import { sortBySeverity, type Problem } from '#core/problems';
import { markSize } from '#core/units';
import { glueUp } from './rules.ts';
import { glueUsed, withPanelGlue } from './glue.ts';
import { glueUpSteps } from './glue-up-steps.ts';
import { findPanel, isWideEnough, mostFlat, type Panel } from './glue-up-panels.ts';
import { makeUp } from './glue-up-staves.ts';
import { openWorkingBook } from './working.ts';
import type { BuildContext, BuiltPiece, Part } from './types.ts';

/**
 * A piece with its wide solid parts glued up edge to edge (joinery D3, D4, C16): those wider than every board at hand, and
 * those that must lie flat and are wider than a flat-sawn board may be. The parts stay as they are; their blanks become
 * those of the staves, with working, notes and a step for the gluing.
 */
export function withGlueUps(built: BuiltPiece, context: BuildContext): BuiltPiece {
  const known = built.findings.filter((finding) => !isSettled(finding, built.parts, context));
  const found = built.parts.flatMap((part) => findPanel(part, context) ?? []);
  const panels = found.filter(({ board }) => isWideEnough(board));
  const wide = [
    ...found.filter((panel) => !panels.includes(panel) && panel.flat !== null).flatMap(sayUnjointed),
    ...built.parts.flatMap((part) => sayUnmatched(part, found)),
  ];
  if (panels.length === 0)
    return wide.length === 0 && known.length === built.findings.length
      ? built
      : { ...built, findings: sortBySeverity([...known, ...wide]) };
  const book = openWorkingBook();
  for (const step of built.working) book.put(step.name, step.value, step.label, step.source, step.unit);
  const made = panels.map((panel) => makeUp(panel, book));
  const parts = built.parts.map((part) => made.find((one) => one.id === part.id) ?? part);
  const glue = glueUsed(built, context.settings);
  const isMade = ({ code, about }: Problem) => code === tooWide && made.some(({ id }) => id === about);
  return {
    ...built,
    parts,
    working: [...built.working, ...book.steps().slice(built.working.length)],
    fixings: withPanelGlue(built, glue),
    steps: glueUpSteps(built.steps, made, glue),
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

/** It ought to be glued up, but no board is long and thick enough for staves: it stays one board, or the stock tells. */
function sayUnjointed({ part, width, flat }: Panel): readonly Problem[] {
  return [
    {
      severity: 'note',
      code: 'wide-board-unjointed',
      about: part.id,
      message: `${part.id} ${part.name} is ${markSize(width, 1)} wide from one board, which stays flat up to ${markSize(flat ?? 0)}; no board at hand is long and thick enough for the staves of a glued-up panel.`,
      remedy: `Take a quarter-sawn board, or put boards ${markSize(part.cut.length + glueUp.length)} long and ${markSize(part.cut.thickness + glueUp.thickness)} thick on the rack.`,
      source: 'joinery D3',
    },
  ];
}

function sayUnmatched(part: Part, found: readonly Panel[]): readonly Problem[] {
  if (!part.bookMatched) return [];
  const about = part.id;
  const title = `${part.id} ${part.name}`;
  const code = 'not-book-matched';
  if (part.kind === 'sheet')
    return [
      {
        ...{ severity: 'note', code, about, source: 'joinery D3' },
        message: `${title} is of a sheet: opened like a book it would show its back.`,
        remedy: 'Take solid timber for it, or let the figure run through from neighbours in order.',
      },
    ];
  if (!found.some((panel) => panel.part === part && panel.lacksBook)) return [];
  const thick = markSize(boardForTwoLeaves(part.cut.thickness));
  return [
    {
      ...{ severity: 'warn', code, about, source: 'joinery D3' },
      message: `${title} cannot be opened like a book: two leaves ${markSize(part.cut.thickness)} thick want a board of ${thick}, and none so thick is long enough.`,
      remedy: `Put a board ${thick} thick and ${markSize(part.cut.length + glueUp.length)} long on the rack, or make the panel thinner.`,
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
      message: `${id} ${name} would be glued up of ${staves.count} staves only ${markSize(staves.width, 1)} wide: more joints than a panel wants, and each can go wrong.`,
      remedy: `Put boards on the rack from which staves of ${glueUp.narrow} or more can be ripped, or make the part of a sheet.`,
      source: 'joinery C16, common practice',
    },
  ];
}
