import { formatNumber, markSize } from '#core/units';
import { liningNumbers } from './parts.ts';
import type { LiningLayout } from './sizes.ts';
import { partAddress } from '../parts.ts';
import { chainSteps } from '../step-chain.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';

const show = markSize;

/** Slats on cleats (joinery B-H). */
export function liningJoints(piece: Piece, { book: { value: v } }: LiningLayout): readonly Joint[] {
  return [
    {
      kind: 'screwed from behind',
      between: [partAddress(piece, liningNumbers.slats), partAddress(piece, liningNumbers.cleats)],
      count: v('n') * v('nc'),
      settings: [
        `Hole ${show(3.8)} through the cleat at the middle of each slat, countersunk from the back; screw of ${show(3.5)}, ${show(v('screw_L'))} long at most.`,
      ],
    },
  ];
}

/** What to buy for a lining. */
export function liningFixings({ book: { value: v } }: LiningLayout): readonly Fixing[] {
  return [
    {
      item: `Screw 3.5 × ${formatNumber(Math.max(10, v('screw_L')))}, countersunk, stainless A4`,
      quantity: v('n') * v('nc'),
      use: 'slats, from behind through the cleats',
      source: 'joinery B-H 4',
    },
    {
      item: 'Screw 4.5 × 40, countersunk, stainless A4',
      quantity: v('nc') * Math.max(2, Math.ceil(v('O') / 250) + 1),
      use: 'cleats to the boat',
      source: 'joinery C1',
    },
  ];
}

/** Order of work of a slatted lining (joinery B-H); minutes are common practice, no source. */
export function liningSteps({ book }: LiningLayout, parts: readonly Part[]): readonly AssemblyStep[] {
  const v = book.value;
  const slats = parts.filter(({ name }) => name === 'Slat');
  const cleats = parts.filter(({ name }) => name === 'Cleat');
  return chainSteps([
    {
      id: 'rip',
      text: `Rip ${v('n')} slats ${show(v('s'), 2)} × ${show(v('t'))} at one setting, and a spare; ${show(v('run'))} long. Spacers ${show(v('g'), 2)} thick.`,
      place: 'workshop',
      minutes: 30 + 3 * v('n'),
      parts: slats,
    },
    {
      id: 'finish',
      text: 'Ease the edges and finish the slats on all sides.',
      place: 'workshop',
      minutes: 30 + 5 * v('n'),
      parts: slats,
    },
    {
      id: 'drill',
      text: `Cut and drill the cleats together: the first hole ${show(v('first') + v('s') / 2, 2)} from the end, then every ${show(v('step'), 2)}.`,
      place: 'workshop',
      minutes: 20 + 4 * v('nc'),
      parts: cleats,
    },
    {
      id: 'cleats',
      text: `Fix the cleats to a string line, ${show(v('cleat_pitch'))} middle to middle; pack them so that a straightedge touches all.`,
      place: 'boat',
      minutes: 20 * v('nc'),
      parts: cleats,
      take: ['string', 'straightedge', 'packers', 'screwdriver', 'small drill'],
    },
    {
      id: 'slats',
      text: 'Set the first slat to the datum, the others with the spacers; five before the end measure what is left and share it out. Where the back cannot be reached, screw slats and cleats together first and fix them as panels.',
      place: 'boat',
      minutes: 20 + 6 * v('n'),
      parts: slats,
      take: ['spacers', 'tape', 'screwdriver', 'level or plumb line'],
    },
  ]);
}
