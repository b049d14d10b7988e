import { buildProblem } from '../../../core/schedule/build.ts';
import { isContended } from '../../../core/schedule/contention.ts';
import { check } from '../../../core/schedule/check.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { anneal } from '../../../core/schedule/search/anneal.ts';
import { FullEvaluator } from '../../../core/schedule/search/full-evaluator.ts';
import { LayeredEvaluator } from '../../../core/schedule/search/layered-evaluator.ts';
import { Rng } from '../../../core/rng.ts';
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
  const layered = problem.machineOrder !== null && !isContended(problem);
  const evaluator = layered ? new LayeredEvaluator(problem, first) : new FullEvaluator(problem, first);
  let least = evaluator.objective;
  let report = 0;
  for (const { objective } of anneal(problem, evaluator, new Rng(1))) {
    least = objective;
    if (++report >= reports || least < target || same(least, target)) break;
  }
  return least;
}
