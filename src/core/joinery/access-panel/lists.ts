import { formatNumber, markSize } from '#core/units';
import { panelNumbers } from './parts.ts';
import type { PanelLayout } from './sizes.ts';
import { partAddress } from '../parts.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Fixing, Joint, Part } from '../types.ts';
import type { WorkingBook } from '../working.ts';

const show = markSize;

/** The panel on its cleats (joinery B14); one that laps has no joint. */
export function accessPanelJoints(piece: Piece, { choices }: PanelLayout): readonly Joint[] {
  if (choices.mount === 'lap') return [];
  return (['cleats', 'cleatsSide'] as const).map((cleats) => ({
    kind: 'on cleats',
    between: [partAddress(piece, panelNumbers.panel), partAddress(piece, panelNumbers[cleats])],
    count: 2,
    settings: ['Cleats back from the surround by the thickness of the panel: set them with an offcut of it.'],
  }));
}

/** What to buy for an access panel. */
export function accessPanelFixings(
  { book, choices }: PanelLayout,
  parts: readonly Part[],
): readonly Fixing[] {
  const v = book.value;
  const through = v('bt') + (choices.mount === 'lap' ? v('T') : 0);
  const length = Math.ceil((through + 15) / 5) * 5;
  const cleats = parts
    .filter(({ name }) => name.startsWith('Cleat'))
    .reduce((sum, part) => sum + part.quantity * part.machining.length, 0);
  return [
    {
      item: `Screw 4 × ${formatNumber(length)}, round head, stainless A4, with washer`,
      quantity: v('buttons'),
      use: 'turn buttons; not into a cable, pipe or the hull side',
      source: 'joinery B14',
    },
    ...(cleats > 0
      ? [
          {
            item: 'Screw 3.5 × 25, countersunk, stainless A4',
            quantity: cleats,
            use: 'cleats',
            source: 'joinery C1',
          },
        ]
      : []),
    ...(choices.notch === 'ring'
      ? [{ item: 'Flush lifting ring', quantity: 1, use: 'panel', source: 'joinery B14' }]
      : []),
  ];
}

/** Order of work of an access panel (joinery B14, B-H); minutes are common practice, no source. */
export function accessPanelSteps(
  { book, choices }: PanelLayout,
  parts: readonly Part[],
): readonly AssemblyStep[] {
  const v = book.value;
  const named = (start: string) => parts.filter(({ name }) => name.startsWith(start));
  const lap = choices.mount === 'lap';
  const hold =
    choices.notch === 'hole' ? ' Bore the finger hole.' : choices.notch === 'ring' ? ' Let in the ring.' : '';
  return chainSteps([
    {
      id: 'measure',
      text: `Measure the hole at three places each way, and both diagonals; the panel is made for ${show(v('hole_W'))} × ${show(v('hole_H'))}.`,
      place: 'boat',
      minutes: 10,
      take: ['tape', 'two sliding sticks'],
    },
    {
      id: 'panel',
      text: `Cut the panel ${show(v('panel_W'))} × ${show(v('panel_H'))}, grain as the surround; ease the edges.${hold} Mark the back THIS WAY UP. Finish both faces and the edges alike.`,
      place: 'workshop',
      minutes: 45,
      parts: named('Panel'),
    },
    makeButtons(book, lap, [...named('Turn'), ...named('Packer')]),
    ...(lap
      ? []
      : [
          {
            id: 'cleats',
            text: `Fix the cleats inside the hole, ${show(v('T'))} back from the surround.`,
            place: 'boat' as const,
            minutes: 40,
            parts: named('Cleat'),
            take: ['screwdriver', 'small drill', 'offcut of the panel'],
          },
        ]),
    {
      id: 'fit',
      text: `Hold the panel in place and screw the buttons to the surround, pivots ${show(v('e'))} from its edge, screws just loose enough to turn. It must come out with all buttons open.`,
      place: 'boat',
      minutes: 10 + 5 * v('buttons'),
      parts: [...named('Panel'), ...named('Turn'), ...named('Packer')],
      take: ['screwdriver', 'small drill', 'washers'],
    },
  ]);
}

function makeButtons({ value: v }: WorkingBook, lap: boolean, parts: readonly Part[]): StepDraft {
  return {
    id: 'buttons',
    text: `Make ${v('buttons')} buttons ${show(v('button_L'))} × ${show(v('bw'))} × ${show(v('bt'))} from one strip: bore the pivots ${show(v('bw') / 2)} from the end and round both ends before parting.${lap ? ` Packers ${show(v('T'))} thick under them.` : ''}`,
    place: 'workshop',
    minutes: 15 + 8 * v('buttons'),
    parts,
  };
}
