/** An id as a file name that every system takes: letters, figures and hyphens. */
export function fileName(id: string): string {
  const plain = id
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9.-]+/g, '-')
    .replace(/\.+/g, '.')
    .replace(/^[-.]+|[-.]+$/g, '')
    .slice(0, 60);
  return plain === '' ? 'group' : plain;
}
