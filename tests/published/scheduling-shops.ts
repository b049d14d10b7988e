import { expect } from 'vitest';
import { buildProblem } from '../../core/schedule/build.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { improve } from '../../core/schedule/improve.ts';
import type {
  JobInput,
  ObjectiveWeights,
  Problem,
  ProblemInput,
  Queues,
  Schedule,
} from '../../core/schedule/problem.ts';

/* Small shops in which the published scheduling examples are written down. */

export const none: ObjectiveWeights = {
  weightedTardiness: 0,
  changeover: 0,
  makespan: 0,
  flowTime: 0,
  stability: 0,
};
export const tardiness = { ...none, weightedTardiness: 1 };
export const makespan = { ...none, makespan: 1 };

export function built(input: ProblemInput): Problem {
  const result = buildProblem(input);
  if (!result.ok) throw new Error(result.issues[0]!.message);
  return result.value;
}

export function planned(problem: Problem, queues: Queues): Schedule {
  const result = decode(problem, queues);
  if (!result.ok) throw new Error(result.issues[0]!.message);
  expect(check(problem, result.value)).toEqual([]);
  return result.value;
}

/** The last plan of the search after so many yields. */
export function searched(problem: Problem, yields: number): Schedule {
  let plan: Schedule | undefined;
  for (const found of improve(problem, { seed: 1 })) {
    plan = found.schedule;
    if (found.step >= yields) break;
  }
  expect(check(problem, plan!)).toEqual([]);
  return plan!;
}

export const jobsOf = (schedule: Schedule, machine: string) =>
  schedule.queues[machine]!.map((id) => id.split(':')[0]).join('');
export const machine = (id: string) => ({ id, stage: id, initial: null, changeover: null, open: null });
export const oneStep = (id: string, seconds: number, due: number | null, weight = 1): JobInput => ({
  id,
  release: 0,
  due,
  weight,
  operations: [{ id: `${id}:M`, stage: 'M', seconds }],
});
export const oneMachine = (jobs: readonly JobInput[], objective: ObjectiveWeights, now = 0): Problem =>
  built({ name: 'one machine', machines: [machine('M')], jobs, objective, now });
export const flowShop = (times: readonly (readonly [string, number, number])[]): Problem =>
  built({
    name: 'two machines',
    machines: [machine('M1'), machine('M2')],
    objective: makespan,
    now: 0,
    jobs: times.map(([id, a, b]) => ({
      id,
      release: 0,
      due: null,
      weight: 1,
      operations: [
        { id: `${id}:1`, stage: 'M1', seconds: a },
        { id: `${id}:2`, stage: 'M2', seconds: b },
      ],
    })),
  });
