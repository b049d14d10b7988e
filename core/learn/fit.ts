import { factor } from './linear.ts';
import { MAD_TO_SD, median, medianDeviation } from './robust.ts';

/** What is believed before any data, as standard deviations of log factors. */
export interface Prior {
  /** How far a machine as a whole may lie from its present figures. */
  readonly together: number;
  /** How far each single figure may lie from the rest of the machine. */
  readonly apart: number;
}

/** One timed thing: what each column contributes at its present figure, and what it took. */
interface FitRow {
  /** Seconds per column at factor 1; at least one above zero. */
  readonly parts: readonly number[];
  /** Above zero. */
  readonly seconds: number;
}

export interface Fit {
  /** Natural logarithm of the factor on each column. */
  readonly logFactors: readonly number[];
  /** Posterior standard deviation of each. */
  readonly logErrors: readonly number[];
  /** Robust standard deviation of log(actual / fitted), floored and steadied while data is thin. */
  readonly scatter: number;
  /** Per row, log(actual / fitted) over the scatter. */
  readonly residuals: readonly number[];
}

/** Tuning that keeps 95 % efficiency on normal data: P. J. Huber, Robust Statistics, 1981; Beaton and Tukey, 1974. */
const HUBER = 1.345;
const TUKEY = 4.685;
/** Scatter taken for likely before any data, counted as so many rows; from trials on invented shops. */
const USUAL_SCATTER = 0.25;
const SCATTER_ROWS = 10;
const LEAST_SCATTER = 0.02;
const STEPS = 60;
const LONGEST_STEP = 0.5;
const SETTLED = 1e-9;

const huber = (u: number): number => (Math.abs(u) <= HUBER ? 1 : HUBER / Math.abs(u));
const tukey = (u: number): number => (Math.abs(u) >= TUKEY ? 0 : (1 - (u / TUKEY) ** 2) ** 2);

/** Inverse of the covariance together² × 1 1ᵀ + apart² × I (Sherman and Morrison). */
function precisionOf({ together, apart }: Prior, size: number): number[][] {
  const shared = together ** 2 / (apart ** 2 + size * together ** 2);
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (__, j) => ((i === j ? 1 : 0) - shared) / apart ** 2),
  );
}

const logRatios = (rows: readonly FitRow[], logFactors: readonly number[]): number[] =>
  rows.map(({ parts, seconds }) =>
    Math.log(seconds / parts.reduce((sum, part, k) => sum + part * Math.exp(logFactors[k]!), 0)),
  );

function scatterOf(residuals: readonly number[]): number {
  const seen = MAD_TO_SD * medianDeviation(residuals, median(residuals));
  const n = residuals.length;
  const steadied = (n * seen ** 2 + SCATTER_ROWS * USUAL_SCATTER ** 2) / (n + SCATTER_ROWS);
  return Math.max(LEAST_SCATTER, Math.sqrt(steadied));
}

/** Weighted normal equations at the present factors: information (with the prior's) and the slope to climb. */
function equations(
  rows: readonly FitRow[],
  logFactors: readonly number[],
  precision: readonly (readonly number[])[],
  scatter: number,
  weight: (u: number) => number,
): { information: number[][]; slope: number[] } {
  const information = precision.map((row) => [...row]);
  const slope = precision.map((row) => -row.reduce((sum, p, k) => sum + p * logFactors[k]!, 0));
  const grown = logFactors.map(Math.exp);
  for (const { parts, seconds } of rows) {
    const fitted = parts.reduce((sum, part, k) => sum + part * grown[k]!, 0);
    const residual = Math.log(seconds / fitted);
    const pull = weight(residual / scatter) / scatter ** 2;
    if (pull === 0) continue;
    for (let i = 0; i < grown.length; i++) {
      const share = (parts[i]! * grown[i]!) / fitted;
      slope[i]! += pull * share * residual;
      for (let j = 0; j <= i; j++) information[i]![j]! += (pull * share * parts[j]! * grown[j]!) / fitted;
    }
  }
  return { information, slope };
}

/**
 * Factors on the columns so that Σ part × factor agrees with what was taken. Scatter is taken as multiplicative and
 * log-normal, so residuals are log(actual / fitted) and the fit is of the median time; wild values lose their weight
 * (Huber's loss to get near with the scatter, then Tukey's with the scatter fixed, by reweighted Gauss-Newton steps);
 * a normal prior on the log factors holds them near the present figures while data is thin. A factor is never ≤ 0.
 * The errors are those of the posterior's normal approximation at its peak (Laplace), so with no information they are
 * the prior's own. Same rows in the same order, same result.
 */
export function fitFactors(rows: readonly FitRow[], columns: number, prior: Prior): Fit {
  const precision = precisionOf(prior, columns);
  const logFactors = new Array<number>(columns).fill(0);
  let scatter = scatterOf(logRatios(rows, logFactors));
  for (const weight of [huber, tukey])
    for (let step = 0; step < STEPS; step++) {
      const { information, slope } = equations(rows, logFactors, precision, scatter, weight);
      const move = factor(information).solve(slope);
      const longest = Math.max(...move.map(Math.abs));
      const share = Math.min(1, LONGEST_STEP / longest);
      move.forEach((by, k) => (logFactors[k]! += share * by));
      if (weight === huber) scatter = scatterOf(logRatios(rows, logFactors));
      if (longest < SETTLED) break;
    }
  const { information } = equations(rows, logFactors, precision, scatter, tukey);
  return {
    logFactors,
    logErrors: factor(information).inverseDiagonal().map(Math.sqrt),
    scatter,
    residuals: logRatios(rows, logFactors).map((r) => r / scatter),
  };
}
