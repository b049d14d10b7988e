import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { improve, type Found } from '../../../core/schedule/improve.ts';
import type {
  JobInput,
  MachineInput,
  ObjectiveWeights,
  Problem,
  ProblemInput,
  Queues,
} from '../../../core/schedule/problem.ts';
import { Rng } from '../../../core/schedule/search/rng.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });
const none: ObjectiveWeights = {
  weightedTardiness: 0,
  changeover: 0,
  makespan: 0,
  flowTime: 0,
  disturbance: 0,
};

function built(input: ProblemInput): Problem {
  const result = buildProblem(input);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.value;
}

function* permutations<T>(items: readonly T[]): Generator<T[]> {
  if (items.length === 0) yield [];
  for (const [k, item] of items.entries())
    for (const rest of permutations(items.toSpliced(k, 1))) yield [item, ...rest];
}

/** Every way to line items up in two queues. */
function* twoQueues<T>(items: readonly T[]): Generator<[T[], T[]]> {
  for (const order of permutations(items))
    for (let cut = 0; cut <= order.length; cut++) yield [order.slice(0, cut), order.slice(cut)];
}

function least(problem: Problem, plans: Iterable<Queues>): number {
  let best = Infinity;
  for (const queues of plans) {
    const schedule = decode(problem, queues);
    if (schedule.ok) best = Math.min(best, schedule.value.objective);
  }
  return best;
}

/** Objective of the search after so many yields, or when it ended by itself; the plan is checked. */
function searched(problem: Problem, yields: number): number {
  let last: Found | undefined;
  for (const found of improve(problem, { seed: 1 })) {
    last = found;
    if (found.step >= yields) break;
  }
  expect(check(problem, last!.schedule)).toEqual([]);
  return last!.objective;
}

const machine = (id: string, stage = id): MachineInput => ({
  id,
  stage,
  initial: { colour: 'moss' },
  changeover: { combine: 'sum', attributes: { colour: 7 } },
  open: null,
});
const plain = (id: string): MachineInput => ({ ...machine(id), initial: null, changeover: null });

function jobs(rng: Rng, count: number, route: (j: number) => readonly string[]): JobInput[] {
  return Array.from({ length: count }, (_, j) => ({
    id: `J${j}`,
    release: rng.below(3) * 5,
    due: 10 + rng.below(60),
    weight: 1 + rng.below(4),
    operations: route(j).map((stage) => ({
      id: `J${j}:${stage}`,
      stage,
      seconds: 1 + rng.below(20),
      attributes: { colour: ['moss', 'bone', 'sky'][rng.below(3)]! },
    })),
  }));
}

describe('against every possible plan', () => {
  it('six lines on one machine with changeovers: the search finds the least weighted tardiness', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const input = {
          name: 'one',
          now: 0,
          machines: [machine('M')],
          jobs: jobs(new Rng(seed), 6, () => ['M']),
          objective: { ...none, weightedTardiness: 1, changeover: 0.5 },
        };
        const problem = built(input);
        const every = [...permutations(input.jobs.map((job) => job.operations[0]!.id))];
        expect(searched(problem, 25)).toBe(
          least(
            problem,
            every.map((M) => ({ M })),
          ),
        );
      }),
      { numRuns: 12 },
    );
  });

  it('four lines through a shear and two brakes: the search finds the best plan', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const machines = [machine('S', 'shear'), machine('B1', 'brake'), machine('B2', 'brake')];
        const input = {
          name: 'shop',
          now: 0,
          machines,
          jobs: jobs(new Rng(seed), 4, () => ['shear', 'brake']),
          objective: { ...none, weightedTardiness: 2, changeover: 1, flowTime: 1 },
        };
        const problem = built(input);
        const ids = input.jobs.map((job) => job.id);
        const every = function* () {
          for (const shear of permutations(ids))
            for (const [one, two] of twoQueues(ids))
              yield {
                S: shear.map((id) => `${id}:shear`),
                B1: one.map((id) => `${id}:brake`),
                B2: two.map((id) => `${id}:brake`),
              };
        };
        expect(searched(problem, 25)).toBe(least(problem, every()));
      }),
      { numRuns: 12 },
    );
  });

  it('a job shop of three lines and three machines: the search finds the least makespan', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const rng = new Rng(seed);
        const routes = [...permutations(['A', 'B', 'C'])];
        const input = {
          name: 'job shop',
          now: 0,
          machines: ['A', 'B', 'C'].map(plain),
          jobs: jobs(rng, 3, () => routes[rng.below(6)]!),
          objective: { ...none, makespan: 1 },
        };
        const problem = built(input);
        const orders = [...permutations(input.jobs.map((job) => job.id))];
        const queue = (m: string, order: readonly string[]) => order.map((id) => `${id}:${m}`);
        const every = function* () {
          for (const a of orders)
            for (const b of orders)
              for (const c of orders) yield { A: queue('A', a), B: queue('B', b), C: queue('C', c) };
        };
        expect(searched(problem, 10)).toBe(least(problem, every()));
      }),
      { numRuns: 40 },
    );
  });

  for (const objective of [
    { ...none, makespan: 1 },
    { ...none, weightedTardiness: 1, makespan: 1 },
  ])
    it(`five lines in one order on three machines, ${objective.weightedTardiness ? 'tardiness counted' : 'makespan only'}: the search finds the best order`, () => {
      fc.assert(
        fc.property(seeds, (seed) => {
          const machines = ['A', 'B', 'C'].map((id) => machine(id));
          const lines = jobs(new Rng(seed), 5, () => ['A', 'B', 'C']).map((job) => ({ ...job, release: 0 }));
          const problem = built({ name: 'flow', now: 0, sameOrder: true, machines, jobs: lines, objective });
          const every = [...permutations(lines.map((job) => job.id))].map((order) =>
            Object.fromEntries(['A', 'B', 'C'].map((m) => [m, order.map((id) => `${id}:${m}`)])),
          );
          expect(searched(problem, 10)).toBe(least(problem, every));
        }),
        { numRuns: 25 },
      );
    });

  it('a plan of few operations is proven best: the search ends by itself and says so', () => {
    const machines = [machine('S', 'shear'), machine('B', 'brake')];
    const lines = jobs(new Rng(7), 4, () => ['shear', 'brake']);
    const problem = built({
      name: 'few',
      now: 0,
      machines,
      jobs: lines,
      objective: { ...none, weightedTardiness: 1, changeover: 1 },
    });
    const statuses = [...improve(problem, { seed: 1 })].map((found) => found.status);
    expect(statuses.at(-1)).toBe('optimal');
  });
});
