import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'vitest';
import { understandProject, planGroups, expandLayout, listTasks } from '#core/pipeline';
import { planVisits, checkVisits } from '#core/visits';
import { makeBundle } from '#formats/bundle';
import { loadGlpk } from '#solver/glpk';
import { makeRandom } from '#core/numerics';
import { frameProject, drawerProject, frontProject, readOpening } from './sample-projects.ts';
test('fuzz', async () => {
  const r = createRequire(import.meta.url);
  const f = (n: string) => new Uint8Array(readFileSync(r.resolve(`dejavu-fonts-ttf/ttf/${n}.ttf`)));
  const fonts = { regular: f('DejaVuSansCondensed'), bold: f('DejaVuSansCondensed-Bold') };
  const solveLp = await loadGlpk();
  let seed = 7; const rnd = () => { seed = (seed * 1103515245 + 12345) % 2147483648; return seed / 2147483648; };
  const pick = <T,>(l: readonly T[]): T => l[Math.floor(rnd() * l.length)]!;
  const start = performance.now();
  let n = 0, stops = 0; const errs = new Map<string, number>();
  while (performance.now() - start < 100000) {
    const kind = n % 3; n++;
    let p: any = kind === 0 ? frameProject() : kind === 1 ? drawerProject() : frontProject();
    p = structuredClone(p);
    const w = 300 + rnd() * 900, h = kind === 0 ? 1200 + rnd() * 900 : 300 + rnd() * 900;
    if (kind !== 1) p.shapes[0].readings = readOpening({ BR: [w, rnd() * 10 - 5], TR: [w + rnd() * 20 - 10, h], TL: [rnd() * 20 - 10, h + rnd() * 16 - 8] });
    const q = p.pieces[0].parameters;
    if (kind === 0) Object.assign(q, { corner: pick(['rebate','tongue','housing-over','housing-between','half-lap','bridle','mitre','butt']), sill: rnd() < .5, stop: pick(['planted','rebated','cover','none']), covers: pick(['both','near','far','none']), mode: pick(['auto','square','fitted']), datum: pick(['mean','left','right','boat']) });
    if (kind === 1) for (const x of p.pieces) Object.assign(x.parameters, { openingWidth: 150 + rnd() * 700, openingHeight: 60 + rnd() * 250, clearDepth: 200 + rnd() * 400, corner: pick(['box','through-dovetail','lapped-dovetail','rebate','housed-back','lock-rebate','butt']), runner: pick(['metal','side-rail','bottom-notch','bottom']), front: pick(['overlay','inset','none']), count: 1 + Math.floor(rnd() * 4) });
    if (kind === 2) Object.assign(q, { columns: 1 + Math.floor(rnd() * 4), rows: 1 + Math.floor(rnd() * 4), fronts: pick(['inset','overlay']), continuous: pick(['none','tight','true']), grain: pick(['vertical','horizontal']), joint: pick(['loose-tenon','stub-tenon','half-lap','dowel','butt']) });
    if (rnd() < .3) p.stock = p.stock.filter(() => rnd() < .7);
    try {
      const u = understandProject(p);
      const planned = planGroups(u.groups, { solveLp, clock: () => performance.now(), work: 15 });
      for (const g of planned) for (const l of g.plan.layouts) expandLayout(g.group, l);
      const t = listTasks(p, u, planned); const v = planVisits(t); if (checkVisits(t, v).length) throw new Error('visits ' + checkVisits(t, v)[0]!.message);
      if (!v.proven || v.undone.length) throw new Error('visits undone');
      const b = await makeBundle({ project: p, understanding: u, planned, fonts });
      if (b.findings.some(x => x.severity === 'stop')) stops++;
      for (const x of b.files) if (typeof x.content === 'string' && /NaN|undefined|Infinity|\[object/.test(x.content)) throw new Error('text ' + x.path + ' ' + /.{30}(NaN|undefined|Infinity|\[object).{30}/s.exec(x.content)?.[0]);
    } catch (e: any) { const k = `${kind} ${e.message}`.slice(0, 200) + ' ' + String(e.stack).split('\n').slice(1, 4).join(' ').replace(/\/work\/main\//g, ''); errs.set(k, (errs.get(k) ?? 0) + 1); }
  }
  console.log('runs', n, 'stops', stops); for (const [k, c] of errs) console.log(c, k);
}, 200000);
