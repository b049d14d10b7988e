import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { Problem, ProblemInput, Queues } from '../../../core/schedule/problem.ts';
import { promiseDate } from '../../../core/schedule/promise.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../../core/schedule/rules/edd.ts';
import { planWithout } from '../../../core/schedule/what-if/question.ts';
import { aJob, aMachine, aProblem, startedBefore, must, queued, refusal, seeds, timed } from './hand-shop.ts';
import { randomShop, uncontended } from './random-shop.ts';

describe('the date to promise (worked by hand)', () => {
  const problem = aProblem({
    jobs: [aJob('A', [100, null], 100), aJob('B', [100, null], 250), aJob('X', [50, null])],
  });

  it('uses the slack of the lines behind it and none that is not there', () => {
    // B may wait 50 s, A not at all: so between the two.
    const { safe } = must(promiseDate(problem, queued(problem, { S1: 'A B X' }), 'X'));
    expect(safe).toMatchObject({
      end: 150,
      queues: { S1: ['A:shear', 'X:shear', 'B:shear'] },
      makesLate: [],
      objectiveAdded: 0,
    });
  });

  it('says what an earlier date costs, and whom', () => {
    const { earlier } = must(promiseDate(problem, queued(problem, { S1: 'A B X' }), 'X'));
    expect(earlier).toMatchObject([
      {
        end: 50,
        makesLate: [{ job: 'A', before: 100, after: 150, lateBefore: 0, lateAfter: 50 }],
        objectiveAdded: 50,
      },
    ]);
  });

  it('is the same wherever the line is now', () => {
    const promises = ['A B X', 'A X B', 'X A B'].map((words) =>
      must(promiseDate(problem, queued(problem, { S1: words }), 'X')),
    );
    expect(promises[1]).toEqual(promises[0]);
    expect(promises[2]).toEqual(promises[0]);
  });

  it('leaves alone what is late already: later late is not allowed either', () => {
    const late = aProblem({ jobs: [aJob('A', [100, null], 60), aJob('X', [50, null])] });
    expect(must(promiseDate(late, queued(late, { S1: 'A X' }), 'X')).safe?.end).toBe(150);
  });

  it('goes through shear and brake with the slack of both', () => {
    // The shear has 20 s to give before B, the brake 40 s before A.
    const two = aProblem({
      jobs: [aJob('A', [100, 100], 240), aJob('B', [100, 50], 310), aJob('X', [20, 30])],
    });
    const { safe } = must(promiseDate(two, queued(two, { S1: 'A B X', B1: 'A B X' }), 'X'));
    // X first on the shear until 20; on the brake it is first until 50, long before A's blanks at 120.
    expect(safe).toMatchObject({
      end: 50,
      queues: { S1: ['X:shear', 'A:shear', 'B:shear'], B1: ['X:brake', 'A:brake', 'B:brake'] },
    });
  });

  it('takes the other brake when that one is free', () => {
    const two = aProblem({
      machines: [aMachine('B1'), aMachine('B2')],
      jobs: [aJob('A', [null, 100], 100), aJob('X', [null, 50])],
    });
    const { safe } = must(promiseDate(two, queued(two, { B1: 'A X' }), 'X'));
    expect(safe).toMatchObject({ end: 50, queues: { B1: ['A:brake'], B2: ['X:brake'] } });
  });

  it('refuses a line that is not in the plan', () => {
    expect(refusal(promiseDate(problem, queued(problem, { S1: 'A B X' }), 'Y'))).toContain('Line Y is not');
  });
});

/** A plan that keeps everything fixed in place, and its first line as the one asked for. */
function asked(input: ProblemInput): { problem: Problem; queues: Queues; job: string } | null {
  const problem = must(buildProblem(startedBefore(input)));
  const queues = dispatch(problem, dueDateRule(problem));
  const plan = decode(problem, queues);
  const job = input.jobs[0]?.id;
  return job !== undefined && plan.ok && check(problem, plan.value).length === 0
    ? { problem, queues, job }
    : null;
}

const lateness = (problem: Problem, ends: Readonly<Record<string, number>>, except: string) =>
  problem.input.jobs
    .filter(({ id, due }) => id !== except && due !== null)
    .map(({ id, due }) => Math.max(0, ends[id]! - due!));

describe('promises in random shops', () => {
  it('no plan offered breaks a rule; the safe one makes nothing else late, the earlier ones what they say', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const question = asked(randomShop(seed, 7));
        fc.pre(question !== null);
        const { problem, queues, job } = question!;
        const fixed = problem.input.jobs[0]!.operations.some(
          (o) => problem.fixed[problem.operationAt.get(o.id)!],
        );
        const before = must(planWithout(problem, queues, [job]));
        const { safe, earlier } = must(promiseDate(problem, queues, job));
        for (const offer of [...(safe ? [safe] : []), ...earlier]) {
          expect(check(problem, offer.schedule)).toEqual([]);
          expect(timed(problem, offer.queues)).toEqual(offer.schedule);
          expect(offer.end).toBe(offer.schedule.ends[job]);
          expect(offer.objectiveAdded).toBeCloseTo(offer.schedule.objective - before.objective, 6);
          // Steps that are fixed belong to the plan that others' lateness is measured from.
          if (fixed) continue;
          const was = lateness(problem, before.ends, job);
          const added = lateness(problem, offer.schedule.ends, job).filter((late, k) => late > was[k]!);
          expect(offer.makesLate).toHaveLength(added.length);
        }
        if (safe !== null) expect(safe.makesLate).toEqual([]);
        const ends = [...earlier.map(({ end }) => end), ...(safe ? [safe.end] : [])];
        expect(ends).toEqual([...new Set(ends)].sort((a, b) => a - b));
        const costs = earlier.map(({ objectiveAdded }) => -objectiveAdded);
        expect(costs).toEqual([...costs].sort((a, b) => a - b));
      }),
      { numRuns: 500 },
    );
  });

  it('with enough people and things, and nothing fixed, there is always a safe date: at the ends of the queues', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const question = asked(loose(uncontended(randomShop(seed, 7))));
        fc.pre(question !== null);
        const { problem, queues, job } = question!;
        const last = Object.fromEntries(
          Object.entries(queues).map(([machine, ids]) => [
            machine,
            [
              ...ids.filter((id) => !id.startsWith(`${job}:`)),
              ...ids.filter((id) => id.startsWith(`${job}:`)),
            ],
          ]),
        );
        const atTheEnds = decode(problem, last);
        fc.pre(atTheEnds.ok);
        const { safe } = must(promiseDate(problem, queues, job));
        expect(safe!.end).toBeLessThanOrEqual(must(atTheEnds).ends[job]!);
      }),
      { numRuns: 300 },
    );
  });

  it('without changeovers no pair of positions gives an earlier date that makes nothing else late', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const input = loose(uncontended(randomShop(seed, 6)));
        const plain = { ...input, machines: input.machines.map((m) => ({ ...m, changeover: null })) };
        const question = asked(plain);
        fc.pre(question !== null);
        const { problem, queues, job } = question!;
        fc.pre(problem.machineOrder !== null);
        // With three steps only some of the positions are tried.
        fc.pre(problem.input.jobs.find(({ id }) => id === job)!.operations.length <= 2);
        const { safe } = must(promiseDate(problem, queues, job));
        expect(safe?.end).toBe(earliestByTryingAll(problem, queues, job));
      }),
      { numRuns: 300 },
    );
  });
});

/** Nothing fixed and no limit on people. */
const loose = (input: ProblemInput): ProblemInput => ({
  ...input,
  crew: null,
  frozen: {},
  pins: [],
  jobs: input.jobs.map((job) => ({
    ...job,
    operations: job.operations.map((o) => ({ ...o, started: undefined })),
  })),
});

/** Every position on every machine for every step, timed. */
function earliestByTryingAll(problem: Problem, queues: Queues, job: string): number {
  const rest = must(planWithout(problem, queues, [job]));
  const was = lateness(problem, rest.ends, job);
  const steps = problem.input.jobs.find(({ id }) => id === job)!.operations;
  let plans: Queues[] = [rest.queues];
  for (const step of steps)
    plans = plans.flatMap((plan) =>
      problem.input.machines
        .filter((m) => step.machines?.some(({ id }) => id === m.id) ?? m.stage === step.stage)
        .flatMap(({ id }) =>
          Array.from({ length: (plan[id] ?? []).length + 1 }, (_, position) => ({
            ...plan,
            [id]: (plan[id] ?? []).toSpliced(position, 0, step.id),
          })),
        ),
    );
  const ends = plans.flatMap((plan) => {
    const schedule = decode(problem, plan);
    if (!schedule.ok) return [];
    const late = lateness(problem, schedule.value.ends, job);
    return late.every((seconds, k) => seconds <= was[k]!) ? [schedule.value.ends[job]!] : [];
  });
  return Math.min(...ends);
}
