import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { DrawerLayout } from './sizes.ts';
import {
  checkMoisture,
  checkSheetThickness,
  checkWideSolid,
  openFindings,
  type Say,
} from '../piece-findings.ts';
import { leastFinishedGap } from '../rules.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';

const show = markSize;

/** Says which size came out at nothing; empty when the drawer can be made. */
export function checkDrawerPossible({ book }: DrawerLayout): readonly Problem[] {
  const bad = book
    .steps()
    .find((step) => mustBePositive.includes(step.name) && !(step.value > 0 && Number.isFinite(step.value)));
  if (!bad) return [];
  const opening = `${show(book.value('Wo'))} × ${show(book.value('Ho'))} × ${show(book.value('Do'))} deep`;
  const size = Number.isFinite(bad.value) ? show(bad.value) : 'nothing';
  return [
    {
      severity: 'stop',
      code: 'drawer-impossible',
      message: `No drawer fits: ${bad.label} comes out at ${size} in an opening of ${opening}.`,
      remedy: 'Take thinner wood, a smaller lift or another runner, or check the units of the opening.',
      source: 'joinery B5',
    },
  ];
}

const mustBePositive: readonly string[] = [
  'Wb',
  'h',
  'Lb',
  'Wi',
  'Li',
  'side_L',
  'front_L',
  'back_L',
  'boxfront_h',
  'back_h',
  'bottom_W',
  'bottom_D',
  'false_W',
  'false_H',
  'runner_L',
  'kicker_L',
  'front_rise',
];

/** Findings on the form of a drawer (joinery B5.1 to B5.7, 0.7, D2, D3, G). */
export function checkDrawer(
  layout: DrawerLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  checkRoom(say, layout);
  if (layout.notched) checkLift(say, layout);
  checkFront(say, layout, settings);
  checkStrength(say, layout);
  checkStock(say, layout);
  checkWideSolid(say, parts);
  checkMoisture(
    say,
    settings,
    parts.some((part) => part.kind === 'solid'),
  );
  return all();
}

function checkRoom(say: Say, { choices, book }: DrawerLayout): void {
  const v = book.value;
  const variation = choices.openingVariation;
  if (choices.runner === 'metal' && variation > 0.6) {
    say('stop', 'runner-seats-vary', {
      message: `The opening varies by ${show(variation)} in its depth; metal runners allow ${show(0.6)}.`,
      remedy: 'Fit furring so that the seats of the runners are parallel, then measure again.',
      source: 'joinery B5',
    });
  }
  const longest = v('Do') - v('setback') - 5;
  if (v('Lr') > longest) {
    say('stop', 'runner-too-long', {
      message: `Runners ${show(v('Lr'))} long do not go into ${show(v('Do'))} of clear depth; ${show(longest)} is the most.`,
      remedy: 'Take shorter runners.',
      source: 'joinery B5',
    });
  }
  if (v('Wb') > 1.5 * v('Lb')) {
    say('warn', 'drawer-too-wide', {
      message: `The box is ${show(v('Wb'))} wide and ${show(v('Lb'))} long: it will jam when pulled by one side.`,
      remedy: 'Give it a guide under the middle, or make two drawers of it.',
      source: 'joinery B5.4',
    });
  }
  say('note', 'room-to-pull-out', {
    message: `The drawer wants ${show(v('Lb') + 50)} free in front of it, and its back lower corner must clear the hull by ${show(10)} at ${show(v('setback') + v('Lb'))} depth.`,
    remedy: 'Check both aboard before cutting.',
    source: 'joinery B5.5, B5.7, G18',
  });
  if (choices.runner !== 'side-rail') return;
  const upper = v('h') - v('rail_up') - v('rail_groove_H');
  if (upper >= 5) return;
  say('stop', 'rail-does-not-fit', {
    message: `The groove for the side rail leaves ${show(upper)} above it in a side ${show(v('h'))} high.`,
    remedy: 'Let the drawer run on runners under it.',
    source: 'joinery B5, C0.2',
  });
}

function checkLift(say: Say, { book }: DrawerLayout): void {
  const v = book.value;
  if (v('yg') < v('n') + 9) {
    say('stop', 'groove-in-notch', {
      message: `Bottom groove opens into the notch: it lies ${show(v('yg'))} up, the notch of ${show(v('n'))} needs ${show(v('n') + 9)}.`,
      remedy: `Put the groove ${show(v('n') + 9)} up or more, or lift less.`,
      source: 'joinery B5.2, G17',
    });
  }
  if (v('h') - v('n') - 1 < 0.6 * v('h')) {
    say('warn', 'side-weak-at-notch', {
      message: `At the notch ${show(v('h') - v('n') - 1)} is left of a side ${show(v('h'))} high; less than six tenths breaks.`,
      remedy: 'Lift less, or hold the drawer with a latch instead.',
      source: 'joinery B5.3',
    });
  }
  if (v('stop_d') > 0.5 * v('Lb')) {
    say('warn', 'drawer-opens-little', {
      message: `Lifted, the drawer jams under the rail above unless ${show(v('stop_d'))} of its ${show(v('Lb'))} stay inside.`,
      remedy: 'Lift less, or make the box lower.',
      source: 'joinery B5',
    });
  }
}

function checkFront(say: Say, { choices, book, notched }: DrawerLayout, settings: JoinerySettings): void {
  const v = book.value;
  if (choices.front === 'inset') {
    const left = v('g') - 2 * settings.film;
    if (left < leastFinishedGap) {
      say('stop', 'no-room-once-finished', {
        message: `No room to open once varnished: gap ${show(v('g'))}, film ${show(2 * settings.film)}, left ${show(left)} of ${show(leastFinishedGap)}.`,
        remedy: `Make the gap ${show(leastFinishedGap + 2 * settings.film)} or more.`,
        source: 'joinery 0.7, G6',
      });
    }
    if (notched && v('g') < v('n') + 2) {
      say('stop', 'lift-blocked', {
        message: `Drawer cannot be lifted ${show(v('n'))}: the frame is ${show(v('g'))} above the front, ${show(v('clear_above_needed'))} is needed.`,
        remedy: 'Let the front lie over the frame, or hold the drawer with a latch instead of a notch.',
        source: 'joinery B5.1, G16',
      });
    }
  } else if (notched) {
    say('note', 'lift-needs-room', {
      message: `The front rises ${show(v('front_rise'))} when lifted: keep ${show(v('clear_above_needed'))} clear above it.`,
      remedy: 'Check the front above, or the lip of the counter.',
      source: 'joinery B5.1, G16',
    });
  }
  if (choices.runner === 'metal' && choices.front === 'overlay') {
    say('warn', 'opens-at-heel', {
      message: 'A drawer on metal runners with nothing to hold it opens when the boat heels.',
      remedy: 'Fit the latch that is on the list of fixings, or choose runners with a notch.',
      source: 'joinery B5.6',
    });
  }
}

function checkStrength(say: Say, { book }: DrawerLayout): void {
  const v = book.value;
  if (v('Lb') > 450 && v('ts') < 11.5) {
    say('warn', 'side-too-thin', {
      message: `Sides ${show(v('ts'))} thick and ${show(v('Lb'))} long; over ${show(450)} they want ${show(12)}.`,
      remedy: `Take ${show(12)} for the sides, or a shorter drawer.`,
      source: 'joinery B5',
    });
  }
  const wanted = v('Wb') <= 300 ? 4 : v('Wb') <= 500 ? 6 : 9;
  if (v('tbt') < wanted - 0.6) {
    say('warn', 'bottom-too-thin', {
      message: `A bottom ${show(v('tbt'))} thick under ${show(v('Wb'))} of width sags; ${wanted} is usual.`,
      remedy: `Take ${wanted}, or put a bearer under the middle.`,
      source: 'joinery B5',
    });
  }
}

function checkStock(say: Say, { choices, book }: DrawerLayout): void {
  const { stock } = choices;
  checkSheetThickness(say, stock.box, book.value('ts'), 'Sides');
  checkSheetThickness(say, stock.box, book.value('tf'), 'Box front');
  checkSheetThickness(say, stock.box, book.value('tback'), 'Back');
  checkSheetThickness(say, stock.bottom, book.value('tbt'), 'Bottom');
  if (choices.front !== 'none') checkSheetThickness(say, stock.front, book.value('tff'), 'False front');
  if (stock.bottom.kind !== 'solid') return;
  say('warn', 'solid-bottom', {
    message: `A solid bottom ${show(book.value('bottom_W'))} wide swells in its grooves and pushes the box apart.`,
    remedy: 'Use plywood; a solid bottom must never be glued and needs room to move.',
    source: 'joinery B5, G13',
  });
}
