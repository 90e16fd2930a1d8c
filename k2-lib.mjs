import { chromium } from 'playwright-core';
export const base = 'http://localhost:5331';
export async function start({ phone = false, state } = {}) {
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--enable-unsafe-swiftshader'] });
  const context = await browser.newContext({ ...(state && { storageState: state }), viewport: phone ? { width: 390, height: 844 } : { width: 1280, height: 800 }, hasTouch: phone, isMobile: phone });
  const page = await context.newPage();
  page.on('pageerror', (e) => console.log('PAGEERR', e.message));
  page.on('console', (m) => { if (m.type() === 'error') console.log('CONSOLE', m.text()); });
  page.setDefaultTimeout(15000);
  return { browser, context, page };
}
export async function open(page, path) {
  await page.goto(base + path);
  await page.waitForSelector('html[data-ready]', { state: 'attached', timeout: 120000 });
  await page.waitForTimeout(400);
}
export const shot = (page, name, fullPage = false) => page.screenshot({ path: `/tmp/k2/${name}.png`, fullPage });
export async function wide(page, where) {
  const d = await page.evaluate(() => {
    const w = document.documentElement.clientWidth;
    const over = document.documentElement.scrollWidth - w;
    const culprits = over > 0 ? [...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > w + 1).slice(0, 5).map((e) => e.tagName + '.' + e.className + ' ' + (e.textContent ?? '').trim().slice(0, 40)) : [];
    return { over, culprits };
  });
  if (d.over > 0) console.log('HSCROLL', where, JSON.stringify(d));
}
