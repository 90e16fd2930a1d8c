import type { Part } from '#core/joinery';
import type { Problem } from '#core/problems';

import { alongGrain, singleNeed, type Need } from './need.ts';

/**
 * Machine limits below which a part is cut from a larger blank, mm (joinery D5, common practice): shortest piece to
 * crosscut without a sled, shortest solid blank to plane, narrowest blank to plane.
 */
export const machineLimits = { crosscut: 100, planeLength: 300, planeWidth: 20 } as const;

/** Most copies side by side in one mother blank: a longer row gathers too much error of the fence. */
const mostInRow = 5;

/** How many copies lie behind and beside each other in a mother blank. */
interface Gang {
  readonly along: number;
  readonly across: number;
}

/**
 * The blanks of a part: single ones as a rule; copies too small for the machines lie together in mother blanks
 * (joinery D5), each `n` parts and `n - 1` kerfs, the allowance of one blank round them.
 */
export function gangParts(
  part: Part,
  kerf: number,
): { readonly needs: readonly Need[]; readonly findings: readonly Problem[] } {
  const single = singleNeed(part);
  if (part.staves) return { needs: [single], findings: [] };
  const gang = chooseGang(part, single, kerf);
  const inOne = gang.along * gang.across;
  if (inOne < 2) return enlargeTiny(part, single);
  const mothers = Math.floor(part.quantity / inOne);
  const left = part.quantity - mothers * inOne;
  const rest = left > 0 ? [makeMother(part, single, kerf, restGang(gang, left))] : [];
  return {
    needs: [{ ...makeMother(part, single, kerf, gang), count: mothers }, ...rest],
    findings: [
      {
        severity: 'note',
        code: 'cut-from-mother-blank',
        about: part.id,
        message: `${part.id} ${part.name} (${show(part.cut.length)} × ${show(part.cut.width)} mm) is below the size that is safe to machine: up to ${inOne} of the ${part.quantity} lie together in one larger blank.`,
        remedy: 'Plane and mould the larger blank first, part the copies last.',
        source: 'joinery D5',
      },
    ],
  };
}

function chooseGang(part: Part, single: Need, kerf: number): Gang {
  const cut = alongGrain(part, part.cut);
  if (part.quantity < 2) return { along: 1, across: 1 };
  if (part.kind === 'solid') {
    const allowance = 25; // mm at the ends of a blank (joinery D4)
    const along = Math.floor((machineLimits.planeLength - allowance + kerf) / (cut.length + kerf));
    if (along > 1) return { along: Math.min(along, part.quantity), across: 1 };
    const isNarrow = cut.width < machineLimits.planeWidth;
    return { along: 1, across: isNarrow ? Math.min(mostInRow, part.quantity) : 1 };
  }
  if (Math.max(single.length, single.width) >= machineLimits.crosscut) return { along: 1, across: 1 };
  const along = Math.ceil((machineLimits.crosscut + kerf) / (single.length + kerf));
  return { along: Math.min(along, part.quantity), across: 1 };
}

function restGang(gang: Gang, left: number): Gang {
  return gang.along > 1 ? { along: left, across: 1 } : { along: 1, across: left };
}

function makeMother(part: Part, single: Need, kerf: number, gang: Gang): Need {
  const cut = alongGrain(part, part.cut);
  const inOne = gang.along * gang.across;
  if (inOne === 1) return { ...single, count: 1 };
  const more = { length: part.kind === 'solid' ? 25 : 0, width: single.width - cut.width };
  const step = {
    x: gang.along > 1 ? cut.length + kerf : 0,
    y: gang.across > 1 ? cut.width + kerf : 0,
  };
  const full = {
    length: gang.along > 1 ? gang.along * cut.length + (gang.along - 1) * kerf + more.length : single.length,
    width: gang.across > 1 ? gang.across * cut.width + (gang.across - 1) * kerf + more.width : single.width,
  };
  const least = part.kind === 'solid' ? machineLimits.planeLength : machineLimits.crosscut;
  return {
    ...single,
    id: `${part.id}x${inOne}`,
    count: 1,
    length: Math.max(Math.ceil(full.length - 1e-9), least),
    width: Math.ceil(full.width - 1e-9),
    finished: { ...single.finished, width: full.width - more.width },
    parts: Array.from({ length: inOne }, (_, index) => ({
      part: part.id,
      x: index * step.x,
      y: index * step.y,
      length: gang.along > 1 ? cut.length : single.length,
      width: gang.across > 1 ? cut.width : single.width,
    })),
    title: `${inOne} × ${part.id} ${part.name}`,
  };
}

/** A sheet part too small to hold, of which there is only one: its blank grows to what can be crosscut. */
function enlargeTiny(
  part: Part,
  single: Need,
): { readonly needs: readonly Need[]; readonly findings: readonly Problem[] } {
  if (part.kind === 'solid' || Math.max(single.length, single.width) >= machineLimits.crosscut)
    return { needs: [single], findings: [] };
  return {
    needs: [{ ...single, length: machineLimits.crosscut }],
    findings: [
      {
        severity: 'note',
        code: 'blank-enlarged',
        about: part.id,
        message: `${part.id} ${part.name} (${show(part.cut.length)} × ${show(part.cut.width)} mm) is too small to saw safely; its blank is ${machineLimits.crosscut} long.`,
        remedy: 'Cut it to size last, in a sled or by hand.',
        source: 'joinery D5',
      },
    ],
  };
}

function show(length: number): string {
  return String(Math.round(length * 10) / 10);
}
