/** A moment in the words of the device, as `26 Nov 2026, 08:15`. */
export function whenWords(iso: string, fineness: 'short' | 'medium' = 'short'): string {
  return new Date(iso).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: fineness });
}
