/** A list with one entry changed. */
export const withEntry = <T>(list: readonly T[], at: number, patch: Partial<T>): T[] =>
  list.map((old, i) => (i === at ? { ...old, ...patch } : old));

/** A list without one entry. */
export const without = <T>(list: readonly T[], at: number): T[] => list.filter((_, i) => i !== at);

/** An object without one of its keys. */
export function withoutKey<T extends object>(object: T, key: keyof T): T {
  const next = { ...object };
  delete next[key];
  return next;
}
