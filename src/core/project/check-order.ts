import type { Problem } from '#core/problems';

/** A finding where stations do not rise, each beyond the one before; `subject` begins its sentence. */
export function checkOrder(stations: readonly number[], path: string, subject: string): readonly Problem[] {
  const place = stations.findIndex((at, index) => index > 0 && at <= (stations[index - 1] ?? at));
  if (place < 0) return [];
  return [
    {
      severity: 'stop',
      code: 'stations-order',
      about: `${path}[${place}]`,
      message: `${subject} goes from ${stations[place - 1]} to ${stations[place]}: each station must lie beyond the one before.`,
      remedy: 'Put them in rising order, each once; enter a second look as the mean of both.',
    },
  ];
}
