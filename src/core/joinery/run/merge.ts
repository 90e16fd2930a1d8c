import { joinBoxes3, type Point3 } from '#core/geometry';
import { sortBySeverity, type Problem } from '#core/problems';
import { nothing } from '../parts.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, BuiltPiece, Fixing, Part, WorkingStep } from '../types.ts';
import type { Member } from './members.ts';

type Merged = Pick<
  BuiltPiece,
  'parts' | 'joints' | 'matchedSets' | 'fixings' | 'steps' | 'working' | 'envelope' | 'findings' | 'members'
>;

/** A member with the new addresses of its parts; words in which an old address stands get the new one. */
interface Numbered {
  readonly member: Member;
  readonly ids: ReadonlyMap<string, string>;
  readonly words: (text: string) => string;
}

/**
 * The members as one piece: parts under its letter with numbers that run on, placed in one frame; joints, lists, steps and
 * working together. What several members say alike is said once.
 */
export function mergeMembers(piece: Piece, members: readonly Member[], own: readonly WorkingStep[]): Merged {
  const numbered = numberParts(piece, members);
  const parts = numbered.flatMap(movedParts);
  const boxes = members.map(({ built, at }) => moveBox(built.envelope, at));
  return {
    parts,
    joints: numbered.flatMap(({ member, ids, words }) =>
      member.built.joints.flatMap((joint) => {
        const [a, b] = joint.between.map((id) => ids.get(id));
        return a && b ? [{ ...joint, between: [a, b] as const, settings: joint.settings.map(words) }] : [];
      }),
    ),
    matchedSets: numbered.flatMap(({ member, ids, words }) =>
      member.built.matchedSets.map((set) => ({
        ...set,
        id: words(set.id),
        parts: set.parts.flatMap((id) => ids.get(id) ?? []),
      })),
    ),
    fixings: sumFixings(members.flatMap(({ built }) => built.fixings)),
    steps: joinSteps(numbered),
    working: [...own, ...members.flatMap(({ built }) => built.working)],
    envelope: boxes.length > 0 ? joinBoxes3(boxes) : nothing,
    findings: joinFindings(piece, numbered),
    members: numbered
      .filter(({ ids }) => ids.size > 0)
      .map(({ member, ids }) => ({ name: member.title || 'Face frame', parts: [...ids.values()] })),
  };
}

function numberParts(piece: Piece, members: readonly Member[]): readonly Numbered[] {
  let next = 1;
  return members.map((member) => {
    const ids = new Map(member.built.parts.map((part) => [part.id, `${piece.letter}${next++}`]));
    const { letter } = member.built;
    const pattern = new RegExp(`${letter}(\\d*)`, 'g');
    const words = (text: string) =>
      text.includes(letter) ? text.replace(pattern, (old) => ids.get(old) ?? piece.letter) : text;
    return { member, ids, words };
  });
}

function movedParts({ member, ids, words }: Numbered): readonly Part[] {
  const { built, at, title } = member;
  return built.parts.map((part) => ({
    ...part,
    id: ids.get(part.id) ?? part.id,
    piece: member.piece,
    name: title ? `${title}, ${part.name.charAt(0).toLowerCase()}${part.name.slice(1)}` : part.name,
    ...(part.matched && { matched: { ...part.matched, set: words(part.matched.set) } }),
    ...(part.besideOf !== undefined && { besideOf: ids.get(part.besideOf) ?? part.besideOf }),
    placements: part.placements.map((placed) => ({ ...placed, origin: movePoint(placed.origin, at) })),
    notes: part.notes.map(words),
  }));
}

const movePoint = (point: Point3, at: Point3): Point3 => ({
  x: point.x + at.x,
  y: point.y + at.y,
  z: point.z + at.z,
});
const moveBox = ({ min, max }: BuiltPiece['envelope'], at: Point3) => ({
  min: movePoint(min, at),
  max: movePoint(max, at),
});

function sumFixings(all: readonly Fixing[]): readonly Fixing[] {
  const found = new Map<string, Fixing>();
  for (const fixing of all) {
    const key = `${fixing.item}|${fixing.use}`;
    const known = found.get(key);
    found.set(key, known ? { ...known, quantity: known.quantity + fixing.quantity } : fixing);
  }
  return [...found.values()];
}

const measureStep = 'measure';

/** Before any wood is cut (joinery A10, rows 6 and 7). */
const measureAll: AssemblyStep = {
  id: measureStep,
  text: 'Measure again where the run stands: the width between its ends low and high, the plane of the front with a straightedge, and the hull at both ends from that plane every 100 mm of height. Where it differs from what was entered, stop and enter it.',
  place: 'boat',
  minutes: 45,
  parts: [],
  after: [],
  take: ['tape', 'straight batten', 'square', 'level', 'pencil'],
};

/** Steps of members of one kind done together; each kind in its own order, and its last work aboard after the kind before. */
function joinSteps(numbered: readonly Numbered[]): readonly AssemblyStep[] {
  const groups = [...new Set(numbered.map(({ member }) => member.group))];
  const steps: AssemblyStep[] = [measureAll];
  let before: string | undefined;
  for (const group of groups) {
    const own = stepsOfGroup(
      group,
      numbered.filter(({ member }) => member.group === group),
    );
    const lastAboard = own.findLast(({ place }) => place === 'boat');
    const ended = before;
    steps.push(
      ...own.map((step) =>
        step === lastAboard && ended !== undefined ? { ...step, after: [...step.after, ended] } : step,
      ),
    );
    before = own.at(-1)?.id ?? before;
  }
  return steps;
}

function stepsOfGroup(group: string, members: readonly Numbered[]): readonly AssemblyStep[] {
  const ids = [...new Set(members.flatMap(({ member }) => member.built.steps.map(({ id }) => id)))];
  const ordered = ids.map((id) => {
    const alike = members.flatMap((one) =>
      one.member.built.steps.filter((step) => step.id === id).map((step) => ({ step, one })),
    );
    const texts = new Map<string, string[]>();
    for (const { step, one } of alike) {
      const text = one.words(step.text);
      texts.set(text, [...(texts.get(text) ?? []), one.member.title]);
    }
    const text =
      texts.size === 1
        ? ([...texts.keys()][0] ?? '')
        : [...texts].map(([what, titles]) => `${titles.join('; ')}: ${what}`).join(' ');
    const take = [...new Set(alike.flatMap(({ step }) => step.take ?? []))];
    return {
      id: `${group}-${id}`,
      text,
      place: alike[0]?.step.place ?? 'workshop',
      minutes: alike.reduce((sum, { step }) => sum + step.minutes, 0),
      parts: alike.flatMap(({ step, one }) => step.parts.flatMap((part) => one.ids.get(part) ?? [])),
      ...(take.length > 0 && { take }),
    };
  });
  // its sizes come from the run: what a member alone would have measured first is measured once for all
  const own = ordered.slice(ordered.findIndex(({ place }) => place !== 'boat'));
  return own.map((step, i) => ({ ...step, after: [own[i - 1]?.id ?? measureStep] }));
}

/** The small-parts note is made once for the whole. */
const saidOnce: ReadonlySet<string> = new Set(['part-small-for-machines']);

function joinFindings(piece: Piece, numbered: readonly Numbered[]): readonly Problem[] {
  const found = new Map<string, { readonly finding: Problem; readonly titles: string[] }>();
  for (const { member, ids, words } of numbered) {
    for (const finding of member.built.findings) {
      if (saidOnce.has(finding.code)) continue;
      const message = words(finding.message);
      const key = `${finding.code}|${message}`;
      const about = ids.get(finding.about ?? '') ?? words(finding.about ?? piece.letter);
      const known = found.get(key);
      if (known) known.titles.push(member.title);
      else
        found.set(key, {
          finding: { ...finding, message, about, remedy: words(finding.remedy ?? '') },
          titles: [member.title],
        });
    }
  }
  const all = [...found.values()].map(({ finding, titles }) => {
    const named = titles.filter((title) => title !== '');
    const isPlain = named.length === 0 || named.length > 3;
    return isPlain ? finding : { ...finding, message: `${named.join('; ')}: ${finding.message}` };
  });
  return sortBySeverity(all);
}
