import { formatNumber } from '#core/units';
import type { FrameForDoor } from './frame.ts';
import type { StepDraft } from '../step-chain.ts';
import type { Fixing, Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';
import { hingeHeights } from './hinges.ts';

const show = formatNumber;

/** Hinges, latch and stop of a door; what its frame already lists is not listed twice. */
export function hangingFixings(book: WorkingBook, frame: FrameForDoor | null): readonly Fixing[] {
  const hardware: readonly Fixing[] = [
    {
      item: frame ? 'Hinge, 75 to 100, with screws' : `Hinge, ${show(book.value('hinge_L'))}, with screws`,
      quantity: book.value('hinges'),
      use: 'door',
      source: 'joinery B2.6',
    },
    { item: 'Latch with strike', quantity: 1, use: 'door, cannot open at heel', source: 'joinery B2' },
    { item: 'Rubber door stop', quantity: 1, use: 'door', source: 'joinery B2' },
  ];
  const listed = (item: string) =>
    (frame?.built.fixings ?? [])
      .filter((fixing) => fixing.item === item)
      .reduce((sum, fixing) => sum + fixing.quantity, 0);
  return hardware
    .map((fixing) => ({ ...fixing, quantity: fixing.quantity - listed(fixing.item) }))
    .filter((fixing) => fixing.quantity > 0);
}

/** The first step: what is measured before a door without a frame is made; none when it has one. */
export function measureDoor({ value: v }: WorkingBook, frame: FrameForDoor | null): readonly StepDraft[] {
  if (frame) return [];
  const clear = `${show(v('Wd') + 2 * v('gs'))} × ${show(v('Hd') + v('gt') + v('gb'))}`;
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

/** The last steps: bevel, hinges, hanging, latch (joinery B2); minutes are common practice, no source. */
export function hangDoor(
  book: WorkingBook,
  frame: FrameForDoor | null,
  made: { readonly hinge: readonly Part[]; readonly lock: readonly Part[]; readonly all: readonly Part[] },
): readonly StepDraft[] {
  const v = book.value;
  const heights = hingeHeights(book).map((height) => show(height));
  const bevel: StepDraft = {
    id: 'bevel',
    text: `Plane the lock edge ${show(v('beta'))}° off square: the face stays ${show(v('Wd'))} wide, the back becomes ${show(v('back_W'))}.`,
    place: 'workshop',
    minutes: 15,
    parts: made.lock,
  };
  return [
    ...(v('beta') > 0 ? [bevel] : []),
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
      text: `${wordHanging(book, frame)} Then all screws.`,
      place: 'boat',
      minutes: 45,
      parts: made.all,
      take: ['hinges', 'packers', 'screwdriver', 'small drill', 'block plane'],
      ...inFrame(frame, { after: ['fix-hinge-jamb'], before: ['fix-latch-jamb'] }),
    },
    {
      id: 'latch',
      text: 'Fit the latch with its strike and the rubber stop. Pull and push hard: it must not open at heel.',
      place: 'boat',
      minutes: 30,
      take: ['latch', 'rubber stop', 'small drill'],
      ...inFrame(frame, { after: ['fix-latch-jamb'], before: [] }),
    },
  ];
}

function wordHanging({ value: v }: WorkingBook, frame: FrameForDoor | null): string {
  return frame
    ? `Hang it on the hinge jamb of ${frame.built.letter} ${frame.built.name} as soon as that is fixed, one screw in each leaf, packers of ${show(v('gb'))} under it; the other jamb is then set to it with a gap of ${show(v('gs'))}.`
    : `Hang it with one screw in each leaf, packers of ${show(v('gb'))} under it; the gap is ${show(v('gs'))} at the sides and it passes the jamb all the way.`;
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
