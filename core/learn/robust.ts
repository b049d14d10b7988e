/** Statistics that a few wild values do not move. */

/** The middle value; of an even number, the mean of the two in the middle. NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : ((sorted[half - 1] ?? NaN) + (sorted[half] ?? NaN)) / 2;
}

/** Median absolute deviation (MAD) of values from their median. */
export const medianDeviation = (values: readonly number[], middle: number): number =>
  median(values.map((value) => Math.abs(value - middle)));

/** Turns a median absolute deviation of normal data to a standard deviation: 1 / Φ⁻¹(3/4). */
export const MAD_TO_SD = 1.4826;
