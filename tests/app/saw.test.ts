import { describe, expect, test } from 'vitest';
import { waitReady, type AppPage } from '../support/app-page.ts';
import { hasBrowser } from '../support/browser.ts';
import { useApp } from '../support/use-app.ts';

describe.skipIf(!hasBrowser())('the saw in a browser', () => {
  const used = useApp();
  const withSaw = (act: (app: AppPage) => Promise<void>) => used.withApp({}, act);

  const openSaw = (page: AppPage['page']) =>
    page.goto(`${used.site.origin}/saw/`).then(() => waitReady(page));

  /** Goes from job to job until one has another plan on offer. */
  async function seekOffers(page: AppPage['page']): Promise<void> {
    const jobs = page.getByRole('navigation', { name: 'What is cut' }).getByRole('link');
    const count = await jobs.count();
    for (let i = 0; i < count; i++) {
      await jobs.nth(i).click();
      await page.getByRole('button', { name: 'Other plans to choose from' }).click({ timeout: 60_000 });
      const found = page.getByRole('heading', { name: 'Plans to choose from' });
      await found.or(page.getByText('No other plan is better')).first().waitFor({ timeout: 60_000 });
      if (await found.isVisible()) return;
    }
    throw new Error('no job of the demo has another plan on offer');
  }

  test('a plan that takes longer than a moment is sought by two workers where there are two cores', () =>
    withSaw(async ({ page }) => {
      const cores = await page.evaluate(() => navigator.hardwareConcurrency);
      let live = 0;
      let most = 0;
      page.on('worker', (worker) => {
        most = Math.max(most, ++live);
        worker.on('close', () => live--);
      });
      await openSaw(page);
      await expect.poll(() => most, { timeout: 40_000 }).toBe(cores > 1 ? 2 : 1);
      // both end with their run: never more than two at a time
      await page.getByText('Proven: no plan can cost less.').first().waitFor({ timeout: 60_000 });
      expect(most).toBeLessThanOrEqual(2);
    }));

  test('a plan taken from those on offer is there again when the page is opened anew, until it is released', () =>
    withSaw(async ({ page }) => {
      await openSaw(page);
      await seekOffers(page);
      await page.getByRole('button', { name: 'Take it' }).first().click();
      const said = page.getByText('You took this plan from those on offer.');
      await said.waitFor();
      await page.getByText('Kept on this device').waitFor();
      await page.reload();
      await waitReady(page);
      await said.waitFor();
      await page.getByRole('button', { name: 'Plan it anew' }).click();
      await said.waitFor({ state: 'detached' });
      await page.keyboard.press('Control+z');
      await said.waitFor();
    }));
});
