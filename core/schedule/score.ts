import type { ObjectiveWeights, Problem, Terms } from './problem.ts';

/**
 * Quality in seconds, term by term; whole where the weights of the jobs are whole.
 * Makespan counts from `now`; flow time from each job's release as given; stability over jobs in the reference plan.
 * @param end end of every operation, by number
 * @param changeover changeover seconds of every operation, by number
 */
export function termsOf(problem: Problem, end: ArrayLike<number>, changeover: ArrayLike<number>): Terms {
  const { now, jobs } = problem.input;
  let weightedTardiness = 0;
  let makespan = 0;
  let flowTime = 0;
  let stability = 0;
  let changeovers = 0;
  jobs.forEach((job, j) => {
    const last = end[problem.firstOf[j + 1]! - 1]!;
    if (job.due !== null) weightedTardiness += job.weight * Math.max(0, last - job.due);
    makespan = Math.max(makespan, last - now);
    flowTime += last - job.release;
    if (!Number.isNaN(problem.reference[j]!)) stability += Math.abs(last - problem.reference[j]!);
  });
  for (let o = 0; o < problem.operations; o++) changeovers += changeover[o]!;
  return { weightedTardiness, changeover: changeovers, makespan, flowTime, stability };
}

/** The weighted sum of the terms: smaller is better. */
export function objectiveOf(weights: ObjectiveWeights, terms: Terms): number {
  return (
    weights.weightedTardiness * terms.weightedTardiness +
    weights.changeover * terms.changeover +
    weights.makespan * terms.makespan +
    weights.flowTime * terms.flowTime +
    weights.stability * terms.stability
  );
}
