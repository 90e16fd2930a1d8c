import type { Trim } from '#core/cutting';

import type { Need } from './need.ts';
import type { Needs } from './needs.ts';
import type { SolidFamily, SolidMaterial } from './solid-families.ts';
import { countOf, fitsOn, usableOf } from './stock-fit.ts';

export interface Assignment {
  readonly need: Need;
  readonly family: SolidFamily;
}

/** A batten is taken instead of a board while its section is at most this much more than the part's (common practice). */
const leanBatten = 1.5;

/** Share of limited stock that can be counted on before it is planned: the rest is kerf, ends and what does not fit. */
const reckonedShare = { board: 0.75, batten: 0.9 } as const;

/** Each blank with the stock it is cut from; what fits none; and the sets that have to be cut one by one. */
export function assignNeeds(
  needs: Needs,
  families: readonly SolidFamily[],
  material: SolidMaterial,
  trim: Trim,
): {
  readonly assigned: readonly Assignment[];
  readonly missing: readonly Need[];
  readonly splitSets: readonly Need[];
} {
  const used = new Map<SolidFamily, number>();
  const choose = (need: Need): SolidFamily | undefined => {
    const able = families.filter((family) => takes(family, need, material, trim));
    const inOrder = [
      ...able.filter((family) => family.form === 'batten' && isLean(family, need)),
      ...able.filter((family) => family.form === 'board'),
      ...able.filter((family) => family.form === 'batten' && !isLean(family, need)),
    ];
    const chosen = inOrder.find((family) => hasRoom(family, need, used.get(family) ?? 0, trim)) ?? inOrder[0];
    if (chosen) used.set(chosen, (used.get(chosen) ?? 0) + demandOf(chosen, need));
    return chosen;
  };
  const assigned: Assignment[] = [];
  const missing: Need[] = [];
  const splitSets: Need[] = [];
  const place = (need: Need): void => {
    const family = choose(need);
    if (family) assigned.push({ need, family });
    else missing.push(need);
  };
  for (const need of byLength(needs.singles)) place(need);
  for (const { together, apart } of needs.sets) {
    const isWhole = families.some(
      (family) => family.form === 'board' && takes(family, together, material, trim),
    );
    if (!isWhole) splitSets.push(together);
    for (const need of isWhole ? [together] : apart) place(need);
  }
  return { assigned, missing, splitSets };
}

/** The longest first, so that the long stock is not promised to short parts. */
function byLength(needs: readonly Need[]): readonly Need[] {
  return needs
    .map((need, index) => ({ need, index }))
    .sort((a, b) => b.need.length - a.need.length || a.index - b.index)
    .map(({ need }) => need);
}

function takes(family: SolidFamily, need: Need, material: SolidMaterial, trim: Trim): boolean {
  if (family.form === 'board')
    return family.thickness >= need.thickness && family.lines.some((line) => fitsOn(need, line, trim));
  const isLongEnough = family.lines.some((line) => need.length <= usableOf(line, trim).length);
  return isLongEnough && need.set === undefined && sectionTakes(family, need, material);
}

/** A planed batten is used at its own faces; one from the saw needs what planing takes off. */
function sectionTakes(family: SolidFamily, need: Need, material: SolidMaterial): boolean {
  const asked = material.state === 'planed' ? need.finished : need;
  const [wide, thin] = [Math.max(asked.width, asked.thickness), Math.min(asked.width, asked.thickness)];
  return family.width >= wide && family.thickness >= thin;
}

function isLean(family: SolidFamily, need: Need): boolean {
  return family.width * family.thickness <= leanBatten * need.width * need.thickness;
}

function hasRoom(family: SolidFamily, need: Need, used: number, trim: Trim): boolean {
  const isBatten = family.form === 'batten';
  const fitting = family.lines.filter((line) =>
    isBatten ? need.length <= usableOf(line, trim).length : fitsOn(need, line, trim),
  );
  if (fitting.some((line) => countOf(line) === null)) return true;
  const room = family.lines.reduce((sum, line) => {
    const usable = usableOf(line, trim);
    return sum + (countOf(line) ?? 0) * usable.length * (isBatten ? 1 : usable.width);
  }, 0);
  return used + demandOf(family, need) <= room * reckonedShare[family.form];
}

function demandOf(family: SolidFamily, need: Need): number {
  return need.count * need.length * (family.form === 'batten' ? 1 : need.width);
}
