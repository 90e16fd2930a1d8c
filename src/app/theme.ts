const key = 'joggle-theme';

/** The grounds one can choose. */
export const themes: readonly { readonly value: string; readonly label: string }[] = [
  { value: 'system', label: 'As the device' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
];

/** The ground chosen on this device; `system` when none was. */
export function chosenTheme(): string {
  return document.documentElement.dataset.theme ?? 'system';
}

/** Puts the ground in place and remembers it, where the browser lets us. */
export function chooseTheme(name: string): string {
  if (name === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = name;
  try {
    localStorage.setItem(key, name);
  } catch {
    // A browser that refuses storage forgets it with the tab.
  }
  return name;
}
