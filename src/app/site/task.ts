import type { ReadingPlace } from '#core/drawing';
import { pointWords, type AdjustedReading, type Method, type Reading, type Suspect } from '#core/measuring';
import type { ShapeOutcome } from '#core/pipeline';
import { unreachable } from '#core/problems';

/** Where a value belongs that is entered. */
export type TaskGoal =
  | { readonly kind: 'reading'; readonly id: string; readonly place: ReadingPlace; readonly method?: Method }
  | { readonly kind: 'ordinate'; readonly curve: string; readonly at: number }
  | { readonly kind: 'depth'; readonly section: string; readonly height: number }
  /** `wall` null: a further one at the right end. */
  | { readonly kind: 'wall'; readonly wall: string | null }
  | { readonly kind: 'corner'; readonly wall: string };

/** One thing to measure on site, taken or not. */
export interface SiteTask {
  /** Its address within the shape, as a reading's id. */
  readonly id: string;
  readonly words: string;
  /** Where the tape goes. */
  readonly where: string;
  readonly unit: 'mm' | 'degrees';
  /** A sign is part of the value. */
  readonly isSigned: boolean;
  /** What was entered: the first look and the ones after it. */
  readonly values: readonly number[];
  /** To sketch it; null where the drawing of the shape says it. */
  readonly place: ReadingPlace | null;
  readonly goal: TaskGoal;
  readonly reading: Reading | null;
  readonly adjusted: AdjustedReading | null;
  readonly suspect: Suspect | null;
  /** It stands off the line of its neighbours. */
  readonly isOff: boolean;
}

interface Wanted {
  readonly id: string;
  readonly place: ReadingPlace;
  readonly reading: Reading | null;
  readonly words: string;
  readonly where: string;
  readonly method?: Method;
}

/** A reading that is wanted at a place, taken or not. */
export function placeTask({ adjustment }: ShapeOutcome, wanted: Wanted): SiteTask {
  const { place, reading, words, where, method } = wanted;
  const id = reading?.id ?? wanted.id;
  return {
    ...{ id, words, where, place, reading },
    unit: place.kind === 'angle' ? 'degrees' : 'mm',
    isSigned: signedKinds.includes(place.kind),
    values: reading ? [reading.value, ...(reading.repeats ?? [])] : [],
    goal: { kind: 'reading', id, place, ...(method && { method }) },
    adjusted: adjustment.readings.find((each) => each.id === reading?.id) ?? null,
    suspect: adjustment.suspects.find((each) => each.id === reading?.id) ?? null,
    isOff: false,
  };
}

const signedKinds: readonly Reading['kind'][] = ['plumb', 'level', 'offset', 'bow', 'ordinate'];

/** Where the tape, the plumb line or the gauge goes, in words. */
export function placeWords(place: ReadingPlace): string {
  const name = pointWords;
  switch (place.kind) {
    case 'distance':
      return `From the ${name(place.from)} to the ${name(place.to)}.`;
    case 'width':
      return `Across, from the edge ${place.left.join('–')} to the edge ${place.right.join('–')}.`;
    case 'plumb':
      return `How far the ${name(place.to)} stands right of the ${name(place.from)}, by the plumb line; left is minus.`;
    case 'level':
      return `How far the ${name(place.to)} stands above the ${name(place.from)}, by the level; below is minus.`;
    case 'offset':
      return `How far the ${name(place.point)} lies to the left of the line ${place.from}–${place.to}; to the right is minus.`;
    case 'angle':
      return `At the ${name(place.at)}, turned counter-clockwise from ${place.from} to ${place.to}.`;
    case 'bow':
      return `At mid length of ${place.from}–${place.to}, against a straightedge; outwards is plus.`;
    case 'ordinate':
      return `Square to the batten ${place.from}–${place.to}, at ${place.station} mm; to the left is plus.`;
    case 'tick':
      return `As the stick brought it to the board ${place.board}, ${place.station} mm along its edge: the height above the edge.`;
    case 'twist':
      return `The gap of the strings ${place.first.join('–')} and ${place.second.join('–')} where they cross.`;
    case 'thickness':
      return `At the place "${place.place}", with the caliper.`;
    default:
      return unreachable(place);
  }
}
