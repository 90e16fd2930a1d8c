import { formatNumber, markSize } from '#core/units';
import { excessBehind, gaugeHeights, readGauge } from '../hull/gauge.ts';
import { depthOf, stationAt } from '../hull/hull.ts';
import type { Say } from '../piece-findings.ts';
import type { CarcaseChoices } from './choices.ts';
import { facesOf, sideName, type Side } from './sides.ts';
import type { CarcaseLayout } from './sizes.ts';

const show = markSize;
/** A gauge and a curve that differ by more than this do not tell of the same hull, degrees (common practice, no source). */
const differing = 3;

/** Where an end stands along the boat, at half its thickness. */
function middleOf(choices: CarcaseChoices, side: Side): number {
  const [outer, inner] = facesOf(choices, side);
  return (outer + inner) / 2;
}

/** The bevels that the gauge read along the back of an end, to be marked on it. */
export function gaugeNotes(choices: CarcaseChoices, side: Side, isBevelled: boolean): readonly string[] {
  const at = middleOf(choices, side);
  const read = gaugeHeights(choices.hull, at).flatMap((height) => {
    const gauge = readGauge(choices.hull, at, height);
    return gauge ? [`${formatNumber(Math.abs(gauge.degrees))}° at ${show(height)}`] : [];
  });
  if (read.length === 0) return [];
  const then = isBevelled && read.length > 1 ? '; plane the back edge from one to the next' : '';
  return [`Bevel of the hull by the gauge: ${read.join(', ')}${then}.`];
}

/** What the gauge says against the sections, and where an end would stand too far back for it (joinery A6, G25). */
export function checkGauge(say: Say, layout: Pick<CarcaseLayout, 'book' | 'choices'>, side: Side): void {
  const { book, choices } = layout;
  const v = book.value;
  const worst = worstExcess(layout, side);
  if (worst && worst.excess > v('c'))
    say('stop', 'too-big-at-back', {
      message: `The ${sideName[side]} end will not go in: at ${show(worst.height)} up it is ${show(worst.excess)} too big at the back, as the gauge reads ${formatNumber(worst.degrees)}° there, and only ${show(v('c'))} is left clear.`,
      remedy:
        choices.endBack === 'square'
          ? 'Bevel its back edge to the hull.'
          : 'Leave more clear, or make a template of it: one bevel does not do from foot to top.',
      source: 'joinery A6, G25',
    });
  if (readGauge(choices.hull, middleOf(choices, side), (v('y0') + v('top')) / 2) === null) return;
  const drawn = (Math.atan(v(`drawn_${side}`) / v('T')) * 180) / Math.PI;
  if (Math.abs(drawn - v(`gauge_${side}`)) > differing)
    say('warn', 'bevel-disagrees', {
      message: `At the ${sideName[side]} end the gauge reads ${formatNumber(v(`gauge_${side}`))}°, and the sections come to ${formatNumber(drawn)}°.`,
      remedy: 'Put the gauge on again, square to the section, or take a section nearer to the end.',
      source: 'joinery A6',
    });
}

/** The height at which an end stands furthest back, of those at which the gauge was read. */
function worstExcess({ book, choices }: Pick<CarcaseLayout, 'book' | 'choices'>, side: Side) {
  const [outer, inner] = facesOf(choices, side);
  const at = middleOf(choices, side);
  const T = book.value('T');
  const found = gaugeHeights(choices.hull, at)
    .filter((height) => height >= book.value('y0') && height <= book.value('top'))
    .flatMap((height) => {
      const gauge = readGauge(choices.hull, at, height);
      if (!gauge) return [];
      const level = [height - 10, height + 10] as const;
      const depth = (place: number) => depthOf(stationAt(choices.hull, place, level), height);
      const degrees = side === 'l' ? -gauge.degrees : gauge.degrees;
      const excess = excessBehind({
        drawn: depth(outer) - depth(inner),
        gauge: T * Math.tan((degrees * Math.PI) / 180),
        sawn: choices.endBack === 'bevelled' ? book.value(`fall_${side}`) : null,
      });
      return [{ height, excess, degrees: gauge.degrees }];
    });
  return found.toSorted((a, b) => b.excess - a.excess)[0];
}
