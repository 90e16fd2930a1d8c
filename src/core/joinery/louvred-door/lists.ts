import { formatNumber, markSize } from '#core/units';
import { louvredNumbers } from './parts.ts';
import type { LouvredLayout } from './sizes.ts';
import { hangDoor, hangingFixings, measureDoor } from '../hung-door/lists.ts';
import { partAddress } from '../parts.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';

const show = markSize;

type Key = keyof typeof louvredNumbers;

/** The joints of a louvred door with the settings for them (joinery B4, C20). */
export function louvredDoorJoints(piece: Piece, { book, choices }: LouvredLayout): readonly Joint[] {
  const rails = ['top', 'bottom', ...(choices.midRails > 0 ? (['mid'] as const) : [])] as const;
  const v = book.value;
  const at = (key: Key) => partAddress(piece, louvredNumbers[key]);
  const cheek = show((v('T') - v('tenon_t')) / 2);
  const loose = choices.joint === 'loose-tenon';
  const corner = loose
    ? `Slots ${show(v('tenon_t'))} wide, ${show(v('reach'))} deep, ${cheek} from the face; loose tenon ${show(v('tenon_L'))} long.`
    : `Tenon ${show(v('tenon_t'))} thick, ${show(v('reach'))} long; cheeks ${cheek} deep from both faces; mortise ${show(v('reach') + 1.5)} deep.`;
  const corners = rails.flatMap((rail) =>
    (['left', 'right'] as const).map((stile): Joint => ({
      kind: loose ? 'loose tenon' : 'stub mortise and tenon',
      between: [at(rail), at(stile)],
      count: rail === 'mid' ? choices.midRails : 1,
      settings: [corner],
    })),
  );
  const housings = (['left', 'right'] as const).map((stile): Joint => ({
    kind: 'housing',
    between: [at('slats'), at(stile)],
    count: v('nl_all'),
    settings: [
      `Template at ${formatNumber(v('phi'))}° to the edge of the stile, ${show(v('p'), 2)} from one to the next, ${show(v('hd'))} deep, ${show(0.2)} wider than the slat; prove it on a spare.`,
    ],
  }));
  return [...corners, ...housings];
}

/** What to buy for a louvred door. */
export function louvredDoorFixings({ book, choices }: LouvredLayout): readonly Fixing[] {
  return [
    ...hangingFixings(book, choices),
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'frame of the door', source: 'joinery C' },
  ];
}

/** Order of work of a louvred door (joinery B4); minutes are common practice, no source. */
export function louvredDoorSteps(
  piece: Piece,
  layout: LouvredLayout,
  parts: readonly Part[],
): readonly AssemblyStep[] {
  const pick = (...keys: readonly Key[]) =>
    parts.filter((part) => keys.some((key) => part.id === partAddress(piece, louvredNumbers[key])));
  const { book, choices } = layout;
  const other = choices.hinged === 'left' ? 'right' : 'left';
  return chainSteps([
    ...measureDoor(book, choices.frame),
    ...makeDoor(layout, { pick, corner: louvredDoorJoints(piece, layout)[0]?.settings[0] ?? '' }),
    {
      id: 'glue',
      text: 'Dry first. Then glue the rails to the left stile, feed in the slats without glue, close with the right stile; diagonals equal, no wind. Saw off the horns.',
      place: 'workshop',
      minutes: 60 + book.value('nl_all') * 2,
      parts,
    },
    ...hangDoor(book, choices, { hinge: pick(choices.hinged), lock: pick(other), all: parts }),
  ]);
}

interface Made {
  readonly pick: (...keys: readonly Key[]) => readonly Part[];
  /** Setting of the corner joints. */
  readonly corner: string;
}

function makeDoor({ book, choices }: LouvredLayout, { pick, corner }: Made): readonly StepDraft[] {
  const v = book.value;
  const work = { place: 'workshop' } as const;
  const frame = pick('left', 'right', 'top', 'bottom', 'mid');
  const edges =
    choices.section === 'flush'
      ? `, then bevel both edges, saw tilted ${formatNumber(v('tilt'))}° from square`
      : ', arrises broken';
  return [
    {
      ...work,
      id: 'mill',
      text: `Plane stiles and rails to ${show(v('T'))} at one setting; choose faces, mark the stiles as a pair.`,
      minutes: 50,
      parts: frame,
    },
    {
      ...work,
      id: 'slats',
      text: `Rip ${v('nl_all')} slats and 2 spare ${show(v('b'))} × ${show(v('ts'))} at one setting${edges}; cut them ${show(v('slat_L'))} long against a stop.`,
      minutes: 60 + v('nl_all') * 2,
      parts: pick('slats'),
    },
    {
      ...work,
      id: 'finish-slats',
      text: 'Sand the slats and give them all their coats but the last; keep the ends bare.',
      minutes: 40 + v('nl_all') * 3,
      parts: pick('slats'),
    },
    {
      ...work,
      id: 'joints',
      text: `Cut the corner joints. ${corner}`,
      minutes: 70,
      parts: [...frame, ...pick('looseTop', 'looseBottom', 'looseMid')],
    },
    {
      ...work,
      id: 'houses',
      text: `House the stiles for the slats, the first ${show(v('wb'))} above the foot at its lower corner, then every ${show(v('p'), 2)}${choices.midRails > 0 ? `; over each mid rail anew, ${show(v('wb') + v('clear') + v('wm'))} above the foot over the first` : ''}; the right stile is the mirror image of the left.`,
      minutes: 15 + v('nl_all') * 5,
      parts: pick('left', 'right'),
    },
  ];
}
