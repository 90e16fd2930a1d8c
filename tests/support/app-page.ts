import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';

/** A page of the app with everything it should not do written down. */
export interface AppPage {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Errors of the console, exceptions, refusals of the content security policy, requests to elsewhere. */
  readonly faults: readonly string[];
}

export const phone = { width: 390, height: 844 };
export const laptop = { width: 1366, height: 768 };

/** The six places and the page about the app, as paths. */
export const paths = ['/', '/bench/', '/rack/', '/saw/', '/paper/', '/trips/', '/about/'] as const;

/** Opens the app in a fresh profile, as on a first start. */
export async function openApp(
  browser: Browser,
  origin: string,
  options: BrowserContextOptions & { readonly path?: string } = {},
): Promise<AppPage> {
  const { path = '/', ...rest } = options;
  const context = await browser.newContext({ viewport: laptop, ...rest });
  const page = await context.newPage();
  const faults: string[] = [];
  watchPage(page, origin, faults);
  await page.goto(origin + path);
  await waitReady(page);
  return { context, page, faults };
}

/** Writes down what a page should not do. */
export function watchPage(page: Page, origin: string, faults: string[]): void {
  page.on('pageerror', (error) => faults.push(`exception: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !/^(data|blob):/.test(url)) faults.push(`request elsewhere: ${url}`);
  });
}

/** Waits until the app has taken over the page and opened a project. */
export async function waitReady(page: Page): Promise<void> {
  await page.waitForSelector('html[data-ready]', { state: 'attached', timeout: 20_000 });
}

/** Types a reading on the pad, key by key, and enters it. */
export async function typeReading(page: Page, figures: string): Promise<void> {
  const pad = page.getByRole('group', { name: 'Number pad' });
  for (const figure of figures) await pad.getByRole('button', { name: padName(figure), exact: true }).click();
  await pad.getByRole('button', { name: /^Keep/ }).click();
}

function padName(figure: string): string {
  if (figure === '.') return 'Decimal point';
  return figure === '-' ? 'Change the sign' : figure;
}
