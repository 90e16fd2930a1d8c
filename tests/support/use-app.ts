import { afterAll, beforeAll, expect } from 'vitest';
import type { Browser } from 'playwright-core';
import { openApp, type AppPage } from './app-page.ts';
import { launchBrowser } from './browser.ts';
import { buildSite } from './build-site.ts';
import { serveSite, type Site } from './site.ts';

/** The built app, served, and a browser to look at it. */
export interface UsedApp {
  readonly site: Site;
  readonly browser: Browser;
  /** Does something with the app in a fresh profile; any fault of the page on the way fails the test. */
  readonly withApp: (
    options: Parameters<typeof openApp>[2],
    act: (app: AppPage) => Promise<void>,
  ) => Promise<void>;
}

/** Builds, serves and opens before the tests of the group that asks, and closes after them. */
export function useApp(): UsedApp {
  const used: { site?: Site; browser?: Browser } = {};
  beforeAll(async () => {
    used.site = await serveSite(buildSite());
    used.browser = await launchBrowser();
  }, 240_000);
  afterAll(async () => {
    await used.browser?.close();
    await used.site?.stop();
  });
  const app: UsedApp = {
    get site() {
      return there(used.site);
    },
    get browser() {
      return there(used.browser);
    },
    withApp: async (options, act) => {
      const opened = await openApp(app.browser, app.site.origin, options);
      try {
        await act(opened);
        expect(opened.faults).toEqual([]);
      } finally {
        await opened.context.close();
      }
    },
  };
  return app;
}

function there<T>(thing: T | undefined): T {
  if (thing === undefined) throw new Error('site and browser are there once the tests run');
  return thing;
}
