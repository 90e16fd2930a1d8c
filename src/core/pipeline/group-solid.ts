import type { BuiltPiece } from '#core/joinery';
import { boardForTwoLeaves } from '#core/materials';
import type { Problem } from '#core/problems';
import type { LengthSystem } from '#core/units';
import type { Project } from '#core/project';

import { assignNeeds, type Assignment } from './assign-solid.ts';
import { reportSplitSet } from './group-sheets.ts';
import { makeGroup } from './make-group.ts';
import { reportMissingStock } from './missing-stock.ts';
import { collectNeeds } from './needs.ts';
import { collectFamilies, type SolidFamily, type SolidMaterial } from './solid-families.ts';
import type { CuttingGroup } from './types.ts';
import { showSize, showSizeIn, unitOf } from './words.ts';

/** Smallest width of a solid leftover worth keeping, mm (joinery E5). */
const keptWidth = 40;

/** Planed away to more than this share of its thickness a board is the wrong one (common practice). */
const wastefulThickness = 2;

/**
 * The cutting jobs of one solid material: its boards by thickness, sawn in two directions with the grain, and its battens by
 * section, sawn to length. Each part goes to the leanest that takes its blank. What fits nothing is in `findings`.
 */
export function groupSolid(
  project: Project,
  pieces: readonly BuiltPiece[],
  material: SolidMaterial,
): { readonly groups: readonly CuttingGroup[]; readonly findings: readonly Problem[] } {
  const saw = project.tools.boardSaw;
  const needs = collectNeeds(pieces, material, saw.kerf);
  if (needs.singles.length + needs.sets.length === 0) return { groups: [], findings: [] };
  const lines = project.stock.filter((line) => line.material === material.id && line.count !== 0);
  const families = collectFamilies(lines);
  const { assigned, missing, splitSets } = assignNeeds(needs, families, material, saw.trim);
  return {
    groups: families.flatMap((family) => {
      const own = assigned.filter((each) => each.family === family);
      return own.length > 0 ? [makeFamilyGroup(project, material, family, own)] : [];
    }),
    findings: [
      ...needs.findings,
      ...splitSets.map((strip) => reportSplitSet(strip, material)),
      ...missing.flatMap((need) =>
        reportMissingStock(need, material, { lines, trim: saw.trim, units: project.units }),
      ),
    ],
  };
}

function makeFamilyGroup(
  project: Project,
  material: SolidMaterial,
  family: SolidFamily,
  own: readonly Assignment[],
): CuttingGroup {
  const { boardSaw, keepLeftover } = project.tools;
  const isBatten = family.form === 'batten';
  const section = isBatten ? showSize(family.width, family.thickness) : showSize(family.thickness);
  const { units } = project;
  const sizes = isBatten ? [family.width, family.thickness] : [family.thickness];
  const shown = `${showSizeIn(units, ...sizes)} ${unitOf(units)}`;
  return makeGroup({
    id: `${material.id}-${section.replaceAll(' × ', 'x')}`,
    title: `${material.name}, ${isBatten ? 'battens' : 'boards'} ${shown}`,
    material,
    form: family.form,
    units,
    section: isBatten
      ? { width: family.width, thickness: family.thickness }
      : { thickness: family.thickness },
    saw: boardSaw,
    cuts: { ...boardSaw.cuts, style: 'guillotine', firstCut: boardSaw.cuts.firstCut ?? 'either' },
    keepLeftover: { ...keepLeftover, minWidth: Math.min(keepLeftover.minWidth, keptWidth) },
    lines: family.lines,
    needs: own.map((each) => each.need),
    findings: isBatten ? [] : own.flatMap((each) => findWaste(each, material, project.units)),
  });
}

function findWaste(
  { need, family }: Assignment,
  material: SolidMaterial,
  units: LengthSystem,
): readonly Problem[] {
  const show = (size: number): string => showSizeIn(units, size);
  if (family.thickness <= wastefulThickness * need.thickness) return [];
  const forTwo = boardForTwoLeaves(need.finished.thickness);
  return [
    {
      severity: 'note',
      code: 'board-much-thicker',
      about: need.parts[0]?.part,
      message: `${need.title} needs ${show(need.thickness)} ${unitOf(units)} and comes from ${material.name} boards ${show(family.thickness)} ${unitOf(units)} thick: more than half is planed away.`,
      remedy:
        family.thickness >= forTwo
          ? `Saw the board through its thickness: two leaves want ${show(forTwo)}; or add a thinner one to the rack.`
          : `Add a thinner board to the rack; sawn through, this one does not yield two leaves (they want ${show(forTwo)}).`,
      source: 'common practice',
    },
  ];
}
