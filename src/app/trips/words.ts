import type { Place } from '#core/visits';

export const placeWords: Readonly<Record<Place, string>> = {
  boat: 'At the boat',
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

/** What to take along, things of one kind in one line: `fixings for A, B, C`. */
export function joinAlike(things: readonly string[]): readonly string[] {
  const lines = new Map<string, string>();
  for (const thing of things) {
    const kind = joined.find(({ begin }) => thing.startsWith(begin));
    const key = kind?.begin ?? thing;
    const line = lines.get(key);
    lines.set(key, kind && line ? line + kind.between + thing.slice(kind.begin.length) : thing);
  }
  return [...lines.values()];
}
