/** The object without some of its fields. */
export function omit<T extends object, Key extends keyof T & string>(
  object: T,
  ...keys: readonly Key[]
): Omit<T, Key> {
  const rest = Object.entries(object).filter(([key]) => !(keys as readonly string[]).includes(key));
  return Object.fromEntries(rest) as Omit<T, Key>;
}
