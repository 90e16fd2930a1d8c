/** Longest name without its ending that every file system takes. */
const longest = 80;
/** Names that one operating system keeps for devices. */
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

/** A name that every file system takes, with the ending, as `Curlew.json`; `joggle` where nothing is left of it. */
export function toFileName(name: string, ending: string): string {
  const plain = [...name.normalize('NFC')]
    .filter((sign) => !/[\p{C}]/u.test(sign))
    .join('')
    .replace(/[/\\:*?"<>|]+/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/^[.\s-]+|[.\s-]+$/g, '');
  const base = [...plain].slice(0, longest).join('').trimEnd();
  const safe = base === '' ? 'joggle' : reserved.test(base) ? `${base}-` : base;
  return `${safe}.${ending}`;
}
