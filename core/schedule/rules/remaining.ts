import type { Problem } from '../problem.ts';

/** Per operation, its seconds and those of the job's later steps, each on its fastest machine. */
export function remainingSeconds(problem: Problem): Float64Array {
  const remaining = new Float64Array(problem.operations);
  for (let o = problem.operations - 1; o >= 0; o--) {
    const last = o + 1 === problem.firstOf[problem.jobOf[o]! + 1];
    remaining[o] = fastestSeconds(problem, o) + (last ? 0 : remaining[o + 1]!);
  }
  return remaining;
}

/** Seconds of an operation on its fastest machine. */
export function fastestSeconds(problem: Problem, o: number): number {
  let least = Infinity;
  for (const m of problem.eligible[o]!) least = Math.min(least, problem.seconds[o * problem.machines + m]!);
  return least;
}
