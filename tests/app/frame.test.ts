import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { newProject } from '#core/project';
import { writeJson } from '#formats/json';
import { phone, waitReady } from '../support/app-page.ts';
import { hasBrowser } from '../support/browser.ts';
import { useApp } from '../support/use-app.ts';

/** What the keyboard is on, by its name. */
function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focused = document.activeElement as HTMLInputElement | null;
    const label = focused?.labels?.[0]?.textContent ?? focused?.getAttribute('aria-label');
    return (label ?? focused?.textContent ?? '').trim();
  });
}

/** Lets a file go over the page, as a hand does that brought it there with the mouse. */
function dropFile(page: Page, name: string, text: string): Promise<boolean> {
  return page.evaluate(
    ([fileName, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content ?? ''], fileName ?? ''));
      const drop = new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true });
      document.querySelector('main')?.dispatchEvent(drop);
      return drop.defaultPrevented;
    },
    [name, text],
  );
}

describe.skipIf(!hasBrowser())('the frame round the pages', () => {
  const used = useApp();
  const { withApp } = used;

  test('after a dialog the keyboard is where it was, and in a form it begins at the first field', () =>
    withApp({ path: '/rack/' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Project', exact: true }).press('Enter');
      await expect.poll(() => focusedName(page)).toBe('Project');
      await page.keyboard.press('Escape');
      await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
      expect(await focusedName(page)).toBe('Project');
      await page.getByRole('button', { name: 'Add a material' }).press('Enter');
      await expect.poll(() => focusedName(page)).toBe('Name');
      await page.keyboard.type('Larch');
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: 'Larch' }).waitFor();
      await expect.poll(() => focusedName(page)).toBe('Add a material');
    }));

  test('a form with a field that cannot be read is not kept: the keyboard comes back to that field', () =>
    withApp({ path: '/rack/' }, async ({ page }) => {
      await page.getByRole('button', { name: 'Add a material' }).click();
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel('Name').fill('Larch ply');
      await dialog.getByLabel(/^Thickness/).fill('thin');
      await dialog.getByLabel('Name').press('Enter');
      await dialog.getByText('"thin" is not a length').waitFor();
      await expect.poll(() => focusedName(page)).toMatch(/^Thickness/);
      await dialog.getByLabel(/^Thickness/).fill('9.2');
      await page.keyboard.press('Enter');
      await page.getByText('measured 9.2 mm thick').waitFor();
    }));

  test('choosing what to measure goes on to its form with the keyboard, and Enter in it to the first reading', () =>
    withApp({}, async ({ page }) => {
      await page.getByRole('button', { name: 'Add a shape' }).press('Enter');
      await page.getByRole('button', { name: /^Opening/ }).press('Enter');
      await expect.poll(() => focusedName(page)).toBe('Name');
      await page.keyboard.press('Tab');
      await page.keyboard.type('from the hall, looking in');
      await page.keyboard.press('Enter');
      await expect.poll(() => focusedName(page)).toBe('bottom width, mm');
    }));

  test('another project is removed when it is said twice, and not before', () =>
    withApp({}, async ({ page }) => {
      await page.getByRole('button', { name: 'Start my own' }).click();
      await page.getByRole('button', { name: 'Project', exact: true }).click();
      await page.getByRole('button', { name: 'Remove: Curlew' }).press('Enter');
      expect(await page.getByRole('button', { name: 'Curlew', exact: true }).count()).toBe(1);
      await page.getByRole('button', { name: 'Remove for good: Curlew' }).press('Enter');
      await page.getByText('None any more.').waitFor();
      await page.reload();
      await waitReady(page);
      await page.getByRole('button', { name: 'Project', exact: true }).click();
      expect(await page.getByRole('button', { name: 'Curlew', exact: true }).count()).toBe(0);
    }));

  test('an earlier state is found after a restart, and going back to it can be undone', () =>
    withApp({}, async ({ page }) => {
      const name = page.getByLabel('Name of the project');
      await name.fill('Curlew, second fit-out');
      await name.press('Enter');
      await page.getByText('Kept on this device').waitFor();
      await page.reload();
      await waitReady(page);
      await page.getByRole('button', { name: 'Project', exact: true }).click();
      await page.getByText(/^Earlier states of this project/).click();
      await page.getByRole('button', { name: /^Back to/ }).click();
      await expect.poll(() => name.inputValue()).toBe('Curlew');
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => name.inputValue()).toBe('Curlew, second fit-out');
    }));

  test('the last act before a tab is closed is there on the next start', () =>
    withApp({}, async ({ context, page }) => {
      await page.getByText('Kept on this device').waitFor();
      const name = page.getByLabel('Name of the project');
      await name.fill('Curlew, closed at once');
      await name.press('Enter');
      await page.close({ runBeforeUnload: true });
      const next = await context.newPage();
      await next.goto(used.site.origin);
      await waitReady(next);
      expect(await next.getByLabel('Name of the project').inputValue()).toBe('Curlew, closed at once');
    }));

  test('a project dropped on the page opens, anything else is told where it belongs', () =>
    withApp({}, async ({ page }) => {
      expect(await dropFile(page, 'hull.dxf', 'x')).toBe(true);
      await page.getByText('Add a shape, From a drawing').waitFor();
      expect(await dropFile(page, 'loft.json', writeJson(newProject('Loft')))).toBe(true);
      await expect.poll(() => page.getByLabel('Name of the project').inputValue()).toBe('Loft');
    }));

  test('a low screen, as of a phone on its side or of a page at 200 %, keeps half of itself for the page', () =>
    withApp({ viewport: { width: 683, height: 384 } }, async ({ page }) => {
      const main = await page.locator('main').boundingBox();
      expect(main?.height).toBeGreaterThan(384 / 2);
      const last = page.getByRole('navigation', { name: 'Places' }).getByRole('link').last();
      expect(await last.isVisible()).toBe(true);
    }));

  test('with inches chosen the slip is told in inches', () =>
    withApp({ viewport: phone }, async ({ page }) => {
      await page.getByRole('button', { name: 'Project', exact: true }).click();
      await page.getByLabel('Lengths in').selectOption('inch');
      await page.keyboard.press('Escape');
      const verdict = page.getByRole('status', { name: 'Suspected slip' });
      // 10 mm are 12.6 thirty-seconds of an inch
      await expect.poll(() => verdict.innerText()).toMatch(/13\/32 in too small/);
    }));

  test('a drawing of many things can be passed by with the keyboard, and has one stop for each', () =>
    withApp({ path: '/bench/' }, async ({ page }) => {
      const past = page.getByRole('button', { name: 'Past the drawing' });
      await past.press('Enter');
      await page.keyboard.press('Tab');
      await expect.poll(() => focusedName(page)).toBe('Front');
      const stops = await page
        .locator('svg.drawing [role=button][tabindex="0"]')
        .evaluateAll((all) => all.map((each) => each.getAttribute('aria-label')));
      expect(stops.filter((stop) => stop?.startsWith('Part '))).toEqual([
        ...new Set(stops.filter((stop) => stop?.startsWith('Part '))),
      ]);
    }));

  test('where only a shape is measured, paper begins with its checklist', () =>
    withApp({}, async ({ page }) => {
      await page.getByRole('button', { name: 'Start my own' }).click();
      await page.getByRole('button', { name: 'Add a shape' }).click();
      await page.getByRole('button', { name: /^Opening/ }).click();
      const from = page.getByLabel(/^Seen from/);
      await page.getByRole('button', { name: 'Add the opening' }).click();
      await page.getByText('Say where you stand').waitFor();
      await expect.poll(() => focusedName(page)).toMatch(/^Seen from/);
      await from.fill('from the hall, looking in');
      await from.press('Enter');
      await page.getByRole('link', { name: 'Paper', exact: true }).click();
      const sets = page.getByRole('group', { name: 'Set of pages' });
      await sets.waitFor({ timeout: 55_000 });
      expect(await sets.getByRole('button', { pressed: true }).innerText()).toBe('Checklists');
      await page.getByText(/^Page 1 of \d/).waitFor();
    }));

  test('a name of one very long word pushes nothing off a phone', () =>
    withApp({ viewport: phone, path: '/rack/' }, async ({ page }) => {
      await page
        .getByRole('button', { name: /^Change / })
        .first()
        .click();
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel('Name').fill('Sperrholz'.repeat(12));
      await dialog.getByRole('button', { name: 'Keep', exact: true }).click();
      await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
      for (const place of ['Rack', 'Bench', 'Saw', 'Trips']) {
        await page.getByRole('link', { name: place, exact: true }).click();
        await page.getByRole('heading', { level: 1, name: place }).waitFor();
        await page.waitForTimeout(500);
        const over = await page.evaluate(() => {
          const main = document.querySelector('main');
          return (main?.scrollWidth ?? 0) - (main?.clientWidth ?? 0);
        });
        expect([place, over <= 0]).toEqual([place, true]);
      }
    }));

  test('the pages of a set print from the menu of the browser too', () =>
    withApp({ path: '/paper/' }, async ({ page }) => {
      const all = page.getByRole('button', { name: /^Print all/ });
      await all.waitFor({ timeout: 55_000 });
      const count = Number(/\d+/.exec(await all.innerText())?.[0]);
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect([...pdf.matchAll(/\/MediaBox/g)]).toHaveLength(count);
    }));
});
