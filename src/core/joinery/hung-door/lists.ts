import { formatNumber, markSize } from '#core/units';
import type { HungChoices } from './hung-choices.ts';
import type { FrameForDoor } from './frame.ts';
import { lockFixing } from './lock.ts';
import { latchKit, lockSteps, wordLatch } from './lock-steps.ts';
import { boltFixings, isPaired } from './pair.ts';
import type { StepDraft } from '../step-chain.ts';
import type { Fixing, Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';
import { hingeHeights } from './hinges.ts';

const show = markSize;

/** Hinges, lock and stop of a door; what its frame already lists is not listed twice, but for the second of two doors. */
export function hangingFixings(
  book: WorkingBook,
  choices: HungChoices,
  more: readonly Fixing[] = [],
): readonly Fixing[] {
  const frame = choices.frame?.built.kind === 'door-frame' ? choices.frame : null;
  const lock = lockFixing(book, choices);
  const isUsualHinge = book.value('hinge_L') >= 75 && book.value('hinge_L') <= 100;
  const hardware: readonly Fixing[] = [
    {
      item:
        frame || isUsualHinge
          ? 'Hinge, 75 to 100, with screws'
          : `Hinge, ${formatNumber(book.value('hinge_L'))}, with screws`,
      quantity: book.value('hinges'),
      use: 'door',
      source: 'joinery B2.6',
    },
    ...(lock ? [lock] : []),
    ...more,
    { item: 'Rubber door stop', quantity: 1, use: 'door', source: 'joinery B2' },
  ];
  const listed = (item: string) => (choices.leaf === 'second' ? 0 : listedBy(frame, item));
  const wanted = hardware
    .map((fixing) => ({ ...fixing, quantity: fixing.quantity - listed(fixing.item) }))
    .filter((fixing) => fixing.quantity > 0);
  return [...wanted, ...boltFixings(book, choices)];
}

/** How many of it the door frame lists. Its latch comes and goes with the locks of its doors: one without a lock leaves it there. */
function listedBy(frame: FrameForDoor | null, item: string): number {
  if (frame && item === 'Latch with strike') return 1;
  return (frame?.built.fixings ?? [])
    .filter((fixing) => fixing.item === item)
    .reduce((sum, fixing) => sum + fixing.quantity, 0);
}

/** The first step: what is measured before a door without a frame is made; none when it has one. */
export function measureDoor(book: WorkingBook, frame: FrameForDoor | null): readonly StepDraft[] {
  if (frame) return [];
  const v = book.value;
  const clear = `${show(clearWidth(book) + 2 * v('gs'))} × ${show(v('Hd') + v('gt') + v('gb'))}`;
  return [
    {
      id: 'measure',
      text: `Measure the opening the door hangs in at three heights and both sides, and both diagonals; the door is made for ${clear} clear. If one is smaller, stop and enter it.`,
      place: 'boat',
      minutes: 10,
      take: ['tape', 'two sliding sticks'],
    },
  ];
}

/** Width of all that hangs in the opening: of two doors that of both. */
export const clearWidth = (book: WorkingBook): number => book.value(book.has('W_pair') ? 'W_pair' : 'Wd');

/** The last steps: bevel, hinges, hanging, latch (joinery B2); minutes are common practice, no source. */
export function hangDoor(
  book: WorkingBook,
  choices: HungChoices,
  made: { readonly hinge: readonly Part[]; readonly lock: readonly Part[]; readonly all: readonly Part[] },
): readonly StepDraft[] {
  const v = book.value;
  const { frame } = choices;
  const heights = hingeHeights(book).map((height) => show(height));
  return [
    ...bevelStep(book, made.lock),
    ...lockSteps(book, choices, made.lock),
    {
      id: 'hinges',
      text: `Let in ${v('hinges')} hinges with their middles ${heights.join(', ')} above the lower edge, ${show(v('hinge_in'))} deep or as the leaf is thick; try the screws, take the hinges off.`,
      place: 'workshop',
      minutes: 20 * v('hinges'),
      parts: made.hinge,
      take: ['hinges'],
    },
    {
      id: 'finish',
      text: 'Finish both faces and all edges with the same number of coats, the upper and lower edge too.',
      place: 'workshop',
      minutes: 150,
      parts: made.all,
    },
    {
      id: 'hang',
      text: `${wordHanging(book, choices)} Then all screws.`,
      place: 'boat',
      minutes: 45,
      parts: made.all,
      take: ['hinges', 'packers', 'screwdriver', 'small drill', 'block plane'],
      ...hangInOrder(choices),
    },
    {
      id: 'latch',
      text: `${wordLatch(choices)} Pull and push hard: it must not open at heel.`,
      place: 'boat',
      minutes: 30,
      take: [...latchKit(choices), 'rubber stop', 'small drill'],
      ...inFrame(frame, { after: ['fix-latch-jamb'], before: [] }),
    },
  ];
}

function bevelStep({ value: v }: WorkingBook, parts: readonly Part[]): readonly StepDraft[] {
  if (v('beta') === 0) return [];
  return [
    {
      id: 'bevel',
      text: `Plane the lock edge ${formatNumber(v('beta'))}° off square: the face stays ${show(v('Wd'))} wide, the back becomes ${show(v('back_W'))}.`,
      place: 'workshop',
      minutes: 15,
      parts,
    },
  ];
}

/** How the door is hung. */
export function wordHanging({ value: v }: WorkingBook, choices: HungChoices): string {
  const { frame } = choices;
  const gap = `a gap of ${show(v('gs'))}`;
  const packed = `one screw in each leaf, packers of ${show(v('gb'))} under it`;
  if (isPaired(choices)) {
    const where = frame ? `its jamb of ${frame.built.letter} ${frame.built.name}` : 'its jamb';
    return `Hang it on ${where} with ${packed}; ${gap} at the jamb and ${show(v('gm'))} between the two doors.`;
  }
  return frame?.built.kind === 'door-frame'
    ? `Hang it on the hinge jamb of ${frame.built.letter} ${frame.built.name} as soon as that is fixed, ${packed}; the other jamb is then set to it with ${gap}.`
    : `Hang it with ${packed}; the gap is ${show(v('gs'))} at the sides and it passes the jamb all the way.`;
}

/** When a door is hung: between the fixing of both jambs, as the second is set to it; two doors when both are fixed. */
export function hangInOrder(choices: HungChoices): Pick<StepDraft, 'elsewhere'> {
  return isPaired(choices)
    ? inFrame(choices.frame, { after: ['fix-hinge-jamb', 'fix-latch-jamb'], before: [] })
    : inFrame(choices.frame, { after: ['fix-hinge-jamb'], before: ['fix-latch-jamb'] });
}

/** Steps of the frame that a step of the door follows or holds up: its second jamb is set to the door (joinery B1). */
export function inFrame(
  frame: FrameForDoor | null,
  ids: { readonly after: readonly string[]; readonly before: readonly string[] },
): Pick<StepDraft, 'elsewhere'> {
  if (!frame) return {};
  const { piece, steps } = frame.built;
  const of = (wanted: readonly string[]) =>
    steps.filter((step) => wanted.includes(step.id)).map((step) => ({ piece, step: step.id }));
  return { elsewhere: { after: of(ids.after), before: of(ids.before) } };
}
