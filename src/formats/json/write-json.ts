/** Our files as text: keys in the order of the value, two spaces, a line end at the end. Throws on a number JSON cannot hold. */
export function writeJson(value: unknown): string {
  return `${JSON.stringify(value, refuseNonNumbers, 2)}\n`;
}

function refuseNonNumbers(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error(`not a number that a file can hold: ${key} = ${value}`);
  return value;
}
