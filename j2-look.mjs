import { chromium } from 'playwright-core';
import { readFileSync } from 'node:fs';
const demo = JSON.parse(readFileSync('static/projects/curlew.json', 'utf8'));
const G = demo.pieces.find((p) => p.letter === 'G');
G.parameters = { ...G.parameters, lock: 'mortise-lock' };
const add = (letter, kind, name, parameters) => demo.pieces.push({ id: 'p' + letter, letter, kind, name, parameters });
add('H', 'free-frame', 'Wardrobe frame', { width: 900, height: 1500, joint: 'half-lap', materials: { frame: 'oak-sawn' } });
add('M', 'framed-door', 'Wardrobe door, left', { frame: 'pH', hinged: 'left', leaf: 'first', meeting: 'gap', stile: 70, midRails: 1, joint: 'haunched-tenon', lock: 'mortise-lock', materials: { frame: 'oak-sawn', panel: 'birch-6' } });
add('N', 'framed-door', 'Wardrobe door, right', { frame: 'pH', hinged: 'right', leaf: 'second', stile: 70, midRails: 1, joint: 'haunched-tenon', materials: { frame: 'oak-sawn', panel: 'birch-6' } });
add('K', 'curved-head', 'Arched head', { span: 540, rise: 60, springing: 'housed', jambLength: 900, materials: { head: 'oak-sawn', mould: 'birch-18' } });
add('L', 'louvred-door', 'Engine room door', { width: 420, height: 1400, midRails: 1, materials: { frame: 'oak-sawn', slats: 'oak-sawn' } });
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--enable-unsafe-swiftshader'] });
for (const [size, viewport] of [['laptop', { width: 1366, height: 768 }], ['phone', { width: 390, height: 844 }]]) {
  const context = await browser.newContext({ viewport });
  const page = await context.newPage();
  page.on('pageerror', (e) => console.log('ERR', e.message));
  await page.route('**/projects/curlew.json', (r) => r.fulfill({ json: demo }));
  await page.goto('http://localhost:5312/bench/#G2');
  await page.waitForSelector('html[data-ready]', { state: 'attached', timeout: 60000 });
  for (const hash of (process.argv[2] ?? 'G,G3,M,N2,K,L,A1,H2').split(',')) {
    await page.goto('http://localhost:5312/bench/#' + hash);
    await page.waitForTimeout(2000);
    for (const g of ['Lock', 'Two doors', 'Springings']) { const d = page.locator('summary', { hasText: new RegExp('^' + g) }); if (await d.count()) await d.first().click(); }
    if (hash === 'K' && size === 'laptop') { await page.getByRole('button', { name: 'Solid' }).click(); await page.waitForTimeout(3000); }
    const lock = page.locator('#parameter-lock, #parameter-springing'); if (await lock.count()) await lock.first().scrollIntoViewIfNeeded();
    await page.waitForTimeout(500);
    await page.screenshot({ path: `/tmp/j2-${size}-${hash}.png`, fullPage: true });
    console.log(size, hash, (await page.locator('h1,h2').allTextContents()).slice(0, 6).join(' | '));
  }
  await context.close();
}
await browser.close();
