/** Stations are taken as even when none stands off its even place by more than this share of a step. */
const evenShare = 0.02;

/** True when the stations are evenly spaced. */
export function isEven(stations: readonly number[]): boolean {
  const [first = 0, last = 0] = [stations[0], stations[stations.length - 1]];
  const step = (last - first) / (stations.length - 1);
  return stations.every((station, i) => Math.abs(station - first - i * step) <= evenShare * step);
}
