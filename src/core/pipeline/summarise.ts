import type { BuiltPiece } from '#core/joinery';
import { coatingOf } from '#core/materials';
import { sortBySeverity, type Problem, type Severity } from '#core/problems';
import type { Project } from '#core/project';
import { sayLengths, type LengthSystem } from '#core/units';

import { findBlocked } from './find-blocked.ts';
import { describeFit } from './fit/describe-fit.ts';
import { listShopping, sumShopping, type ShoppingLine } from './list-shopping.ts';
import { sayFindings } from './say-findings.ts';
import { summariseGroup } from './summary-cutting.ts';
import { saySum, type PriceSum } from './stock-prices.ts';
import { summariseShape } from './summary-survey.ts';
import { summariseRouting } from './router/summary-router.ts';
import type { PlannedGroup, PlannedRouting, Understanding } from './types.ts';
import { countWords, describeThings, showSizeIn, wrapLines } from './words.ts';
import { wordFinding } from './word-finding.ts';

/** What goes into a summary beside the project and its plans. */
export interface SummaryExtras {
  /** All findings, those of drawing and planning as well. */
  readonly findings: readonly Problem[];
  /** Router files that are not written because of a `stop`, without their endings. */
  readonly withheld: readonly string[];
  readonly routed: readonly PlannedRouting[];
}

/** `summary.txt`: what was measured, made, bought and found, in plain words; the suspected slip comes first. */
export function summarise(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  extras: SummaryExtras,
): string {
  const tax = project.pricesIncludeTax ? 'with tax' : 'without tax';
  const blocks: readonly (readonly string[])[] = [
    [
      project.name,
      '='.repeat(project.name.length),
      `${describeUnits(project.units)}; prices in ${project.currency} ${tax}.`,
      '',
    ],
    doNotCut(project, understanding, planned, extras),
    heading(
      'Measured',
      understanding.shapes.flatMap((outcome) => summariseShape(outcome, project.units)),
    ),
    heading('Pieces', [...understanding.pieces.map((piece) => describePiece(piece, project.units)), '']),
    heading('Fit', describeFits(understanding)),
    heading('Stock', [
      ...planned.flatMap((each) => [...summariseGroup(project, each), '']),
      ...extras.routed.flatMap((each) => [...summariseRouting(project, each), '']),
    ]),
    heading('Cost', [
      ...describeCost(project, listShopping(project, understanding, planned, extras.routed)),
      '',
    ]),
    heading('Findings', [...describeFindings(project, extras.findings), '']),
    heading(
      'Cautions',
      [...cautions, ...coatingOf(project.settings.finish).cautions].flatMap((text) =>
        wrapLines(`- ${sayLengths(text, project.units)}`, 96, '  '),
      ),
    ),
  ];
  return `${blocks
    .flat()
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;
}

/** What sizes are told in. */
function describeUnits(units: LengthSystem): string {
  return units === 'mm'
    ? 'Lengths in mm'
    : 'Lengths in inches to 1/32, gaps and films under 1/16 in decimals';
}

function heading(title: string, lines: readonly string[]): readonly string[] {
  return lines.every((line) => line === '') ? [] : [title, '-'.repeat(title.length), ...lines];
}

function doNotCut(
  project: Project,
  understanding: Understanding,
  planned: readonly PlannedGroup[],
  { withheld }: SummaryExtras,
): readonly string[] {
  const blocked = [...findBlocked(project, understanding, planned).keys()];
  if (blocked.length === 0) return [];
  const files =
    withheld.length > 0 ? ` Their router files (.dxf and .svg) are withheld: ${withheld.join(', ')}.` : '';
  return [
    ...wrapLines(
      `DO NOT CUT ${describeThings(blocked)}: findings marked "stop" below say why. Their pages are stamped.${files}`,
    ),
    '',
  ];
}

function describePiece(piece: BuiltPiece, units: LengthSystem): string {
  const { min, max } = piece.envelope;
  const copies = piece.parts.reduce((sum, part) => sum + part.quantity, 0);
  const size = showSizeIn(units, max.x - min.x, max.y - min.y, max.z - min.z);
  return `  ${piece.letter.padEnd(3)}${piece.name}: ${countWords(piece.parts.length, 'part')}, ${countWords(copies, 'piece')} to cut, over all ${size}`;
}

/** Chance and advice for each piece that is fitted to a shape. */
function describeFits({ fits }: Understanding): readonly string[] {
  if (fits.length === 0) return [];
  const lines = fits.flatMap((fit) => [
    `  ${fit.letter.padEnd(3)}${fit.name}`,
    ...describeFit(fit).flatMap((sentence) => wrapLines(`     ${sentence}`, 96, '       ')),
  ]);
  return [...lines, ''];
}

function describeCost(project: Project, lines: readonly ShoppingLine[]): readonly string[] {
  const stock = sumShopping(lines.filter((line) => line.kind !== 'fixing'));
  const fixings = sumShopping(lines.filter((line) => line.kind === 'fixing'));
  if (lines.length === 0) return [];
  const words = (sum: PriceSum): string => saySum(sum, project.currency);
  return [
    `  Sheets, boards and battens  ${words(stock)}`,
    `  Fixings and sundries        ${words(fixings)}`,
    `  Together                    ${words(sumShopping(lines))}`,
  ];
}

const severityWords: Readonly<Record<Severity, string>> = { stop: 'STOP', warn: 'WARN', note: 'note' };

function describeFindings(project: Project, findings: readonly Problem[]): readonly string[] {
  if (findings.length === 0) return ['None.'];
  return sortBySeverity(sayFindings(project, findings)).flatMap((finding) =>
    wrapLines(`${severityWords[finding.severity]}  ${wordFinding(finding, project)}`, 96, '      '),
  );
}

/** What a plan cannot see to: said once in every summary. */
const cautions: readonly string[] = [
  'Saws and routers: guard and riving knife on, push stick for the last 300 mm, eyes and ears protected; read the machine’s own manual.',
  'Dust of hardwood and plywood harms lungs: extraction and a mask ashore; aboard no sawing or sanding.',
  'Solvents, epoxy and varnish: air the boat, keep flames out, wear gloves.',
  'Escape routes, ventilation and gas-locker drains must stay open and as wide as they were.',
  'Nothing here judges what carries load. Structure, gas, electrics and fire safety follow the local rules; ask a licensed surveyor, fitter or electrician.',
];
