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
