import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { LiningLayout } from './sizes.ts';
import { checkMoisture, openFindings } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';

const show = markSize;

const gapLimits = { least: 4, most: 15 } as const; // mm (joinery B4)
const widthLimits = { least: 20, most: 70 } as const; // mm (joinery B4)
const mostOf = 300; // slats or cleats; more are a slip of the unit

/** Slats or cleats without end. */
export function refuseCount({ book: { value: v } }: LiningLayout): readonly Problem[] {
  if (v('n') <= mostOf && v('nc') <= mostOf) return [];
  return [
    {
      severity: 'stop',
      code: 'slats-too-many',
      message: `${v('n')} slats and ${v('nc')} cleats were worked out; ${mostOf} of each are the most.`,
      remedy: 'Check the unit of the sizes.',
      source: 'joinery B4',
    },
  ];
}

/** Findings on the form of a slatted lining (joinery B4, D1, D2). */
export function checkLining({ book, choices }: LiningLayout, settings: JoinerySettings): readonly Problem[] {
  const { say, all } = openFindings();
  const v = book.value;
  const [g, s] = [v('g'), v('s')];
  if (g < gapLimits.least || g > gapLimits.most) {
    say('warn', 'gap-unusual', {
      message: `The gaps come out at ${show(g)} with ${v('n')} slats; ${show(gapLimits.least)} to ${gapLimits.most} is usual.`,
      remedy: 'Change the width of the slats, or let it give way instead of the gap.',
      source: 'joinery B4',
    });
  }
  if (s < widthLimits.least || s > widthLimits.most) {
    say('warn', 'slat-width-unusual', {
      message: `The slats come out at ${show(s)} wide; ${show(widthLimits.least)} to ${widthLimits.most} is usual.`,
      remedy: 'Change the gap, or let it give way instead of the slats.',
      source: 'joinery B4',
    });
  }
  if (g < v('g_least') - 1e-9) {
    say('warn', 'slats-swell', {
      message: `A slat swells ${show(v('swell'))} aboard; a gap of ${show(g)} is too small, ${show(v('g_least'))} is the least.`,
      remedy: 'Take a wider gap or narrower slats.',
      source: 'joinery B4, D1',
    });
  }
  if (choices.curved) {
    say('note', 'lining-on-curve', {
      message: `On the hull the gaps are kept on the girth of ${show(v('O'))}, not on the chord; it is the longest of the sections measured.`,
      remedy: 'Mark the slats on each cleat along its curve; near the ends let the gaps close evenly.',
      source: 'joinery B4',
    });
  }
  if (v('screw_L') - v('ct') < 4) {
    say('warn', 'screw-short', {
      message: `A screw through the cleat of ${show(v('ct'))} holds only ${show(v('screw_L') - v('ct'))} in a slat of ${show(v('t'))}.`,
      remedy: 'Take thicker slats, or pin them from the face.',
      source: 'joinery C1',
    });
  }
  checkMoisture(say, settings, true);
  return all();
}
