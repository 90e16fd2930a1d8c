import type { DrawerLayout } from './sizes.ts';
import type { Fixing, Part } from '../types.ts';

const upTo5 = (length: number) => Math.ceil(length / 5 - 1e-9) * 5;

/** What to buy for a drawer, for all copies. */
export function drawerFixings(layout: DrawerLayout, parts: readonly Part[]): readonly Fixing[] {
  const { choices, book } = layout;
  const v = book.value;
  const { count } = choices;
  return [
    ...runnerFixings(layout),
    ...(choices.front === 'none'
      ? []
      : [
          {
            // through the box front and two thirds into the false front
            item: `Screw 4 × ${upTo5(v('tf') + (v('tff') * 2) / 3 - 4)}, panhead with washer, stainless A4`,
            quantity: 4 * count,
            use: 'false front, from inside',
            source: 'joinery B5',
          },
        ]),
    ...(choices.corner === 'butt'
      ? [
          {
            item: `Screw 3.5 × ${upTo5(v('ts') + 35)}, countersunk, stainless A4`,
            quantity: count * cornerScrews(parts),
            use: 'corners',
            source: 'joinery C1',
          },
        ]
      : []),
    ...(layout.notched
      ? [{ item: 'Drawer pull or finger hole', quantity: count, use: 'opening', source: 'joinery B5' }]
      : [
          {
            item: 'Push-button latch with pull',
            quantity: count,
            use: 'holds the drawer at sea',
            source: 'joinery B5, B5.6',
          },
        ]),
    {
      item: 'Drawer stop, hardwood turn-button',
      quantity: count,
      use: 'keeps the drawer from falling out',
      source: 'joinery B5',
    },
    {
      item: 'White glue (D3, water-resistant), small bottle',
      quantity: 1,
      use: 'corners',
      source: 'joinery C',
    },
  ];
}

function cornerScrews(parts: readonly Part[]): number {
  return parts
    .flatMap((part) => part.machining)
    .filter((one) => one.kind === 'hole' && one.note === 'corner screw').length;
}

function runnerFixings({ choices, book }: DrawerLayout): readonly Fixing[] {
  const { count } = choices;
  if (choices.runner === 'metal') {
    return [
      {
        item: `Drawer runner, side-mounted 12.7, stainless, ${book.value('Lr')} long, pair`,
        quantity: count,
        use: 'drawer',
        source: 'joinery B5',
      },
    ];
  }
  const strips = choices.runner === 'side-rail' ? 2 : 6;
  const thick = choices.runner === 'side-rail' ? book.value('rail_T') : book.value('runner_T');
  const perStrip = Math.max(2, Math.ceil(book.value('runner_L') / 250) + 1);
  return [
    {
      item: `Screw 4 × ${upTo5(thick + 10)}, countersunk, stainless A4`,
      quantity: count * strips * perStrip,
      use: choices.runner === 'side-rail' ? 'side rails' : 'runners, kickers and guides',
      source: 'joinery C1, spacing 250',
    },
  ];
}
