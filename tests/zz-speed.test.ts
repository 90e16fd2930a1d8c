import { test } from 'vitest';
import { writeFileSync, appendFileSync } from 'node:fs';
import { adjustSurvey } from '#core/measuring';
import { makeRandom } from '#core/numerics';
import type { Reading } from '#core/measuring';
import { adjustNetwork } from '../src/core/measuring/adjust-network.ts';
import { networkOf } from '../src/core/measuring/study.ts';
import { datumOf } from '../src/core/measuring/datum.ts';
import { analyseFit, fitFrom } from '../src/core/measuring/solve.ts';
test('speed', () => {
  writeFileSync('/tmp/speed.txt', '');
  for (const [n, m] of [[10, 40], [25, 100], [50, 200]] as const) {
    const r = makeRandom(1);
    const P = Array.from({ length: n }, () => ({ x: 3000 * r.next(), y: 2000 * r.next() }));
    const seen = new Set<string>();
    const readings: Reading[] = [];
    const add = (i: number, j: number) => { if (i === j || seen.has(`${Math.min(i,j)}-${Math.max(i,j)}`)) return; seen.add(`${Math.min(i,j)}-${Math.max(i,j)}`);
      readings.push({ id: `r${readings.length}`, kind: 'distance', from: `P${i}`, to: `P${j}`, value: Math.hypot(P[i].x-P[j].x, P[i].y-P[j].y) + 0.7 * r.normal(), sigma: 0.7 }); };
    for (let i = 1; i < n; i++) for (let k = 1; k <= 3; k++) if (i - k >= 0) add(i, i - k);
    while (readings.length < m) add(r.whole(0, n-1), r.whole(0, n-1));
    const d = datumOf(readings)!;
    const network = networkOf(readings, d);
    const start = { points: Object.fromEntries(P.map((p, i) => [`P${i}`, p])), tilt: 0 };
    let t = performance.now(); const f = fitFrom(network, start); appendFileSync('/tmp/speed.txt', `${n} fitFrom ${performance.now() - t} chi2 ${f.chi2}\n`);
    t = performance.now(); analyseFit(f); appendFileSync('/tmp/speed.txt', `${n} analyse ${performance.now() - t}\n`);
    t = performance.now(); adjustNetwork({ network, datum: d }); appendFileSync('/tmp/speed.txt', `${n} network ${performance.now() - t}\n`);
    t = performance.now(); const o = adjustSurvey({ seenFrom: 'x', readings }); appendFileSync('/tmp/speed.txt', `${n} survey ${performance.now() - t} ${o.adjustment.suspects.length}\n`);
  }
}, 120000);
