/** One line of bench output. */
export interface BenchLine {
  readonly name: string;
  readonly objective: number | null;
  readonly bestKnown: number | null;
  /** (objective − bestKnown) / bestKnown; null when no best is known, or it is 0 and missed. */
  readonly gap: number | null;
  readonly lowerBound: number | null;
  readonly seconds: number;
  readonly evaluations: number;
  /** From the independent checker. */
  readonly valid: boolean;
}

export interface BenchOptions {
  readonly seconds: number;
  readonly seed: number;
}

/** A line and the full result behind it, or a sentence why there is none. */
export type Benched = { readonly line: BenchLine; readonly result: unknown };

export function gapOf(objective: number | null, bestKnown: number | null): number | null {
  if (objective === null || bestKnown === null) return null;
  if (objective === bestKnown) return 0;
  return bestKnown === 0 ? null : (objective - bestKnown) / bestKnown;
}
