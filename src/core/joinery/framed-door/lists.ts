import { formatNumber, markSize } from '#core/units';
import { stationsIn } from './members.ts';
import { framedNumbers, hasHorns } from './parts.ts';
import { isLapped, type FramedLayout } from './sizes.ts';
import { hangDoor, hangingFixings, measureDoor } from '../hung-door/lists.ts';
import { partAddress } from '../parts.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';

const show = markSize;

type Key = keyof typeof framedNumbers;

const jointNames = {
  'haunched-tenon': 'haunched mortise and tenon',
  'through-tenon': 'through mortise and tenon',
  'stub-tenon': 'stub mortise and tenon',
  'groove-tongue': 'tongue in the groove',
  bridle: 'bridle',
  'scribed-moulding': 'scribed moulding',
  'loose-tenon': 'loose tenon',
  dowel: 'dowel',
  'half-lap': 'half-lap',
} as const;

/** The joints of a framed door with the settings for them (joinery B3, C20). */
export function framedDoorJoints(piece: Piece, layout: FramedLayout): readonly Joint[] {
  const { choices, rails, stiles } = layout;
  const at = (key: Key) => partAddress(piece, framedNumbers[key]);
  const kind = jointNames[choices.joint];
  const settings = cornerSettings(layout);
  const midKind = isLapped(choices.joint) ? jointNames['stub-tenon'] : kind;
  const ends = (['top', 'bottom', ...(rails > 0 ? (['mid'] as const) : [])] as const).flatMap((rail) =>
    (['left', 'right'] as const).map((stile): Joint => ({
      kind: rail === 'mid' ? midKind : kind,
      between: [at(rail), at(stile)],
      count: rail === 'mid' ? rails : 1,
      settings,
    })),
  );
  const between = (rail: Key, count: number): Joint => ({
    kind: midKind,
    between: [at('midStile'), at(rail)],
    count,
    settings,
  });
  const mids =
    stiles > 0
      ? [between('top', 1), between('bottom', 1), ...(rails > 0 ? [between('mid', 2 * rails)] : [])]
      : [];
  const panel: Joint = {
    kind: 'loose panel',
    between: [at('panel'), at('left')],
    count: layout.book.value('panels'),
    settings: grooveSettings(layout),
  };
  return [...ends, ...mids, panel];
}

function grooveSettings({ book }: FramedLayout): readonly string[] {
  const v = book.value;
  return [
    `Groove ${show(v('gw'))} wide, ${show(v('gd'))} deep, ${show(v('gz'))} from the face, all members from one setting, face to the fence.`,
    `Panel ${show(v('gp'))} short of the bottom at each side, ${show(1)} above and below; no glue.`,
  ];
}

function cornerSettings({ book, choices }: FramedLayout): readonly string[] {
  const v = book.value;
  const cheek = show((v('T') - v('tenon_t')) / 2);
  if (choices.joint === 'loose-tenon') {
    return [
      `Slots ${show(v('tenon_t'))} wide, ${show(v('reach'))} deep, ${cheek} from the face; loose tenon ${show(v('tenon_L'))} long.`,
    ];
  }
  if (choices.joint === 'dowel') {
    return [
      `Dowels of ${show(v('tenon_t'))}, ${show(v('reach') + 1)} deep with a stop, in the middle of ${show(v('T'))}: the first ${show(v('dowel_out'))} from the outer edge, the last ${show(v('dowel_in'))} from the inner one; places within ${show(0.2)} from a jig.`,
    ];
  }
  if (choices.joint === 'half-lap') {
    return [
      `Blade ${show(v('T') / 2)} high: rails from the back over ${show(v('ws'))}, stiles from the face over the width of the rail; first and last cut against the stop. Both together ${show(v('T'))} within ${show(0.1)}: prove it on an offcut.`,
    ];
  }
  const shoulder = `Shoulders from one stop: far side of the blade ${show(v('l'))} from the end; cheeks ${cheek} deep from both faces.`;
  switch (choices.joint) {
    case 'groove-tongue':
      return [shoulder];
    case 'scribed-moulding':
      return [
        `Matched cutters: moulding on every inner edge first, then the ends scribed; rails ${show(v('l'))} over their shoulders at each end. Prove it on spare stock of the same thickness.`,
      ];
    case 'bridle':
      return [
        shoulder,
        `Slot ${show(v('tenon_t'))} wide, ${cheek} from the face, as deep as the rail is wide; both ends ${show(1)} long and flushed.`,
      ];
    case 'haunched-tenon':
    case 'through-tenon':
      return [
        shoulder,
        `Haunch ${show(v('gd'))} long, ${show(v('hh'))} wide on the top rail and ${show(v('hh_bottom'))} on the bottom rail, towards the outside.`,
        choices.joint === 'through-tenon'
          ? `Mortise right through, worked from both edges; ${show(3)} wider at each end on the outside for wedges.`
          : `Mortise ${show(v('reach') + 1.5)} deep.`,
      ];
    case 'stub-tenon':
      return [
        shoulder,
        `Mortise ${show(v('reach') + 1.5)} deep; grooves of the stiles stopped at the rails.`,
      ];
  }
}

/** What to buy for a framed door. */
export function framedDoorFixings(layout: FramedLayout): readonly Fixing[] {
  const { book, choices } = layout;
  return [
    ...dowelFixings(layout),
    ...hangingFixings(book, choices),
    { item: 'Epoxy glue, small pack', quantity: 1, use: 'frame of the door', source: 'joinery C' },
  ];
}

/** Dowels by their length: those of the mid stiles are shorter. */
function dowelFixings(layout: FramedLayout): readonly Fixing[] {
  const { book, choices, rails, stiles } = layout;
  if (choices.joint !== 'dowel') return [];
  const v = book.value;
  const inOne = (name: string) => stationsIn([0, v(`tenon_b_${name}`)]).length;
  const ofRails = 2 * (inOne('top') + inOne('bottom') + (rails > 0 ? rails * inOne('mid') : 0));
  const ofStiles = stiles > 0 ? 2 * (rails + 1) * inOne('stile') : 0;
  const fixing = (reach: string, quantity: number, use: string): Fixing => ({
    item: `Dowel ${formatNumber(v('tenon_t'))} × ${formatNumber(Math.floor(2 * v(reach)))}, fluted`,
    quantity,
    use,
    source: 'joinery C2',
  });
  return [
    fixing('reach', ofRails, 'rails of the door'),
    ...(ofStiles > 0 ? [fixing('reach_mid', ofStiles, 'mid stiles of the door')] : []),
  ];
}

/** Order of work of a framed door (joinery B3); minutes are common practice, no source. */
export function framedDoorSteps(
  piece: Piece,
  layout: FramedLayout,
  parts: readonly Part[],
): readonly AssemblyStep[] {
  const pick = (...keys: readonly Key[]) =>
    parts.filter((part) => keys.some((key) => part.id === partAddress(piece, framedNumbers[key])));
  const { book, choices } = layout;
  const other = choices.hinged === 'left' ? 'right' : 'left';
  return chainSteps([
    ...measureDoor(book, choices.frame),
    ...makeMembers(layout, pick),
    ...glueUp(layout, pick, parts),
    ...hangDoor(book, choices, { hinge: pick(choices.hinged), lock: pick(other), all: parts }),
  ]);
}

type Pick = (...keys: readonly Key[]) => readonly Part[];

function makeMembers(layout: FramedLayout, pick: Pick): readonly StepDraft[] {
  const { book, choices } = layout;
  const v = book.value;
  const loose = choices.joint === 'loose-tenon';
  const joint: StepDraft = {
    id: 'joints',
    text: `${choices.joint === 'dowel' ? 'Bore the ends of the rails and the edges of the stiles' : choices.joint === 'half-lap' ? 'Cut the laps' : loose ? 'Slot the ends of the rails and the edges of the stiles' : choices.joint === 'groove-tongue' ? 'Cut the tongues on the rails' : choices.joint === 'scribed-moulding' ? 'Mould the inner edges, then scribe the ends of the rails' : 'Mortises first, then tenons to them; all shoulders at one setting'}. ${cornerSettings(layout).join(' ')}`,
    place: 'workshop',
    minutes: 90,
    parts: pick(
      'left',
      'right',
      'top',
      'bottom',
      'mid',
      'midStile',
      'looseTop',
      'looseBottom',
      'looseMid',
      'looseStile',
    ),
  };
  const groove: StepDraft = {
    id: 'groove',
    text: grooveSettings(layout)[0] ?? '',
    place: 'workshop',
    minutes: 25,
    parts: pick('left', 'right', 'top', 'bottom', 'mid', 'midStile'),
  };
  return [
    {
      id: 'mill',
      text: `Plane all members to ${show(v('T'))} at one setting, and a spare; choose faces, mark stiles as a pair, rails top and bottom.`,
      place: 'workshop',
      minutes: 60,
      parts: pick('left', 'right', 'top', 'bottom', 'mid', 'midStile'),
    },
    groove,
    joint,
    {
      id: 'panel',
      text: `Cut the panel${v('panels') > 1 ? 's' : ''} ${show(v('Hp'))} × ${show(v('Wp'))}, grain upright${book.has('raise') && v('raise') > 0 ? `; reduce the edge to ${show(v('te'))} over ${show(v('margin'))} all round` : ''}.`,
      place: 'workshop',
      minutes: 30 * v('panels'),
      parts: pick('panel'),
    },
  ];
}

function glueUp({ book, choices }: FramedLayout, pick: Pick, parts: readonly Part[]): readonly StepDraft[] {
  const v = book.value;
  const sheet = choices.stock.panel.kind === 'sheet';
  const trim = hasHorns(choices.joint) ? ' Then saw off the horns.' : '';
  return [
    {
      id: 'dry-fit',
      text: 'Put it together dry with the panel: shoulders close, it lies flat on the bench, the panel moves by hand.',
      place: 'workshop',
      minutes: 30,
      parts,
    },
    {
      id: 'finish-panel',
      text: 'Finish the panel all over before gluing, at least two coats, edges too.',
      place: 'workshop',
      minutes: 40,
      parts: pick('panel'),
    },
    {
      id: 'glue',
      text: `Glue the frame only${sheet && choices.panelGlued ? '; the sheet may be glued in' : ', never the panel; one pin or dab in the middle of its top and bottom'}. Diagonals of ${show(v('Wd'))} × ${show(v('Hd'))} equal, no wind.${trim}`,
      place: 'workshop',
      minutes: 60,
      parts,
    },
  ];
}
