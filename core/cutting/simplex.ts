import type { Column, CoverStock } from './cover.ts';
import { addVariable, variablesFor, type Variables } from './simplex-variables.ts';

/**
 * The linear relaxation of a cover: min Σ cost·x with Σ pieces·x ≥ demand, Σ use·x ≤ available, x ≥ 0.
 * A primal revised simplex with an explicit inverse; columns may be added between solves and the basis is kept.
 * Source of the method: G. B. Dantzig and W. Orchard-Hays, Mathematical Tables and Other Aids to Computation 8 (1954) 64-67.
 */
interface Master {
  add(column: Column): void;
  /** Solves to optimality from the basis at hand. */
  solve(): void;
  /** Dual values of the items, ≥ 0. */
  itemDuals(): number[];
  /** Dual values of the stocks, ≥ 0: what one more unit would save. */
  stockDuals(): number[];
  /** The value of each column added, in the order of `add`. */
  values(): number[];
  /** Cost of the relaxation over the columns added so far. */
  cost(): number;
  /** Demand that no column covers, in pieces; above 0 the columns do not suffice. */
  uncovered(): number;
}

const tolerance = 1e-9;
const pivotTolerance = 1e-7;
/** Rounding errors build up in the inverse; it is computed afresh after so many pivots. */
const pivotsPerInverse = 400;
/** Variables looked at more closely before each pivot. */
const candidates = 6;

interface Tableau {
  readonly rows: number;
  readonly rhs: Float64Array;
  readonly variables: Variables;
  readonly basis: Int32Array;
  readonly inverse: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  pivots: number;
}

/**
 * @param demand pieces wanted; at or below 0: what columns with counts below 0 may take
 * @param missingCost by item, cost of a piece that no column covers: far above what columns ask for it
 */
export function createMaster(
  demand: readonly number[],
  stock: readonly CoverStock[],
  missingCost: readonly number[],
): Master {
  const limited = stock
    .map((one, at) => ({ at, available: one.available }))
    .filter((one) => one.available !== null);
  const stockRow = new Map(limited.map((one, k) => [one.at, demand.length + k]));
  const t = start(
    demand,
    limited.map((one) => one.available as number),
    missingCost,
  );
  const { x, y, basis } = t;
  const columnAt: number[] = [];
  const inBasis = (figure: (variable: number) => number): number =>
    basis.reduce((sum, at, row) => sum + figure(at) * (x[row] as number), 0);
  return {
    add({ stock: of, use, cost, pieces }) {
      const row = use > 0 ? stockRow.get(of) : undefined;
      const entries = row === undefined ? pieces : [...pieces, [row, use] as const];
      columnAt.push(addVariable(t.variables, cost, entries, 'column'));
    },
    solve: () => solve(t),
    itemDuals: () => demand.map((_, row) => Math.max(0, y[row] as number)),
    stockDuals: () =>
      stock.map((_, at) => Math.max(0, -((stockRow.has(at) ? y[stockRow.get(at) as number] : 0) as number))),
    values: () => {
      const value = new Map(Array.from(basis, (at, row) => [at, Math.max(0, x[row] as number)]));
      return columnAt.map((at) => value.get(at) ?? 0);
    },
    cost: () => inBasis((at) => t.variables.cost[at] as number),
    uncovered: () => inBasis((at) => t.variables.isMissing[at] as number),
  };
}

function start(
  demand: readonly number[],
  available: readonly number[],
  missingCost: readonly number[],
): Tableau {
  const rows = demand.length + available.length;
  const variables = variablesFor(rows);
  demand.forEach((_, row) => addVariable(variables, missingCost[row] as number, [[row, 1]], 'missing'));
  available.forEach((_, k) => addVariable(variables, 0, [[demand.length + k, 1]], 'slack'));
  demand.forEach((_, row) => addVariable(variables, 0, [[row, -1]], 'slack'));
  // A hair is added to each demand so that ties in the ratio test, which could make the method cycle, do not occur.
  const hair = (row: number): number => 1e-7 * (1 + ((row * 7) % 13));
  const rhs = Float64Array.from([
    ...demand.map((pieces, row) => (pieces > 0 ? pieces + hair(row) : pieces - hair(row))),
    ...available,
  ]);
  // Where nothing is wanted the basis begins with what is too many, elsewhere with what is missing.
  const spare = (row: number): boolean => (rhs[row] as number) < 0;
  const inverse = new Float64Array(rows * rows);
  for (let row = 0; row < rows; row++) inverse[row * rows + row] = spare(row) ? -1 : 1;
  const basis = Int32Array.from({ length: rows }, (_, row) => (spare(row) ? rows + row : row));
  for (const at of basis) variables.mayEnter[at] = 0;
  const y = Float64Array.from({ length: rows }, (_, row) =>
    row < demand.length && !spare(row) ? (missingCost[row] as number) : 0,
  );
  return { rows, rhs, variables, basis, inverse, x: rhs.map(Math.abs), y, pivots: 0 };
}

/** A variable that may enter the basis, and what leaves for it. */
interface Entry {
  readonly variable: number;
  readonly direction: Float64Array;
  readonly leaving: number;
  /** What the exchange saves. */
  readonly saving: number;
}

function solve(t: Tableau): void {
  for (;;) {
    const entry = bestEntry(t);
    // Costs are never negative, so the relaxation is bounded: a missing pivot can only be rounding in a stale inverse.
    if (!entry) return;
    pivot(t, entry);
    if (t.pivots % pivotsPerInverse === 0) invert(t);
  }
}

/** Of a few variables with the most negative reduced cost the one that saves most: halves the pivots where many save nothing. */
function bestEntry(t: Tableau): Entry | null {
  let best: Entry | null = null;
  for (const variable of mostNegative(t)) {
    const direction = column(t, variable);
    const leaving = ratioTest(t, direction);
    if (leaving < 0) continue;
    const step = Math.max(0, t.x[leaving] as number) / (direction[leaving] as number);
    const saving = -reducedCost(t, variable) * step;
    if (!best || saving > best.saving) best = { variable, direction, leaving, saving };
  }
  return best;
}

function reducedCost({ y, variables }: Tableau, at: number): number {
  const { begin, row, coefficient } = variables;
  const end = begin[at + 1] as number;
  let reduced = variables.cost[at] as number;
  for (let k = begin[at] as number; k < end; k++)
    reduced -= (y[row[k] as number] as number) * (coefficient[k] as number);
  return reduced;
}

/** The few variables of most negative reduced cost, the most negative first. */
function mostNegative(t: Tableau): number[] {
  const { count, mayEnter } = t.variables;
  const found: number[] = [];
  const costs: number[] = [];
  let least = -tolerance;
  for (let at = 0; at < count; at++) {
    if (mayEnter[at] === 0) continue;
    const cost = reducedCost(t, at);
    if (cost >= least) continue;
    const place = costs.findIndex((other) => cost < other);
    found.splice(place < 0 ? found.length : place, 0, at);
    costs.splice(place < 0 ? costs.length : place, 0, cost);
    if (found.length > candidates) {
      found.pop();
      costs.pop();
    }
    if (found.length === candidates) least = costs[candidates - 1] as number;
  }
  return found;
}

/** B⁻¹ times a variable's column. */
function column({ rows, inverse, variables }: Tableau, variable: number): Float64Array {
  const { begin, row: rowOf, coefficient } = variables;
  const out = new Float64Array(rows);
  for (let k = begin[variable] as number; k < (begin[variable + 1] as number); k++) {
    const at = rowOf[k] as number;
    const factor = coefficient[k] as number;
    for (let row = 0; row < rows; row++)
      out[row] = (out[row] as number) + (inverse[row * rows + at] as number) * factor;
  }
  return out;
}

function ratioTest(t: Tableau, direction: Float64Array): number {
  let leaving = -1;
  let least = Infinity;
  for (let row = 0; row < t.rows; row++) {
    const slope = direction[row] as number;
    if (slope <= pivotTolerance) continue;
    const ratio = Math.max(0, t.x[row] as number) / slope;
    const tie = Math.abs(ratio - least) <= 1e-12;
    if (tie ? slope > (direction[leaving] as number) : ratio < least) {
      least = ratio;
      leaving = row;
    }
  }
  return leaving;
}

function pivot(t: Tableau, { variable, direction, leaving }: Entry): void {
  const { rows, inverse, x, y, basis, variables } = t;
  const cost = reducedCost(t, variable);
  const scale = 1 / (direction[leaving] as number);
  const base = leaving * rows;
  for (let k = 0; k < rows; k++) inverse[base + k] = (inverse[base + k] as number) * scale;
  const filled = nonZeros(inverse, base, rows);
  const step = (x[leaving] as number) * scale;
  for (let row = 0; row < rows; row++) {
    const factor = direction[row] as number;
    if (row === leaving || factor === 0) continue;
    x[row] = (x[row] as number) - factor * step;
    subtract(inverse, row * rows, base, factor, filled);
  }
  x[leaving] = step;
  for (const k of filled) y[k] = (y[k] as number) + cost * (inverse[base + k] as number);
  const left = basis[leaving] as number;
  variables.mayEnter[left] = variables.isMissing[left] === 1 ? 0 : 1;
  variables.mayEnter[variable] = 0;
  basis[leaving] = variable;
  t.pivots++;
}

/** Where a row is not zero: most of an inverse's rows are nearly empty, and only what is there need be worked on. */
function nonZeros(matrix: Float64Array, base: number, width: number): Int32Array {
  const found = new Int32Array(width);
  let count = 0;
  for (let k = 0; k < width; k++) if (matrix[base + k] !== 0) found[count++] = k;
  return found.subarray(0, count);
}

/** Takes a multiple of one row off another. */
function subtract(matrix: Float64Array, to: number, from: number, factor: number, filled: Int32Array): void {
  for (let j = 0; j < filled.length; j++) {
    const k = filled[j] as number;
    matrix[to + k] = (matrix[to + k] as number) - factor * (matrix[from + k] as number);
  }
}

/** The inverse, the values and the duals afresh from the basis, by Gauss-Jordan elimination with row exchange. */
function invert(t: Tableau): void {
  const { rows, inverse } = t;
  const a = new Float64Array(rows * rows);
  t.basis.forEach((at, k) => {
    const { begin, row, coefficient } = t.variables;
    for (let j = begin[at] as number; j < (begin[at + 1] as number); j++)
      a[(row[j] as number) * rows + k] = coefficient[j] as number;
  });
  inverse.fill(0);
  for (let row = 0; row < rows; row++) inverse[row * rows + row] = 1;
  for (let k = 0; k < rows; k++) {
    let at = k;
    for (let row = k + 1; row < rows; row++) {
      if (Math.abs(a[row * rows + k] as number) > Math.abs(a[at * rows + k] as number)) at = row;
    }
    for (const matrix of [a, inverse]) exchange(matrix, rows, k, at);
    eliminate(a, inverse, rows, k);
  }
  for (let row = 0; row < rows; row++) {
    let sum = 0;
    for (let k = 0; k < rows; k++) sum += (inverse[row * rows + k] as number) * (t.rhs[k] as number);
    t.x[row] = sum;
  }
  t.y.fill(0);
  t.basis.forEach((at, row) => {
    const cost = t.variables.cost[at] as number;
    if (cost !== 0)
      for (let k = 0; k < rows; k++) t.y[k] = (t.y[k] as number) + cost * (inverse[row * rows + k] as number);
  });
}

function exchange(matrix: Float64Array, width: number, one: number, other: number): void {
  if (one === other) return;
  const kept = matrix.slice(one * width, one * width + width);
  matrix.copyWithin(one * width, other * width, other * width + width);
  matrix.set(kept, other * width);
}

function eliminate(a: Float64Array, inverse: Float64Array, width: number, k: number): void {
  const base = k * width;
  const scale = 1 / (a[base + k] as number);
  const filled = [a, inverse].map((matrix) => {
    for (let j = 0; j < width; j++) matrix[base + j] = (matrix[base + j] as number) * scale;
    return nonZeros(matrix, base, width);
  }) as [Int32Array, Int32Array];
  for (let row = 0; row < width; row++) {
    const factor = a[row * width + k] as number;
    if (row === k || factor === 0) continue;
    subtract(a, row * width, base, factor, filled[0]);
    subtract(inverse, row * width, base, factor, filled[1]);
  }
}
