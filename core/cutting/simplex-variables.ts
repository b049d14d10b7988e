type Kind = 'column' | 'slack' | 'missing';

/** The variables side by side, each a sparse column of the equality form: gone through at every pivot. */
export interface Variables {
  count: number;
  cost: Float64Array;
  /** Whether it may enter the basis: not what is missing, nor what is in it. */
  mayEnter: Uint8Array;
  isMissing: Uint8Array;
  /** By variable where its entries begin; one more than there are variables. */
  begin: Int32Array;
  row: Int32Array;
  coefficient: Float64Array;
}

/** None yet, with room for what a programme of so many rows usually takes. */
export const variablesFor = (rows: number): Variables => ({
  count: 0,
  cost: new Float64Array(4 * rows),
  mayEnter: new Uint8Array(4 * rows),
  isMissing: new Uint8Array(4 * rows),
  begin: new Int32Array(4 * rows + 1),
  row: new Int32Array(20 * rows),
  coefficient: new Float64Array(20 * rows),
});

/** A copy twice as long, or the array itself where there is room. */
function roomFor<A extends Float64Array | Int32Array | Uint8Array>(array: A, length: number): A {
  if (length <= array.length) return array;
  const longer = new (array.constructor as new (length: number) => A)(2 * length);
  longer.set(array);
  return longer;
}

/** @returns the variable's place */
export function addVariable(
  v: Variables,
  cost: number,
  entries: readonly (readonly [row: number, coefficient: number])[],
  kind: Kind,
): number {
  const at = v.count++;
  const from = v.begin[at] as number;
  v.cost = roomFor(v.cost, v.count);
  v.mayEnter = roomFor(v.mayEnter, v.count);
  v.isMissing = roomFor(v.isMissing, v.count);
  v.begin = roomFor(v.begin, v.count + 1);
  v.row = roomFor(v.row, from + entries.length);
  v.coefficient = roomFor(v.coefficient, from + entries.length);
  v.cost[at] = cost;
  v.mayEnter[at] = kind === 'missing' ? 0 : 1;
  v.isMissing[at] = kind === 'missing' ? 1 : 0;
  entries.forEach(([row, coefficient], k) => {
    v.row[from + k] = row;
    v.coefficient[from + k] = coefficient;
  });
  v.begin[at + 1] = from + entries.length;
  return at;
}
