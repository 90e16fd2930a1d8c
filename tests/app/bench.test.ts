import { describe, expect, test } from 'vitest';
import { phone } from '../support/app-page.ts';
import { hasBrowser } from '../support/browser.ts';
import { useApp } from '../support/use-app.ts';

describe.skipIf(!hasBrowser())('the bench in a browser', () => {
  const { withApp } = useApp();

  test('a piece is shown as a solid, pulled apart with its addresses, and a part of it picked', () =>
    withApp({ path: '/bench/#B' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Solid', exact: true }).click();
      const canvas = page.locator('canvas');
      await canvas.waitFor();
      await page.locator('input[type=range]').fill('0.8');
      const address = page.locator('.address', { hasText: /^B6$/ }).first();
      await address.waitFor();
      // a tap where the address stands picks the part under it
      const [at, frame] = [await address.boundingBox(), await canvas.boundingBox()];
      if (!at || !frame) throw new Error('nothing is drawn');
      await canvas.click({
        position: { x: at.x + at.width / 2 - frame.x, y: at.y + at.height / 2 - frame.y },
      });
      await page.getByRole('region', { name: 'Part B6' }).waitFor();
    }));

  test('a version put aside stands beside the one it became, and is taken back', () =>
    withApp({ path: '/bench/#C' }, async ({ page }) => {
      const width = page.getByLabel('Opening width');
      const before = await width.inputValue();
      await page.getByRole('button', { name: 'Compare' }).click();
      await page.getByRole('button', { name: 'Put this version aside' }).click();
      await page.getByRole('button', { name: 'Sizes' }).click();
      await width.fill(String(Number(before) + 10));
      await width.press('Enter');
      await page.getByRole('button', { name: 'Compare' }).click();
      expect(await page.getByText(/\(\+10\)/).count()).toBeGreaterThan(1);
      await page.getByRole('button', { name: 'Take the one put aside' }).click();
      await page.getByRole('button', { name: 'Sizes' }).click();
      expect(await width.inputValue()).toBe(before);
    }));

  test('a part marked as cut tells when a later change no longer agrees with it', () =>
    withApp({ path: '/bench/#C1', viewport: phone }, async ({ page }) => {
      await page.getByText('Not cut yet').click();
      await page.getByRole('button', { name: /(It is|All are) cut/ }).click();
      const length = page.getByLabel('length as made');
      await length.fill('100');
      await length.press('Enter');
      await page.getByRole('button', { name: 'Findings', exact: true }).click();
      await page
        .getByText(/C1 .* was cut at 100 ×/)
        .first()
        .waitFor();
    }));

  test('the way in says which piece does not pass which gate', () =>
    withApp({ path: '/trips/' }, async ({ page }) => {
      await page.getByText('The way in: does it go through?').click();
      await page.getByRole('button', { name: 'Add a turn' }).click();
      await page.getByText(/Saloon door frame.*does not pass as one/).waitFor();
      await page.getByRole('button', { name: 'Remove' }).click();
      await page.getByText('The way in: does it go through?').waitFor();
    }));

  test('a piece of a kind not in the demo is added, drawn, and clear of stops', () =>
    withApp({ path: '/bench/', viewport: phone }, async ({ page }) => {
      await page.getByRole('button', { name: 'Add a piece' }).click();
      await page
        .getByRole('region', { name: 'Steps and hatches' })
        .getByText('Companion or box step')
        .click();
      await page.getByRole('heading', { name: 'What shall it be?' }).waitFor({ state: 'detached' });
      await page
        .getByRole('button', { name: /^Part H1 / })
        .first()
        .waitFor();
      await page.getByRole('button', { name: 'Findings', exact: true }).click();
      await page.getByText('done aboard with a saw').waitFor();
      expect(await page.locator('main li.stop').count()).toBe(0);
    }));

  test('a group of sizes stays open while one in it is changed, and asks for what the choice calls for', () =>
    withApp({ path: '/bench/#C' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Add a piece' }).click();
      await page
        .getByRole('dialog')
        .getByRole('button', { name: /^Flat door/ })
        .click();
      await page.locator('summary', { hasText: /^Lock/ }).click();
      expect(await page.getByLabel('Backset').count()).toBe(0);
      await page.getByLabel('Held shut by').selectOption('rim-lock');
      await page.getByText('Lock, 1 changed').waitFor();
      await page.getByLabel('Backset').waitFor();
      expect(await page.getByLabel('Held shut by').isVisible()).toBe(true);
    }));

  test('a finding with one remedy bears it as a key, and goes when it is pressed', () =>
    withApp({ path: '/bench/#C' }, async ({ page }) => {
      await page.locator('summary', { hasText: /^Box/ }).click();
      await page.getByLabel('Corners', { exact: true }).selectOption('lapped-dovetail');
      await page.getByText('The last step changed').waitFor();
      await page.getByRole('button', { name: 'Findings', exact: true }).click();
      const stop = page.locator('main li.stop', { hasText: 'the edges of the plies crumble' });
      await stop.getByRole('button', { name: 'Set "Corners" to "Box joint"' }).click();
      await stop.waitFor({ state: 'detached' });
    }));

  test('a part given to the router lies on its own sheet of the Saw page', () =>
    withApp({ path: '/bench/#G1' }, async ({ page }) => {
      await page.getByLabel('Cut it').selectOption('router');
      await page.getByRole('navigation').getByRole('link', { name: 'Saw' }).click();
      await page
        .getByRole('navigation', { name: 'What is cut' })
        .getByRole('link', { name: /router/ })
        .click();
      await page
        .getByRole('button', { name: /^Part G1/ })
        .first()
        .waitFor({ timeout: 60_000 });
    }));
});
