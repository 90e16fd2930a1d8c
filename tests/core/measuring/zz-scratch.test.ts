import { test } from 'vitest';
import { adjustSurvey, makeOpeningReading, openingChecklist } from '#core/measuring';
import { makeRandom } from '#core/numerics';
const values = [NaN, 0, -5, 1e9, 1e-9, Infinity, 641, 1746, 100, 50, 160, 2000, 3.3];
const names = ['BL', 'BR', 'TR', 'TL', 'A', 'B', 'C', ''];
const hasBad = (x: unknown): boolean => typeof x === 'number' ? !Number.isFinite(x) : typeof x === 'string' ? /NaN|Infinity|undefined/.test(x) : x !== null && typeof x === 'object' ? Object.entries(x).some(([k, v]) => k !== 'value' && hasBad(v)) : false;
test('fuzz', () => {
  const rnd = makeRandom(7); let worst = 0; let bad = 0; const t0 = Date.now();
  for (let n = 0; n < 1500; n++) {
    const pick = <T,>(xs: readonly T[]) => xs[rnd.whole(0, xs.length - 1)] as T;
    const set = n % 3 === 0 ? names : n % 3 === 1 ? names.slice(0, 4) : ['A', 'B', 'C'];
    const val = () => rnd.next() < (n % 2 ? 0.02 : 0.3) ? pick(values) : 400 + 1600 * rnd.next();
    const readings = Array.from({ length: rnd.whole(0, 14) }, (_, k) => {
      const kind = pick(['distance', 'distance', 'distance', 'width', 'plumb', 'level'] as const);
      const base = { id: rnd.next() < 0.05 ? 'x' : `r${k}`, value: val() * (kind === 'plumb' || kind === 'level' ? 0.01 : 1), sigma: rnd.next() < 0.1 ? pick([0, NaN, 1e-12, 1e9, 50]) : undefined, repeats: rnd.next() < 0.1 ? [val(), val()] : undefined };
      return kind === 'width' ? { ...base, kind, left: [pick(set), pick(set)] as const, right: [pick(set), pick(set)] as const, at: pick([0, 1, 0.5, 2, NaN, 0.3]) } : { ...base, kind, from: pick(set), to: pick(set) };
    });
    const t = Date.now();
    try {
      const out = adjustSurvey({ seenFrom: 'aft', readings });
      if (hasBad({ ...out.adjustment, findings: out.adjustment.findings.filter((f) => !/not-a-number|fraction|sigma/.test(f.code)) }) || hasBad(out.shape)) { if (bad++ < 3) console.log('BAD', JSON.stringify(readings), JSON.stringify(out)); }
    } catch (e) { if (bad++ < 5) console.log('THROW', String((e as Error).stack).slice(0, 600), JSON.stringify(readings)); }
    const ms = Date.now() - t; if (ms > worst) { worst = ms; console.log('worst', ms, readings.length, JSON.stringify(readings).slice(0,1500)); }
  }
  console.log('bad', bad, 'worst ms', worst, 'total', Date.now() - t0);
});
test('sim', () => {
  const rnd = makeRandom(3);
  const truth = { BL: [0, 0], BR: [641, 0], TR: [648.7, 1751.9], TL: [13.8, 1745.8] } as Record<string, number[]>;
  const N = 1000; let named = 0, found = 0; const t0 = Date.now();
  for (let n = 0; n < N; n++) {
    const bad = rnd.whole(0, 7); const sign = rnd.next() < 0.5 ? -1 : 1;
    const readings = openingChecklist.map((l, k) => {
      const P = (a: string) => truth[a]!; let v = 0; const d = [P(l.to)[0]! - P(l.from)[0]!, P(l.to)[1]! - P(l.from)[1]!];
      if (l.kind === 'distance') v = Math.hypot(d[0]!, d[1]!);
      if (l.kind === 'width') { const L = [0, 1].map((i) => P('BL')[i]! * (1 - l.at!) + P('TL')[i]! * l.at!); const R = [0, 1].map((i) => P('BR')[i]! * (1 - l.at!) + P('TR')[i]! * l.at!); v = Math.hypot(R[0]! - L[0]!, R[1]! - L[1]!); }
      if (l.kind === 'plumb') v = d[0]!; if (l.kind === 'level') v = d[1]!;
      const sigma = k < 8 ? 0.5 : 1;
      return makeOpeningReading(l.key, v + sigma * rnd.normal() + (k === bad ? 10 * sign : 0), { sigma });
    });
    const a = adjustSurvey({ seenFrom: 'aft', readings }).adjustment;
    if (a.suspects.length) found++; if (a.suspects.length === 1 && a.suspects[0]!.id === openingChecklist[bad]!.key) named++; else if (n < 300) console.log(openingChecklist[bad]!.key, sign, a.suspects);
  }
  console.log('found', found, 'named', named, 'of', N, 'ms each', (Date.now() - t0) / N);
});
