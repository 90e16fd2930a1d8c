import { test } from 'vitest';
import { adjustSurvey, checkAdjustment } from '#core/measuring';
import type { Reading } from '#core/measuring';
import { makeRandom } from '#core/numerics';
test('general', () => {
  const rnd = makeRandom(11);
  for (const [n, keep, slip] of [[5, 1, 300], [6, 0.8, 300], [8, 0.7, 50], [15, 0.5, 50], [25, 0.35, 50]] as const) {
    let hit = 0, first = 0, clean = 0, cleanBad = 0, ms = 0, worst = 0, chk = 0; const N = n > 10 ? 3 : 60;
    for (let t = 0; t < N; t++) {
      const pts = Array.from({ length: n }, () => ({ x: 3000 * rnd.next(), y: 2000 * rnd.next() }));
      const rs: Reading[] = [];
      pts.forEach((a, i) => pts.slice(i + 1).forEach((b, k) => { if (rnd.next() < keep) rs.push({ id: `${i}-${i + 1 + k}`, kind: 'distance', from: `P${i}`, to: `P${i + 1 + k}`, value: Math.max(1, Math.hypot(a.x - b.x, a.y - b.y) + 0.5 * rnd.normal()), sigma: 0.5 }); }));
      const c = adjustSurvey({ seenFrom: 'x', readings: rs }).adjustment;
      if (c.suspects.length) { cleanBad++; } else clean++;
      const g = rnd.whole(0, rs.length - 1);
      const bad = rs.map((r, k) => k === g ? { ...r, value: r.value + (rnd.next() < 0.5 && r.value > slip + 10 ? -slip : slip) } : r);
      const t0 = performance.now();
      const s = adjustSurvey({ seenFrom: 'x', readings: bad });
      const d = performance.now() - t0; ms += d; worst = Math.max(worst, d);
      const a = s.adjustment;
      if (checkAdjustment({ seenFrom: 'x', readings: bad }, a).length) { chk++; if (chk < 2) console.log(checkAdjustment({ seenFrom: 'x', readings: bad }, a)[0], a.undetermined); }
      if (a.suspects[0]?.id === rs[g]!.id) first++; if (a.suspects.some((x) => x.id === rs[g]!.id)) hit++;
    }
    console.log(n, keep, slip, 'N', N, 'clean ok', clean, 'clean suspected', cleanBad, 'hit', hit, 'first', first, 'ms', (ms / N).toFixed(0), 'worst', worst.toFixed(0), 'checkfail', chk);
  }
}, 300000);
