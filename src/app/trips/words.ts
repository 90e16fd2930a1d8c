import { describeThings } from '#core/pipeline';
import type { Place } from '#core/visits';

export const placeWords: Readonly<Record<Place, string>> = {
  boat: 'On site',
  workshop: 'In the workshop',
  shop: 'At the shop',
};

/** Working time in hours and minutes, as `1 h 25 min`. */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** Kinds of things of which one line may name many, with what stands between them. */
const joined = [
  { begin: 'fixings for ', between: ', ' },
  { begin: 'stock: ', between: '; ' },
] as const;

const isPart = (thing: string): boolean => /^[A-Z]{1,2}\d+$/.test(thing);

/** What to take along, things of one kind in one line: `parts A1 to A4, A7`, `fixings for A, B, C`. */
export function joinAlike(things: readonly string[]): readonly string[] {
  const parts = things.filter(isPart);
  const lines = new Map<string, string>();
  if (parts.length > 0) lines.set('parts', `parts ${describeThings(parts)}`);
  for (const thing of things.filter((each) => !isPart(each))) {
    const kind = joined.find(({ begin }) => thing.startsWith(begin));
    const key = kind?.begin ?? thing;
    const line = lines.get(key);
    lines.set(key, kind && line ? line + kind.between + thing.slice(kind.begin.length) : thing);
  }
  return [...lines.values()];
}
