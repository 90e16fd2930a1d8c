/** The known key that an unknown one was likely meant to be; null when none is near enough. */
export function suggestKey(key: string, known: readonly string[]): string | null {
  const wanted = simplify(key);
  const near = Math.max(1, Math.floor(wanted.length / 4));
  const ranked = known
    .map((each) => ({ each, distance: countEdits(wanted, simplify(each)) }))
    .sort((a, b) => a.distance - b.distance);
  const best = ranked[0];
  return best && best.distance <= near ? best.each : null;
}

function simplify(key: string): string {
  return key
    .slice(0, 60)
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');
}

/** Least number of letters put in, left out, changed or exchanged with their neighbour (optimal string alignment). */
function countEdits(a: string, b: string): number {
  let older: readonly number[] = [];
  let former: readonly number[] = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const differs = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((former[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (former[j - 1] ?? 0) + differs);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (older[j - 2] ?? 0) + 1);
      row.push(least);
    }
    older = former;
    former = row;
  }
  return former[b.length] ?? 0;
}
