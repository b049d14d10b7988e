import type { Column, CoverStock } from './cover.ts';

/**
 * The linear relaxation of a cover: min Σ cost·x with Σ pieces·x ≥ demand, Σ use·x ≤ available, x ≥ 0.
 * A primal revised simplex with an explicit inverse; columns may be added between solves and the basis is kept.
 * Source of the method: G. B. Dantzig and W. Orchard-Hays, Mathematical Tables and Other Aids to Computation 8 (1954) 64-67.
 */
export interface Master {
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

interface Variable {
  readonly cost: number;
  /** Sparse column of the equality form: rows and coefficients. */
  readonly rows: Int32Array;
  readonly coefficients: Float64Array;
  readonly kind: 'column' | 'slack' | 'missing';
}

const variable = (
  cost: number,
  rows: readonly number[],
  coefficients: readonly number[],
  kind: Variable['kind'],
): Variable => ({
  cost,
  rows: Int32Array.from(rows),
  coefficients: Float64Array.from(coefficients),
  kind,
});

interface Tableau {
  readonly rows: number;
  readonly rhs: Float64Array;
  readonly variables: Variable[];
  readonly basis: Int32Array;
  readonly inBasis: Set<number>;
  readonly inverse: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  pivots: number;
}

/**
 * @param demand pieces wanted, each above 0
 * @param missingCost cost of a piece that no column covers: far above any column's cost
 */
export function createMaster(
  demand: readonly number[],
  stock: readonly CoverStock[],
  missingCost: number,
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
  const columnAt: number[] = [];
  return {
    add(column) {
      const row = stockRow.get(column.stock);
      const rows = column.pieces.map(([item]) => item);
      const coefficients = column.pieces.map(([, count]) => count);
      columnAt.push(t.variables.length);
      if (row !== undefined) {
        rows.push(row);
        coefficients.push(column.use);
      }
      t.variables.push(variable(column.cost, rows, coefficients, 'column'));
    },
    solve: () => solve(t),
    itemDuals: () => demand.map((_, row) => Math.max(0, t.y[row] as number)),
    stockDuals: () =>
      stock.map((_, at) =>
        Math.max(0, -((stockRow.has(at) ? t.y[stockRow.get(at) as number] : 0) as number)),
      ),
    values: () => {
      const value = new Map(Array.from(t.basis, (at, row) => [at, Math.max(0, t.x[row] as number)]));
      return columnAt.map((at) => value.get(at) ?? 0);
    },
    cost: () =>
      t.basis.reduce((sum, at, row) => sum + (t.variables[at] as Variable).cost * (t.x[row] as number), 0),
    uncovered: () =>
      t.basis.reduce(
        (sum, at, row) => sum + (t.variables[at]?.kind === 'missing' ? (t.x[row] as number) : 0),
        0,
      ),
  };
}

function start(demand: readonly number[], available: readonly number[], missingCost: number): Tableau {
  const rows = demand.length + available.length;
  const variables: Variable[] = [];
  const own = (row: number, sign: number, cost: number, kind: Variable['kind']): void => {
    variables.push(variable(cost, [row], [sign], kind));
  };
  demand.forEach((_, row) => own(row, 1, missingCost, 'missing'));
  available.forEach((_, k) => own(demand.length + k, 1, 0, 'slack'));
  demand.forEach((_, row) => own(row, -1, 0, 'slack'));
  // A hair is added to each demand so that ties in the ratio test, which could make the method cycle, do not occur.
  const rhs = Float64Array.from([
    ...demand.map((pieces, row) => pieces + 1e-7 * (1 + ((row * 7) % 13))),
    ...available,
  ]);
  const inverse = new Float64Array(rows * rows);
  for (let row = 0; row < rows; row++) inverse[row * rows + row] = 1;
  const basis = Int32Array.from({ length: rows }, (_, row) => row);
  const y = Float64Array.from({ length: rows }, (_, row) => (row < demand.length ? missingCost : 0));
  return { rows, rhs, variables, basis, inBasis: new Set(basis), inverse, x: rhs.slice(), y, pivots: 0 };
}

function solve(t: Tableau): void {
  for (;;) {
    const entering = mostNegative(t);
    if (entering < 0) return;
    const direction = column(t, t.variables[entering] as Variable);
    const leaving = ratioTest(t, direction);
    // Costs are never negative, so the relaxation is bounded: a missing pivot can only be rounding in a stale inverse.
    if (leaving < 0) return;
    pivot(t, entering, leaving, direction);
    if (t.pivots % pivotsPerInverse === 0) invert(t);
  }
}

function reducedCost({ y }: Tableau, { cost, rows, coefficients }: Variable): number {
  let reduced = cost;
  for (let k = 0; k < rows.length; k++)
    reduced -= (y[rows[k] as number] as number) * (coefficients[k] as number);
  return reduced;
}

function mostNegative(t: Tableau): number {
  let best = -1;
  let least = -tolerance;
  for (let at = 0; at < t.variables.length; at++) {
    const variable = t.variables[at] as Variable;
    if (variable.kind === 'missing') continue;
    const cost = reducedCost(t, variable);
    if (cost < least && !t.inBasis.has(at)) {
      least = cost;
      best = at;
    }
  }
  return best;
}

/** B⁻¹ times a variable's column. */
function column(t: Tableau, variable: Variable): Float64Array {
  const out = new Float64Array(t.rows);
  for (let k = 0; k < variable.rows.length; k++) {
    const at = variable.rows[k] as number;
    const factor = variable.coefficients[k] as number;
    for (let row = 0; row < t.rows; row++)
      out[row] = (out[row] as number) + (t.inverse[row * t.rows + at] as number) * factor;
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

function pivot(t: Tableau, entering: number, leaving: number, direction: Float64Array): void {
  const { rows, inverse, x, y } = t;
  const cost = reducedCost(t, t.variables[entering] as Variable);
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
  t.inBasis.delete(t.basis[leaving] as number);
  t.inBasis.add(entering);
  t.basis[leaving] = entering;
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
    const variable = t.variables[at] as Variable;
    variable.rows.forEach((row, j) => (a[row * rows + k] = variable.coefficients[j] as number));
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
    const { cost } = t.variables[at] as Variable;
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
