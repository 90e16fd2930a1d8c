import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

/** Where Debian and others put a Chromium; a path in JOGGLE_CHROMIUM goes first. */
const usualPlaces = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of a Chromium on this machine; null when there is none. */
export function findChromium(): string | null {
  const wanted = process.env.JOGGLE_CHROMIUM;
  const places = wanted ? [wanted, ...usualPlaces] : usualPlaces;
  return places.find((place) => existsSync(place)) ?? null;
}

/** Says once why the browser tests are left out. Throws when CI asks for them. */
export function hasBrowser(): boolean {
  if (findChromium()) return true;
  const sentence =
    'Browser tests are left out: no Chromium found. Install the package chromium, or name one in JOGGLE_CHROMIUM.';
  if (process.env.CI && process.env.CI !== '0' && process.env.CI !== 'false') throw new Error(sentence);
  console.warn(sentence);
  return false;
}

/** A quiet Chromium without a window. */
export function launchBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('no Chromium on this machine');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--enable-unsafe-swiftshader',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}
