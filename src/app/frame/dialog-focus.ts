/** Puts the keyboard on the first field of a form in a dialog, so that typing can begin; else on its title. */
export function focusFirstField(dialog: HTMLElement): void {
  const field = dialog.querySelector<HTMLElement>('form :is(input:not([type="file"]), select, textarea)');
  // on a phone a field brings up the keyboard, which hides the rest of the form
  const wanted = field && matchMedia('(pointer: fine)').matches ? field : dialog.querySelector('h2');
  (wanted as HTMLElement | null)?.focus({ preventScroll: true });
}

/** Puts the keyboard back where it was before a dialog, or on the page where that is gone; not when it is in use elsewhere. */
export function giveFocusBack(opener: Element | null): void {
  const isLost = document.activeElement === null || document.activeElement === document.body;
  if (!isLost) return;
  const isThere = opener instanceof HTMLElement && opener.isConnected && opener !== document.body;
  const wanted = isThere ? opener : document.getElementById('main');
  wanted?.focus({ preventScroll: true });
}
