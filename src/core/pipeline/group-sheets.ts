import type { BuiltPiece, Material } from '#core/joinery';
import type { Problem } from '#core/problems';
import type { LengthSystem } from '#core/units';
import type { Project, StockLine } from '#core/project';

import { findUntrued } from './find-untrued.ts';
import { makeGroup } from './make-group.ts';
import { reportMissingStock } from './missing-stock.ts';
import type { Need } from './need.ts';
import { collectNeeds } from './needs.ts';
import { fitsOn } from './stock-fit.ts';
import type { CuttingGroup } from './types.ts';
import { showSize, showSizeIn, unitOf } from './words.ts';

type SheetMaterial = Extract<Material, { kind: 'sheet' }>;

/** Difference to the measured thickness of the material, mm: worth a word, and too much for the same grooves. */
const thicknessDifference = { worthSaying: 0.3, tooMuch: 1 } as const;

/** The cutting job of one sheet material: all its sheets and offcuts, on the sheet saw; null when no part wants it. */
export function groupSheets(
  project: Project,
  pieces: readonly BuiltPiece[],
  material: SheetMaterial,
): CuttingGroup | null {
  const saw = project.tools.sheetSaw;
  const trim = saw.trim;
  const needs = collectNeeds(pieces, material, saw.kerf, gapOfPairs(project));
  if (needs.singles.length + needs.sets.length === 0) return null;
  const all = project.stock.filter((line) => line.material === material.id && line.count !== 0);
  const lines = all.filter(
    (line) => Math.abs(line.thickness - material.thickness) <= thicknessDifference.tooMuch,
  );
  const fits = (need: Need): boolean => lines.some((line) => fitsOn(need, line, trim));
  const split = needs.sets.map((set) =>
    fits(set.together) ? [set.together, ...(set.rest ?? [])] : set.apart,
  );
  const wanted = [...needs.singles, ...split.flat()];
  return makeGroup({
    id: material.id,
    title: material.name,
    material,
    form: 'sheet',
    units: project.units,
    section: { thickness: material.thickness },
    saw,
    cuts: { ...saw.cuts, style: saw.cuts.style === 'length' ? 'guillotine' : saw.cuts.style },
    keepLeftover: project.tools.keepLeftover,
    lines,
    needs: wanted.filter(fits),
    findings: [
      ...findThickness(all, material, project.units),
      ...needs.findings,
      ...needs.sets.flatMap((set) =>
        fits(set.together) || set.together.isInterlocked ? [] : [reportSplitSet(set.together, material)],
      ),
      ...wanted
        .filter((need) => !fits(need))
        .flatMap((need) => reportMissingStock(need, material, { lines, trim, units: project.units })),
      ...findUntrued(lines, saw, project.units),
    ],
  });
}

/** Between two shapes in one blank the cutter of the router passes and leaves a web (joinery E7); a jigsaw needs less, mm. */
export function gapOfPairs({ tools }: Project): number {
  return tools.router.cutter + 2;
}

/** Said when a matched set comes out of no sheet or board in one strip. */
export function reportSplitSet(strip: Need, material: Material): Problem {
  if (strip.isPair) return reportSplitPair(strip, material);
  return {
    severity: 'warn',
    code: 'set-not-in-one-strip',
    about: strip.parts[0]?.part,
    message: `${strip.parts.map((part) => part.part).join(', ')} would need one strip ${showSize(strip.length, strip.width)} of ${material.name} for the figure to run through, and nothing in the rack is that large; they are cut one by one.`,
    remedy: 'Add a larger piece, or choose fronts without continuous grain.',
    source: 'joinery B6',
  };
}

function reportSplitPair(pair: Need, material: Material): Problem {
  return {
    severity: 'note',
    code: 'pair-not-from-one-board',
    about: pair.parts[0]?.part,
    message: `${pair.parts.map((part) => part.part).join(' and ')} should lie side by side in one board, which takes ${showSize(pair.length, pair.width)} of ${material.name}; nothing in the rack is that wide, and they are cut singly.`,
    remedy: 'Choose two alike by eye, straight and of one colour, or add a wider board.',
    source: 'joinery D3',
  };
}

function findThickness(
  lines: readonly StockLine[],
  material: SheetMaterial,
  units: LengthSystem,
): readonly Problem[] {
  const show = (...sizes: readonly number[]): string => showSizeIn(units, ...sizes);
  return lines.flatMap((line): Problem[] => {
    const off = Math.abs(line.thickness - material.thickness);
    if (off <= thicknessDifference.worthSaying) return [];
    const isUsed = off <= thicknessDifference.tooMuch;
    return [
      {
        severity: 'warn',
        code: 'stock-thickness-differs',
        about: line.id,
        message: `The ${line.form} ${show(line.length, line.width)} is ${show(line.thickness)} ${unitOf(units)} thick, but the parts are planned for ${material.name} measured at ${show(material.thickness)}; ${isUsed ? 'grooves for it will not fit as planned' : 'it is left out of the plan'}.`,
        remedy: 'Measure both, and make it a material of its own where they really differ.',
        source: 'joinery 0.6',
      },
    ];
  });
}
