import { deflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { phone, typeReading, type AppPage } from '../support/app-page.ts';
import { hasBrowser } from '../support/browser.ts';
import { useApp } from '../support/use-app.ts';

describe.skipIf(!hasBrowser())('the Site page on a phone', () => {
  const { withApp } = useApp();
  const withPhone = (act: (app: AppPage) => Promise<void>) =>
    withApp({ viewport: phone, hasTouch: true, isMobile: true }, act);

  async function addShape(page: Page, kind: RegExp, fill?: () => Promise<void>): Promise<void> {
    await page.getByRole('button', { name: 'Add a shape' }).first().click();
    await page.getByRole('button', { name: kind }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel(/^Seen from/).fill('from the saloon, looking forward');
    await fill?.();
    await dialog.getByRole('button', { name: /^Add the/ }).click();
    await dialog.waitFor({ state: 'detached' });
  }
  const measure = (page: Page) => page.getByRole('button', { name: 'Measure', exact: true }).click();
  const drawing = (page: Page) => page.locator('.drawing-side svg.drawing');

  test('keys are large enough for cold hands, and pad and drawing are seen together', () =>
    withPhone(async ({ page }) => {
      await page.getByRole('button', { name: 'Start my own' }).click();
      await addShape(page, /^Opening/);
      await measure(page);
      const keys = page.getByRole('group', { name: 'Number pad' }).getByRole('button');
      for (const key of await keys.all()) {
        const box = await key.boundingBox();
        // 56 px: the size asked for; common practice for gloves, no source
        expect(Math.round(box?.height ?? 0)).toBeGreaterThanOrEqual(56);
        expect(Math.round(box?.width ?? 0)).toBeGreaterThanOrEqual(56);
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(phone.height);
      }
      const seen = await drawing(page).boundingBox();
      expect(seen?.y).toBeGreaterThan(0);
      expect(seen?.height).toBeGreaterThan(150);
    }));

  test('the drawing shows a reading while it is typed, and undo takes back what was kept', () =>
    withPhone(async ({ page }) => {
      await page.getByRole('button', { name: 'Start my own' }).click();
      await addShape(page, /^Opening/);
      await measure(page);
      const pad = page.getByRole('group', { name: 'Number pad' });
      for (const key of ['6', '4', '1']) await pad.getByRole('button', { name: key, exact: true }).click();
      expect(await drawing(page).getByText('wb 641').count()).toBe(1);
      expect(await page.getByText('Readings, 0 of 12').count()).toBe(1);
      await pad.getByRole('button', { name: 'Keep' }).click();
      await page.getByText('Readings, 1 of 12').waitFor({ state: 'attached' });
      await page.getByRole('heading', { name: 'width at one third' }).waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByText('Readings, 0 of 12').waitFor({ state: 'attached' });
    }));

  test('a suspected reading is put aside, confirmed by a look on site, and the second round hides the first', () =>
    withPhone(async ({ page }) => {
      await page.getByRole('button', { name: 'Put it aside, confirm on site' }).click();
      await page.getByText('put aside: confirm').waitFor();
      await measure(page);
      await typeReading(page, '627');
      expect(await page.getByText('put aside: confirm').count()).toBe(0);
      expect(await page.getByRole('status', { name: 'Suspected slip' }).count()).toBe(0);
      await page.getByRole('button', { name: 'Begin the second round' }).click();
      await page.getByText(/^From the other end: hook on at the bottom right corner/).waitFor();
      expect(await page.getByText('not shown now').count()).toBe(1);
      expect(await drawing(page).getByText(/^wb/).count()).toBe(0);
      await typeReading(page, '628.5');
      await page.getByText('628 / 628.5').waitFor({ state: 'attached' });
    }));

  test('an outline with a curved edge is measured edge by edge and ordinate by ordinate', () =>
    withPhone(async ({ page }) => {
      await page.getByRole('button', { name: 'Start my own' }).click();
      await addShape(page, /^Outline/, async () => {
        await page.getByLabel(/^Corners, counted/).fill('4');
        await page.keyboard.press('Tab');
      });
      await measure(page);
      for (const value of ['400', '300', '400', '300', '500', '500']) await typeReading(page, value);
      await page.getByText(/^Corners and edges/).click();
      await page.getByRole('button', { name: 'Straight to D' }).click();
      await page.getByRole('heading', { name: 'ordinate at 100 of C–D' }).waitFor();
      for (const value of ['15', '20', '15']) await typeReading(page, value);
      await page.getByText('Readings, 9 of 9').waitFor({ state: 'attached' });
      expect(await drawing(page).getByText('20', { exact: true }).count()).toBe(1);
    }));

  test('a photo is made smaller, drawn on with a finger and kept with its caption', () =>
    withPhone(async ({ page }) => {
      await page.getByText(/^Photos,/).click();
      await page
        .getByLabel('Choose a picture')
        .setInputFiles({ name: 'locker.png', mimeType: 'image/png', buffer: greyPng(2000, 1000) });
      const picture = page.getByRole('application', { name: 'Draw on the photo' });
      const size = await picture
        .locator('img')
        .evaluate((img: HTMLImageElement) => [img.naturalWidth, img.naturalHeight]);
      expect(size).toEqual([1280, 640]);
      const box = await picture.boundingBox();
      if (!box) throw new Error('no picture');
      await page.mouse.move(box.x + 20, box.y + 20);
      await page.mouse.down();
      await page.mouse.move(box.x + 120, box.y + 60, { steps: 5 });
      await page.mouse.up();
      await page.getByRole('dialog').getByLabel('Caption').fill('Stringer behind the locker');
      await page.keyboard.press('Tab');
      await page.getByRole('button', { name: 'Close' }).click();
      await page.getByRole('button', { name: 'Photo Stringer behind the locker' }).waitFor();
      expect(await page.locator('.thumb path.line').count()).toBe(1);
    }));

  test('readings from a table are taken over in one step, and a row that cannot be read is named', () =>
    withPhone(async ({ page }) => {
      await page.getByText('Readings, 12 of 12').waitFor({ state: 'attached' });
      await page.getByText('Readings from a table').click();
      await page.getByLabel('Choose a CSV file').setInputFiles({
        name: 'more.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from(
          'id,kind,from,to,value\nq1,distance,BL,X,300\nq2,distance,BR,X,420\nq3,distance,BL,,9\n',
        ),
      });
      await page.getByText('2 readings taken over.').waitFor();
      expect(await page.getByText(/Row 4/).count()).toBe(1);
      await page.getByText('Readings, 14 of 14').waitFor({ state: 'attached' });
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByText('Readings, 12 of 12').waitFor({ state: 'attached' });
    }));

  test('an outline traced in an SVG is chosen and brought to scale by its bar', () =>
    withPhone(async ({ page }) => {
      await page.getByRole('button', { name: 'Start my own' }).click();
      await addShape(page, /^From a drawing/, async () => {
        await page.getByLabel('Choose a DXF or SVG file').setInputFiles({
          name: 'top.svg',
          mimeType: 'image/svg+xml',
          buffer: Buffer.from(
            '<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="500mm" viewBox="0 0 900 500">' +
              '<g id="top"><path d="M0 400 H800 V0 H0 Z"/></g><g id="bar"><path d="M0 450 H700"/></g></svg>',
          ),
        });
        await page.getByText('800 × 400 mm').waitFor();
        await page.getByLabel(/^Across: the line on the layer "bar" is 700 mm/).fill('703.5');
        await page.keyboard.press('Tab');
      });
      // 703.5 / 700 = 1.005: 800 in the drawing are 804 aboard
      await page.getByText(/^Corners that fit/).waitFor();
      const row = page.getByRole('row', { name: /^B / });
      expect(await row.innerText()).toMatch(/\b804\b/);
    }));
});

/** A plain grey picture as PNG, written after the PNG specification. */
function greyPng(width: number, height: number): Buffer {
  const crcOf = (bytes: Buffer): number => {
    let crc = ~0;
    for (const byte of bytes) {
      crc ^= byte;
      for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
    }
    return ~crc >>> 0;
  };
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, crc] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    crc.writeUInt32BE(crcOf(body));
    return Buffer.concat([length, body, crc]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8; // bits for one grey value
  const rows = Buffer.alloc((width + 1) * height, 128);
  for (let row = 0; row < height; row += 1) rows[row * (width + 1)] = 0; // no filter
  const mark = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    mark,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
