import { formatNumber, markSize } from '#core/units';
import type { HeadLayout } from './sizes.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';

const show = markSize;

/** Joints between plies, at the crown and with the jambs (joinery B17, C3, C6 to C8). */
export function curvedHeadJoints(layout: HeadLayout, parts: readonly Part[]): readonly Joint[] {
  return [...headJoints(layout, parts), ...jambJoints(layout, parts)];
}

const springingKinds = { butt: 'butt', housed: 'housing', rebated: 'rebate', halved: 'half-lap' } as const;

/** Joints of the head with the jambs that are made with it. */
function jambJoints(layout: HeadLayout, parts: readonly Part[]): readonly Joint[] {
  const jambs = parts.filter(({ name }) => name.startsWith('Jamb'));
  const laid = parts.filter(({ name, placements }) => placements.length > 0 && /^(Ply|Head)/.test(name));
  const [first] = laid;
  const last = layout.segments === 2 ? laid[1] : first;
  return jambs.map((jamb, i) => ({
    kind: springingKinds[layout.choices.springing],
    between: [(i === 0 ? first : last)?.id ?? '', jamb.id],
    count: 1,
    settings: springingSettings(layout),
  }));
}

function springingSettings({ book, choices }: HeadLayout): readonly string[] {
  const v = book.value;
  switch (choices.springing) {
    case 'butt':
      return [
        `Ends of the head square to the curve, ${formatNumber(v('a'))}° off level; tops of the jambs to them.`,
      ];
    case 'housed':
      return [
        `Ends of the head plumb, ${show(v('e_s'))} beyond the springings; its section knifed on the faces of the jambs, housed ${show(v('e_s'))} deep.`,
      ];
    case 'rebated':
      return [
        `Ends of the head plumb, ${show(v('e_s'))} beyond the springings; a step ${show(v('e_s'))} deep in the tops of the jambs, its seat along the curve. Two screws through the jamb into each end.`,
      ];
    case 'halved':
      return [
        `Ends of the head plumb with the outside of the jambs; half of ${show(v('depth'))} from the back of the head and from the face of the jambs, shoulders plumb and along the curve.`,
      ];
  }
}

/** Joints between plies, or at the crown. */
function headJoints({ book, choices, segments }: HeadLayout, parts: readonly Part[]): readonly Joint[] {
  const v = book.value;
  if (choices.method === 'laminated') {
    const plies = parts.filter(({ placements, name }) => placements.length > 0 && name.startsWith('Ply'));
    return plies.slice(1).map((ply, i) => ({
      kind: 'laminated',
      between: [plies[i]?.id ?? '', ply.id],
      count: 1,
      settings: [
        `Epoxy on both faces; contact pressure from the crown outwards, every ${show(60)} to ${show(80)}.`,
      ],
    }));
  }
  const [left, right] = parts;
  if (segments === 1 || !left || !right) return [];
  return [
    {
      kind: 'loose tenon',
      between: [left.id, right.id],
      count: 1,
      settings: [
        `Pockets ${show(v('tenon_t'))} × ${show(v('tenon_b'))}, ${show(v('pocket'))} deep, square to the joint; ends cut ${formatNumber(v('h'))}° off square to the chord.`,
      ],
    },
  ];
}

/** What to buy for a curved head. */
export function curvedHeadFixings({ book, choices }: HeadLayout): readonly Fixing[] {
  const v = book.value;
  if (choices.method === 'sawn')
    return [{ item: 'Epoxy glue, small pack', quantity: 1, use: 'head', source: 'joinery C' }];
  return [
    {
      item: 'Epoxy glue, small pack',
      quantity: Math.max(1, Math.ceil((v('n') * v('ply_L') * v('ply_W')) / 250_000)),
      use: 'plies of the head',
      source: 'joinery B17',
    },
    {
      item: 'Parting film or wax for the mould',
      quantity: 1,
      use: 'head comes off the mould',
      source: 'joinery B17',
    },
    {
      item: 'Screw 4.5 × 30, countersunk',
      quantity: 6 * Math.max(1, v('layers') - 1),
      use: 'layers of the mould',
      source: 'common practice, no source',
    },
  ];
}

/** Order of work of a curved head (joinery B17); minutes are common practice, no source. */
export function curvedHeadSteps(layout: HeadLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const { book, choices } = layout;
  const v = book.value;
  return chainSteps([
    {
      id: 'template',
      text: `Draw the arc full size from its radius of ${show(v('R'))}: span ${show(v('c'))}, rise ${show(v('f'))}; cut a template and try it in the boat.`,
      place: 'boat',
      minutes: 30,
      take: ['template', 'pencil', 'tape'],
    },
    ...(choices.method === 'laminated' ? laminate(layout, parts) : saw(layout, parts)),
    ...makeJambs(layout, parts),
    {
      id: 'fit',
      text: `${wordFit(layout)} Check the span of ${show(v('c'))} at the foot of the jambs too.`,
      place: 'workshop',
      minutes: 60,
      parts: parts.filter(({ placements }) => placements.length > 0),
    },
  ]);
}

function makeJambs({ book }: HeadLayout, parts: readonly Part[]): readonly StepDraft[] {
  if (!book.has('jamb_L')) return [];
  const v = book.value;
  return [
    {
      id: 'jambs',
      text: `Plane both jambs ${show(v('tj'))} thick, ${show(v('depth'))} wide, and cut them ${show(v('jamb_L'))} long, ${show(v('jamb_over'))} of it over the springings; mark them as a pair, the springings across both.`,
      place: 'workshop',
      minutes: 45,
      parts: parts.filter(({ name }) => name.startsWith('Jamb')),
    },
  ];
}

function wordFit({ book, choices }: HeadLayout): string {
  const v = book.value;
  if (choices.springing === 'butt') {
    return `Cut the ends square to the curve at the springings, ${formatNumber(v('a'))}° off level, and fit the jambs to them on the bench.`;
  }
  const jambs = book.has('jamb_L') ? 'the jambs' : 'the jambs, made elsewhere,';
  const how = {
    housed: `knife the section of the head on ${jambs} and house it ${show(v('e_s'))} deep, 15 of wood above it`,
    rebated: `cut a step ${show(v('e_s'))} deep in the tops of ${jambs}, its seat along the curve`,
    halved: `halve the head from the back and ${jambs} from the face, half of ${show(v('depth'))} each`,
  }[choices.springing];
  return `Cut the ends of the head plumb, ${show(v('e_s'))} beyond the springings; ${how}. Dry fit on the bench.`;
}

function laminate({ book: { value: v } }: HeadLayout, parts: readonly Part[]): readonly StepDraft[] {
  const mould = parts.filter(({ name }) => name.startsWith('Mould'));
  const plies = parts.filter(({ name }) => name.startsWith('Ply'));
  return [
    {
      id: 'mould',
      text: `Make the mould of ${v('layers')} layers to a radius of ${show(v('Rm'))}: rise ${show(v('mould_rise'))} on a chord of ${show(v('mould_chord'))}. Screw and glue the layers, true the curve as one, wax it.`,
      place: 'workshop',
      minutes: 120,
      parts: mould,
    },
    {
      id: 'plies',
      text: `Rip ${v('n')} plies and a spare ${show(v('ply_W'))} × ${show(v('t'))}, ${show(v('ply_L'))} long, numbered in their order in the board.`,
      place: 'workshop',
      minutes: 50,
      parts: plies,
    },
    {
      id: 'dry-bend',
      text: 'Bend all plies dry over the mould with every clamp: none cracks, no gap anywhere.',
      place: 'workshop',
      minutes: 30,
      parts: plies,
      take: ['clamps'],
    },
    {
      id: 'laminate',
      text: 'Glue with slow epoxy, clamp from the crown outwards, keep the edges in line. Leave it on the mould until hard, a day at least.',
      place: 'workshop',
      minutes: 75,
      parts: plies,
      take: ['epoxy', 'clamps', 'film'],
    },
    {
      id: 'clean',
      text: `Take it off, measure the rise, clean one edge and plane the other to ${show(v('depth'))}.`,
      place: 'workshop',
      minutes: 45,
      parts: plies,
    },
  ];
}

function saw({ book: { value: v }, segments }: HeadLayout, parts: readonly Part[]): readonly StepDraft[] {
  const join: StepDraft = {
    id: 'crown',
    text: 'Plane the ends that meet at the crown, slot them for the loose tenon, glue them on a flat bench over the template.',
    place: 'workshop',
    minutes: 60,
    parts,
  };
  return [
    {
      id: 'saw',
      text: `Mark ${segments === 1 ? 'the head' : 'both halves'} on a board ${show(v('board_W'))} wide planed to ${show(v('depth'))}, grain along the chord of ${show(v('seg_L'))}; saw outside the line.`,
      place: 'workshop',
      minutes: 60,
      parts,
    },
    ...(segments === 2 ? [join] : []),
    {
      id: 'fair',
      text: 'Fair both curves to the template with spokeshave and a bearing-guided cutter, always with the grain from the crown down.',
      place: 'workshop',
      minutes: 45,
      parts,
    },
  ];
}
