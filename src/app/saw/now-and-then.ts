/** How often a search under way is shown, ms. */
export const shownEvery = 250;

/** Shows what comes too often to be shown each time. */
export interface NowAndThen<T> {
  readonly tell: (value: T) => void;
  /** Shows nothing more. */
  readonly stop: () => void;
}

/** Hands on the first value at once and then the latest of each span of so many ms. */
export function nowAndThen<T>(milliseconds: number, show: (value: T) => void): NowAndThen<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let latest: readonly T[] = [];
  const rest = (): void => {
    timer = setTimeout(() => {
      timer = undefined;
      latest.forEach(tell);
    }, milliseconds);
  };
  const tell = (value: T): void => {
    latest = timer === undefined ? [] : [value];
    if (timer !== undefined) return;
    rest();
    show(value);
  };
  return {
    tell,
    stop: () => {
      clearTimeout(timer);
      latest = [];
      timer = undefined;
    },
  };
}
