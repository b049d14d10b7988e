const numbers = new WeakMap<object, number>();
let given = 0;

/** A number for an object, the same each time, so that it can stand in a query's key. */
export function numberOf(object: object | undefined): number {
  if (!object) return 0;
  const known = numbers.get(object) ?? ++given;
  numbers.set(object, known);
  return known;
}
