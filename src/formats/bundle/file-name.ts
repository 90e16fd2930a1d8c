/** For each id a file name that every system takes: letters, figures and hyphens, and none twice even where case is not seen. */
export function uniqueNames(ids: readonly string[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const id of ids) {
    const plain = makePlain(id);
    let name = plain;
    for (let number = 2; taken.has(name.toLowerCase()); number += 1) name = `${plain}-no${number}`;
    taken.add(name.toLowerCase());
    names.set(id, name);
  }
  return names;
}

function makePlain(id: string): string {
  const plain = id
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9.-]+/g, '-')
    .replace(/\.+/g, '.')
    .replace(/^[-.]+|[-.]+$/g, '')
    .slice(0, 60);
  return plain === '' ? 'group' : plain;
}
