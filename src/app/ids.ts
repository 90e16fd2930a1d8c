/** An id like the name, as `birch-ply-12`, that is not taken yet. */
export function freshId(name: string, taken: readonly string[]): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  const base = plain === '' ? 'item' : plain;
  if (!taken.includes(base)) return base;
  let count = 2;
  while (taken.includes(`${base}-${count}`)) count += 1;
  return `${base}-${count}`;
}
