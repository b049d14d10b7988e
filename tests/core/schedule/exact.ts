import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { anneal } from '../../../core/schedule/search/anneal.ts';
import { FullTrial } from '../../../core/schedule/search/full-trial.ts';
import { LayeredTrial } from '../../../core/schedule/search/layered-trial.ts';
import { Rng } from '../../../core/schedule/search/rng.ts';
import { sentence } from '../../../core/result.ts';
import { firstQueues } from './first-queues.ts';

/** Values as close as sums of fractions can be. */
export const same = (a: number, b: number) => Math.abs(a - b) < 1e-6;

export function built(input: ProblemInput): Problem {
  const result = buildProblem(input);
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
}

/**
 * The objective the search reaches in so many reports at most, fewer when it reaches `target` before.
 * @throws Error when its plan breaks a rule
 */
export function searched(problem: Problem, target: number, reports: number): number {
  let last;
  for (const found of improve(problem, { seed: 1 })) {
    last = found;
    if (found.step >= reports || found.objective < target || same(found.objective, target)) break;
  }
  if (last === undefined) return Infinity;
  const [violation] = check(problem, last.schedule);
  if (violation !== undefined) throw new Error(violation.message);
  return last.objective;
}

/** The same of the annealing alone, which `improve` leaves out where so few plans are possible that it tries them all. */
export function annealed(problem: Problem, target: number, reports: number): number {
  const first = firstQueues(problem)!;
  const layered = problem.machineOrder !== null && !problem.input.crew?.length;
  const trial = layered ? new LayeredTrial(problem, first) : new FullTrial(problem, first);
  let least = trial.objective;
  let report = 0;
  for (const { objective } of anneal(problem, trial, new Rng(1))) {
    least = objective;
    if (++report >= reports || least < target || same(least, target)) break;
  }
  return least;
}
