import { markSize } from '#core/units';
import { drawerNumbers } from './parts.ts';
import type { DrawerLayout } from './sizes.ts';
import { partAddress } from '../parts.ts';
import { chainSteps, type StepDraft } from '../step-chain.ts';
import type { Piece } from '../piece-types.ts';
import type { AssemblyStep, Part } from '../types.ts';

const show = markSize;

/** Order of work of a drawer (joinery B5); minutes are common practice, no source, each further copy at half. */
export function drawerSteps(
  piece: Piece,
  layout: DrawerLayout,
  parts: readonly Part[],
): readonly AssemblyStep[] {
  const pick = (...keys: readonly (keyof typeof drawerNumbers)[]) =>
    parts.filter((part) => keys.some((key) => part.id === partAddress(piece, drawerNumbers[key])));
  const times = (1 + layout.choices.count) / 2;
  const drafts = [...cut(layout, pick), ...assemble(layout, pick), ...fit(layout, pick)];
  return chainSteps(drafts.map((draft) => ({ ...draft, minutes: Math.round(draft.minutes * times) })));
}

type Pick = (...keys: readonly (keyof typeof drawerNumbers)[]) => readonly Part[];

function cut({ book, choices }: DrawerLayout, pick: Pick): readonly StepDraft[] {
  const v = book.value;
  const boards = pick('left', 'right', 'front', 'back');
  return [
    {
      id: 'measure',
      text: `Measure the opening's width and height at three depths and the clear depth at its lower back corner; the drawing takes ${show(v('Wo'))} × ${show(v('Ho'))} × ${show(v('Do'))}. If one is smaller, stop and enter it.`,
      place: 'boat',
      minutes: 15,
      take: ['tape', 'two sliding sticks', 'square'],
    },
    {
      id: 'rip',
      text: 'Rip sides, box front and back in one setting each height, crosscut the sides in pairs against a stop; mark face sides and upper edges.',
      place: 'workshop',
      minutes: 30,
      parts: [...boards, ...pick('bottom')],
    },
    {
      id: 'grooves',
      text: `Groove for the bottom, upper edge to the fence on every piece${choices.corner === 'box' ? '; stop it where the drawing shows it stopped' : ''}. Try the bottom in it.`,
      place: 'workshop',
      minutes: 20,
      parts: boards,
    },
    {
      id: 'corners',
      text: 'Cut the corner joints, two test corners first.',
      place: 'workshop',
      minutes: choices.corner.endsWith('dovetail') ? 120 : 40,
      parts: boards,
    },
    ...(choices.runner === 'bottom-notch'
      ? [
          {
            id: 'notch',
            text: `Saw the notches in the lower edges of both sides together: ${show(v('notch_len'))} long from the back of the front, ${show(v('notch_depth'))} deep.`,
            place: 'workshop' as const,
            minutes: 10,
            parts: pick('left', 'right'),
          },
        ]
      : []),
  ];
}

function assemble({ choices }: DrawerLayout, pick: Pick): readonly StepDraft[] {
  const captured = choices.bottomStyle === 'captured';
  const all = pick('left', 'right', 'front', 'back', 'bottom');
  return [
    {
      id: 'dry-fit',
      text: `Put the box together dry, the bottom in as the square. The diagonals agree within ${show(1)}; it lies flat without rocking.`,
      place: 'workshop',
      minutes: 15,
      parts: all,
    },
    {
      id: 'glue',
      text: captured
        ? 'Glue the corners with the bottom in its grooves, diagonals again; flush the corners off when hard.'
        : 'Glue the corners, diagonals again; slide the bottom in under the back and screw it up into the back.',
      place: 'workshop',
      minutes: 40,
      parts: all,
    },
  ];
}

function fit(layout: DrawerLayout, pick: Pick): readonly StepDraft[] {
  const { choices } = layout;
  const front = pick('falseFront');
  return [
    {
      id: 'runners',
      text: runnerText(layout),
      place: 'boat',
      minutes: 40,
      parts: pick('runner', 'kicker', 'guide'),
      take: ['screwdriver', 'small drill', 'straight edge', 'wax'],
    },
    {
      id: 'fit-box',
      text: 'Slide the box in. It runs with one finger and shows the same gap at both sides; ease the sides with a shaving if not.',
      place: 'boat',
      minutes: 20,
      take: ['block plane'],
    },
    ...(front.length
      ? [
          {
            id: 'false-front',
            text: `Hold the false front with double-sided tape and spacers of the gap, open the drawer gently, drill and screw it from inside through the oversize holes; shift it until it sits, then tighten.`,
            place: 'boat' as const,
            minutes: 25,
            parts: front,
            take: ['spacers', 'double-sided tape', 'clamps'],
          },
        ]
      : []),
    {
      id: 'stop',
      text: stopText(layout),
      place: 'boat',
      minutes: 15,
      ...(choices.runner === 'bottom-notch' ? {} : { take: ['latch', 'small drill'] }),
    },
  ];
}

function runnerText({ choices, book, notched }: DrawerLayout): string {
  const v = book.value;
  switch (choices.runner) {
    case 'metal':
      return `Screw the metal runners to box and furring, parallel within ${show(0.3)} and level; the seats stand ${show(v('Wb') + 2 * v('c_side'))} apart.`;
    case 'side-rail':
      return `Screw the side rails level, ${show(v('rail_up') + v('c_bot') + 0.5)} above the lower edge of the opening, ${show(v('setback') + v('tf') + 10)} back from its face, parallel within ${show(0.3)}.`;
    case 'bottom':
    case 'bottom-notch':
      return `Fix the runners ${notched ? `${show(v('n'))} below the top of the rail` : `${show(v('c_bot'))} above the rail`}, parallel within ${show(0.3)}, the guides on them, and the kickers with their undersides level with the rail above, ${show(60)} back from the face.`;
  }
}

function stopText({ choices, book, notched }: DrawerLayout): string {
  const v = book.value;
  if (notched) {
    return `Fix the stop so that ${show(v('stop_d'))} of the drawer stay behind the rail; try that it lifts ${show(v('n'))}, opens and drops shut.`;
  }
  const latch = choices.front === 'none' ? 'latch' : 'latch through the front';
  return `Fit the ${latch} and the stop; pull hard: it must not open.`;
}
