import { rectangleOutline } from '#core/geometry';
import { formatNumber } from '#core/units';
import { jointKindOf } from './joint-findings.ts';
import { jointWords } from './joints/joint-words.ts';
import { roughSize } from './parts.ts';
import { spareRule } from './rules.ts';
import type { BuildContext, BuiltPiece, Joint, Part, WorkingStep } from './types.ts';
import type { Material } from './piece-types.ts';

/** A part to be made over and above: like which one, how many, why. */
interface Spare {
  readonly like: Part;
  readonly name: string;
  readonly count: number;
  readonly why: string;
  /** Only a length to try a setting on, of the section of the other. */
  readonly toTry: boolean;
}

/**
 * A piece with the spares the project wants (joinery D3): a length of each section for every joint that is set up, two for a
 * corner of fingers or dovetails, a tenth more lipping, the longest piece of a run of trim once more. They come last, with
 * numbers that run on, and lie nowhere in the piece.
 */
export function withSpares(built: BuiltPiece, { settings, materials }: BuildContext): BuiltPiece {
  const { spares = 'none' } = settings;
  if (spares === 'none' || built.parts.length === 0) return built;
  const wanted = (part: Part) => part.spare === undefined && (part.kind === 'solid' || spares === 'all');
  const found = [...forJoints(built, wanted), ...forLippings(built, wanted), ...forRuns(built, wanted)];
  const last = Math.max(...built.parts.map(({ id }) => numberOf(id)));
  const made = found.flatMap((spare, i) => {
    const material = materials.find(({ id }) => id === spare.like.material);
    return material ? [makeSpare(spare, `${built.letter}${last + 1 + i}`, material)] : [];
  });
  if (made.length === 0) return built;
  return {
    ...built,
    parts: [...built.parts, ...made],
    working: found.some(({ toTry }) => toTry) ? [...built.working, lengthStep] : built.working,
    steps: takeAlong(built.steps, found, made),
  };
}

/** The length of a piece to try a setting on. */
const lengthStep: WorkingStep = {
  name: 'spare_L',
  label: 'length of a spare to set joints on',
  inputs: [],
  value: spareRule.length,
  unit: 'mm',
  source: 'joinery D3',
};

const numberOf = (id: string) => Number(/\d+$/.exec(id)?.[0] ?? 0);

/** Joints that are set up on a machine; the others need no trial. */
const withoutSetting: readonly string[] = ['butt', 'lipping', 'edge-joint'];
const corners: readonly string[] = ['box', 'through-dovetail', 'lapped-dovetail'];

/** One for each kind of joint in each thickness, those of one thickness together. */
function forJoints(built: BuiltPiece, wanted: (part: Part) => boolean): readonly Spare[] {
  const sections = new Map<string, { like: Part; kinds: Set<string> }>();
  for (const joint of built.joints) {
    const kind = jointKindOf(joint.kind);
    if (kind === null || withoutSetting.includes(kind)) continue;
    for (const part of membersOf(joint, built).filter(wanted)) {
      const key = sectionOf(part, [part.finished.thickness]);
      const known = sections.get(key);
      const like = known && acrossGrain(known.like) <= acrossGrain(part) ? known.like : part;
      sections.set(key, { like, kinds: new Set([...(known?.kinds ?? []), kind]) });
    }
  }
  return [...sections.values()].map(({ like, kinds }) => ({
    like,
    name: `Spare, ${formatNumber(like.finished.thickness)} thick`,
    count: [...kinds].reduce((sum, kind) => sum + (corners.includes(kind) ? spareRule.corner : 1), 0),
    why: `to set up on: ${[...kinds].map((kind) => jointWords({ kind })).join(', ')}`,
    toTry: true,
  }));
}

function membersOf({ between }: Joint, { parts }: BuiltPiece): readonly Part[] {
  return between.flatMap((id) => parts.find((part) => part.id === id) ?? []);
}

/** A tenth of the length of all lippings of one section, in pieces as long as the longest. */
function forLippings(built: BuiltPiece, wanted: (part: Part) => boolean): readonly Spare[] {
  const lippings = built.parts.filter(
    (part) =>
      wanted(part) &&
      built.joints.some(({ kind, between }) => kind === 'lipping' && between.includes(part.id)) &&
      !part.edges.some(({ treatment }) => treatment === 'lipped'),
  );
  return bySection(lippings).map((alike) => {
    const like = longest(alike);
    const total = alike.reduce((sum, { quantity, cut }) => sum + quantity * cut.length, 0);
    const count = Math.ceil((spareRule.lippingShare * total) / like.cut.length - 1e-9);
    return {
      ...{ like, count, toTry: false },
      name: 'Lipping, spare',
      why: `a tenth of ${formatNumber(total / 1000, 1)} m more`,
    };
  });
}

/** The longest of each section once more. */
function forRuns(built: BuiltPiece, wanted: (part: Part) => boolean): readonly Spare[] {
  const alike = bySection(built.parts.filter((part) => wanted(part) && part.oneMore));
  return alike.map((parts) => {
    const like = longest(parts);
    return { like, name: `${like.name}, spare`, count: 1, why: 'one more of the longest', toTry: false };
  });
}

function bySection(parts: readonly Part[]): readonly (readonly Part[])[] {
  const groups = new Map<string, readonly Part[]>();
  for (const part of parts) {
    const key = sectionOf(part, [part.cut.width, part.cut.thickness]);
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  return [...groups.values()];
}

function sectionOf({ material }: Part, sizes: readonly number[]): string {
  return [material, ...sizes.map((size) => Math.round(size * 10))].join(' ');
}

function longest(parts: readonly Part[]): Part {
  return parts.reduce((best, part) => (part.cut.length > best.cut.length ? part : best));
}

function acrossGrain({ grain, finished }: Part): number {
  return grain === 'along-width' ? finished.length : finished.width;
}

function makeSpare({ like, name, count, why, toTry }: Spare, id: string, material: Material): Part {
  const { length, width, thickness } = like.finished;
  const isAcross = like.grain === 'along-width';
  const finished = toTry
    ? { length: spareRule.length, width: acrossGrain(like), thickness }
    : { length, width, thickness };
  return {
    ...{ id, piece: like.piece, name, quantity: count, hand: 'none' as const },
    ...{ material: like.material, kind: like.kind, finished },
    cut: toTry ? finished : like.cut,
    rough: toTry ? roughSize(finished, material) : like.rough,
    outline: rectangleOutline(finished.length, finished.width),
    ...{ holes: [], edges: [], machining: [], placements: [] },
    grain: toTry ? 'along-length' : like.grain,
    turn: false,
    faceSide: 'either',
    spare: why,
    working: toTry
      ? {
          length: 'spare_L',
          width: isAcross ? like.working.length : like.working.width,
          thickness: like.working.thickness,
        }
      : like.working,
    notes: [`Spare, ${why} (like ${like.id}); it is not fitted.`],
  };
}

/** The steps with the spares beside the part they are like, where that is first worked on. */
function takeAlong(
  steps: BuiltPiece['steps'],
  found: readonly Spare[],
  made: readonly Part[],
): BuiltPiece['steps'] {
  const firsts = made.map((spare, i) => ({
    id: spare.id,
    at: steps.findIndex(
      ({ place, parts }) => place === 'workshop' && parts.includes(found[i]?.like.id ?? ''),
    ),
  }));
  return steps.map((step, at) => {
    const more = firsts.filter((first) => first.at === at).map(({ id }) => id);
    return more.length === 0 ? step : { ...step, parts: [...step.parts, ...more] };
  });
}
