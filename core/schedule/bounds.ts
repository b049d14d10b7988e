import type { Problem } from './problem.ts';
import { changeoverBound } from './bounds/changeover.ts';
import { makespanBound } from './bounds/makespan.ts';
import { tardinessBound } from './bounds/tardiness.ts';
import { nextOpen, finish } from './working-time.ts';

interface Bound {
  /** No plan's objective is below this. */
  readonly value: number;
  /** A sentence: what it is made of. */
  readonly reason: string;
}

/**
 * A value no plan can beat: each term's own bound, weighted and summed (stability counts as 0). Same unit as the
 * objective. Crew limits, pins and frozen operations can only make a plan worse, so they are left aside.
 */
export function lowerBound(problem: Problem): Bound {
  const weights = problem.input.objective;
  const ends = earliestEnds(problem);
  const parts: [string, number][] = [
    [
      'each line alone and queueing for its busiest machine',
      weights.weightedTardiness && weights.weightedTardiness * tardinessBound(problem, ends),
    ],
    [
      'setups that must come up at least once',
      weights.changeover && weights.changeover * changeoverBound(problem),
    ],
    [
      'the busiest machine with what must come before and after it',
      weights.makespan && weights.makespan * makespanBound(problem, ends),
    ],
    ['each line going straight through', weights.flowTime && weights.flowTime * sumFlow(problem, ends)],
  ];
  const counted = parts.filter(([, value]) => value > 0);
  const value = parts.reduce((total, [, part]) => total + part, 0);
  const reason =
    counted.length === 0
      ? 'No term can be bounded above 0.'
      : `Counted: ${counted.map(([name]) => name).join('; ')}.`;
  return { value, reason };
}

/** Per job, when it ends if no other job is in the way and it needs no changeover. */
export function earliestEnds(problem: Problem): Float64Array {
  return Float64Array.from({ length: problem.jobs }, (_, j) => {
    let ready = problem.release[j]!;
    let end = -Infinity;
    for (let o = problem.firstOf[j]!; o < problem.firstOf[j + 1]!; o++) {
      const started = problem.startedAt[o]!;
      let soonest = Infinity;
      let passedOn = Infinity;
      for (const m of problem.eligible[o]!) {
        const open = problem.open[m]!;
        const work = problem.seconds[o * problem.machines + m]!;
        const start = Number.isNaN(started)
          ? nextOpen(open, Math.max(ready, problem.availableFrom[m]!))
          : started;
        soonest = Math.min(soonest, finish(open, start, work));
        passedOn = Math.min(passedOn, finish(open, start, Math.ceil(problem.transferShare[o]! * work)));
      }
      // What is under way ends by its own start, though a step before it goes on longer.
      end = Number.isNaN(started) ? Math.max(end, soonest) : soonest;
      ready = Math.max(problem.input.now, passedOn);
    }
    return Math.max(end, problem.input.now);
  });
}

function sumFlow(problem: Problem, ends: Float64Array): number {
  return problem.input.jobs.reduce((total, job, j) => total + ends[j]! - job.release, 0);
}
