import type { Locator } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { phone, waitReady, type AppPage } from '../support/app-page.ts';
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
      await page.getByRole('button', { name: 'Other plans to choose' }).click({ timeout: 60_000 });
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
        if (!worker.url().includes('cutting-worker')) return;
        most = Math.max(most, ++live);
        worker.on('close', () => live--);
      });
      await openSaw(page);
      await expect.poll(() => most, { timeout: 40_000 }).toBeGreaterThanOrEqual(cores > 1 ? 2 : 1);
      // both end with their run (the browser may tell of an end when the next one has begun)
      await expect.poll(() => live, { timeout: 60_000 }).toBe(0);
      expect(most).toBeLessThanOrEqual(4);
    }));

  test('a plan taken from those on offer is there again when the page is opened anew, until it is released', () =>
    withSaw(async ({ page }) => {
      await openSaw(page);
      await seekOffers(page);
      await page
        .getByRole('button', { name: /^Take it/ })
        .first()
        .click();
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

  test('weights of your own give a further plan to choose, or say that there is none', () =>
    withSaw(async ({ page }) => {
      await openSaw(page);
      await seekOffers(page);
      await page.getByText('By weights of your own').click();
      await page.getByLabel('Large leftovers').selectOption('does not count');
      await page.getByLabel('Few cuts').selectOption('much');
      await page.getByRole('button', { name: 'Seek by these weights' }).click();
      const found = page.getByText('By your weights', { exact: true });
      await found
        .or(page.getByText('No plan was found that is better by these weights'))
        .first()
        .waitFor({ timeout: 60_000 });
    }));

  const jobLinks = (page: AppPage['page']) =>
    page.getByRole('navigation', { name: 'What is cut' }).getByRole('link');
  /** Boards of 27 mm: the job of the demo that is not proven in its first seconds. */
  const longJob = (page: AppPage['page']) => jobLinks(page).filter({ hasText: 'boards 27' });
  const stop = (page: AppPage['page']) => page.getByRole('button', { name: 'Stop here' });

  test('a plan is drawn while a better one is still sought, and going on never loses it', () =>
    withSaw(async ({ page }) => {
      await openSaw(page);
      await longJob(page).click();
      await stop(page).waitFor({ timeout: 40_000 });
      await page.getByRole('group', { name: /Oak, sawn, boards 27 mm/ }).waitFor();
      expect(await stop(page).isVisible()).toBe(true);
      await page.getByRole('button', { name: 'Go on for a minute' }).click({ timeout: 40_000 });
      const cost = () => page.locator('.search .figure').first().innerText();
      const before = Number.parseFloat(await cost());
      await stop(page).waitFor();
      expect(Number.parseFloat(await cost())).toBeLessThanOrEqual(before);
      await stop(page).click();
      await page.getByText('Not proven').first().waitFor();
      expect(Number.parseFloat(await cost())).toBeLessThanOrEqual(before);
    }));

  test('a tap on a part or a cut brings up its line in the list, and a tap there shows it in the drawing', () =>
    used.withApp({ viewport: phone, hasTouch: true }, async ({ page }) => {
      await openSaw(page);
      // the search is over: nothing moves any more
      await page.getByRole('heading', { name: 'Saw in this order' }).waitFor({ timeout: 40_000 });
      const drawing = page.locator('.drawing-side svg');
      const part = drawing.getByRole('button', { name: /^Part / }).last();
      await part.focus();
      await page.keyboard.press('Enter');
      const line = page.locator('.hand-side button.chosen').first();
      await line.waitFor();
      const address = (await line.locator('b').first().innerText()).trim();
      expect(await part.getAttribute('aria-label')).toBe(`Part ${address}`);
      await expect.poll(() => isInSight(line)).toBe(true);
      const last = page
        .getByRole('heading', { name: 'Saw in this order' })
        .locator('..')
        .getByRole('button')
        .last();
      await last.tap();
      const label = (await last.locator('b').first().innerText()).trim();
      const shown = drawing.getByRole('button', { name: `Cut ${label}`, exact: true, pressed: true });
      await expect.poll(() => isInSight(shown.first())).toBe(true);
    }));

  test('no job, however many layouts it has, makes the page wider than a phone', () =>
    used.withApp({ viewport: phone }, async ({ page }) => {
      await openSaw(page);
      const count = await jobLinks(page).count();
      for (let i = 0; i < count; i++) {
        await jobLinks(page).nth(i).click();
        await page.locator('.drawing-side svg').waitFor({ timeout: 40_000 });
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(phone.width);
      }
    }));
});

/** Whether the middle of something lies within the window. */
function isInSight(target: Locator): Promise<boolean> {
  return target.evaluate((element) => {
    const box = element.getBoundingClientRect();
    const middle = (box.top + box.bottom) / 2;
    return middle > 0 && middle < window.innerHeight;
  });
}
