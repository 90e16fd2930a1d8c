import { markSize } from '#core/units';
import type { LidsLayout } from './layout.ts';
import { chainSteps } from '../step-chain.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';

const show = markSize;
const named = (parts: readonly Part[], name: string) => parts.filter((part) => part.name.startsWith(name));

/** Bearers on their blocks (joinery B10). */
export function lidsJoints({ bearers }: LidsLayout, parts: readonly Part[]): readonly Joint[] {
  const [block] = named(parts, 'Block');
  return named(parts, 'Cross bearer').flatMap((bearer): readonly Joint[] =>
    block
      ? [
          {
            kind: 'block',
            between: [bearer.id, block.id],
            count: 2 * (bearer.quantity || bearers.length),
            settings: [
              'Ends of the bearer on blocks glued and screwed to the sides; one screw down into each.',
            ],
          },
        ]
      : [],
  );
}

/** What to buy for lids. */
export function lidsFixings(layout: LidsLayout, parts: readonly Part[]): readonly Fixing[] {
  const screws = named(parts, 'Cleat').reduce((sum, part) => sum + part.quantity * part.machining.length, 0);
  const blocks = named(parts, 'Block').reduce((sum, part) => sum + part.quantity, 0);
  return [
    ...(screws + blocks > 0
      ? [
          {
            item: 'Screw 4 × 35, countersunk, stainless A4',
            quantity: screws + 3 * blocks,
            use: 'cleats and blocks',
            source: 'joinery C1',
          },
        ]
      : []),
    {
      item: 'Turn button or strap',
      quantity: layout.lids.length,
      use: 'holds a lid down when the boat is knocked down',
      source: 'joinery B10',
    },
    {
      item: 'Lanyard, 400 mm, with two eyes',
      quantity: layout.lids.length,
      use: 'a lid turned on edge falls through its own hole',
      source: 'joinery B10',
    },
  ];
}

/** Order of work of lids (joinery B10, B-H); minutes are common practice, no source. */
export function lidsSteps(
  { book, lids, bearers, choices }: LidsLayout,
  parts: readonly Part[],
): readonly AssemblyStep[] {
  const v = book.value;
  const under = [...named(parts, 'Cleat'), ...named(parts, 'Cross bearer'), ...named(parts, 'Block')];
  const lid = named(parts, 'Lid');
  return chainSteps([
    {
      id: 'measure',
      text: `Measure the aperture at both ends and the middle, and both diagonals; the lids are made for ${show(v('L'))} × ${show(v('W'))}.`,
      place: 'boat',
      minutes: 15,
      take: ['tape', 'two sliding sticks'],
    },
    {
      id: 'cleats',
      text: `Cut cleats ${show(v('cw'))} × ${show(v('ct'))}, mitred where they meet${bearers.length > 0 ? `, and ${bearers.length} cross bearers with their blocks` : ''}; drill them.`,
      place: 'workshop',
      minutes: 40 + 10 * bearers.length,
      parts: under,
    },
    {
      id: 'lids',
      text: `Cut ${lids.length} lids, face grain from cleat to cleat, each ${show(v('g'))} smaller all round${choices.aperture.square ? '' : '; each has its own outline, number them'}. Bore the finger holes${choices.vents ? ' and vents' : ''}, round their edges, ease all edges ${show(2)}, seal them.`,
      place: 'workshop',
      minutes: 30 * lids.length,
      parts: lid,
    },
    {
      id: 'fix-cleats',
      text: `Fix the cleats to a string, ${show(v('T'))} below the top, then the blocks and bearers level with them.`,
      place: 'boat',
      minutes: 60 + 15 * bearers.length,
      parts: under,
      take: ['string', 'straightedge', 'screwdriver', 'small drill'],
    },
    {
      id: 'lay-lids',
      text: `Lay the lids in, ${show(v('g'))} clear all round; each must lift by its hole and not rock. Fit turn buttons or straps, and the lanyards.`,
      place: 'boat',
      minutes: 20 * lids.length,
      parts: lid,
      take: ['block plane', 'lanyards', 'turn buttons', 'screwdriver'],
    },
  ]);
}
