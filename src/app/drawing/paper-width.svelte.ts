import { innerWidth } from 'svelte/reactivity/window';

/** Screens at least this wide show a drawing beside its controls, px. */
const besideFrom = 960;

/**
 * The width of paper to draw on, mm, so that lettering comes out readable: what is wider than high gets the whole width of
 * the screen, what is higher is bound by its height. `onPhone`: for what is wide, on a small screen.
 */
export function paperWidth(isLying: boolean, onPhone = 110): number {
  const isLarge = (innerWidth.current ?? 0) >= besideFrom;
  if (!isLying) return 120;
  return isLarge ? 200 : onPhone;
}
