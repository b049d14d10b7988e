import type { Problem } from '../problem.ts';
import { fastestSeconds } from '../rules/remaining.ts';

/**
 * Weighted tardiness no plan can avoid, the larger of: every job late by what it is late when alone in the shop; and,
 * per stage, the k-th end can be no sooner than the k shortest operations spread evenly over the stage's machines, set
 * against the k-th due date, at the smallest weight (pairing sorted ends with sorted dates makes the sum smallest).
 * @param ends per job, its earliest end
 */
export function tardinessBound(problem: Problem, ends: Float64Array): number {
  let alone = 0;
  for (let j = 0; j < problem.jobs; j++)
    alone += problem.weight[j]! * Math.max(0, ends[j]! - problem.due[j]!);
  const stages = new Set(problem.input.machines.map((machine) => machine.stage));
  return Math.max(alone, ...[...stages].map((stage) => crowded(problem, stage)));
}

function crowded(problem: Problem, stage: string): number {
  const { now, jobs } = problem.input;
  const numbers = problem.tracks.flatMap(({ machine }, m) => (machine.stage === stage ? [m] : []));
  const work: number[] = [];
  const dues: number[] = [];
  let least = Infinity;
  for (let j = 0; j < problem.jobs; j++) {
    if (!Number.isFinite(problem.due[j]!)) continue;
    let here = 0;
    for (let o = problem.firstOf[j]!; o < problem.firstOf[j + 1]!; o++)
      if (Number.isNaN(problem.startedAt[o]!) && problem.eligible[o]!.every((m) => numbers.includes(m)))
        here += fastestSeconds(problem, o);
    if (here === 0) continue;
    work.push(here);
    dues.push(jobs[j]!.due!);
    least = Math.min(least, problem.weight[j]!);
  }
  work.sort((a, b) => a - b);
  dues.sort((a, b) => a - b);
  let sum = 0;
  let late = 0;
  work.forEach((seconds, k) => {
    sum += seconds;
    late += Math.max(0, now + sum / numbers.length - dues[k]!);
  });
  return work.length === 0 ? 0 : late * least;
}
